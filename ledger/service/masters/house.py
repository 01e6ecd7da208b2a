"""Setting up: the book with its house, and what is known of the house said anew.

Guarantees: `init` makes a book with its house or nothing. Refuses: a book where one is already.
"""

import re
from collections.abc import Callable
from functools import partial
from zoneinfo import ZoneInfo

from msgspec.structs import replace

from ledger.domain.amounts.money import digits_of, digits_told
from ledger.domain.entries import Entry, House
from ledger.domain.entries.house import Article
from ledger.domain.masters.articles import articles_with, product_and_size, read_article
from ledger.domain.masters.doubts import read_doubts
from ledger.domain.masters.gs1 import read_gln, read_prefix
from ledger.domain.rules.always.times import clock
from ledger.errors import InputError, StorageError, visible
from ledger.service.desk.act import act, at_desk, desk_on
from ledger.service.desk.book import Book, Clock, How, Recorded, wall_clock
from ledger.service.desk.clock import zones
from ledger.service.desk.foresight import Ahead
from ledger.service.desk.reader import Words
from ledger.store.engine.connections import connected
from ledger.store.read import queries
from ledger.store.read.lots import is_made_or_bought

_COUNTRY = re.compile("[A-Z]{2}")
PARTED = ";"
"""Stands between numbers of several articles."""
LONGEST_WEB = 60
"""The most characters of the address of the house's pages: a symbol with more is too fine."""
_WEB = re.compile(r"https?://(?=.{1,52}$)[A-Za-z0-9.-]+(?::\d+)?(?:/[A-Za-z0-9._~-]+)*")
_CURRENCY = re.compile(r"[A-Z]{3}", re.ASCII)


def init(
    where: str,
    *,
    name: str,
    currency: str,
    address: str | None = None,
    country: str | None = None,
    time_zone: str | None = None,
    fluid_ounce: str | None = None,
    phone: str | None = None,
    by: str | None = None,
    clock: Clock = wall_clock,
) -> Book:
    """Make a new book with its house and return it open.

    Raises:
        StorageError: Something is there already, or the place cannot be written.
        InputError: A word of the house cannot be read.
    """
    from ledger.store.form.create import create_book

    facts = _checked_house(name, currency, address, country, time_zone, fluid_ounce, phone)
    with connected(where) as engine:
        create_book(
            engine,
            where,
            lambda connection: desk_on(connection, clock(), How(by=by)).record(facts),
        )
    return Book(where, clock)


def check_house(
    name: str,
    currency: str = "EUR",
    *,
    country: str | None = None,
    time_zone: str | None = None,
) -> None:
    """See whether a house could be entered so; nothing is.

    Raises:
        LedgerError: It could not.
    """
    _checked_house(name, currency, None, country, time_zone, None, None)


def _checked_house(
    name: str,
    currency: str,
    address: str | None,
    country: str | None,
    time_zone: str | None,
    fluid_ounce: str | None,
    phone: str | None,
) -> House:
    with connected(":memory:") as engine, engine.connect() as connection:
        words = Words(connection, "US", None)
        facts = _house(words, name, currency, address, country, time_zone, fluid_ounce, phone)
        words.done()
    return facts


@act
def house(
    book: Book,
    how: How,
    *,
    name: str | None = None,
    currency: str | None = None,
    address: str | None = None,
    country: str | None = None,
    time_zone: str | None = None,
    fluid_ounce: str | None = None,
    hour: str | None = None,
    phone: str | None = None,
    doubt: str | None = None,
    keep: str | None = None,
    web: str | None = None,
    gln: str | None = None,
    company_prefix: str | None = None,
    gtin: str | None = None,
) -> Recorded:
    """Say anew what is known of the house; what is not given stays as it was."""
    with at_desk(book, how, Ahead(also=_ASKED)) as desk:
        old = queries.house(desk.connection)
        if old is None:
            raise StorageError("This book has no house.", "Make a new one with: pottle init")
        facts = _house(
            desk.words,
            name or old.name,
            currency or old.currency,
            address or old.address,
            country,
            time_zone or old.time_zone,
            fluid_ounce or old.fluid_ounce,
            phone or old.phone,
        )
        digits = digits_of(facts.currency)
        told = desk.words.scaled(hour, 10**digits, "", "cost of an hour")
        off = desk.words.read(lambda: read_doubts(doubt) if doubt else old.doubts, None)
        months = desk.words.whole(keep, "number of months")
        facts = replace(
            facts,
            country=facts.country or old.country,
            hour_minor=old.hour_minor if told is None else told,
            hour_digits=old.hour_digits if told is None else digits_told(digits),
            doubts=off,
            keep_months=months if months is not None else old.keep_months,
            web=_told(desk.words, web, _web, old.web),
            gln=_told(desk.words, gln, read_gln, old.gln),
            company_prefix=_told(desk.words, company_prefix, read_prefix, old.company_prefix),
            articles=_articles(desk.words, old, gtin, facts.fluid_ounce),
        )
        new = [each for each in facts.articles if each not in old.articles]
        strange = [each for each in new if not is_made_or_bought(desk.connection, each.product)]
        others = queries.entries_of_kind(desk.connection, House)
        done = desk.record(facts)
        counts = max((*others, done.entry), key=lambda entry: entry.position)
        later = () if counts.seq == done.seq else (_counts_not(counts),)
        return replace(done, remarks=(*done.remarks, *map(_is_strange, strange), *later))


_ASKED = ((queries.entries_of_kind, House), (is_made_or_bought, ""))
"""What is read whatever is said of the house."""


def _told(
    words: Words, text: str | None, read: Callable[[str], str | None], old: str | None
) -> str | None:
    """Return what is told anew; "none" takes it away, and where nothing is told it stays."""
    if not text:
        return old
    return None if text.strip().casefold() == "none" else words.read(lambda: read(text), None)


def _is_strange(article: Article) -> tuple[str, str]:
    return (
        f'Nothing in this book is called "{article.product}" so far, so no lot has '
        f"the number {article.gtin}.",
        "If it is called otherwise, take this away: pottle house --gtin "
        f'"{product_and_size(article.product, article.size)}="',
    )


def _articles(words: Words, old: House, text: str | None, ounce: str) -> tuple[Article, ...]:
    """Return what the house sells under which number, with what is told anew of it."""
    parts = [part.strip() for part in (text or "").split(PARTED) if part.strip()]
    told = [words.read(partial(read_article, part, ounce), None) for part in parts]
    found = [each for each in told if each]
    return words.read(lambda: articles_with(old.articles, found), old.articles)


def _counts_not(later: Entry[House]) -> tuple[str, str]:
    return (
        f"The book goes on by what entry {later.seq} says of the house, which is of a later time, "
        f"{clock(later.draft.happened)}.",
        "If this is to count, enter it again without --at.",
    )


def _house(
    words: Words,
    name: str,
    currency: str,
    address: str | None,
    country: str | None,
    time_zone: str | None,
    fluid_ounce: str | None,
    phone: str | None,
) -> House:
    return House(
        name=words.text(name, "name of the house"),
        currency=words.read(lambda: _currency(currency), ""),
        address=words.text_or_none(address, "address"),
        country=words.read(lambda: _country(country), None),
        time_zone=words.read(lambda: _zone(time_zone or "UTC"), "UTC"),
        fluid_ounce=words.read(lambda: _ounce(fluid_ounce or "US"), "US"),
        phone=words.text_or_none(phone, "telephone number"),
    )


def _web(text: str) -> str:
    """Return the address of the house's pages, as it begins every page's own."""
    told = text.strip().rstrip("/")
    if not _WEB.fullmatch(told):
        raise InputError(
            f'"{text}" is no address on the web that fits a symbol of a label.',
            f"Write it as https://example.com/lots, in at most {LONGEST_WEB} characters.",
        )
    return told


def _currency(text: str) -> str:
    code = text.strip().upper()
    if not _CURRENCY.fullmatch(code):
        raise InputError(f'"{text}" is not a currency code.', "Write three letters, such as EUR.")
    return code


def _country(text: str | None) -> str | None:
    told = " ".join((text or "").split())
    if not told:
        return None
    if not _COUNTRY.fullmatch(told.upper()):
        raise InputError(
            f'"{visible(told)}" is not the code of a country.',
            "Write its two letters by ISO 3166, such as IE for Ireland.",
        )
    return told.upper()


def _zone(text: str) -> str:
    if text not in zones() or not ZoneInfo(text):
        raise InputError(
            f'"{text}" is not a time zone.', "Write one such as Europe/Dublin or America/Chicago."
        )
    return text


def _ounce(text: str) -> str:
    for word in ("US", "imperial"):
        if text.strip().lower() == word.lower():
            return word
    raise InputError(f'"{text}" is not a fluid ounce.', "Choose US or imperial.")
