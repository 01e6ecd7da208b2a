"""What a line at the bench is read beside, as the book has it.

Guarantees: a pass is taken for what the last one was, and where there was none the formula says
its pore; nothing else is taken for granted.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace

from cli.front import COMMANDS
from cli.screens.bench.parts import Act, Bench, Usual
from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Filter, Formula
from ledger.domain.entries.choices import Medium, VacuumReference
from ledger.service.bench.hand import Hand
from reports.kit.format import scaled
from reports.words.entries.bench import pores

UNITS = {Measure.UL: "mL", Measure.MG: "g", Measure.UEACH: " each"}
"""What a bare number of each measure is counted in at the bench."""


def unit_word(unit: str | None) -> str:
    """Return a unit as it stands alone; mL where none is known."""
    return (unit or UNITS[Measure.UL]).strip()


def by_instrument(act: Act, port: str) -> Act:
    """Return an act with the scale at a port as what it was measured on."""
    balance = ("--instrument", f"scale at {port}") if act.words[0] == "add" else ()
    return replace(act, words=(*act.words, *balance, "--origin", "instrument"))


def beside(
    found: Hand | None,
    materials: Mapping[str, str],
    unit_of: Callable[[str], str | None],
    source: str | None,
) -> Bench:
    """Return what a line is read beside.

    Args:
        found: The lot in hand.
        materials: The kind of each material by its short name.
        unit_of: Returns what a lot or a material is counted in.
        source: A lot of which the amount comes next.
    """
    commands = frozenset(COMMANDS)
    if found is None:
        return Bench(materials=materials, commands=commands, unit_of=unit_of, source=source)
    return Bench(
        lot=found.state.code,
        materials=materials,
        called=_called(found.formula),
        commands=commands,
        unit_of=unit_of,
        usual=usual_pass(found),
        liquid=found.liquid,
        is_resting=found.rest is not None,
        source=source,
    )


def _called(formula: Formula | None) -> frozenset[str]:
    lines = formula.lines if formula else ()
    return frozenset(line.material for line in lines if line.material)


def usual_pass(found: Hand) -> Usual:
    """Return the pass that one of a lot is like, where nothing else is said."""
    if found.last_pass:
        return _as_before(found.last_pass)
    steps = found.formula.steps if found.formula else ()
    asked = [step.pore_max_nm for step in steps if step.verb == "filter" and step.pore_max_nm]
    return Usual("as the formula has it", pore=scaled(asked[0], 1000) if asked else None)


def _as_before(facts: Filter) -> Usual:
    told = pores(facts.pore_low_nm, facts.pore_high_nm)
    known = {str(medium) for medium in Medium} - {str(Medium.UNSAID)}
    return Usual(
        "as the pass before",
        medium=facts.medium if facts.medium in known else None,
        pore=told.removesuffix(" µm").replace("–", "-") if told else None,
        vacuum=scaled(facts.vacuum_pa, 1000) if facts.vacuum_pa is not None else None,
        is_absolute=facts.vacuum_reference is VacuumReference.ABSOLUTE,
    )
