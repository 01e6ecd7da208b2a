"""What a lot contains, replayed from all that was put in, taken out and measured, in order.

Guarantees: a lot drawn from before something was added gave what it held then; losses take their
share of everything; a measured volume wins over a reckoned one and creates no mass. Lots are
replayed each once, those they are made of first, without recursion. Refuses: to guess what an
unmeasured cake or rinse carried; that is noted and counts as nothing.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from ledger.domain.steps import Act, Step
from ledger.science.composition import Contents, add, drawn, measured, scaled
from ledger.science.received import ReceivedLot, contents_of

MADE_UP, RINSED, FILLED = "makeup", "rinse", "bottle"
"""Kinds of entry whose steps are taken in a way of their own."""


@dataclass(frozen=True, slots=True)
class Happening:
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
        for item in self.happenings(code):
            if item.after.volume_ul > 0:
                there = item.after
        return there

    def _in_order(self, code: str) -> Iterable[str]:
        order: dict[str, None] = {}
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
        there, found, draws = Contents(), [], {}
        last, ul_per_unit = there, 1.0
        for index, step in enumerate(self._steps.get(lot, ())):
            before = there.volume_ul
            if step.act is Act.INTO and step.outside:
                moved = _so_much(last, step.amount * ul_per_unit)
                there = add(there, moved)
            else:
                moved, there = self._taken(step, there, ul_per_unit)
            last = there if there.volume_ul > 0 else last
            if step.kind == FILLED and moved.volume_ul and step.amount:
                ul_per_unit = moved.volume_ul / step.amount
            if step.act is Act.OUT:
                draws[index] = moved
            found.append(Happening(step, moved, before, there))
        self._draws[lot], self._happened[lot] = draws, tuple(found)

    def _taken(self, step: Step, there: Contents, ul_per_unit: float) -> tuple[Contents, Contents]:
        """Return what a step moves, and what is there after it.

        Bottled goods are counted; `ul_per_unit` is what one millionth of a bottle holds.
        """
        if step.act is Act.INTO:
            moved = self._moved_in(step)
            return moved, add(there, moved)
        if step.act is Act.OUT:
            moved = drawn(there, step.amount * ul_per_unit)
            return moved, _less(there, moved)
        if step.act is Act.LEVEL:
            volume_ul = step.amount * ul_per_unit
            after = measured(there, volume_ul, is_loss=step.kind != MADE_UP)
            return _difference(there, after), after
        return Contents(), there

    def _moved_in(self, step: Step) -> Contents:
        if step.source is None:
            return Contents()
        if not step.taken:
            return Contents(notes=frozenset({_carried(step)}))
        if step.source in self._received:
            whole = contents_of(self._received[step.source], step.taken)
        else:
            whole = self._draws[step.source].get(step.draw, Contents())
        if step.kind != RINSED:
            return whole
        note = f"The rinse with {step.source} is counted as that liquid alone."
        ran = drawn(whole, step.amount)
        return replace(ran, notes=ran.notes | {note})


def _so_much(contents: Contents, volume_ul: float) -> Contents:
    """Return what comes back of goods: as they were when something was last there."""
    if contents.volume_ul <= 0:
        return Contents()
    return scaled(contents, volume_ul / contents.volume_ul)


def _carried(step: Step) -> str:
    return f"What came over from {step.source} unmeasured is not counted (entry {step.entry})."


def _less(there: Contents, moved: Contents) -> Contents:
    if there.volume_ul <= 0 or moved.volume_ul >= there.volume_ul:
        return Contents(notes=there.notes)
    return drawn(there, there.volume_ul - moved.volume_ul)


def _difference(before: Contents, after: Contents) -> Contents:
    """Return what was lost between two states of one liquid, nothing when no mass was."""
    if before.mass_mg <= after.mass_mg or before.volume_ul <= 0:
        return Contents()
    return drawn(before, before.volume_ul * (1 - after.mass_mg / before.mass_mg))
