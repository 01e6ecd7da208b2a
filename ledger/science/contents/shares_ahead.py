"""How much of one lot is in every lot made of it, by what was there at each draw.

Guarantees: what left a lot before the one asked for came has none of it; a circle of a damaged book
ends, in doubt. Refuses: to guess what nobody measured.
"""

from collections import defaultdict
from collections.abc import Mapping, Sequence

from ledger.domain.lots.steps import Act
from ledger.science.contents.replay import TO_PEOPLE, Happening
from ledger.science.contents.shares import FILTERED, Carrying, Held, Shares, Stays, told_at


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
        self.draws: dict[str, dict[int, Held]] = {}
        self.to_come: set[str] = set()
        self.found: dict[str, Carrying] = {}
        self.ways: dict[tuple[str, str], int] = defaultdict(int)

    def take(self, code: str, items: Sequence[Happening]) -> None:
        there, last, out, cake = Held(), Held(), Held(), None
        draws: dict[int, Held] = {}
        at, told, is_met = told_at(items), Held(), False
        for index, item in enumerate(items):
            step = item.step
            if step.act is Act.INTO and step.source:
                is_met |= self._come(code, item, there)
            elif step.act is Act.INTO:
                if item.passed:
                    there.join(out, item.passed)
                    out.keep(1 - item.passed)
                if item.beyond:
                    there.join(last, item.beyond)
            elif step.act is Act.OUT:
                if is_met:
                    draws[index] = self._gone(item, there, cake)
                if step.outside in TO_PEOPLE:
                    out.join(there, item.passed, in_doubt=item.is_vague)
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

    def _come(self, code: str, item: Happening, there: Held) -> bool:
        """Put what a step brings to what is there, and return whether it can bring any."""
        step = item.step
        assert step.source is not None
        if item.is_vague:
            there.keep(1.0, is_vague=True)
        if step.source == self.start:
            amount = 0.0 if self.stays is Stays.IN_CAKE else float(step.taken)
            came = Held(amount, can=True)
        elif step.source in self.draws:
            came = self.draws[step.source].get(step.draw, Held())
        elif step.source in self.to_come:  # the circle of a damaged book
            came = Held(can=True, in_doubt=True)
        else:
            return False
        there.join(came, item.passed, in_doubt=not step.taken)
        if came.can:
            self.ways[step.source, code] += step.taken
        return came.can

    def _gone(self, item: Happening, there: Held, cake: Held | None) -> Held:
        """Return what a draw carries: of a cake that nobody measured, what the cake can hold."""
        gone = (cake if cake and not item.step.amount else there).copy()
        gone.keep(1.0, is_vague=item.is_vague)
        gone.amount *= 0.0 if self.stays is Stays.ROUND_IT else item.passed
        return gone
