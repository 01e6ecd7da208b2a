"""Setting up: the house, its people, materials and formulas.

Guarantees: `init` makes a book with its house or nothing. Refuses: a book where one is already.
"""

import re
from zoneinfo import ZoneInfo, available_timezones

from msgspec.structs import replace

from ledger.domain.entries import House, Material, Person
from ledger.domain.entries.masters import Constituent
from ledger.domain.entries.words import FoodGrade, HowObtained, MaterialKind
from ledger.errors import InputError, RefusedError, StorageError
from ledger.service.book import Book, Clock, How, Recorded, wall_clock
from ledger.service.desk import Desk, at_desk, desk_on
from ledger.service.words import Words, read_scaled
from ledger.store import queries
from ledger.store.engine import connect

_CODE = re.compile(r"[a-z0-9][a-z0-9-]{0,29}", re.ASCII)
_INITIALS = re.compile(r"[A-Z]{1,4}", re.ASCII)
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
    from ledger.store.create import create_book

    book = Book(where, clock)
    facts = _checked_house(name, currency, address, country, time_zone, fluid_ounce, phone)
    create_book(
        book.engine,
        where,
        lambda connection: desk_on(connection, book.clock(), How(by=by)).record(facts),
    )
    return book


def _checked_house(
    name: str,
    currency: str,
    address: str | None,
    country: str | None,
    time_zone: str | None,
    fluid_ounce: str | None,
    phone: str | None,
) -> House:
    with connect(":memory:").connect() as connection:
        words = Words(connection, "US", None)
        facts = _house(words, name, currency, address, country, time_zone, fluid_ounce, phone)
        words.done()
    return facts


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
) -> Recorded:
    """Say anew what is known of the house; what is not given stays as it was."""
    with at_desk(book, how) as desk:
        old = queries.house(desk.connection)
        if old is None:
            raise StorageError("This book has no house.", "Make a new one with: pottle init")
        facts = _house(
            desk.words,
            name or old.name,
            currency or old.currency,
            address or old.address,
            country or old.country,
            time_zone or old.time_zone,
            fluid_ounce or old.fluid_ounce,
            phone or old.phone,
        )
        told = desk.words.scaled(hour, 100, "", "cost of an hour")
        facts = replace(facts, hour_minor=told if told is not None else old.hour_minor)
        return desk.record(facts)


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
        country=words.text_or_none(country, "country"),
        time_zone=words.read(lambda: _zone(time_zone or "UTC"), "UTC"),
        fluid_ounce=words.read(lambda: _ounce(fluid_ounce or "US"), "US"),
        phone=words.text_or_none(phone, "telephone number"),
    )


def _currency(text: str) -> str:
    code = text.strip().upper()
    if not _CURRENCY.fullmatch(code):
        raise InputError(f'"{text}" is not a currency code.', "Write three letters, such as EUR.")
    return code


def _zone(text: str) -> str:
    if text not in available_timezones() or not ZoneInfo(text):
        raise InputError(
            f'"{text}" is not a time zone.', "Write one such as Europe/Dublin or America/Chicago."
        )
    return text


def _ounce(text: str) -> str:
    for word in ("US", "imperial"):
        if text.strip().lower() == word.lower():
            return word
    raise InputError(f'"{text}" is not a fluid ounce.', "Choose US or imperial.")


def person(book: Book, how: How, *, initials: str, name: str, role: str | None = None) -> Recorded:
    """Add a person who writes in the book; the first may add herself."""
    with at_desk(book, how) as desk:
        if how.by is None and not queries.people(desk.connection):
            desk.by = initials.strip().upper()
        code = desk.words.read(lambda: _initials(desk, initials), "")
        return desk.record(
            Person(
                initials=code,
                name=desk.words.text(name, "name"),
                role=desk.words.text_or_none(role, "role"),
            )
        )


def _initials(desk: Desk, text: str) -> str:
    code = text.strip().upper()
    if not _INITIALS.fullmatch(code):
        raise InputError(f'"{text}" are not initials.', "Write one to four letters A-Z.")
    if code in queries.people(desk.connection):
        raise RefusedError(
            f"The initials {code} are in the book already.", "Choose others for this person."
        )
    return code


def material(
    book: Book,
    how: How,
    *,
    code: str,
    name: str | None = None,
    kind: str | None = None,
    obtained: str | None = None,
    density: str | None = None,
    density_temp: str | None = None,
    abv: str | None = None,
    food_grade: str | None = None,
    allergens: str | None = None,
    ingredient_name: str | None = None,
    caution: str | None = None,
    constituents: str | None = None,
    change: bool = False,
) -> Recorded:
    """Add a material, or say anew what is known of one; what is not given stays as it was."""
    with at_desk(book, how) as desk:
        words = desk.words
        key = words.read(lambda: _material_code(desk, code, change), "")
        old = queries.material(desk.connection, key) if change and key else None
        sort = words.one_of(kind, MaterialKind, "kind of material")
        if old is None and not kind:
            sort = words.needed(kind, MaterialKind, "kind of material")
        facts = Material(
            code=key,
            name=words.text_or_none(name, "name") or (old.name if old else code),
            sort=sort or (old.sort if old else MaterialKind.OTHER),
            how_obtained=words.one_of(obtained, HowObtained, "way of obtaining")
            or (old.how_obtained if old else None),
            density_mg_per_l=words.scaled(density, 1_000_000, "g/mL", "density")
            or (old.density_mg_per_l if old else None),
            density_temp_mdegc=words.scaled(density_temp, 1000, "°C", "temperature")
            or (old.density_temp_mdegc if old else None),
            abv_mpct=words.read(lambda: read_strength(abv), None)
            or (old.abv_mpct if old else None),
            food_grade=words.one_of(food_grade, FoodGrade, "food grade")
            or (old.food_grade if old else FoodGrade.UNKNOWN),
            allergens=words.text_or_none(allergens, "allergens")
            or (old.allergens if old else None),
            ingredient_name=words.text_or_none(ingredient_name, "name on the ingredient list")
            or (old.ingredient_name if old else None),
            caution=words.text_or_none(caution, "caution") or (old.caution if old else None),
            constituents=words.read(lambda: _constituents(constituents), ())
            or (old.constituents if old else ()),
        )
        return desk.record(facts)


def read_code(text: str, what: str, such_as: str) -> str:
    """Return a short name as it is typed at the prompt.

    Raises:
        InputError: It is empty, too long, or holds other characters.
    """
    code = text.strip().lower()
    if not _CODE.fullmatch(code):
        raise InputError(
            f'"{text}" cannot be the short name of a {what}.',
            f"Use at most 30 letters a-z, digits and dashes, such as {such_as}.",
        )
    return code


def _material_code(desk: Desk, text: str, change: bool) -> str:
    code = read_code(text, "material", "orange-oil")
    known = queries.material(desk.connection, code) is not None
    if known and not change:
        raise RefusedError(
            f"The material {code} is in the book already.",
            f"Say what is new about it with: pottle material change {code} ...",
        )
    if change and not known:
        raise RefusedError(
            f"The material {code} is not in the book.", f"Add it with: pottle material add {code}"
        )
    return code


def read_strength(text: str | None) -> int | None:
    """Return a strength in thousandths of a per cent by volume, or None when none is given.

    Raises:
        InputError: It is no number.
        RefusedError: It is above 100 %.
    """
    if not text:
        return None
    value = read_scaled(text, 1000, "%", "strength")
    if not 0 <= value <= 100_000:
        raise RefusedError(
            f"A strength of {text} % cannot be: it lies between 0 and 100 % by volume.",
            "Read the label again; US proof is twice the per cent.",
        )
    return value


def _constituents(text: str | None) -> tuple[Constituent, ...]:
    found = []
    for part in (text or "").split(";"):
        if not part.strip():
            continue
        substance, _, fraction = part.strip().rpartition(" ")
        if not substance:
            raise InputError(
                f'"{part.strip()}" is not a constituent with its share.',
                "Write such as: methyl salicylate 98%",
            )
        found.append(Constituent(substance, read_scaled(fraction, 10_000, "%", "share")))
    return tuple(found)
