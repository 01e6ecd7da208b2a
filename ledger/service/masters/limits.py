"""Limits and markers as data: those that come with pottle, and the maker's own.

Guarantees: every limit names its source and whether its value was read there; a limit of the book
takes the place of the one of the same code that came with pottle, from the day it holds. Refuses: a
value without a unit; a limit that would end before it begins.
"""

from datetime import date

from msgspec.structs import replace

from ledger.domain.entries import Limit
from ledger.domain.entries.choices import Bound, KnownBy, LimitBasis, LimitUnit
from ledger.domain.masters.limits import Holds, ListedLimit, holds_on, listed_on
from ledger.errors import RefusedError
from ledger.service.account.shipped import limit_versions, substances
from ledger.service.desk.act import act, at_desk
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.desk.clock import today_on
from ledger.service.desk.foresight import Ahead
from ledger.service.desk.reader import Words
from ledger.service.masters.short_names import read_code
from ledger.store.read import queries


def limits(book: Book) -> tuple[ListedLimit, ...]:
    """Return the limits as they stand today, by code, those past and those to come among them."""
    with book.reading() as connection:
        on = today_on(connection, book.clock())
        return tuple(listed_on(said, on) for said in limit_versions(connection).values())


@act
def limit(
    book: Book,
    how: How,
    *,
    code: str,
    substance: str | None = None,
    bound: str | None = None,
    value: str | None = None,
    unit: str | None = None,
    basis: str | None = None,
    place: str | None = None,
    citation: str | None = None,
    known_by: str | None = None,
    says: str | None = None,
    since: str | None = None,
    until: str | None = None,
) -> Recorded:
    """Add a limit, or take the place of one of the same code; what is not given stays.

    The days of a limit that is past do not: said anew without any, it holds from that day on.
    """
    with at_desk(book, how, Ahead(also=((queries.limits,),))) as desk:
        words = desk.words
        key = words.read(lambda: read_code(code, "limit", "us-alcoholic"), "")
        said = limit_versions(desk.connection).get(key)
        old = said[-1] if said else None
        on = desk.happened.local().date()
        if old and (since, until) == (None, None) and holds_on(old, on) is Holds.PAST:
            old = replace(old, since=on, until=None)
        facts = _limit(
            words,
            old,
            {
                "code": key,
                "substance": substance,
                "bound": bound,
                "value": value,
                "unit": unit,
                "basis": basis,
                "place": place,
                "citation": citation,
                "known_by": known_by,
                "says": says,
                "since": since,
                "until": until,
            },
        )
        return desk.record(facts)


def _limit(words: Words, old: Limit | None, told: dict[str, str | None]) -> Limit:
    def kept(name: str) -> str | None:
        before = getattr(old, name, None)
        return told[name] or (str(before) if before is not None else None)

    value = words.scaled(told["value"], 1_000_000, "", "value")
    if value is None and old is None:
        # Read again as what must be given, so that its lack is told with the rest.
        words.number(None, 1_000_000, "", "value")
    if old and value not in (None, old.value_micro) and not told["citation"]:
        words.notes.append(
            f'The value is another now, and its source still the old one: "{old.citation}", '
            f"{old.known_by}. If the value stands elsewhere: pottle limits {old.code} --citation "
            "SOURCE --known-by read"
        )
    since, until = words.day(kept("since")), words.day(kept("until"))
    words.read(lambda: _ends_after_it_begins(since, until), None)
    return Limit(
        code=told["code"] or "",
        substance=substances().counted_as(words.text(kept("substance"), "substance")),
        bound=words.needed(kept("bound") or "at-most", Bound, "bound"),
        value_micro=value if value is not None else (old.value_micro if old else 0),
        unit=words.needed(kept("unit"), LimitUnit, "unit"),
        basis=words.needed(kept("basis"), LimitBasis, "basis"),
        place=words.text(kept("place"), "place"),
        citation=words.text(kept("citation"), "citation"),
        known_by=words.needed(kept("known_by") or "recalled", KnownBy, "source of the value"),
        says=words.text_or_none(kept("says"), "meaning"),
        since=since,
        until=until,
    )


def _ends_after_it_begins(since: date | None, until: date | None) -> None:
    if since and until and until < since:
        raise RefusedError(
            f"The limit would hold until {until}, before it begins on {since}.",
            "Give --since the earlier day.",
        )
