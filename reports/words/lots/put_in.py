"""What went into a lot beside what its formula asks for.

Guarantees: every addition stands in it, in force or not; the difference is of all that is in force
of one line together, and stands with the last of them.
"""

from collections.abc import Iterator

from ledger.domain.amounts.quantity import show, show_exactly
from ledger.domain.entries import Add, Check, Receipt, Start
from ledger.domain.lots.lot import Lot
from ledger.domain.lots.state import latest
from ledger.domain.masters.formulas import Wanted, together, wanted
from ledger.domain.masters.weighing import asked
from ledger.service.lots.dossier import Dossier
from ledger.service.lots.journal import Said
from reports.kit.format import clock, initials, tidy
from reports.views.lots import InputRow
from reports.words.lots.gate import BEYOND
from reports.words.masters.formula import within


def input_rows(dossier: Dossier) -> tuple[InputRow, ...]:
    """Return what went in, in order, each beside its line of the formula."""
    lots = {node.brief.code: node.brief for node in dossier.trace.nodes}
    told = [
        (said, posting.source, posting.taken)
        for said in dossier.said
        for posting in said.entry.postings
        if posting.target == dossier.state.code and posting.source is not None
    ]
    lines = {source: _line(lots.get(source), dossier) for _, source, _ in told}
    last = _last_of_lines(told, lines)
    return tuple(
        _row(
            said,
            source,
            taken,
            lots.get(source),
            lines[source],
            _total(told, lines, lines[source], lots) if last.get(id(said)) == source else None,
            _checkers(dossier, said),
        )
        for said, source, taken in told
    )


Told = list[tuple[Said, str, int]]
"""What went in: entry, lot, how much."""
Lines = dict[str, Wanted | None]
"""What each lot is asked for as."""


def _line(lot: Lot | None, dossier: Dossier) -> Wanted | None:
    start, formula = latest(dossier.state, Start), dossier.formula
    if lot is None or start is None or formula is None:
        return None
    for line in together(wanted(formula, start.target.amount)):
        # What is made here is called by its formula, whose code is its product's name.
        made = (lot.product or "").lower().replace(" ", "-")
        if (
            line.called.material == lot.material
            if line.called.material
            else line.called.formula == made
        ):
            return line
    return None


def _counts(said: Said) -> bool:
    return isinstance(said.entry.facts, Add) and said.corrected_by is None


def _last_of_lines(told: Told, lines: Lines) -> dict[int, str]:
    last: dict[str, tuple[int, str]] = {}
    for said, source, _ in told:
        line = lines[source]
        if line and _counts(said):
            last[line.called.code] = (id(said), source)
    return dict(last.values())


def _total(told: Told, lines: Lines, line: Wanted | None, lots: dict[str, Lot]) -> int | None:
    """Return how much of a line went in; None where it is asked for in another measure."""
    total = 0
    for said, source, taken in told:
        if line and lines[source] == line and _counts(said):
            if lots[source].measure is not line.measure:
                return None
            total += taken
    return total


def _row(
    said: Said,
    source: str,
    taken: int,
    lot: Lot | None,
    line: Wanted | None,
    total: int | None,
    checkers: str,
) -> InputRow:
    facts = said.entry.facts
    written = facts.amount.written if isinstance(facts, Add | Receipt) else None
    amount = show(taken, lot.measure) if lot and taken else "carried"
    is_asked = line is not None and isinstance(facts, Add)
    return InputRow(
        lot=source,
        what=_what(lot),
        amount=tidy(written) if written else amount,
        when=clock(said.entry.draft.happened, is_repeated=said.is_repeated),
        by=initials(said.entry),
        entry=str(said.entry.seq),
        struck=said.corrected_by is not None,
        target=show_exactly(asked(line), line.measure) if line and is_asked else "",
        limits=within(line) if line and is_asked else "",
        off=_off(line, total) if line and total is not None else "",
        checked=checkers,
    )


def _what(lot: Lot | None) -> str:
    if lot is None:
        return "no longer counted as an input"
    if lot.supplier_lot:
        return f"{lot.name}, {lot.supplier or 'supplier'} lot {lot.supplier_lot}"
    return lot.name


def _off(line: Wanted, total: int) -> str:
    apart = total - asked(line)
    sign = "+" if apart > 0 else "\N{MINUS SIGN}" if apart < 0 else ""
    words = f"{sign}{show(abs(apart), line.measure)}"
    is_beyond = line.least is not None and not line.least <= total <= (line.most or total)
    return f"{words}, {BEYOND}" if is_beyond else words


def _checkers(dossier: Dossier, said: Said) -> str:
    return ", ".join(_who_checked(dossier, said))


def _who_checked(dossier: Dossier, said: Said) -> Iterator[str]:
    for other in dossier.said:
        facts = other.entry.facts
        if isinstance(facts, Check) and facts.about == said.entry.seq and not other.corrected_by:
            yield initials(other.entry)
