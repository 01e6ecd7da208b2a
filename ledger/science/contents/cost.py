"""What a lot cost: from the receipts really drawn, through every addition, loss and filling.

Guarantees: money is counted in whole billionths of a hundredth of the currency. What is drawn from
a lot made here takes its share and leaves the rest, so that none of what went in is lost; a draw of
a received lot is rounded half to even to one of them, each by itself. What is lost costs: the price
of a mL is what went in over what is left. Refuses: to guess a price; what was bought without one is
named.
"""

from collections.abc import Iterable, Mapping, Sequence

from msgspec import Struct, field

from ledger.domain.lots.steps import Act, Bought, Step

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


def share(pool: Mapping[str, int], part: int, whole: int) -> dict[str, int]:
    """Return a part of every sum of a pool, each rounded half to even.

    >>> share({"oil": 100}, 1, 3)
    {'oil': 33}
    """
    if whole <= 0 or part >= whole:
        return dict(pool)
    return {key: _divided(value * part, whole) for key, value in pool.items()}


def _divided(number: int, by: int) -> int:
    # In whole numbers: a float has no room for billionths of large sums.
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
    net = (bought.cost_minor - bought.duty_minor) * NANO
    money = {code: _divided(net * taken, bought.amount)}
    if bought.duty_minor:
        money[DUTY] = _divided(bought.duty_minor * NANO * taken, bought.amount)
    return Cost(taken, taken, money, drawn)


class Reckoner:
    """Reckons the cost of lots, each once, those they are made of first.

    Args:
        steps: The steps of every made, rinse or packed lot that may be met, by code.
        bought: Every received lot that may be met, by code.
        hour_minor: What an hour of work costs, in hundredths; None: work is not counted.
    """

    def __init__(
        self,
        steps: Mapping[str, Sequence[Step]],
        bought: Mapping[str, Bought],
        hour_minor: int | None = None,
    ) -> None:
        """Begin with nothing reckoned."""
        self._steps = steps
        self._bought = bought
        self._hour_minor = hour_minor
        self._draws: dict[str, dict[int, Cost]] = {}
        self._ends: dict[str, Cost] = {}

    def cost(self, code: str) -> Cost:
        """Return what is in a lot after the last step that changed its price."""
        if code in self._bought:
            return of_bought(code, self._bought[code], self._bought[code].amount)
        for lot in self._in_order(code):
            self._reckon(lot)
        return self._ends[code]

    def _in_order(self, code: str) -> Iterable[str]:
        """Return the lots still to be reckoned for one, sources first, without recursion."""
        order: dict[str, None] = {}
        # A chain of rework may be longer than Python lets calls nest.
        stack = [(code, False)]
        while stack:
            lot, is_ready = stack.pop()
            if lot in order or lot in self._ends:
                continue
            if is_ready:
                order[lot] = None
                continue
            stack.append((lot, True))
            stack += [
                (step.source, False)
                for step in self._steps[lot]
                if step.source and step.source not in self._bought
            ]
        return order

    def _reckon(self, lot: str) -> None:
        state = _State()
        draws: dict[int, Cost] = {}
        for index, step in enumerate(self._steps[lot]):
            if step.act is Act.INTO:
                if step.source:
                    state.put_in(self._drawn(step), step.amount)
                else:
                    state.take_back(step.amount)
            elif step.act is Act.OUT:
                draws[index] = state.take(step.amount)
            elif step.act is Act.LEVEL:
                state.measure(step.amount)
            elif self._hour_minor is not None:
                state.work(_divided(step.amount * self._hour_minor * NANO, 60))
        self._draws[lot], self._ends[lot] = draws, state.end

    def _drawn(self, step: Step) -> Cost:
        assert step.source is not None
        if step.source in self._bought:
            return of_bought(step.source, self._bought[step.source], step.taken)
        return self._draws[step.source].get(step.draw, Cost(0, 0))


class _State:
    """What is in a lot while its steps are taken one by one."""

    def __init__(self) -> None:
        self.there = self.went_in = 0
        self.money: dict[str, int] = {}
        self.drawn: dict[str, int] = {}
        self.unpriced: frozenset[str] = frozenset()
        self.end = Cost(0, 0)

    def take_back(self, amount: int) -> None:
        """Put goods that come back with the rest, at the price they had, which stays."""
        pools = (self.money, self.end.money), (self.drawn, self.end.drawn)
        for pool, had in pools:
            _add(pool, share(had, amount, self.end.there))
        self.there += amount
        self.went_in += amount

    def put_in(self, cost: Cost, given: int) -> None:
        self.there += given
        self.went_in += given
        _add(self.money, cost.money)
        _add(self.drawn, cost.drawn)
        self.unpriced |= cost.unpriced
        self._keep()

    def measure(self, level: int) -> None:
        self.there = level
        self._keep()

    def work(self, money: int) -> None:
        _add(self.money, {LABOUR: money})
        self._keep()

    def take(self, amount: int) -> Cost:
        money, drawn = (share(pool, amount, self.there) for pool in (self.money, self.drawn))
        went_in = _divided(self.went_in * amount, self.there) if self.there > 0 else 0
        taken = Cost(amount, went_in, money, drawn, self.unpriced)
        _add(self.money, money, -1)
        _add(self.drawn, drawn, -1)
        self.there = max(self.there - amount, 0)
        self.went_in = max(self.went_in - went_in, 0)
        return taken

    def _keep(self) -> None:
        pools = dict(self.money), dict(self.drawn)
        self.end = Cost(self.there, self.went_in, *pools, self.unpriced)


def _add(pool: dict[str, int], more: Mapping[str, int], sign: int = 1) -> None:
    for key, value in more.items():
        pool[key] = pool.get(key, 0) + sign * value


def in_cents(money: Mapping[str, int]) -> dict[str, int]:
    """Return sums in whole hundredths that add up to their rounded total.

    What rounding leaves over goes to the sums that lost most by it (largest remainder).

    >>> in_cents({"a": NANO // 3, "b": NANO // 3, "c": NANO // 3 + 1})
    {'a': 0, 'b': 0, 'c': 1}
    """
    cents = {key: value // NANO for key, value in money.items()}
    missing = _divided(sum(money.values()), NANO) - sum(cents.values())
    by_rest = sorted(money, key=lambda key: (-(money[key] % NANO), key))
    for key in by_rest[:missing]:
        cents[key] += 1
    return cents


def price_for_margin(cost: int, margin_mpct: int) -> int:
    """Return the price, in the unit of the cost, of which a margin is left over the cost.

    Args:
        cost: What it cost.
        margin_mpct: The wanted share of the price in thousandths of a per cent, below 100 %.

    >>> price_for_margin(300, 40_000)
    500
    """
    return _divided(cost * 100_000, 100_000 - margin_mpct)
