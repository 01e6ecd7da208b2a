"""What the book tells of the cause of failed lots, as lines, a table and plain values.

Guarantees: a maker can act on the first lines without reading the table; the table's counts can be
checked by hand. Refuses: to rank suspects when there is too little evidence.
"""

from collections.abc import Iterator

from ledger.domain.lots.lot import BARRED
from ledger.science.statistics.association import fisher
from ledger.science.statistics.exact import Table
from ledger.science.statistics.suspects import Cause, Conclusion, Crossing, Judgement, Sort, Suspect
from ledger.service.causes.suspects import Suspicion
from reports.kit.format import plural
from reports.words.causes.odds import (
    Lots,
    cause_words,
    chance,
    counts_words,
    listed,
    odds_words,
    p_words,
    supplied,
)

MOST_ROWS = 12
"""How many suspects the table shows unless all are asked for."""
ROOM = 80 - 4 * 2 - len("in failed" + "in clear" + "<0.0001" + "adjusted")
"""Width of a suspect in the table, so that it fits 80 columns."""
HEADS = ("suspect", "in failed", "in clear", "p", "adjusted")


def suspicion_lines(suspicion: Suspicion) -> list[str]:
    """Return what a maker should know first."""
    judgement = suspicion.judgement
    lines = [_head(suspicion), *_failed(suspicion), ""]
    match judgement.conclusion:
        case Conclusion.TOO_LITTLE:
            lines.append(_too_little(judgement))
        case Conclusion.NOTHING:
            lines.append(_nothing(judgement, suspicion.lots))
        case _:
            for suspect in judgement.named:
                lines += _named(suspect, judgement, suspicion.lots)
            lines += _trial(judgement.crossing, suspicion.lots)
    return [*lines, *_left_out(suspicion)]


def suspicion_rows(suspicion: Suspicion, *, everything: bool) -> list[tuple[str, ...]]:
    """Return the cells of the table; what always went together stands below its suspect."""
    if suspicion.judgement.conclusion is Conclusion.TOO_LITTLE:
        return []
    shown = suspicion.judgement.suspects[: None if everything else MOST_ROWS]
    return [row for suspect in shown for row in _rows(suspect, suspicion.lots)]


def _rows(suspect: Suspect, lots: Lots) -> Iterator[tuple[str, ...]]:
    table = suspect.table
    yield (
        _clipped(cause_words(suspect.cause, lots)),
        f"{table.failed_with} of {table.failed}",
        f"{table.clear_with} of {table.clear}",
        p_words(suspect.p),
        p_words(suspect.p_adjusted),
    )
    for cause in suspect.not_separable_from:
        yield _clipped(f"  with {cause_words(cause, lots)}"), "", "", "", ""
    for apart in suspect.set_apart:
        yield _clipped(f"  less likely {cause_words(apart.cause, lots)}"), "", "", "", ""


def _clipped(words: str) -> str:
    return words if len(words) <= ROOM else f"{words[: ROOM - 1]}…"


def table_note(suspicion: Suspicion, *, everything: bool) -> list[str]:
    """Return what is said below the table."""
    more = len(suspicion.judgement.suspects) - MOST_ROWS
    if everything or more <= 0 or suspicion.judgement.conclusion is Conclusion.TOO_LITTLE:
        return []
    return [f"{plural(more, 'more suspect')} that tell less: --explain lists all."]


def next_step(suspicion: Suspicion) -> str:
    """Return the command that usually comes next."""
    named = suspicion.judgement.named
    if suspicion.judgement.conclusion is Conclusion.NAMED and named[0].cause.sort is Sort.LOT:
        code = named[0].cause.name
        brief = suspicion.lots.get(code)
        # What is on hold already, or is suspected for its absence, is not to be put on hold.
        if named[0].cause.is_absent or (brief and brief.status in BARRED):
            return f"pottle trace {code} --forward"
        return f'pottle hold {code} --because "suspected in {len(suspicion.failed)} failed lots"'
    if named:
        return (
            'pottle start --product "NAME" --kind KIND --target VOLUME --trial GROUP --factor ...'
        )
    if not suspicion.failed:
        return "pottle stock"
    if len(suspicion.failed) == 1 and suspicion.sorted.otherwise_failed:
        return "pottle suspects"
    return f"pottle trace {suspicion.failed[0].code} --back"


def _head(suspicion: Suspicion) -> str:
    failed, clear = len(suspicion.judgement.failed), len(suspicion.judgement.clear)
    if not failed:
        return (
            "No lot that was asked about failed: none looked worse than wanted, nobody complained."
        )
    return (
        f"{plural(failed, 'lot')} of {suspicion.compared} failed; "
        f"{plural(clear, 'comparable one')} {'was' if clear == 1 else 'were'} clear."
    )


def _failed(suspicion: Suspicion) -> list[str]:
    return [
        f"  {failed_lot.code} {failed_lot.name}: {failed_lot.why}"
        for failed_lot in suspicion.failed[:MOST_ROWS]
    ]


def _too_little(judgement: Judgement) -> str:
    failed, clear = len(judgement.failed), len(judgement.clear)
    lead = "Too little evidence to name a cause."
    if not failed:
        return f"{lead} Only lots that failed can show what they share."
    if failed == 1:
        return f"{lead} One failed lot alone cannot show what failed lots share."
    if not clear:
        return f"{lead} Every lot that could be compared failed, so nothing tells them apart."
    return (
        f"{lead} With {failed} failed and {plural(clear, 'clear lot')} no suspect could stand out: "
        f"the cleanest split there could be comes about by chance {chance(judgement.least_p)}, and "
        f"{plural(len(judgement.suspects), 'was', 'were')} compared. Look at more lots."
    )


def _nothing(judgement: Judgement, lots: Lots) -> str:
    first = judgement.suspects[0]
    return (
        "Nothing stands out. The strongest, "
        f"{cause_words(first.cause, lots)}, was {counts_words(first)}; among "
        f"{plural(judgement.tested, 'suspect')} tested chance alone does so much easily. "
        "Read no cause into the table."
    )


def _named(suspect: Suspect, judgement: Judgement, lots: Lots) -> Iterator[str]:
    table = suspect.table
    named = listed(supplied(cause, lots) for cause in suspect.causes)
    verb = "was" if not suspect.not_separable_from else "were"
    lead = "Suspect" if not suspect.not_separable_from else "Suspects, not separable"
    yield (
        f"{lead}: {named} {verb} {counts_words(suspect)}. By chance alone so uneven a split of "
        f"{table.lots} lots comes about {chance(suspect.p)}; allowing for "
        f"{plural(judgement.tested, 'suspect')} tested, p is {p_words(suspect.p_adjusted)}."
    )
    if suspect.not_separable_from:
        yield (
            "They always went together in these lots, so this evidence cannot tell which of them "
            "it is."
        )
    if suspect.by_batch:
        yield _by_batch(suspect.by_batch)
    if suspect.set_apart:
        yield _apart(suspect, lots)


def _by_batch(table: Table) -> str:
    return (
        "Lots of one essence share its luck. Counted by the batches of essence behind them, it was "
        f"in {table.failed_with} of {table.failed} that failed and in {table.clear_with} of "
        f"{table.clear} that stayed clear, which chance alone does {chance(fisher(table))}."
    )


def _apart(suspect: Suspect, lots: Lots) -> str:
    told = listed(
        f"{cause_words(apart.cause, lots)} ({apart.clear_elsewhere} clear lots)"
        for apart in suspect.set_apart
    )
    return (
        f"Always with it here: {told}. The lots in brackets are of other products, had the same "
        "and stayed clear, so these are less likely; they are not ruled out."
    )


def _trial(crossing: Crossing | None, lots: Lots) -> Iterator[str]:
    if crossing is None or not crossing.arms:
        return
    each = crossing.jars_each
    arms = [f"{each} with {_arm(cause, lots)}" for cause in crossing.arms]
    if crossing.has_control:
        yield (
            f"To be surer, make {crossing.jars} fresh jars: {arms[0]} and {each} without, "
            "all else alike. Failing in all of the first and none of the others would show it "
            f"(p {p_words(crossing.p)})."
        )
        return
    yield (
        f"The cheapest trial that tells them apart takes {crossing.jars} jars: {listed(arms)}, "
        "each without the others and all else alike. If all jars of one kind fail and no other "
        f"does, it is that one (p {p_words(crossing.p)})."
    )


def _arm(cause: Cause, lots: Lots) -> str:
    return cause_words(cause, lots)


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


def explained(suspicion: Suspicion) -> list[str]:
    """Return how it was reckoned, and the counts by product and maker."""
    judgement = suspicion.judgement
    percent = f"{float(100 * (1 - judgement.level)):g} %"
    lines = [
        "How it is reckoned",
        "A run and the lots filled from it count once. Failed is a look worse than the formula "
        "wants (else than clear) or a complaint; clear is a lot that was looked at or sent and did "
        "not fail. Looks count from the end of the making on, the worst of them.",
        "Each lot that went in at any depth and each setting is a suspect; what went together in "
        "every lot is one. A lot counts by its weakest link: the shortest contact, the warmest "
        "filter. Figures are put in two classes at the formula's limit, else at the median of all "
        "lots compared.",
        "p is Fisher's exact test, two-sided, lots of one product compared with each other. It is "
        f"adjusted after Holm for the {plural(judgement.tested, 'suspect')} whose counts could "
        "have stood out at all (Tarone); a dash is one that could not. Named is what stays at or "
        f"below {float(judgement.level):g} and is not explained by a stronger one. That keeps "
        "false alarms below the level where lots fail each by itself; lots of one batch of essence "
        "do not, so what is named is counted by batch too.",
    ]
    if judgement.in_all:
        every = listed(cause_words(cause, suspicion.lots) for cause in judgement.in_all)
        lines.append(f"In every lot compared, so nothing can be said of it: {every}.")
    for suspect in judgement.named:
        lines += _strata(suspect, suspicion.lots, percent)
    return lines


def _strata(suspect: Suspect, lots: Lots, percent: str) -> Iterator[str]:
    yield (
        f"{cause_words(suspect.cause, lots)}: odds of failing with it against without, "
        f"{odds_words(suspect.odds, percent)}."
    )
    for name, table in suspect.strata:
        yield (
            f"  {name}: in {table.failed_with} of {table.failed} failed, "
            f"in {table.clear_with} of {table.clear} clear"
        )
    if suspect.pooled.odds:
        yield (
            f"  Over these together (Mantel-Haenszel): odds "
            f"{odds_words(suspect.pooled.odds, percent)}, p {p_words(suspect.pooled.p)}."
        )
    else:
        yield "  No maker made both kinds of one product, so nothing is known within makers."
