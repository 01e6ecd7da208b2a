"""What a lot contains, replayed from all that was put in, taken out and measured, in order.

Guarantees: a lot drawn from before something was added gave what it held then; losses take their
share of everything; a measured volume wins over a reckoned one and creates no mass; what comes back
is as it went out. Lots are
replayed each once, those they are made of first, without recursion. Refuses: to guess what an
unmeasured cake or rinse carried; that is noted and counts as nothing.
"""

from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.lots.state import GOES_TO_PEOPLE
from ledger.domain.lots.steps import Act, Step
from ledger.science.contents.composition import Contents, add, drawn, measured, scaled
from ledger.science.contents.order import in_order
from ledger.science.contents.received import ReceivedLot, contents_of
from ledger.science.ranges import significant

MADE_UP, RINSED, FILLED = "makeup", "rinse", "bottle"
"""Kinds of entry whose steps are taken in a way of their own."""
TO_PEOPLE = frozenset(str(moved_as) for moved_as in GOES_TO_PEOPLE)
"""Where goods went that may come back."""
SLACK = 0.02
"""Share by which a reading may be off for warmth and reading alone: spirit swells by about 1.1 %
in 10 °C (common practice, no source)."""
NOTHING_UL = 0.5
"""What is less than this, half the smallest volume of the book, is nothing left."""


class Happening(Struct, frozen=True):
    """One step of a lot as its contents saw it."""

    step: Step
    """The step."""
    moved: Contents
    """What went in, came out or was lost."""
    before_ul: float
    """Volume before, in µL."""
    after: Contents
    """What was there afterwards."""
    units: float
    """The same in the measure the lot is counted in."""
    kept: float = 1.0
    """Which share of what was there before is there afterwards."""
    passed: float = 0.0
    """Which share of what was there went out; of what was drawn from another lot came in; of what
    is out with people came back."""
    beyond: float = 0.0
    """Which share of what was there last came back beyond what the book knows to be out."""
    is_vague: bool = False
    """Whether something nobody knows went in or out with it."""


class Replay:
    """Replays lots.

    Args:
        steps: The steps of every made, rinse or packed lot that may be met, by code.
        received: Every received lot that may be met, by code.
    """

    def __init__(
        self, steps: Mapping[str, Sequence[Step]], received: Mapping[str, ReceivedLot]
    ) -> None:
        """Begin with nothing replayed."""
        self._steps = steps
        self._received = received
        self._draws: dict[str, dict[int, Contents]] = {}
        self._happened: dict[str, tuple[Happening, ...]] = {}
        self._circles: list[tuple[str, ...]] = []

    def happenings(self, code: str) -> tuple[Happening, ...]:
        """Return all that happened to a made, rinse or packed lot, in order."""
        self.play([code])
        return self._happened[code]

    def play(self, codes: Sequence[str]) -> None:
        """Replay lots and all they are made of; received lots have nothing to replay."""
        wanted = [code for code in codes if self._is_waiting(code)]
        order = in_order(wanted, self._sources)
        self._circles += order.circles
        for lot in order.lots:
            self._replay(lot)

    @property
    def order(self) -> tuple[str, ...]:
        """The lots replayed so far, each after those it is made of."""
        return tuple(self._happened)

    @property
    def circles(self) -> tuple[tuple[str, ...], ...]:
        """Circles in a damaged book, each lot made of the next; one way of each was left out."""
        return tuple(self._circles)

    def contents(self, code: str) -> Contents:
        """Return what a lot contains: of a received lot a litre, a kilogram or nothing counted.

        A lot that is used up, or was emptied to be filled, is told as it was when something was
        last there.
        """
        if code in self._received:
            return contents_of(self._received[code], 1_000_000)
        there = Contents()
        for item in self.happenings(code):
            if item.after.volume_ul > 0:
                there = item.after
        return there

    def _is_waiting(self, code: str) -> bool:
        return code not in self._happened and code not in self._received

    def _sources(self, lot: str) -> Iterable[str]:
        """Return the lots that one is made of and that are not replayed yet."""
        into = (step for step in self._steps.get(lot, ()) if step.act is Act.INTO)
        sources = (step.source for step in into)
        return [code for code in dict.fromkeys(sources) if code and self._is_waiting(code)]

    def _replay(self, lot: str) -> None:
        vessel, found, draws = _Vessel(lot), [], {}
        for index, step in enumerate(self._steps.get(lot, ())):
            happening = vessel.take(step, self._brought(step))
            if step.act is Act.OUT:
                draws[index] = happening.moved
            found.append(happening)
        self._draws[lot], self._happened[lot] = draws, tuple(found)

    def _brought(self, step: Step) -> "_Brought":
        """Return what a step brings from another lot."""
        if step.act is not Act.INTO or step.source is None:
            return _Brought(Contents())
        if not step.taken:
            return _Brought(Contents(notes=frozenset({_carried(step)})))
        if step.source in self._received:
            whole = contents_of(self._received[step.source], step.taken)
        else:
            whole = self._draws.get(step.source, {}).get(step.draw, Contents())
        return _rinsed(whole, step) if step.kind == RINSED else _Brought(whole, 1.0)


class _Brought(NamedTuple):
    """What a step brings from another lot."""

    contents: Contents
    passed: float = 0.0
    is_vague: bool = False


class _Vessel:
    """A lot while its steps are taken one by one."""

    def __init__(self, code: str) -> None:
        self.code = code
        self.there = self._last = self._out = Contents()
        self._ul_per_unit = 1.0

    def take(self, step: Step, brought: _Brought) -> Happening:
        """Take one step and return what happened."""
        before, volume_ul = self.there.volume_ul, step.amount * self._ul_per_unit
        kept, passed, beyond, is_vague = 1.0, 0.0, 0.0, False
        if step.act is Act.INTO:
            moved, passed, is_vague = brought
            if step.outside:
                moved, passed, beyond = self._came_back(volume_ul)
            self.there = add(self.there, moved)
            if step.kind == FILLED and moved.volume_ul and step.amount:
                self._ul_per_unit = moved.volume_ul / step.amount
        elif step.act is Act.OUT:
            moved, passed, is_vague = self._drawn(step, volume_ul)
            kept = self.there.volume_ul / before if before > 0 else float(volume_ul <= 0)
            if step.outside in TO_PEOPLE:
                # Each stands by itself out there, so their volumes add up.
                out_ul = self._out.volume_ul + moved.volume_ul
                self._out = replace(add(self._out, moved), volume_ul=out_ul)
        elif step.act is Act.LEVEL:
            moved = self._measured(step, volume_ul)
            is_loss = step.kind != MADE_UP and volume_ul < before
            kept = volume_ul / before if is_loss else 1.0
        else:
            moved = Contents()
        self._last = self.there if self.there.volume_ul > 0 else self._last
        units = self.there.volume_ul / self._ul_per_unit
        return Happening(step, moved, before, self.there, units, kept, passed, beyond, is_vague)

    def _came_back(self, volume_ul: float) -> tuple[Contents, float, float]:
        """Return what came back, with its share of what is out and of what was there last.

        It is as it went out; of what the book does not know to be out, as the lot was last.
        """
        out_ul, last_ul = self._out.volume_ul, self._last.volume_ul
        known_ul = min(volume_ul, out_ul)
        passed = known_ul / out_ul if out_ul > 0 else 0.0
        beyond = (volume_ul - known_ul) / last_ul if last_ul > 0 else 0.0
        back = scaled(self._out, passed)
        self._out = scaled(self._out, 1 - passed)
        return add(back, scaled(self._last, beyond)) if beyond else back, passed, beyond

    def _drawn(self, step: Step, volume_ul: float) -> _Brought:
        had = self.there
        moved = drawn(had, volume_ul)
        left = had.volume_ul - moved.volume_ul
        if left >= NOTHING_UL:
            self.there = drawn(had, left)
            return _Brought(moved, moved.volume_ul / had.volume_ul)
        if volume_ul <= 0:
            return _Brought(moved)
        self.there = Contents(notes=had.notes)
        over = volume_ul - had.volume_ul
        if over <= NOTHING_UL:
            return _Brought(had, 1.0)
        if over <= SLACK * had.volume_ul:
            return _Brought(replace(had, volume_ul=volume_ul), 1.0)
        note = (
            f"{self.code}: entry {step.entry} drew {_ml(volume_ul)} where "
            f"{_ml(had.volume_ul)} were reckoned; of the rest nothing is known."
        )
        unknown = Contents(over, unknown_ul={self.code: over}, notes=frozenset({note}))
        return _Brought(add(moved, unknown), 1.0 if had.volume_ul > 0 else 0.0, is_vague=True)

    def _measured(self, step: Step, volume_ul: float) -> Contents:
        before = self.there
        self.there = measured(before, volume_ul, is_loss=step.kind != MADE_UP)
        if step.kind != MADE_UP and volume_ul > before.volume_ul * (1 + SLACK):
            note = (
                f"{self.code}: entry {step.entry} measured {_ml(volume_ul)} where "
                f"{_ml(before.volume_ul)} were reckoned; the measured volume counts."
            )
            self.there = replace(self.there, notes=self.there.notes | {note})
        return _difference(before, self.there)


def _rinsed(put_on: Contents, step: Step) -> _Brought:
    """Return what ran through a cake: the liquid put on, as far as it goes."""
    note = f"The rinse with {step.source} is counted as that liquid alone (entry {step.entry})."
    had = put_on.volume_ul
    ran, over = drawn(put_on, step.amount), step.amount - had
    is_vague = had > 0 and over > SLACK * had
    if is_vague:
        ran = add(ran, Contents(over, unknown_ul={f"the cake of entry {step.entry}": over}))
    passed = min(1.0, step.amount / had) if had > 0 else 0.0
    return _Brought(replace(ran, notes=ran.notes | {note}), passed, is_vague)


def _ml(volume_ul: float) -> str:
    return f"{significant(volume_ul / 1000, 4)} mL"


def _carried(step: Step) -> str:
    return f"What came over from {step.source} unmeasured is not counted (entry {step.entry})."


def _difference(before: Contents, after: Contents) -> Contents:
    """Return what was lost between two states of one liquid, nothing when no mass was."""
    if before.mass_mg <= after.mass_mg or before.volume_ul <= 0:
        return Contents()
    return drawn(before, before.volume_ul * (1 - after.mass_mg / before.mass_mg))
