"""How much of every lot that one is made of is in it, by what was there at each draw.

Guarantees: what came to a lot after it was drawn from is not in what was drawn; the same shares as
ahead. Refuses: to guess what nobody measured.
"""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct, field

from ledger.domain.lots.steps import Act, Step
from ledger.science.contents.received import ReceivedLot
from ledger.science.contents.replay import TO_PEOPLE, Happening
from ledger.science.contents.shares import FILTERED, Carrying, Held, Shares, Stays, stays, told_at


def behind(
    end: str,
    happened: Mapping[str, Sequence[Happening]],
    received: Mapping[str, ReceivedLot],
) -> Shares:
    """Return how much of each lot is in one, for all of which anything came to it.

    Args:
        end: The lot.
        happened: What happened to it and to each lot it may be made of, each after those it is
            made of.
        received: The received lots among these.
    """
    walk = _Behind(end, received)
    for code in reversed(list(happened)):
        if code == end or code in walk.wanted:
            walk.take(code, happened[code])
        walk.done.add(code)
    items = happened.get(end, ())
    whole = items[told_at(items)].units if items else 0.0
    return Shares(
        {
            code: Carrying(held.amount, whole, not held.in_doubt)
            for code, held in walk.found.items()
        },
        dict(reversed(walk.ways.items())),
    )


class _Wanted(Struct):
    """What part of what is in a lot ends up in the lot asked about."""

    held: Held = field(default_factory=Held)
    """The share that is in it when it is told, with whether any can be."""
    ever: bool = False
    """Whether any can have been in it at any time."""

    def join(self, other: "_Wanted", share: float = 1.0, *, in_doubt: bool = False) -> None:
        self.held.join(other.held, share, in_doubt=in_doubt)
        self.ever |= other.ever

    def keep(self, share: float, *, is_vague: bool = False) -> None:
        self.held.keep(share, is_vague=is_vague)
        self.ever &= share > 0 or is_vague


class _Behind:
    """A lot followed back through those it is made of, its steps from the last to the first."""

    def __init__(self, end: str, received: Mapping[str, ReceivedLot]) -> None:
        self.end, self.received = end, received
        self.wanted: dict[str, dict[int, _Wanted]] = {}
        self.done: set[str] = set()
        self.found: dict[str, Held] = {}
        self.ways: dict[tuple[str, str], int] = defaultdict(int)

    def take(self, code: str, items: Sequence[Happening]) -> None:
        there, last, out = _Wanted(), _Wanted(), _Wanted()
        wanted = self.wanted.get(code, {})
        cakes = _cakes(items)
        of_cakes: dict[int, _Wanted] = defaultdict(_Wanted)
        at = told_at(items) if code == self.end else -1
        for index in range(len(items) - 1, -1, -1):
            item = items[index]
            step = item.step
            if item.after.volume_ul > 0:
                there.join(last)
                last = _Wanted()
            if index == at:
                there.join(_Wanted(Held(1.0, can=True)))
            there.ever |= code == self.end
            if step.act is Act.INTO and step.source:
                self._came(code, item, there)
                there.keep(1.0, is_vague=item.is_vague)
            elif step.act is Act.INTO:
                if item.passed:
                    out.keep(1 - item.passed)
                    out.join(there, item.passed)
                if item.beyond:
                    last.join(there, item.beyond)
            elif step.act is Act.OUT:
                there.keep(item.kept, is_vague=item.is_vague)
                if step.outside in TO_PEOPLE:
                    there.join(out, item.passed, in_doubt=item.is_vague)
                if index in wanted:
                    to = of_cakes[cakes[index]] if index in cakes else there
                    to.join(wanted[index], item.passed, in_doubt=item.is_vague)
            elif step.act is Act.LEVEL:
                there.keep(item.kept)
                there.join(of_cakes.pop(index, _Wanted()))

    def _came(self, code: str, item: Happening, there: _Wanted) -> None:
        step = item.step
        source = step.source
        if source is None or not there.ever:
            return
        self.ways[source, code] += step.taken
        brought = _Wanted(ever=True)
        is_circle = source in self.done  # of a damaged book
        brought.join(there, item.passed, in_doubt=not step.taken or is_circle)
        found = self.found.setdefault(source, Held())
        found.join(brought.held, self._counted(step, code))
        if source not in self.received:
            self.wanted.setdefault(source, {})[step.draw] = brought

    def _counted(self, step: Step, code: str) -> int:
        """Return how much of what was taken counts as being in what it was put into."""
        where = stays(self.received.get(step.source or ""))
        is_round = where is Stays.ROUND_IT and code != self.end
        return 0 if where is Stays.IN_CAKE or is_round else step.taken


def _cakes(items: Sequence[Happening]) -> Mapping[int, int]:
    """Return for each draw that nobody measured the pass whose cake it can have come from."""
    return dict(_from_cakes(items))


def _from_cakes(items: Sequence[Happening]) -> Iterator[tuple[int, int]]:
    cake = None
    for index, item in enumerate(items):
        if item.step.act is Act.LEVEL and item.step.kind == FILTERED:
            cake = index
        elif item.step.act is Act.OUT and not item.step.amount and cake is not None:
            yield index, cake
