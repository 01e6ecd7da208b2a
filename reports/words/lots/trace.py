"""A trace as lines of text: a tree whose shared branches stand once.

Guarantees: every lot of the trace stands in it; a branch met again is referred to, not repeated;
depth of nesting is shown by the rules at the left, or in figures where these would leave no room.
Refuses: colour and markup.
"""

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.amounts.quantity import show
from ledger.domain.entries.choices import MaterialKind, MoveAs
from ledger.domain.lots.lot import Lot
from ledger.domain.lots.state import GOES_TO_PEOPLE
from ledger.service.lots.shares import Share, Traced
from ledger.service.lots.trace import Carried, Holder, Trace, Way
from reports.kit.format import plural
from reports.words.entries.goods import became
from reports.words.lots.shares import share_words
from reports.words.lots.there import there_words

MOST_RULES = 10
"""How many rules a line has at its left at most."""

Kin = Mapping[str, list[tuple[str, str]]]
"""For each lot its next lots with the amount carried."""
Lots = Mapping[str, Lot]
"""The lots of a trace by their codes."""


class End(Struct, frozen=True):
    """What became of some of a lot outside the book, or that it is still here."""

    amount: str
    """How much."""
    became: str
    """What became of it, with the word that goes before a name."""
    party: str = ""
    """Who."""
    on: str = ""
    """Local day, ISO."""
    document: str = ""
    """Delivery note, invoice or stall sheet."""
    is_held: bool = True
    """Whether somebody has it, as far as the movement tells."""

    @property
    def words(self) -> str:
        """It in one line."""
        told = " ".join(part for part in (self.amount, self.became, self.party) if part)
        return ", ".join(part for part in (told, self.on, self.document) if part)


class Branch(Struct, frozen=True):
    """One line of the tree before it is written."""

    words: str
    """The amount carried, or what became of goods."""
    code: str | None
    """Code of the lot at its end; None when goods left the house."""
    lasts: tuple[bool, ...]
    """For it and each line it hangs from, the outermost first, whether it is the last there."""
    again: bool = False
    """Whether the lot stands further up already."""
    end: End | None = None
    """What became of goods."""


def traced_lines(found: Traced, *, back: bool, forward: bool) -> Iterator[str]:
    """Yield the lines of a trace below that of the lot traced, as they are reached."""
    lots = {node.brief.code: node.brief for node in found.trace.nodes}
    for way in [Way.BACK] * back + [Way.FORWARD] * forward:
        yield ""
        yield _title(found, way)
        shares = found.behind if way is Way.BACK else found.ahead
        for branch in branches(found, way):
            if branch.lasts:
                yield f"{rules(branch.lasts)}{_text(branch, lots, shares)}"
    if found.hidden:
        yield f"{plural(found.hidden, 'lot')} further away left out; without --depth they show."
    yield from circle_lines(found.trace.circles)


def only_lines(whole: Trace, shown: Trace, kind: MaterialKind) -> list[str]:
    """Return what a trace back to one kind of material leaves out, or that there is none."""
    if not any(node.brief.sort == kind for node in whole.nodes):
        return [f"{whole.lot.code} is made of no {kind} that the book knows of."]
    others = len(whole.nodes) - len(shown.nodes)
    if not others:
        return []
    return [f"{plural(others, 'lot')} not on the way to {kind} left out; without --only they show."]


def circle_lines(circles: Sequence[tuple[str, ...]]) -> Iterator[str]:
    """Yield a sentence for each circle in a damaged book."""
    for circle in circles:
        ring = " into ".join((*circle, circle[0]))
        yield (
            f"The book is damaged: {ring} is a circle. It was not followed, and amounts on it are "
            "not known. pottle verify says more."
        )


def branches(found: Traced, way: Way) -> Iterator[Branch]:
    """Yield the lines of one way, the lot traced first; each lot hangs its own only once."""
    edges = found.trace.edges
    if way is Way.BACK:
        return _tree(found.trace.lot.code, _sources(edges), {}, found)
    return _tree(found.trace.lot.code, _targets(edges), _ends(found), found)


def _title(found: Traced, way: Way) -> str:
    head, code = _head(found.trace, way), found.trace.lot.code
    if not (found.behind if way is Way.BACK else found.ahead):
        return head
    of = f"how much of it is in {code}" if way is Way.BACK else f"how much of {code} is in it"
    return f"{head} (amount, lot, {of})"


def _head(trace: Trace, way: Way) -> str:
    lots = sum(node.way is way for node in trace.nodes)
    if way is Way.BACK:
        return f"Made of {plural(lots, 'lot')}" if lots else "Made of no other lot"
    if lots:
        return f"Went into {plural(lots, 'lot')}"
    return "Went out" if trace.holders else "Went nowhere yet"


def supplied_by(brief: Lot) -> str:
    """Return who supplied a lot and their own lot, as far as they are known; else nothing."""
    their_lot = f"lot {brief.supplier_lot}" if brief.supplier_lot else ""
    return " ".join(part for part in (brief.supplier, their_lot) if part)


def describe(brief: Lot, share: str = "") -> str:
    """Return a lot in one line, with how much of one is in the other after its code."""
    return "  ".join(part for part in (brief.code, share, what_it_is(brief)) if part)


def what_it_is(brief: Lot) -> str:
    """Return a lot in one line without its code."""
    supplier = supplied_by(brief)
    parts = (
        brief.name,
        f"from {supplier}" if supplier else "",
        opened_on(brief),
        str(brief.status),
        f"last look {brief.grade}" if brief.grade else "",
    )
    return ", ".join(part for part in parts if part)


def opened_on(brief: Lot) -> str:
    """Return the day a lot was opened on the clock it was written by; empty when struck."""
    return f"{brief.opened_at.local():%Y-%m-%d}" if brief.opened_at else ""


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


def _ends(found: Traced) -> dict[str, list[End]]:
    """Return where each lot and all forward of it went outside the book, and what is still here."""
    ends: dict[str, list[End]] = {}
    for item in found.trace.holders:
        ends.setdefault(item.lot, []).append(_end(item, item.party))
    for node in found.trace.nodes:
        code, measure = node.brief.code, node.brief.measure
        if node.way is Way.BACK:
            continue
        if code in found.wasted:
            ends.setdefault(code, []).append(
                End(show(found.wasted[code], measure), "to waste", is_held=False)
            )
        if node.brief.on_hand > 0:
            ends.setdefault(code, []).append(End(there_words(node.brief), "still here"))
    return ends


def holder_words(item: Holder, *, with_party: bool = True) -> str:
    """Return what became of goods in one line."""
    return _end(item, item.party if with_party else None).words


def _end(item: Holder, party: str | None) -> End:
    return End(
        amount=show(abs(item.amount), item.measure),
        became=became(item.moved_as, is_named=bool(party)),
        party=party or "",
        on=item.on,
        document=item.document or "",
        is_held=item.moved_as in GOES_TO_PEOPLE or item.moved_as is MoveAs.RETAINED,
    )


def _tree(code: str, kin: Kin, ends: Mapping[str, list[End]], found: Traced) -> Iterator[Branch]:
    known = {node.brief.code for node in found.trace.nodes}
    told: set[str] = set()
    waiting = [Branch("", code, ())]
    while waiting:
        branch = waiting.pop()
        again = branch.code in told
        yield replace(branch, again=again)
        if branch.code and not again:
            told.add(branch.code)
            waiting += reversed(_hanging(branch.code, branch.lasts, kin, ends, known))


def _hanging(
    code: str,
    lasts: tuple[bool, ...],
    kin: Kin,
    ends: Mapping[str, list[End]],
    known: set[str],
) -> list[Branch]:
    below = [Branch(end.words, None, lasts, end=end) for end in ends.get(code, [])]
    below += [Branch(words, lot, lasts) for lot, words in kin.get(code, []) if lot in known]
    return [
        replace(branch, lasts=(*lasts, place == len(below)))
        for place, branch in enumerate(below, start=1)
    ]


def _text(branch: Branch, lots: Lots, shares: Mapping[str, Share]) -> str:
    if branch.code is None:
        return branch.words
    if branch.again:
        return f"{branch.words}  {branch.code}, see above"
    share = shares.get(branch.code)
    told = describe(lots[branch.code], share_words(share) if share else "")
    return f"{branch.words}  {told}"


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
