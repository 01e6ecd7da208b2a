"""The spirit account in words and plain values.

Guarantees: its lines are in litres of pure alcohol at 20 °C, each rounded to the millilitre by
itself, which a note says. Refuses: to explain a difference that nobody recorded.
"""

from typing import NamedTuple

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


class Line(NamedTuple):
    """One line of the account."""

    sign: str
    """Whether it is added, taken off or a sum; nothing where it is none of them."""
    what: str
    """What it tells; what is part of the line above stands further in."""
    litres: float
    """How much."""

    @property
    def signed(self) -> tuple[str, str, str]:
        """Its sign, what it tells and its figure, which is never below nought where it has one."""
        if self.sign in (PLUS, MINUS) and _litres(self.litres).startswith(MINUS):
            return MINUS if self.sign == PLUS else PLUS, self.what, _litres(-self.litres)
        return self.sign, self.what, _litres(self.litres)


PLUS, MINUS = "+", "\N{MINUS SIGN}"
"""Before what is added, and before what is taken off."""


def lines(report: SpiritReport) -> list[Line]:
    """Return the lines of the account."""
    account = report.account
    out = [
        Line(PLUS, f"  {SENT[why]}", -amount)
        if why == "returned"
        else Line(MINUS, f"  {SENT.get(why, why)}", amount)
        for why, amount in sorted(account.sent.items())
    ]
    return [
        Line("", f"on hand before {report.first}", account.opening),
        Line(PLUS, "received", account.received),
        *out,
        Line(MINUS, "  lost in filters, cakes, heels and rinses", account.lost),
        Line(MINUS, "  unexplained, found by counts", account.unexplained),
        Line("=", f"on hand after {report.last}", account.closing),
        Line("", "  of it spirit", account.in_spirit),
        Line("", "  of it in batches", account.in_making),
        Line("", "  of it in product", account.in_product),
        Line("", "used: drawn from spirit into batches and rinses", account.used),
    ]


def rows(report: SpiritReport) -> list[list[str]]:
    """Return the account, a line each."""
    return [[line.what, _litres(line.litres)] for line in lines(report)]


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
        rows=tuple(line.signed for line in lines(report)),
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
    in_all = [(what.strip(), "", litres) for what, litres in rows(report)]
    told = ((*cells, litres.replace("−", "-")) for *cells, litres in (*in_all, *of_lots))
    return Sheet(("what", "lot", "pure_alcohol_l_at_20c"), tuple(told))


def notes(report: SpiritReport) -> list[str]:
    """Return what to know besides."""
    missing = [
        f"Missing: the strength of {code} is not in the book, so it counts as nothing. Record it: "
        f"pottle measure {code} abv READING --temp CELSIUS"
        for code in report.unknown
    ]
    return [
        *missing,
        "Each line is rounded by itself, so a sum may be off by a mL or two.",
        "For the officer's own form; local law says what must be kept, and how long.",
    ]


def _litres(value: float) -> str:
    text = f"{value:.3f}"
    # Rounding may leave a nought below zero.
    return "0.000" if text == "-0.000" else text.replace("-", "−")
