"""A trace as lines of text: a tree whose shared branches stand once.

Guarantees: every lot of the trace stands in it; a branch met again is referred to, not repeated;
depth of nesting is shown by the rules at the left, or in figures where these would leave no room.
Refuses: colour and markup.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from ledger.domain.quantity import show
from ledger.service.tracing import Carried, Holder, Trace, Way
from ledger.store.briefs import Brief
from reports.build.words_of_goods import gone
from reports.format import plural

MOST_RULES = 10
"""How many rules a line has at its left at most."""

Kin = Mapping[str, list[tuple[str, str]]]
"""For each lot its next lots with the amount carried."""
Briefs = Mapping[str, Brief]
"""The lots of a trace by their codes."""


@dataclass(frozen=True, slots=True)
class Branch:
    """One line of the tree before it is written."""

    words: str
    """The amount carried, or what became of goods."""
    code: str | None
    """Code of the lot at its end; None when goods left the house."""
    lasts: tuple[bool, ...]
    """For it and each line it hangs from, the outermost first, whether it is the last there."""


def trace_lines(trace: Trace, *, back: bool, forward: bool) -> list[str]:
    """Return the lines of a trace."""
    briefs = {node.brief.code: node.brief for node in trace.nodes}
    lines = [describe(trace.lot)]
    if back:
        lines += ["", _head(trace, Way.BACK)]
        lines += _tree(trace.lot.code, _sources(trace.edges), {}, briefs)
    if forward:
        lines += ["", _head(trace, Way.FORWARD)]
        lines += _tree(trace.lot.code, _targets(trace.edges), _by_lot(trace.holders), briefs)
    return lines


def _head(trace: Trace, way: Way) -> str:
    lots = sum(node.way is way for node in trace.nodes)
    if way is Way.BACK:
        return f"Made of {plural(lots, 'lot')}" if lots else "Made of no other lot"
    if lots:
        return f"Went into {plural(lots, 'lot')}"
    return "Went out" if trace.holders else "Went nowhere yet"


def describe(brief: Brief) -> str:
    """Return a lot in one line."""
    supplier = " ".join(
        part
        for part in (brief.supplier, brief.supplier_lot and f"lot {brief.supplier_lot}")
        if part
    )
    parts = (
        brief.name,
        f"from {supplier}" if supplier else "",
        opened_on(brief),
        str(brief.status),
        f"last look {brief.grade}" if brief.grade else "",
    )
    return f"{brief.code}  {', '.join(part for part in parts if part)}"


def opened_on(brief: Brief) -> str:
    """Return the day a lot was opened on the clock it was written by; empty when struck."""
    if not brief.opened_at:
        return ""
    moment = datetime.fromisoformat(brief.opened_at) + timedelta(minutes=brief.offset_min)
    return f"{moment:%Y-%m-%d}"


def _sources(edges: Sequence[Carried]) -> Kin:
    kin: dict[str, list[tuple[str, str]]] = {}
    for edge in edges:
        kin.setdefault(edge.target, []).append((edge.source, edge.words))
    return kin


def _targets(edges: Sequence[Carried]) -> Kin:
    kin: dict[str, list[tuple[str, str]]] = {}
    for edge in edges:
        kin.setdefault(edge.source, []).append((edge.target, edge.words))
    return kin


def _by_lot(holders: Sequence[Holder]) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for item in holders:
        amount = show(abs(item.amount), item.measure)
        document = f", {item.document}" if item.document else ""
        found.setdefault(item.lot, []).append(
            f"{amount} {gone(item.moved_as, item.party)}, {item.on}{document}"
        )
    return found


def _tree(code: str, kin: Kin, holders: Mapping[str, list[str]], briefs: Briefs) -> Iterator[str]:
    told: set[str] = set()
    waiting = [Branch("", code, ())]
    while waiting:
        branch = waiting.pop()
        again = branch.code in told
        if branch.lasts:
            yield f"{rules(branch.lasts)}{_text(branch, briefs, again=again)}"
        if branch.code and not again:
            told.add(branch.code)
            waiting += reversed(_hanging(branch.code, branch.lasts, kin, holders, briefs))


def _hanging(
    code: str,
    lasts: tuple[bool, ...],
    kin: Kin,
    holders: Mapping[str, list[str]],
    briefs: Briefs,
) -> list[Branch]:
    ends: list[tuple[str, str | None]] = [(words, None) for words in holders.get(code, [])]
    ends += [(words, lot) for lot, words in kin.get(code, []) if lot in briefs]
    return [
        Branch(words, lot, (*lasts, place == len(ends)))
        for place, (words, lot) in enumerate(ends, start=1)
    ]


def _text(branch: Branch, briefs: Briefs, *, again: bool) -> str:
    if branch.code is None:
        return branch.words
    brief = briefs[branch.code]
    return f"{branch.words}  {f'{brief.code}, see above' if again else describe(brief)}"


def rules(lasts: Sequence[bool]) -> str:
    """Return the rules at the left of a line.

    Args:
        lasts: For each depth, the outermost first, whether the line is the last there.

    >>> rules([False, True]), rules([True] * 12)[-8:]
    ('│  └─ ', '└─ (12) ')
    """
    drawn = lasts[:MOST_RULES]
    before = "".join("   " if is_last else "│  " for is_last in drawn[:-1])
    depth = f"({len(lasts)}) " if len(lasts) > MOST_RULES else ""
    return f"{before}{'└─' if lasts[-1] else '├─'} {depth}"
