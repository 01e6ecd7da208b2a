"""The spirit account, for machines: litres of pure alcohol at 20 °C as decimal strings."""

from datetime import date

from ledger.service.glass.spirit import SpiritReport
from reports.json.kit.answer import Answer, Code, Figure


class SpiritLotTold(Answer, frozen=True):
    """One received lot of spirit in the period."""

    code: Code
    """Its code."""
    name: str
    """What it is."""
    received: Figure
    """Received in it."""
    used: Figure
    """Drawn into batches and rinses in it."""
    left: Figure
    """On hand at its end."""


class SpiritAnswer(Answer, frozen=True):
    """The spirit account of a period, in litres of pure alcohol at 20 °C."""

    first_day: date
    """Its first day."""
    last_day: date
    """Its last day."""
    opening: Figure
    """On hand before it, in spirit, batches and goods."""
    received: Figure
    """Received in it."""
    used: Figure
    """Drawn from spirit into batches and rinses in it."""
    sent: dict[str, Figure]
    """Gone outside in it, by how; what came back counts against it."""
    lost: Figure
    """Lost in filters, cakes, heels and rinses in it."""
    unexplained: Figure
    """Differences that counts found in it."""
    in_spirit: Figure
    """In spirit at its end."""
    in_making: Figure
    """In batches not finished at its end."""
    in_product: Figure
    """In finished, packed and rinse lots at its end."""
    closing: Figure
    """On hand at its end."""
    lots: tuple[SpiritLotTold, ...]
    """The received lots of spirit."""
    without_strength_codes: tuple[Code, ...]
    """Lots of spirit whose strength is not in the book; they count as nothing."""
    next: str
    """The command that usually comes next."""


def spirit_answer(report: SpiritReport, step: str) -> SpiritAnswer:
    """Return the account of a period."""
    found = report.account
    return SpiritAnswer(
        first_day=report.first,
        last_day=report.last,
        opening=_litres(found.opening),
        received=_litres(found.received),
        used=_litres(found.used),
        sent={why: _litres(amount) for why, amount in sorted(found.sent.items())},
        lost=_litres(found.lost),
        unexplained=_litres(found.unexplained),
        in_spirit=_litres(found.in_spirit),
        in_making=_litres(found.in_making),
        in_product=_litres(found.in_product),
        closing=_litres(found.closing),
        lots=tuple(
            SpiritLotTold(
                code=code,
                name=report.names[code],
                received=_litres(lot.received),
                used=_litres(lot.used),
                left=_litres(lot.left),
            )
            for code, lot in found.lots.items()
        ),
        without_strength_codes=report.unknown,
        next=step,
    )


def _litres(amount: float) -> Figure:
    return f"{round(amount, 6) + 0.0:.6f}"  # never less than nothing of nothing
