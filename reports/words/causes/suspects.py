"""What the book tells of the cause of failed lots, as lines, a table and the next step.

Guarantees: the first lines say no more than the test at the right level: cause shown, a lead, what
cannot be told apart, or too few to tell; the table's counts can be checked by hand. Refuses: to
propose a hold as a verdict, and to rank suspects when there is too little evidence.
"""

from collections.abc import Iterator

from ledger.domain.entries.choices import LotType
from ledger.science.statistics.judge import LEAST_UNITS
from ledger.science.statistics.suspects import Conclusion, Judgement, Level, Sort, Suspect
from ledger.service.causes.suspects import Suspicion
from reports.kit.format import plural
from reports.words.causes.odds import (
    Lots,
    cause_words,
    chance,
    counted,
    counts_words,
    listed,
    p_words,
    supplied,
)
from reports.words.causes.steps import hold_step, is_barred

MOST_ROWS = 12
"""How many suspects the table shows unless all are asked for."""
HEADS = ("suspect", "counted", "in failed", "in clear", "p", "adjusted")
HOW_COUNTED = {Level.BATCH: "batches", Level.BASE: "bases", Level.RUN: "lots"}
"""What a row of the table counts."""
FEW = {0: "No", 1: "One", 2: "Two"}
"""Numbers too small to decide."""


def suspicion_lines(suspicion: Suspicion) -> list[str]:
    """Return what a maker should know first."""
    judgement = suspicion.judgement
    lines = [_head(suspicion), *_failed(suspicion), ""]
    match judgement.verdict:
        case Conclusion.TOO_FEW:
            lines.append(_too_few(judgement))
        case Conclusion.NONE:
            lines.append(_nothing(judgement, suspicion.lots))
        case Conclusion.CAUSE:
            for suspect in judgement.named:
                lines += _shown(suspect, judgement, suspicion.lots)
        case _ if judgement.lead:
            lines += _lead(judgement.lead, suspicion)
    if suspicion.tried_in:
        lines.append(f'A trial of it is planned or made: pottle compare "{suspicion.tried_in}"')
    return [*lines, *_precaution(suspicion), *_left_out(suspicion)]


def suspicion_rows(suspicion: Suspicion, *, everything: bool) -> list[tuple[str, ...]]:
    """Return the cells of the table; what cannot be told apart stands below its suspect."""
    if suspicion.judgement.verdict is Conclusion.TOO_FEW:
        return []
    shown = suspicion.judgement.suspects[: None if everything else MOST_ROWS]
    return [row for suspect in shown for row in _rows(suspect, suspicion.lots)]


def _rows(suspect: Suspect, lots: Lots) -> Iterator[tuple[str, ...]]:
    units = suspect.units
    yield (
        cause_words(suspect.cause, lots),
        HOW_COUNTED[suspect.level],
        f"{units.failed_with} of {units.failed}",
        f"{units.clear_with} of {units.clear}",
        p_words(suspect.p),
        p_words(suspect.p_adjusted),
    )
    for cause in suspect.not_separable_from:
        yield f"  or {cause_words(cause, lots)}", "", "", "", "", ""
    for apart in suspect.set_apart:
        yield f"  less likely {cause_words(apart.cause, lots)}", "", "", "", "", ""


def table_note(suspicion: Suspicion, *, everything: bool) -> list[str]:
    """Return what is said below the table."""
    more = len(suspicion.judgement.suspects) - MOST_ROWS
    if everything or more <= 0 or suspicion.judgement.verdict is Conclusion.TOO_FEW:
        return []
    return [f"{plural(more, 'more suspect')} that tell less: --explain lists all."]


def _head(suspicion: Suspicion) -> str:
    judgement = suspicion.judgement
    failed, clear = len(judgement.failed), len(judgement.clear)
    if not failed:
        return (
            "No lot that was asked about failed: none looked worse than wanted, nobody complained."
        )
    head = (
        f"{plural(failed, 'lot')} of {suspicion.compared} failed; "
        f"{plural(clear, 'comparable one')} {'was' if clear == 1 else 'were'} clear."
    )
    if judgement.top.level is Level.RUN:
        return head
    return f"{head} They come from {counted(judgement.top.units, judgement.top.level)}."


def _failed(suspicion: Suspicion) -> list[str]:
    return [
        f"  {failed_lot.code} {failed_lot.name}: {failed_lot.why}"
        for failed_lot in suspicion.failed[:MOST_ROWS]
    ]


def _too_few(judgement: Judgement) -> str:
    failed, clear = len(judgement.failed), len(judgement.clear)
    lead = "Too few to tell."
    if not failed:
        return f"{lead} Only lots that failed can show what they share."
    if failed == 1:
        return f"{lead} One failed lot alone cannot show what failed lots share."
    if not clear:
        return f"{lead} Every lot that could be compared failed, so nothing tells them apart."
    top = judgement.top
    if top.failed < LEAST_UNITS:
        return (
            f"{lead} {FEW[top.failed]} {counted(top.failed, top.level).split(' ', 1)[1]} that "
            "failed cannot decide what is behind it. Look at more lots."
        )
    return (
        f"{lead} With {counted(top.failed, top.level)} that failed of {top.units} no suspect could "
        f"stand out: the cleanest split there could be comes about by chance "
        f"{chance(judgement.least_p)}. Look at more lots."
    )


def _nothing(judgement: Judgement, lots: Lots) -> str:
    first = judgement.suspects[0]
    return (
        "Nothing stands out. The strongest, "
        f"{cause_words(first.cause, lots)}, was {counts_words(first)}; among "
        f"{plural(judgement.tested, 'suspect')} tested chance alone does so much easily. "
        "Read no cause into the table."
    )


def _shown(suspect: Suspect, judgement: Judgement, lots: Lots) -> Iterator[str]:
    yield (
        f"Cause shown: {supplied(suspect.cause, lots)} was {counts_words(suspect)}"
        f"{_within(suspect, judgement)}. Chance alone does so {chance(suspect.p)}; allowing for "
        f"{plural(judgement.tested, 'suspect')} tested and for being asked again after every "
        f"failure, p is {p_words(suspect.p_adjusted)}."
    )


def _within(suspect: Suspect, judgement: Judgement) -> str:
    is_within = suspect.level is Level.RUN and judgement.top.level is not Level.RUN
    return ", lots of one batch compared with each other" if is_within else ""


def _lead(suspect: Suspect, suspicion: Suspicion) -> Iterator[str]:
    judgement, lots = suspicion.judgement, suspicion.lots
    if judgement.verdict is Conclusion.INSEPARABLE:
        yield from _inseparable(suspect, judgement, lots)
    else:
        yield (
            f"A lead, not yet evidence: {supplied(suspect.cause, lots)} was "
            f"{counts_words(suspect)}{_within(suspect, judgement)}, which chance alone does "
            f"{chance(suspect.p)}. {_why_no_more(suspect, suspicion)}"
        )
    if suspect.set_apart:
        yield _apart(suspect, lots)


def _why_no_more(suspect: Suspect, suspicion: Suspicion) -> str:
    judgement = suspicion.judgement
    failed = suspect.units.failed_with
    if _is_site(suspect, suspicion):
        return "That says where the failures sit; why, one batch cannot tell."
    if failed < LEAST_UNITS:
        unit = counted(failed, suspect.level).split(" ", 1)[1]
        return f"{FEW[failed]} {unit} cannot decide this; a trial can."
    if suspect.p_adjusted is not None and suspect.p_adjusted <= judgement.level:
        return "What is compared is not alike enough to name a cause; a trial can tell."
    return (
        f"Allowing for {plural(judgement.tested, 'suspect')} tested and for being asked again "
        f"after every failure, p is {p_words(suspect.p_adjusted)}: a trial can tell."
    )


def _is_site(suspect: Suspect, suspicion: Suspicion) -> bool:
    brief = suspicion.lots.get(suspect.cause.name)
    return suspect.cause.sort is Sort.LOT and bool(brief and brief.lot_type is not LotType.RECEIVED)


def _inseparable(suspect: Suspect, judgement: Judgement, lots: Lots) -> Iterator[str]:
    named = listed(supplied(cause, lots) for cause in suspect.causes)
    yield (
        f"Cannot be told apart: {named}. {cause_words(suspect.cause, lots)} was "
        f"{counts_words(suspect)}{_within(suspect, judgement)}, which chance alone does "
        f"{chance(suspect.p)}; the others explain the failures as well or nearly."
    )
    if any(cause.sort is Sort.TIME for cause in suspect.causes):
        yield (
            "What simply followed something else cannot be told from what changed with the time; "
            "only lots used turn about or a trial can tell."
        )


def _apart(suspect: Suspect, lots: Lots) -> str:
    told = listed(
        f"{cause_words(apart.cause, lots)} ({counted(apart.clear_elsewhere, Level.BATCH)})"
        for apart in suspect.set_apart
    )
    return (
        f"Always with it here: {told}. What stands in brackets is of other products, had the same "
        "and stayed clear, so these are less likely; they are not ruled out."
    )


def _precaution(suspicion: Suspicion) -> Iterator[str]:
    lead = suspicion.judgement.lead
    if lead is None or lead.cause.sort is not Sort.LOT:
        return
    code = lead.cause.name
    if not is_barred(code, suspicion.lots):
        yield f"Holding it meanwhile is a precaution, not a verdict: {hold_step(code, suspicion)}"


def _left_out(suspicion: Suspicion) -> Iterator[str]:
    out = suspicion.sorted
    if out.is_by_kind:
        yield (
            "There are too few clear lots of the same product, so different products are compared; "
            "what only one product has cannot be told from the product itself."
        )
    if out.other_stage:
        codes = " ".join(run.code for run in out.other_stage)
        yield f"Failed too, but of another kind: pottle suspects {codes}"
    if out.otherwise_failed:
        codes = listed(run.code for run in out.otherwise_failed[:MOST_ROWS])
        yield (
            f"Not counted as clear: {plural(len(out.otherwise_failed), 'lot')} that failed "
            f"otherwise ({codes})."
        )
    if out.not_seen:
        yield f"Not counted: {plural(out.not_seen, 'lot')} that nobody looked at or was sent."
    if out.too_far:
        yield f"Not counted: {plural(out.too_far, 'clear lot')} furthest away in time."
