"""The spirit account: litres of pure alcohol received, used, sent out, lost, and what is left.

Guarantees: what was there and came in is what went out, was lost, is unexplained and is there; a
test holds it to that. Alcohol is counted by mass through every mixture and told as litres at 20 °C.
Refuses: to count what has no strength in the book; such lots are named by who asks.
"""

from collections.abc import Iterable, Mapping, Sequence

from msgspec import Struct, field

from ledger.domain.lots.steps import Act, Step
from ledger.science.contents.received import ReceivedLot, contents_of
from ledger.science.contents.replay import Happening
from ledger.science.liquids.alcohol import ETHANOL_KG_PER_M3

COUNTED = "count"
"""The kind of entry whose difference nobody explains."""
WITHIN = frozenset({"received", "drawn", "put in", "lost", "counted"})
"""Why alcohol moves that does not go outside: the words of `Flow.why` but for where it went."""


class Flow(Struct, frozen=True):
    """Alcohol that moved at a moment, in litres of pure alcohol."""

    at: str
    """When, on the clock it was written by."""
    lot: str
    """The lot whose stock it changed."""
    change: float
    """By how much."""
    why: str
    """received, drawn (into a lot), put in (from a lot), lost, counted, or where it went."""


class SpiritAccount(Struct, frozen=True):
    """The account of a period, in litres of pure alcohol at 20 °C."""

    opening: float
    """On hand before it, in spirit, batches and goods."""
    received: float
    """Received in it."""
    used: float
    """Drawn from spirit into batches and rinses in it."""
    sent: Mapping[str, float]
    """Gone outside in it, by how; what came back counts against it."""
    lost: float
    """Lost in filters, cakes, heels and rinses in it."""
    unexplained: float
    """Differences that counts found in it."""
    in_spirit: float
    """In spirit at its end."""
    in_making: float
    """In batches not finished at its end."""
    in_product: float
    """In finished, packed and rinse lots at its end."""
    lots: Mapping[str, "SpiritLot"] = field(default_factory=dict)
    """The received spirit lots by code."""

    @property
    def closing(self) -> float:
        """On hand at its end."""
        return self.in_spirit + self.in_making + self.in_product

    @property
    def difference(self) -> float:
        """What does not balance; nothing but rounding."""
        out = sum(self.sent.values()) + self.lost + self.unexplained
        return self.opening + self.received - out - self.closing


class SpiritLot(Struct, frozen=True):
    """One received spirit lot in a period, in litres of pure alcohol."""

    received: float
    """Received in it."""
    used: float
    """Drawn into batches and rinses in it."""
    left: float
    """On hand at its end."""


def litres(ethanol_mg: float) -> float:
    """Return the litres of pure alcohol at 20 °C of a mass of ethanol in mg."""
    return ethanol_mg / ETHANOL_KG_PER_M3 / 1000


def spirit_flows(lot: ReceivedLot, steps: Sequence[Step]) -> list[Flow]:
    """Return the flows of a received lot of spirit, by its steps."""
    per_unit = litres(contents_of(lot, 1_000_000).ethanol_mg) / 1_000_000
    there, flows = 0, []
    for step in steps:
        when = step.clock
        if step.act is Act.INTO:
            there += step.amount
            why = "received" if step.outside == "supplier" else step.outside
            flows.append(Flow(when, lot.code, step.amount * per_unit, why))
        elif step.act is Act.OUT:
            there -= step.amount
            flows.append(Flow(when, lot.code, -step.amount * per_unit, step.outside or "drawn"))
        elif step.act is Act.LEVEL:
            flows.append(Flow(when, lot.code, (step.amount - there) * per_unit, "counted"))
            there = step.amount
    return flows


def made_flows(code: str, happenings: Iterable[Happening]) -> list[Flow]:
    """Return the flows of a made, rinse or packed lot, by what happened to it."""
    flows = []
    for item in happenings:
        step, moved = item.step, litres(item.moved.ethanol_mg)
        when = step.clock
        if step.act is Act.INTO:
            flows.append(Flow(when, code, moved, step.outside or "put in"))
        elif step.act is Act.OUT:
            flows.append(Flow(when, code, -moved, step.outside or "drawn"))
        elif step.act is Act.LEVEL:
            flows.append(Flow(when, code, -moved, "counted" if step.kind == COUNTED else "lost"))
    return flows


def account(
    flows: Iterable[Flow],
    span: tuple[str, str],
    spirits: frozenset[str],
    finished: Mapping[str, str],
) -> SpiritAccount:
    """Return the account of a period.

    What was drawn from lots and did not arrive in others, as in the rinse of a cake, is lost.

    Args:
        flows: All flows, of all lots that held anything in the period.
        span: Its first moment, and the first after it, as texts on the clock of each entry.
        spirits: Codes of the received lots of spirit.
        finished: When each made lot was finished, by code; rinse and packed lots at once.
    """
    first, after = span
    told = [flow for flow in flows if flow.at < after]
    within = [flow for flow in told if flow.at >= first]
    stock: dict[str, float] = {}
    for flow in told:
        stock[flow.lot] = stock.get(flow.lot, 0.0) + flow.change
    ended = {lot for lot in stock if finished.get(lot, after) < after} - spirits
    return SpiritAccount(
        opening=sum(flow.change for flow in told if flow.at < first),
        received=_sum(within, "received"),
        used=-sum(f.change for f in within if f.lot in spirits and f.why == "drawn"),
        sent=_sent(within),
        lost=-sum(_sum(within, why) for why in ("lost", "drawn", "put in")),
        unexplained=-_sum(within, "counted"),
        in_spirit=_in(stock, spirits & stock.keys()),
        in_making=_in(stock, stock.keys() - spirits - ended),
        in_product=_in(stock, ended),
        lots={lot: _spirit_lot(lot, within, stock.get(lot, 0.0)) for lot in sorted(spirits)},
    )


def _sent(flows: Iterable[Flow]) -> dict[str, float]:
    """Return what went outside by how, what came back taken off; no way that no alcohol went."""
    sent: dict[str, float] = {}
    for flow in flows:
        if flow.change and flow.why not in WITHIN:
            sent[flow.why] = sent.get(flow.why, 0.0) - flow.change
    return sent


def _in(stock: Mapping[str, float], lots: Iterable[str]) -> float:
    # Sorted, since the last figure of a sum of floats depends on its order and a set has none.
    return sum(stock[lot] for lot in sorted(lots))


def _sum(flows: Iterable[Flow], why: str) -> float:
    return sum(flow.change for flow in flows if flow.why == why)


def _spirit_lot(code: str, within: Sequence[Flow], left: float) -> SpiritLot:
    own = [flow for flow in within if flow.lot == code]
    return SpiritLot(_sum(own, "received"), -_sum(own, "drawn"), left)
