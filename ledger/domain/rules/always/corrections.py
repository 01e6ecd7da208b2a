"""Keeping: corrections and strikes.

Guarantees: only an entry in force is corrected or struck, with a reason, by the same kind of
entry. Refuses: striking what others stand on, and the house.
"""

from collections.abc import Iterator

from ledger.domain.entries import Draft, Entry, Forget, House, Plan, Strike
from ledger.domain.lots.scene import Scene
from ledger.domain.masters.parties import is_forgotten
from ledger.domain.rules.finding import Finding, Rule, impossible, needs_reason


def corrected_is_in_force(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What is corrected or struck still counts."""
    if draft.corrects is None:
        return
    if scene.corrected is None:
        yield impossible(
            "correction",
            f"There is no entry {draft.corrects} in the book.",
            "pottle journal lists the entries with their numbers.",
        )
    elif not scene.corrected_is_in_force or isinstance(scene.corrected.facts, Strike):
        yield impossible(
            "correction",
            f"Entry {draft.corrects} is not in force: it was corrected or struck, or is a strike.",
            f"pottle journal --entry {draft.corrects} shows which entry counts now.",
        )


def stays_what_it_is(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A correction is of the same kind and about the same lot as what it corrects."""
    was = scene.corrected
    if was is None or isinstance(draft.facts, Strike):
        return
    if was.kind != draft.facts.KIND:
        yield impossible(
            "correction",
            f"Entry {was.seq} is of the kind {was.kind}, so it cannot become one of the kind "
            f"{draft.facts.KIND}.",
            f"Strike it, then record what really happened: {_strike(was)}",
        )
    if draft.lot != was.draft.lot:
        yield impossible(
            "correction",
            f"Entry {was.seq} is about {was.draft.lot or 'no lot'}, so it cannot be moved to "
            f"{draft.lot or 'no lot'}.",
            f"Strike it, then record it about the right lot: {_strike(was)}",
        )
    elif draft.opens != was.draft.opens:
        opened = was.draft.opens.code if was.draft.opens else "no lot"
        yield impossible(
            "correction",
            f"Entry {was.seq} opens {opened}, and what corrects it must open the same.",
            f"Strike it, then record what really happened: {_strike(was)}",
        )


def has_a_reason(draft: Draft, _scene: Scene) -> Iterator[Finding]:
    """A correction or strike says why."""
    if draft.corrects is not None and not draft.reason:
        yield needs_reason(
            "correction",
            f"Entry {draft.corrects} cannot be changed without a reason.",
            'Say why: --because "what was wrong"',
        )


def nothing_stands_on_it(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """An entry that opened a lot is struck only while nothing else speaks of that lot."""
    if isinstance(draft.facts, Strike) and scene.uses_of_opened:
        yield impossible(
            "strike",
            f"Entry {draft.corrects} opened a lot that {scene.uses_of_opened} other "
            f"{'entry speaks' if scene.uses_of_opened == 1 else 'entries speak'} of.",
            "Strike those first, or correct this one instead: pottle correct "
            f'{draft.corrects} --set FIELD=VALUE --because "WHY"',
        )


def house_stays(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A book is always somebody's."""
    was = scene.corrected
    if isinstance(draft.facts, Strike) and was and isinstance(was.facts, House):
        yield impossible(
            "strike",
            f"Entry {was.seq} says whose book this is, so it cannot be struck.",
            f'Correct it instead: pottle correct {was.seq} --set FIELD=VALUE --because "WHY"',
        )


def plans_stay(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What was drawn for a trial was drawn from its plan as it was entered."""
    was = scene.corrected
    if was and isinstance(was.facts, Plan) and not isinstance(draft.facts, Strike):
        yield impossible(
            "correction",
            f"Entry {was.seq} plans a trial, and the order and the marks of its jars are drawn "
            "from what it says, so it cannot be corrected.",
            f"Strike it, then plan the trial under another name: {_strike(was)}",
        )


def forgetting_stays(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What was erased does not come back, and a correction tells nobody anew who was forgotten."""
    was = scene.corrected
    if was and isinstance(was.facts, Forget):
        yield impossible(
            "correction",
            f"Entry {was.seq} says who was forgotten; what was erased cannot be brought back, so "
            "it stays.",
            "If they are to be in the book again, tell them anew: pottle party add ...",
        )
    elif was and is_forgotten(was.facts) and not isinstance(draft.facts, Strike):
        yield impossible(
            "correction",
            f"What entry {was.seq} told of was forgotten, so it cannot be corrected.",
            "If they are to be in the book again, tell them anew: pottle party add ...",
        )


def _strike(was: Entry) -> str:
    return f'pottle strike {was.seq} --because "WHY"'


RULES: tuple[Rule, ...] = (
    corrected_is_in_force,
    stays_what_it_is,
    has_a_reason,
    nothing_stands_on_it,
    house_stays,
    plans_stay,
    forgetting_stays,
)
