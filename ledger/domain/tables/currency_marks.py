"""Money in a maker's tables: the sign or word beside a figure, and the currencies it may mean.

Guarantees: a figure with the mark of another currency than the book's is never read as the book's.
Refuses: to change one currency into another, and marks that it does not know.
"""

import re

from ledger.domain.tables.numerals import plain_number
from ledger.errors import InputError

MARKS = {
    "€": "EUR", "euro": "EUR", "euros": "EUR", "£": "GBP", "us$": "USD", "r$": "BRL", "zł": "PLN",
    "zl": "PLN", "kč": "CZK", "ft": "HUF", "fr": "CHF", "sfr": "CHF", "₹": "INR", "₺": "TRY",
    "₴": "UAH", "₩": "KRW", "₪": "ILS", "kr": "DKK SEK NOK ISK", "¥": "JPY CNY",
    "$": "USD CAD AUD NZD MXN SGD HKD", "lei": "RON MDL", "rs": "INR PKR LKR",
}  # fmt: skip
"""Signs and words of money, and the codes of whose they are (from memory)."""
_LIST_ONE = (
    "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BHD BIF BMD BND BOB BOV BRL BSD BTN BWP "
    "BYN BZD CAD CDF CHE CHF CHW CLF CLP CNY COP COU CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN "
    "ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF GTQ GYD HKD HNL HTG HUF IDR ILS INR IQD IRR ISK "
    "JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD KZT LAK LBP LKR LRD LSL LYD MAD MDL MGA MKD "
    "MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD OMR PAB PEN PGK PHP "
    "PKR PLN PYG QAR RON RSD RUB RWF SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP "
    "SZL THB TJS TMT TND TOP TRY TTD TWD TZS UAH UGX USD USN UYI UYU UYW UZS VED VES VND VUV "
    "WST XAD XAF XAG XAU XBA XBB XBC XBD XCD XCG XDR XOF XPD XPF XPT XSU XTS XUA XXX YER ZAR "
    "ZMW ZWG"
)
CODES = frozenset(_LIST_ONE.split())
"""The codes of ISO 4217, list one, to which a test holds them."""
_BESIDE = re.compile(
    r"(?P<before>[^\d\s.,'’+−-]{1,5})\.?\s*(?P<after_mark>[-+−]?\d.*)|"
    r"(?P<figure>[-+−]?\d.*?\d|[-+−]?\d)\s*(?P<after>[^\d\s.,'’+−-]{1,5})\.?"
)
_NO_CENTS = re.compile(r"(?<=\d)[.,][-–—]+$")
"""A stroke for no cents: 120,-"""


def parted(cell: str) -> tuple[str, str]:
    """Return a figure without its mark, and the mark; no mark where there is none.

    >>> parted("kr. 1.120,50"), parted("48,00 €"), parted("120,-"), parted("CHF 1'250.–")
    (('1.120,50', 'kr'), ('48,00', '€'), ('120', ''), ("1'250", 'CHF'))
    """
    text = _NO_CENTS.sub("", cell.strip())
    told = _BESIDE.fullmatch(text)
    if told is None:
        return text, ""
    figure, mark = told["after_mark"] or told["figure"], told["before"] or told["after"]
    return _NO_CENTS.sub("", figure), mark


def currencies_of(mark: str) -> tuple[str, ...]:
    """Return the currencies that a mark may mean; none where it is not known.

    >>> currencies_of("€"), currencies_of("Kr"), currencies_of("chf"), currencies_of("mL")
    (('EUR',), ('DKK', 'SEK', 'NOK', 'ISK'), ('CHF',), ())
    """
    plain = mark.casefold()
    if plain in MARKS:
        return tuple(MARKS[plain].split())
    return (plain.upper(),) if plain.upper() in CODES else ()


def mark_in(head: str) -> str:
    """Return the mark of money in a heading; words that are no code in capitals are none.

    >>> mark_in("Prijs (€)"), mark_in("Price USD"), mark_in("Pris kr."), mark_in("All costs")
    ('€', 'USD', 'kr', '')
    """
    words = re.findall(r"[^\s()\[\]/.,:]+", head)
    return next((w for w in words if w.casefold() in MARKS or w in CODES), "")


def plain_money(cell: str, sign: str | None, currency: str, head: str = "") -> str:
    """Return a figure of money as the book reads it, without its mark; other text as it is.

    Args:
        cell: What is written.
        sign: The decimal sign of the table; None: not known.
        currency: The currency of the book.
        head: The heading, whose mark counts where the cell has none.

    Raises:
        InputError: It is in another currency, or could be read in two ways.

    >>> plain_money("1.120,50 kr.", ",", "DKK"), plain_money("£3.20", ".", "GBP")
    ('1120.50', '3.20')
    """
    figure, mark = parted(cell)
    mark = mark or mark_in(head)
    meant = currencies_of(mark) if mark else (currency,)
    if not meant:
        return cell
    if currency not in meant:
        others = " or ".join(meant)
        raise InputError(
            f'"{cell.strip()}" is money in {others} by its mark, "{mark}", and this book counts in '
            f"{currency}.",
            f"Write what it came to in {currency}.",
        )
    return plain_number(figure, sign)
