"""Names: people, materials and formulas an entry speaks of must be in the book, once.

Guarantees: nobody writes without being in the book, except who enters herself. Refuses: unknown
initials, unknown materials, a formula's version written twice.
"""

from collections.abc import Iterator

from ledger.domain.entries import Draft, Formula, House, Person, Receipt
from ledger.domain.entries.fields import specs
from ledger.domain.lots.scene import Scene
from ledger.domain.masters.formulas import version_of
from ledger.domain.rules.finding import Finding, Rule, impossible


def writer_is_known(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """The person who writes is in the book."""
    if isinstance(draft.facts, House) and not scene.has_house:
        return
    if draft.by is None:
        yield impossible(
            "writer",
            "This entry does not say who made it.",
            "Give your initials with --by or set POTTLE_BY.",
        )
        return
    enters_herself = isinstance(draft.facts, Person) and draft.facts.initials == draft.by
    if draft.by not in scene.people and not enters_herself:
        yield _unknown("writer", draft.by, scene)


def people_named_are_known(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Everybody whom the entry names, such as who checked a formula, is in the book."""
    facts_class: type = type(draft.facts)
    named = (
        getattr(draft.facts, spec.name) for spec in specs(facts_class) if spec.refers_to == "person"
    )
    for initials in dict.fromkeys(named):
        if initials and initials not in scene.people:
            yield _unknown("person", initials, scene)


def _unknown(rule: str, initials: str, scene: Scene) -> Finding:
    known = ", ".join(sorted(scene.people)) or "nobody yet"
    return impossible(
        rule,
        f"The initials {initials} are not in the book; it knows {known}.",
        f'Add the person with: pottle person add {initials} "FULL NAME"',
    )


def materials_are_known(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """Every material the entry names is in the book."""
    for code in material_names(draft):
        if code not in scene.materials:
            yield impossible(
                "material",
                f"The material {code} is not in the book.",
                f'Add it with: pottle material add {code} --name "NAME" --kind KIND',
            )


def material_names(draft: Draft) -> tuple[str, ...]:
    """Return the codes of materials that a draft refers to, in order, without repeats."""
    match draft.facts:
        case Receipt(material=material):
            return (material,)
        case Formula(lines=lines):
            return tuple(dict.fromkeys(line.material for line in lines if line.material))
        case _:
            return ()


def formula_version_is_new(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A formula's version is written once; a change is a new version."""
    facts = draft.facts
    if not isinstance(facts, Formula):
        return
    was = scene.corrected
    if was and isinstance(was.facts, Formula) and version_of(was.facts) == version_of(facts):
        return
    if (facts.code, facts.version) in scene.formulas:
        newest = max(version for _, version in scene.formulas)
        yield impossible(
            "formula version",
            f"Version {facts.version} of the formula {facts.code} is in the book already.",
            f"Write the change as version {newest + 1}; old batches keep theirs.",
        )


RULES: tuple[Rule, ...] = (
    writer_is_known,
    people_named_are_known,
    materials_are_known,
    formula_version_is_new,
)
