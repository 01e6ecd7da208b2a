"""What a lot cost: from the receipts really drawn, through every addition, loss and filling.

Guarantees: money is counted in whole billionths of a hundredth of the currency. What is drawn from
a lot made here takes its share of what is really there, by the replay, and leaves the rest, so that
none of what went in is lost; a draw of a received lot is rounded half to even to one of them, each
by itself. What is lost costs: the price of a mL is what went in over what is left, and what was
rinsed to waste is paid by the lot it rinsed. Refuses: to guess a price; what was bought without one
is named.
"""

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction

from msgspec import Struct, field

from ledger.domain.amounts.money import TWO, in_hundredths
from ledger.domain.lots.steps import Act, Bought, Step
from ledger.science.contents.order import in_order
from ledger.science.contents.replay import TO_PEOPLE, Happening

NANO = 10**9
"""Parts of one hundredth of the currency in which shares are counted, and of a smallest amount."""
LABOUR = "labour"
"""The key of what work cost."""
DUTY = "duty"
"""The key of what spirit duty cost."""


class Cost(Struct, frozen=True):
    """What is in a lot, in money."""

    there: int
    """How much of the lot it is for, in its measure."""
    went_in: int
    """How much went in, losses not taken off, in its measure."""
    money: Mapping[str, int] = field(default_factory=dict)
    """Billionths of a hundredth of the currency, by received lot, duty apart, and work."""
    drawn: Mapping[str, int] = field(default_factory=dict)
    """Billionths of the smallest unit of each received lot that is in it."""
    unpriced: frozenset[str] = frozenset()
    """Received lots in it that have no price."""

    @property
    def total(self) -> int:
        """All the money in it, in billionths of a hundredth."""
        return sum(self.money.values())


def share(pool: Mapping[str, int], part: float) -> dict[str, int]:
    """Return a part of every sum of a pool, each rounded half to even.

    >>> share({"oil": 100}, 1 / 3)
    {'oil': 33}
    """
    return {key: round(value * part) for key, value in pool.items()}


def _divided(number: int, by: int) -> int:
    quotient, rest = divmod(number, by)
    return quotient + (2 * rest > by or (2 * rest == by and quotient % 2 == 1))


def of_bought(code: str, bought: Bought, taken: int) -> Cost:
    """Return the cost of so much of a received lot.

    >>> of_bought("O-1", Bought(500_000, 4800), 30_000).total == 288 * NANO
    True
    """
    drawn = {code: taken * NANO}
    if bought.cost_minor is None:
        return Cost(taken, taken, {}, drawn, frozenset({code}))
    net = _nano(bought.cost_minor - bought.duty_minor, bought.digits)
    money = {code: _divided(net * taken, bought.amount)}
    if bought.duty_minor:
        money[DUTY] = _divided(_nano(bought.duty_minor, bought.digits) * taken, bought.amount)
    return Cost(taken, taken, money, drawn)


def _nano(minor: int, digits: int | None) -> int:
    """Return money in billionths of a hundredth, of which every coin is a whole number."""
    return int(in_hundredths(minor, digits) * NANO)


class Reckoner:
    """Reckons the cost of lots by their replay, each once, those they are made of first.

    Args:
        happened: What happened to every made, rinse or packed lot that may be met, by code.
        bought: Every received lot that may be met, by code.
        hour_minor: What an hour of work costs, in hundredths; None: work is not counted.
    """

    def __init__(
        self,
        happened: Mapping[str, Sequence[Happening]],
        bought: Mapping[str, Bought],
        hour_minor: Fraction | int | None = None,
    ) -> None:
        """Begin with nothing reckoned."""
        self._happened = happened
        self._bought = bought
        self._hour_minor = hour_minor
        self._draws: dict[str, dict[int, Cost]] = {}
        self._states: dict[str, _State] = {}

    def cost(self, code: str) -> Cost:
        """Return what is in a lot after the last step that changed its price."""
        if code in self._bought:
            return of_bought(code, self._bought[code], self._bought[code].amount)
        return self._state(code).end

    def left(self, code: str, there: int) -> Cost:
        """Return what is in a lot now; of a received lot in what is there of it."""
        if code in self._bought:
            return of_bought(code, self._bought[code], max(there, 0))
        return self._state(code).now()

    def _state(self, code: str) -> "_State":
        for lot in in_order([code], self._sources).lots:
            self._reckon(lot)
        return self._states[code]

    def _sources(self, lot: str) -> Iterable[str]:
        """Return the lots still to be reckoned that one is made of, or that were spent on it."""
        if lot in self._states:
            return ()
        sources = dict.fromkeys(item.step.source or "" for item in self._happened.get(lot, ()))
        return [code for code in sources if code in self._happened and code not in self._states]

    def _reckon(self, lot: str) -> None:
        if lot in self._states:
            return
        state = _State()
        draws: dict[int, Cost] = {}
        for index, item in enumerate(self._happened.get(lot, ())):
            step = item.step
            if step.act is Act.INTO and step.outside:
                state.take_back(item)
            elif step.act is Act.OUT:
                draws[index] = state.take(item)
            elif step.act is Act.WORK:
                hour = self._hour_minor or 0
                state.put_in(
                    Cost(0, 0, {LABOUR: round(Fraction(step.amount * NANO, 60) * hour)}), item
                )
            else:
                state.put_in(self._drawn(step), item)
        self._draws[lot], self._states[lot] = draws, state

    def _drawn(self, step: Step) -> Cost:
        source = step.source or ""
        if source in self._bought:
            return of_bought(source, self._bought[source], step.taken)
        return self._draws.get(source, {}).get(step.draw, Cost(0, 0))


class _State:
    """What is in a lot while its steps are taken one by one."""

    def __init__(self) -> None:
        self.there = self.went_in = self.out_there = 0.0
        self.money: dict[str, int] = {}
        self.drawn: dict[str, int] = {}
        self.out: tuple[dict[str, int], dict[str, int]] = ({}, {})
        self.unpriced: frozenset[str] = frozenset()
        self.end = Cost(0, 0)

    def now(self) -> Cost:
        pools = dict(self.money), dict(self.drawn)
        return Cost(round(self.there), round(self.went_in), *pools, self.unpriced)

    def put_in(self, cost: Cost, item: Happening) -> None:
        """Put in what a step brings or costs; a level brings nothing and tells what is there."""
        if item.step.act is Act.INTO:
            self.went_in += item.units - self.there
        self.there = item.units
        _add(self.money, cost.money)
        _add(self.drawn, cost.drawn)
        self.unpriced |= cost.unpriced
        if self.there > 0 or not self.end.there:
            self.end = self.now()

    def take(self, item: Happening) -> Cost:
        gone = Cost(
            item.step.amount,
            round(self.went_in * item.passed),
            share(self.money, item.passed),
            share(self.drawn, item.passed),
            self.unpriced,
        )
        pools = (self.money, gone.money, self.out[0]), (self.drawn, gone.drawn, self.out[1])
        for pool, some, out in pools:
            _add(pool, some, -1)
            if item.step.outside in TO_PEOPLE:
                _add(out, some)
        if item.step.outside in TO_PEOPLE:
            self.out_there += item.step.amount
        self.there = item.units
        self.went_in *= 1 - item.passed
        return gone

    def take_back(self, item: Happening) -> None:
        """Put goods that come back with the rest, at the price they had when they went out.

        Of what the book does not know to be out the price is that of the lot.
        """
        amount = item.step.amount
        known = min(amount, self.out_there)
        of_out = known / self.out_there if known else 0.0
        of_lot = (amount - known) / self.end.there if self.end.there else 0.0
        ends = (self.end.money, self.end.drawn)
        for pool, out, end in zip((self.money, self.drawn), self.out, ends, strict=True):
            back = share(out, of_out)
            _add(out, back, -1)
            _add(pool, back)
            _add(pool, share(end, of_lot))
        self.out_there -= known
        self.went_in += amount
        self.there = item.units


def _add(pool: dict[str, int], more: Mapping[str, int], sign: int = 1) -> None:
    for key, value in more.items():
        pool[key] = pool.get(key, 0) + sign * value


def in_coins(money: Mapping[str, int], digits: int = TWO) -> dict[str, int]:
    """Return sums in whole smallest coins that add up to their rounded total.

    What rounding leaves over goes to the sums that lost most by it (largest remainder).

    Args:
        money: Sums in billionths of a hundredth of the currency, by any key.
        digits: Digits after the point of the currency.

    >>> in_coins({"a": NANO // 3, "b": NANO // 3, "c": NANO // 3 + 1})
    {'a': 0, 'b': 0, 'c': 1}
    >>> in_coins({"a": 337_86 * NANO}, 0)
    {'a': 338}
    """
    coin = 100 * NANO // 10**digits
    coins = {key: value // coin for key, value in money.items()}
    missing = _divided(sum(money.values()), coin) - sum(coins.values())
    by_rest = sorted(money, key=lambda key: (-(money[key] % coin), key))
    for key in by_rest[:missing]:
        coins[key] += 1
    return coins


def price_for_margin(cost: int, margin_mpct: int) -> int:
    """Return the price, in the unit of the cost, of which a margin is left over the cost.

    Args:
        cost: What it cost.
        margin_mpct: The wanted share of the price in thousandths of a per cent, below 100 %.

    >>> price_for_margin(300, 40_000)
    500
    """
    return _divided(cost * 100_000, 100_000 - margin_mpct)
