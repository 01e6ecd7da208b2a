"""How much of a lot is in others, by what happened to each.

Guarantees: what left a lot before something came was never in it; what is drawn carries its share
of all that was there then; a way that nobody measured is told apart from one that carries nothing;
forward and back agree. Refuses: to guess what nobody measured.

Mixing is taken to be even and losses to be like the rest (common practice, no source): what a
filter kept is taken to have held as much of each input as what came through. A clarifier stays in
the cake, and packing round what is packed.
"""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from enum import Enum, auto

from msgspec import Struct, field

from ledger.domain.entries.choices import MaterialKind
from ledger.domain.lots.state import STAYS_IN_THE_CAKE
from ledger.domain.lots.steps import Act, Step
from ledger.science.contents.received import NOT_RETAINED, ReceivedLot
from ledger.science.contents.replay import Happening

FILTERED, COUNTED = "filter", "count"
"""Kinds of entry that leave a cake, and that only tell how much is there."""


class Stays(Enum):
    """Where a lot stays that goes into others."""

    IN_LIQUID = auto()
    """In the liquid, wherever that goes."""
    IN_CAKE = auto()
    """In the filter: it touches what it is put into and is not in it."""
    ROUND_IT = auto()
    """Round what it was packed with, and not in what that is poured into."""


def stays(lot: ReceivedLot | None) -> Stays:
    """Return where a lot stays; None is one that was made here."""
    return Stays.IN_LIQUID if lot is None else stays_as(lot.sort)


def stays_as(sort: MaterialKind | None) -> Stays:
    """Return where a lot of a kind of material stays; None is no material."""
    if sort in STAYS_IN_THE_CAKE:
        return Stays.IN_CAKE
    return Stays.ROUND_IT if sort in NOT_RETAINED else Stays.IN_LIQUID


class Carrying(Struct, frozen=True):
    """How much of one lot is in another."""

    amount: float
    """How much, in the smallest unit of the lot that is carried."""
    whole: float
    """How much there was of the other lot then, in the smallest unit of its measure."""
    is_all: bool
    """Whether every way was measured; else there is at least this much."""


class Shares(Struct, frozen=True):
    """How much of a lot is in others, or of others in it, and the ways it went."""

    lots: Mapping[str, Carrying]
    """For each lot that holds or held some, how much."""
    ways: Mapping[tuple[str, str], int]
    """What went from lot to lot in draws that can have carried some, in the measure of the lot
    left, as it first or last went; 0: carried, not measured."""


class _Held(Struct):
    """What is known of something in a lot while its steps are taken."""

    amount: float = 0.0
    can: bool = False
    """Whether any can be there."""
    in_doubt: bool = False
    """Whether there may be more than is counted."""

    def keep(self, share: float, *, is_vague: bool = False) -> None:
        self.amount *= share
        if share <= 0 and not is_vague:
            self.can = self.in_doubt = False
        self.in_doubt |= self.can and is_vague

    def join(self, other: "_Held", share: float, *, in_doubt: bool = False) -> None:
        self.amount += other.amount * share
        self.can |= other.can
        self.in_doubt |= other.in_doubt or (other.can and in_doubt)

    def copy(self) -> "_Held":
        return _Held(self.amount, self.can, self.in_doubt)


def told_at(happened: Sequence[Happening]) -> int:
    """Return which step left a lot as its figures tell it; the last when none left a volume.

    That is the last that changed what it is made of: draws, returns and counts leave that alone.
    """
    for index in range(len(happened) - 1, -1, -1):
        item = happened[index]
        is_change = (item.step.act is Act.INTO and not item.step.outside) or (
            item.step.act is Act.LEVEL and (item.step.kind != COUNTED or item.kept >= 1)
        )
        if is_change and item.after.volume_ul > 0:
            return index
    return len(happened) - 1


def ahead(
    start: str, happened: Mapping[str, Sequence[Happening]], stays_where: Stays = Stays.IN_LIQUID
) -> Shares:
    """Return how much of a lot is in each lot that anything of it came to.

    Args:
        start: The lot.
        happened: What happened to each lot that may hold some, each after those it is made of.
        stays_where: Where the lot stays.
    """
    walk = _Ahead(start, stays_where)
    walk.to_come.update(happened)
    for code, items in happened.items():
        walk.to_come.remove(code)
        if code != start:
            walk.take(code, items)
    return Shares(walk.found, dict(walk.ways))


class _Ahead:
    """A lot followed through those it went into."""

    def __init__(self, start: str, stays_where: Stays) -> None:
        self.start, self.stays = start, stays_where
        self.draws: dict[str, dict[int, _Held]] = {}
        self.to_come: set[str] = set()
        self.found: dict[str, Carrying] = {}
        self.ways: dict[tuple[str, str], int] = defaultdict(int)

    def take(self, code: str, items: Sequence[Happening]) -> None:
        there, last, cake = _Held(), _Held(), None
        draws: dict[int, _Held] = {}
        at, told, is_met = told_at(items), _Held(), False
        for index, item in enumerate(items):
            step = item.step
            if step.act is Act.INTO and step.source:
                is_met |= self._come(code, item, there)
            elif step.act is Act.INTO:
                there.join(last, item.passed)
            elif step.act is Act.OUT:
                if is_met:
                    draws[index] = self._gone(item, there, cake)
                there.keep(item.kept, is_vague=item.is_vague)
            elif step.act is Act.LEVEL:
                cake = there.copy() if step.kind == FILTERED else cake
                there.keep(item.kept)
            if item.after.volume_ul > 0:
                last = there.copy()
            if index == at:
                told = there.copy()
        if is_met:
            self.draws[code] = draws
            whole = items[at].units if at >= 0 else 0.0
            self.found[code] = Carrying(told.amount, whole, not told.in_doubt)

    def _come(self, code: str, item: Happening, there: _Held) -> bool:
        """Put what a step brings to what is there, and return whether it can bring any."""
        step = item.step
        assert step.source is not None
        if item.is_vague:
            there.keep(1.0, is_vague=True)
        if step.source == self.start:
            amount = 0.0 if self.stays is Stays.IN_CAKE else float(step.taken)
            came = _Held(amount, can=True)
        elif step.source in self.draws:
            came = self.draws[step.source].get(step.draw, _Held())
        elif step.source in self.to_come:  # the circle of a damaged book
            came = _Held(can=True, in_doubt=True)
        else:
            return False
        there.join(came, item.passed, in_doubt=not step.taken)
        if came.can:
            self.ways[step.source, code] += step.taken
        return came.can

    def _gone(self, item: Happening, there: _Held, cake: _Held | None) -> _Held:
        """Return what a draw carries: of a cake that nobody measured, what the cake can hold."""
        gone = (cake if cake and not item.step.amount else there).copy()
        gone.keep(1.0, is_vague=item.is_vague)
        gone.amount *= 0.0 if self.stays is Stays.ROUND_IT else item.passed
        return gone


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

    held: _Held = field(default_factory=_Held)
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
        self.found: dict[str, _Held] = {}
        self.ways: dict[tuple[str, str], int] = defaultdict(int)

    def take(self, code: str, items: Sequence[Happening]) -> None:
        there, last = _Wanted(), _Wanted()
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
                there.join(_Wanted(_Held(1.0, can=True)))
            there.ever |= code == self.end
            if step.act is Act.INTO and step.source:
                self._came(code, item, there)
                there.keep(1.0, is_vague=item.is_vague)
            elif step.act is Act.INTO:
                last.join(there, item.passed)
            elif step.act is Act.OUT:
                there.keep(item.kept, is_vague=item.is_vague)
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
        found = self.found.setdefault(source, _Held())
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
