"""Values as people read them: times, temperatures, money, percentages.

Guarantees: the same value reads the same on screen and paper. Refuses: to round what the book
keeps exactly.
"""

from decimal import Decimal

from ledger.domain.amounts.money import coins
from ledger.domain.amounts.quantity import tidy as tidy
from ledger.domain.entries import Entry, When
from ledger.domain.entries.choices import Precision


def scaled(value: int, scale: int, unit: str = "") -> str:
    """Return a whole number of a smaller unit as a decimal of the unit people write.

    >>> scaled(9400, 1000, "NTU")
    '9.4 NTU'
    """
    number = f"{Decimal(value) / scale:f}"
    if "." in number:
        number = number.rstrip("0").rstrip(".")
    return f"{number} {unit}".strip()


def celsius(mdegc: int) -> str:
    """Return a temperature.

    >>> celsius(-18000)
    '−18 °C'
    """
    return scaled(mdegc, 1000, "°C").replace("-", "−")


def money(minor: int, currency: str, digits: int | None = None) -> str:
    """Return an amount of money.

    Args:
        minor: How many of the smallest coin it is counted in.
        currency: ISO 4217 code.
        digits: Digits after the point that it is counted with; None: two.

    >>> money(4800, "EUR"), money(338, "JPY", 0)
    ('48.00 EUR', '338 JPY')
    """
    return f"{coins(minor, digits)} {currency}".rstrip()


def poured(parts: int) -> str:
    """Return how a syrup is poured, as it is written and read everywhere.

    >>> poured(7)
    '1:7'
    """
    return f"1:{parts}"


def duration(minutes: int) -> str:
    """Return a length of time in its largest fitting units.

    >>> duration(1 * 24 * 60 + 90)
    '1 d 1 h 30 min'
    """
    days, rest = divmod(minutes, 24 * 60)
    hours, left = divmod(rest, 60)
    parts = [(days, "d"), (hours, "h"), (left, "min")]
    return " ".join(f"{number} {unit}" for number, unit in parts if number) or "0 min"


def percent(part: int, whole: int) -> str:
    """Return a share in per cent with one decimal, rounded half-even.

    >>> percent(448, 450)
    '99.6 %'
    """
    return f"{(Decimal(100 * part) / whole).quantize(Decimal('0.1'))} %"


def clock(when: When, *, is_repeated: bool = False) -> str:
    """Return a moment on the clock it was written by, as exactly as it is known.

    Args:
        when: The moment.
        is_repeated: Whether that clock showed it twice, so that its offset tells which it was.
    """
    local = when.local()
    if when.precision is Precision.DAY:
        return f"{local:%Y-%m-%d}"
    mark = "~" if when.precision is Precision.ABOUT else ""
    offset = f"{local:%z}" if is_repeated else ""
    east = f"{offset[:3]}:{offset[3:]}" if offset else ""
    return f"{mark}{local:%Y-%m-%d %H:%M}{east}"


def day(when: When) -> str:
    """Return the day of a moment on the clock it was written by."""
    return f"{when.local():%Y-%m-%d}"


def initials(entry: Entry) -> str:
    """Return who made an entry, or a dash."""
    return entry.draft.by or "–"


def plural(number: int, one: str, many: str | None = None) -> str:
    """Return a number with its noun.

    >>> plural(1, "bottle"), plural(6, "bottle")
    ('1 bottle', '6 bottles')
    """
    return f"{number} {one if number == 1 else many or one + 's'}"


def closed(text: str) -> str:
    """Return a text with a full stop, unless it ends a sentence already.

    >>> closed("misread the cylinder"), closed("Is it so?")
    ('misread the cylinder.', 'Is it so?')
    """
    return text if text.endswith((".", "!", "?", "…")) else f"{text}."
