"""What a lot contains, replayed from all that was put in, taken out and measured, in order.

Guarantees: a lot drawn from before something was added gave what it held then; losses take their
share of everything; a measured volume wins over a reckoned one and creates no mass. Lots are
replayed each once, those they are made of first, without recursion. Refuses: to guess what an
unmeasured cake or rinse carried; that is noted and counts as nothing.
"""

from collections.abc import Iterable, Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.lots.steps import Act, Step
from ledger.science.contents.composition import Contents, add, drawn, measured, scaled
from ledger.science.contents.received import ReceivedLot, contents_of
from ledger.science.ranges import significant

MADE_UP, RINSED, FILLED = "makeup", "rinse", "bottle"
"""Kinds of entry whose steps are taken in a way of their own."""
SLACK = 0.02
"""Share by which a reading may be off for warmth and reading alone: spirit swells by about 1.1 %
in 10 °C (common practice, no source)."""


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

    def happenings(self, code: str) -> tuple[Happening, ...]:
        """Return all that happened to a made, rinse or packed lot, in order."""
        for lot in self._in_order(code):
            self._replay(lot)
        return self._happened[code]

    def contents(self, code: str) -> Contents:
        """Return what a lot contains: of a received lot a litre, a kilogram or nothing counted.

        A lot that is used up, or was emptied to be filled, is told as it was when something was
        last there.
        """
        if code in self._received:
            return contents_of(self._received[code], 1_000_000)
        there = Contents()
        for happening in self.happenings(code):
            if happening.after.volume_ul > 0:
                there = happening.after
        return there

    def _in_order(self, code: str) -> Iterable[str]:
        order: dict[str, None] = {}
        # A chain of rework may be longer than Python lets calls nest.
        stack = [(code, False)]
        while stack:
            lot, is_ready = stack.pop()
            if lot in order or lot in self._happened or lot in self._received:
                continue
            if is_ready:
                order[lot] = None
                continue
            stack.append((lot, True))
            stack += [(step.source, False) for step in self._steps.get(lot, ()) if step.source]
        return order

    def _replay(self, lot: str) -> None:
        vessel, happened, draws = _Vessel(lot), [], {}
        for index, step in enumerate(self._steps.get(lot, ())):
            before = vessel.there.volume_ul
            moved = vessel.take(step, self._moved_in(step))
            if step.act is Act.OUT:
                draws[index] = moved
            happened.append(Happening(step, moved, before, vessel.there))
        self._draws[lot], self._happened[lot] = draws, tuple(happened)

    def _moved_in(self, step: Step) -> Contents:
        """Return what a step brings from another lot."""
        if step.act is not Act.INTO or step.source is None:
            return Contents()
        if not step.taken:
            return Contents(notes=frozenset({_carried(step)}))
        if step.source in self._received:
            whole = contents_of(self._received[step.source], step.taken)
        else:
            whole = self._draws[step.source].get(step.draw, Contents())
        return _rinsed(whole, step) if step.kind == RINSED else whole


class _Vessel:
    """A lot while its steps are taken one by one."""

    def __init__(self, code: str) -> None:
        self.code = code
        self.there = self._last = Contents()
        self._ul_per_unit = 1.0

    def take(self, step: Step, brought: Contents) -> Contents:
        """Take one step and return what it moved."""
        volume_ul = step.amount * self._ul_per_unit
        if step.act is Act.INTO:
            moved = _so_much(self._last, volume_ul) if step.outside else brought
            self.there = add(self.there, moved)
            # A packed lot counts bottles; its filling tells how much one holds.
            if step.kind == FILLED and moved.volume_ul and step.amount:
                self._ul_per_unit = moved.volume_ul / step.amount
        elif step.act is Act.OUT:
            moved = self._drawn(step, volume_ul)
        elif step.act is Act.LEVEL:
            moved = self._measured(step, volume_ul)
        else:
            moved = Contents()
        self._last = self.there if self.there.volume_ul > 0 else self._last
        return moved

    def _drawn(self, step: Step, volume_ul: float) -> Contents:
        had = self.there.volume_ul
        moved = drawn(self.there, volume_ul)
        left = had - moved.volume_ul
        self.there = drawn(self.there, left) if left > 0 else Contents(notes=self.there.notes)
        over = volume_ul - moved.volume_ul
        if over <= 0:
            return moved
        # Within what warmth and reading may do, it is all that was there, read as a little more.
        if had > 0 and over <= SLACK * had:
            return replace(moved, volume_ul=volume_ul)
        note = (
            f"{self.code}: entry {step.entry} drew {_ml(volume_ul)} where "
            f"{_ml(had)} were reckoned; of the rest nothing is known."
        )
        unknown = Contents(over, unknown_ul={self.code: over}, notes=frozenset({note}))
        return add(moved, unknown)

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


def _rinsed(put_on: Contents, step: Step) -> Contents:
    """Return what ran through a cake: the liquid put on, as far as it goes."""
    note = f"The rinse with {step.source} is counted as that liquid alone (entry {step.entry})."
    ran = drawn(put_on, step.amount)
    over = step.amount - ran.volume_ul
    if put_on.volume_ul > 0 and over > SLACK * put_on.volume_ul:
        held = Contents(over, unknown_ul={f"the cake of entry {step.entry}": over})
        ran = add(ran, held)
    return replace(ran, notes=ran.notes | {note})


def _so_much(contents: Contents, volume_ul: float) -> Contents:
    """Return what comes back of goods: as they were when something was last there."""
    if contents.volume_ul <= 0:
        return Contents()
    return scaled(contents, volume_ul / contents.volume_ul)


def _ml(volume_ul: float) -> str:
    return f"{significant(volume_ul / 1000, 4)} mL"


def _carried(step: Step) -> str:
    return f"What came over from {step.source} unmeasured is not counted (entry {step.entry})."


def _difference(before: Contents, after: Contents) -> Contents:
    """Return what was lost between two states of one liquid, nothing when no mass was."""
    if before.mass_mg <= after.mass_mg or before.volume_ul <= 0:
        return Contents()
    return drawn(before, before.volume_ul * (1 - after.mass_mg / before.mass_mg))
