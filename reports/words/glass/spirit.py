"""The spirit account in words and plain values.

Guarantees: its lines add up as shown, in litres of pure alcohol at 20 °C to the millilitre.
Refuses: to explain a difference that nobody recorded.
"""

from ledger.service.glass.spirit import SpiritReport
from reports.kit.frame import Frame
from reports.kit.tables import Sheet
from reports.views.glass import SpiritView

SENT = {
    "sale": "sold",
    "sample": "given as samples",
    "tasting": "poured at tastings",
    "on-return": "sent on sale or return",
    "returned": "came back",
    "breakage": "broken",
    "retained": "kept back as samples",
    "destroyed": "destroyed",
    "waste": "thrown away",
}
"""Ways in which goods leave, as lines of the account."""


HEADS = ("litres of pure alcohol at 20 °C", "L")
"""Heads of the account."""


LOT_HEADS = ("spirit lot", "what", "received", "used", "left")
"""Heads of the table of spirit lots."""


def rows(report: SpiritReport) -> list[list[str]]:
    """Return the account, a line each."""
    account = report.account
    out = [
        [f"  {SENT.get(why, why)}", _litres(-amount if why == "returned" else amount)]
        for why, amount in sorted(account.sent.items())
    ]
    return [
        [f"on hand before {report.first}", _litres(account.opening)],
        ["received", _litres(account.received)],
        *out,
        ["  lost in filters, cakes, heels and rinses", _litres(account.lost)],
        ["  unexplained, found by counts", _litres(account.unexplained)],
        [f"on hand after {report.last}", _litres(account.closing)],
        ["  of it spirit", _litres(account.in_spirit)],
        ["  of it in batches", _litres(account.in_making)],
        ["  of it in product", _litres(account.in_product)],
        ["used: drawn from spirit into batches and rinses", _litres(account.used)],
    ]


def lot_rows(report: SpiritReport) -> list[list[str]]:
    """Return the spirit lots that moved or are there, a line each."""
    return [
        [code, report.names[code], _litres(lot.received), _litres(lot.used), _litres(lot.left)]
        for code, lot in report.account.lots.items()
        if abs(lot.received) + abs(lot.used) + abs(lot.left) > 0.0005
    ]


def spirit_view(report: SpiritReport, frame: Frame) -> SpiritView:
    """Return the account as a paper shows it."""
    return SpiritView(
        frame=frame,
        period=f"{report.first} to {report.last}",
        rows=tuple((what, litres) for what, litres in rows(report)),
        lots=tuple(map(tuple, lot_rows(report))),
        notes=tuple(notes(report)),
    )


def spirit_sheet(report: SpiritReport) -> Sheet:
    """Return the account and its lots as a table for a spreadsheet."""
    of_lots = [
        (what, code, _litres(litres))
        for code, lot in report.account.lots.items()
        for what, litres in (("received", lot.received), ("used", lot.used), ("left", lot.left))
    ]
    lines = [(what.strip(), "", litres) for what, litres in rows(report)]
    told = ((*cells, litres.replace("−", "-")) for *cells, litres in (*lines, *of_lots))
    return Sheet(("what", "lot", "pure_alcohol_l_at_20c"), tuple(told))


def notes(report: SpiritReport) -> list[str]:
    """Return what to know besides."""
    lines = [
        f"Missing: the strength of {code} is not in the book, so it counts as nothing. Record it: "
        f"pottle measure {code} abv READING --temp CELSIUS"
        for code in report.unknown
    ]
    return [*lines, "For the officer's own form; local law says what must be kept, and how long."]


def _litres(value: float) -> str:
    text = f"{value:.3f}"
    # Rounding may leave a nought below zero.
    return "0.000" if text == "-0.000" else text.replace("-", "−")
