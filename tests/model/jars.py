"""Jars side by side: what is in each, by the rules of the trade alone.

Everything that happened is taken once, in order of when it happened, over all jars together, while
every jar carries a note of all that it holds: the pure substances, each lot that is in it, and the
money. Nothing of the ledger's own sums is used but its two checked density functions (OIML R 22 and
ICUMSA SPS-4, each with its published table in tests/science/liquids). Prices are Fractions.

The rules: masses add, volumes never do; what is drawn takes its share of everything; a measured
level below what is there lost its share of everything but the money, a made-up level changes the
volume alone; a cake that nobody measured can bring what its lot held when it was filtered and
counts as nothing; what comes back is as it went out, at the price it went out at; a rinse to
waste is paid by the lot it rinsed; a clarifier stays in the cake.
"""

from collections.abc import Iterable
from copy import deepcopy
from dataclasses import dataclass, field
from fractions import Fraction

from ledger.science.liquids import oiml_r22, sps4

ETHANOL_G_PER_ML = 0.78924
"""Of pure ethanol at 20 °C (OIML R 22, general table)."""
SURE = 0.75
"""Mass fraction of sugar up to which SPS-4 is asked; sugar beyond it fills what it fills there."""


@dataclass
class Noted:
    """What of another lot is in a jar."""

    amount: float = 0.0
    can: bool = False
    in_doubt: bool = False


@dataclass
class Liquid:
    """What is in a jar, or on its way."""

    ul: float = 0.0
    ethanol: float = 0.0
    water: float = 0.0
    sugar: float = 0.0
    oil: float = 0.0
    oil_ul: float = 0.0
    lots: dict[str, Noted] = field(default_factory=dict)

    def reckoned(self) -> float:
        """Return the volume its substances fill at 20 °C, in µL."""
        spirit = self.ethanol + self.water
        ul = self.oil_ul
        if spirit:
            ul += 1000 * spirit / oiml_r22.density(self.ethanol / spirit, 20)
        if self.sugar:
            water = max(self.water, self.sugar * (1 - SURE) / SURE)
            syrup = self.sugar + water
            ul += 1000 * syrup / sps4.density(self.sugar / syrup, 20)
            ul -= 1000 * water / sps4.density(0, 20)
        return ul

    def scale(self, share: float, *, is_draw: bool = False) -> None:
        for name in ("ul", "ethanol", "water", "sugar", "oil", "oil_ul"):
            setattr(self, name, getattr(self, name) * share)
        for noted in self.lots.values():
            noted.amount *= share
        if share <= 0 and not is_draw:
            self.lots = {}

    def part(self, share: float) -> "Liquid":
        drawn = deepcopy(self)
        drawn.scale(share, is_draw=True)
        return drawn

    def pour_in(self, other: "Liquid") -> None:
        before, came = self.reckoned(), other.reckoned()
        for name in ("ethanol", "water", "sugar", "oil", "oil_ul"):
            setattr(self, name, getattr(self, name) + getattr(other, name))
        had = (self.ul or before) + (other.ul or came)
        self.ul = had - before - came + self.reckoned()
        for lot, noted in other.lots.items():
            mine = self.lots.setdefault(lot, Noted())
            mine.amount += noted.amount
            mine.can |= noted.can
            mine.in_doubt |= noted.in_doubt


@dataclass
class Delivery:
    """A received lot: what a smallest unit of it is, and what all of it cost, in hundredths."""

    of: str
    amount: int
    cost: int | None
    abv: float = 0.0
    density: float = 0.0

    def liquid(self, lot: str, taken: float) -> Liquid:
        stays_out = self.of in ("clarifier", "bottle")
        found = Liquid(lots={lot: Noted(0.0 if stays_out else taken, can=True)})
        if self.of == "ethanol":
            found.ul = taken
            found.ethanol = taken * self.abv / 100 * ETHANOL_G_PER_ML
            found.water = _spirit_mass(taken, found.ethanol) - found.ethanol
        elif self.of == "oil":
            found.ul = found.oil_ul = taken
            found.oil = taken * self.density
        elif self.of == "water":
            found.ul, found.water = taken, taken * oiml_r22.density(0, 20) / 1000
        elif self.of == "sugar":
            found.sugar = taken
        return found

    def price(self, taken: float) -> Fraction:
        return Fraction(self.cost or 0) * Fraction(taken) / self.amount


def _spirit_mass(ul: float, ethanol: float) -> float:
    """Return the mass of so much spirit with so much ethanol, by halving: R 22 turned round."""
    low, high = ethanol, ul
    for _ in range(80):
        mass = (low + high) / 2
        if 1000 * mass / oiml_r22.density(ethanol / mass, 20) < ul:
            low = mass
        else:
            high = mass
    return (low + high) / 2


@dataclass
class Jar:
    """A lot made here, with what it costs and what it is told to be."""

    there: Liquid = field(default_factory=Liquid)
    last: Liquid = field(default_factory=Liquid)
    told: Liquid = field(default_factory=Liquid)
    cake: Liquid | None = None
    ever: set[str] = field(default_factory=set)
    per_unit: float = 1.0
    money: Fraction = Fraction(0)
    told_money: Fraction = Fraction(0)
    told_there: float = 0.0
    out_there: float = 0.0
    out_money: Fraction = Fraction(0)
    out: Liquid = field(default_factory=Liquid)

    def settle(self, *, composition: bool = False, price: bool = False) -> None:
        if self.there.ul > 0:
            self.last = deepcopy(self.there)
            if composition:
                self.told = deepcopy(self.there)
        if price and (self.there.ul > 0 or not self.told_there):
            self.told_money = self.money
            self.told_there = self.there.ul / self.per_unit


@dataclass
class Act:
    """One thing that happened; amounts are in the smallest unit of the lot they are of."""

    at: float
    nth: int
    kind: str
    lot: str
    source: str = ""
    taken: int = 0
    given: int | None = None
    level: int | None = None
    cake_of: str = ""
    is_struck: bool = False


class NotThereError(Exception):
    """More was drawn than was there, so nothing more can be said."""


@dataclass
class Shelf:
    """All jars, after everything has happened."""

    deliveries: dict[str, Delivery]
    jars: dict[str, Jar] = field(default_factory=dict)
    used: dict[str, int] = field(default_factory=dict)

    def play(self, acts: Iterable[Act]) -> "Shelf":
        for act in sorted(acts, key=lambda act: (act.at, act.nth)):
            if not act.is_struck:
                getattr(self, f"_{act.kind}")(act)
        return self

    def _jar(self, lot: str) -> Jar:
        return self.jars.setdefault(lot, Jar())

    def _start(self, act: Act) -> None:
        self._jar(act.lot)

    def _draw(self, lot: str, amount: int) -> tuple[Liquid, Fraction]:
        """Return what is drawn from a lot, with its money."""
        if lot in self.deliveries:
            self.used[lot] = self.used.get(lot, 0) + amount
            delivery = self.deliveries[lot]
            if self.used[lot] > delivery.amount:
                raise NotThereError
            return delivery.liquid(lot, amount), delivery.price(amount)
        jar = self._jar(lot)
        ul = amount * jar.per_unit
        if jar.there.ul <= 0 or ul > jar.there.ul + 0.4:
            raise NotThereError
        share = min(1.0, ul / jar.there.ul)
        share = 1.0 if jar.there.ul - ul < 0.5 else share
        drawn = jar.there.part(share)
        drawn.lots[lot] = Noted(float(amount), can=True)
        money = jar.money * Fraction(share)
        jar.money -= money
        jar.there.scale(1 - share)
        jar.settle()
        return drawn, money

    def _into(self, lot: str, came: Liquid, money: Fraction) -> None:
        jar = self._jar(lot)
        jar.there.pour_in(came)
        jar.ever |= {code for code, noted in came.lots.items() if noted.can}
        jar.money += money
        jar.settle(composition=True, price=True)

    def _add(self, act: Act) -> None:
        self._into(act.lot, *self._draw(act.source, act.taken))

    def _makeup(self, act: Act) -> None:
        self._add(act)
        jar = self._jar(act.lot)
        jar.there.ul = float(act.level or 0)
        jar.settle(composition=True, price=True)

    def _filter(self, act: Act) -> None:
        jar = self._jar(act.lot)
        if act.cake_of:
            self._carry(act.cake_of, act.lot)
        jar.cake = deepcopy(jar.there)
        self._level(act)

    def _carry(self, source: str, lot: str) -> None:
        """Bring what a cake that nobody measured can hold: nothing counted, much possible."""
        old = self._jar(source)
        held = old.cake if old.cake is not None else old.there
        lots = {code: Noted(0.0, noted.can, noted.can) for code, noted in held.lots.items()}
        lots[source] = Noted(0.0, can=True, in_doubt=True)
        self._into(lot, Liquid(lots=lots), Fraction(0))

    def _level(self, act: Act) -> None:
        jar = self._jar(act.lot)
        ul = (act.level or 0) * jar.per_unit
        if jar.there.ul <= 0:
            raise NotThereError
        is_loss = ul < jar.there.ul
        if is_loss:
            jar.there.scale(ul / jar.there.ul)
        else:
            jar.there.ul = ul
        jar.settle(composition=act.kind != "count" or not is_loss, price=True)

    _finish = _count = _level

    def _rinse(self, act: Act) -> None:
        came, money = self._draw(act.source, act.taken)
        if act.level == 0:  # to waste
            self._jar(act.lot).money += money
            self._jar(act.lot).settle(price=True)
            return
        came.scale(min(1.0, (act.given or 0) / act.taken), is_draw=True)
        self._into(act.lot, came, money)

    def _apart(self, act: Act) -> None:
        self._rinse(act)
        self._carry(act.cake_of, act.lot)

    def _bottle(self, act: Act) -> None:
        jar = self._jar(act.lot)
        came, money = self._draw(act.source, act.taken)
        jar.per_unit = came.ul / (act.given or 1)
        self._into(act.lot, came, money)

    def _sale(self, act: Act) -> None:
        gone, money = self._draw(act.lot, act.taken)
        del gone.lots[act.lot]
        jar = self._jar(act.lot)
        jar.out_there += act.taken
        jar.out_money += money
        ul = jar.out.ul + gone.ul
        jar.out.pour_in(gone)
        jar.out.ul = ul

    def _returned(self, act: Act) -> None:
        jar = self._jar(act.lot)
        if act.taken > jar.out_there:
            raise NotThereError
        share = act.taken / jar.out_there
        jar.there.pour_in(jar.out.part(share))
        jar.out.scale(1 - share)
        back = jar.out_money * Fraction(act.taken) / Fraction(jar.out_there)
        jar.out_there -= act.taken
        jar.out_money -= back
        jar.money += back
        jar.settle()
