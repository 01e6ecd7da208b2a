"""A new book: its house, who writes in it, and what it begins with.

Guarantees: without questions where all is given, with them at a terminal; all is asked for and
checked before the book is made.
"""

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from cli.kit.answer import say
from cli.kit.ask import ask
from cli.kit.call import Call
from cli.kit.tables import print_lines, print_table
from ledger.errors import InputError
from ledger.service.desk.book import Book, How
from ledger.service.masters.formula import load_text
from ledger.service.masters.house import check_house
from ledger.service.masters.house import init as make
from ledger.service.masters.person import MOST_INITIALS, person, read_initials
from ledger.service.masters.shelf import Shelved, chosen, shelve, starter_shelf
from reports.words.masters.starter import starter_formula

if TYPE_CHECKING:
    from reports.json.masters.init import InitAnswer


@dataclass(frozen=True, slots=True)
class Beginning:
    """What a new book begins with, as it is written."""

    house: str = ""
    currency: str = ""
    zone: str = "UTC"
    is_zone_told: bool = False
    address: str | None = None
    country: str | None = None
    fluid_ounce: str | None = None
    phone: str | None = None
    person: str | None = None
    """Initials and name of who writes."""
    shelf: str | None = None
    """Materials of the starter shelf."""
    with_formulas: bool = False
    """Whether a starter formula is made of each oil that has one."""


def asked(begun: Beginning) -> Beginning:
    """Return a beginning with what is missing asked for."""
    print_lines(
        ["A new book. Enter takes what stands in brackets; Ctrl-D ends, with no book made."]
    )
    house = begun.house or ask("Your house", is_needed=True)
    country = begun.country or ask(
        "Country, two letters such as IE", check=lambda text: check_house(house, country=text)
    )
    currency = begun.currency or ask(
        "Money that costs are in, such as EUR",
        is_needed=True,
        check=lambda text: check_house(house, text),
    )
    zone = ask("Time zone", begun.zone, check=lambda text: check_house(house, time_zone=text))
    who = begun.person or ask(
        "Your initials and name, such as AB Ada Brook", check=read_person, is_needed=True
    )
    shelf = begun.shelf if begun.shelf is not None else _ask_shelf()
    return replace(
        begun,
        house=house,
        country=country or None,
        currency=currency,
        zone=zone,
        is_zone_told=True,
        person=who,
        shelf=shelf,
        with_formulas=begun.with_formulas or _wants_formulas(shelf),
    )


def _ask_shelf() -> str:
    rows = [
        [
            str(number),
            item.code,
            item.name,
            item.kind,
            f"{item.density} g/mL" if item.density else "",
        ]
        for number, item in enumerate(starter_shelf(), 1)
    ]
    print_lines(["The starter shelf, with published densities and usual cautions:"])
    print_table(("", "code", "name", "kind", "density"), rows)
    return ask("Which of them: all, or numbers such as 1 9-12; Enter for none", check=chosen)


def _wants_formulas(shelf: str) -> bool:
    codes = [code for code, _ in _starters(chosen(shelf))]
    if not codes:
        return False
    told = ask(f"Starter formulas of these ({', '.join(codes)}), to change later: y or n", "y")
    return told.casefold() in ("y", "yes")


def _starters(items: tuple[Shelved, ...]) -> list[tuple[str, str]]:
    """Return the formulas that materials of the shelf make, each with its text."""
    by_kind = {item.kind: item.code for item in reversed(items)}
    spirit, clarifier = by_kind.get("ethanol"), by_kind.get("clarifier")
    told = []
    for item in items if spirit else ():
        if item.essence:
            code = item.essence.lower().replace(" ", "-")
            told.append(
                (code, starter_formula(code, item.essence, item.code, spirit or "", clarifier))
            )
    return told


def read_person(text: str) -> tuple[str, str]:
    """Return initials and name of a text that has both, or of a name its own initials.

    Raises:
        InputError: There is no name, or what stands before it are no initials.

    >>> read_person("Ada Brook")
    ('AB', 'Ada Brook')
    """
    first, *others = text.split()
    if others and (first.istitle() or len(first) > MOST_INITIALS):
        # A name alone, which brings its initials with it.
        others = [first, *others]
        first = "".join(word[0] for word in others)[:MOST_INITIALS]
    read_initials(first)
    if not others:
        raise InputError(
            f'"{text}" has no name behind the initials.', 'Write both, such as "AB Ada Brook".'
        )
    return first.upper(), " ".join(others)


def make_book(call: Call, where: str, begun: Beginning) -> None:
    """Make a book with what it begins with, and say so."""
    from reports.json.masters.init import init_answer

    items = chosen(begun.shelf or "")
    who = read_person(begun.person) if begun.person else None
    if items and not who:
        raise InputError(
            "Materials are entered by somebody, and nobody is named.",
            'Say who writes: --person "AB Ada Brook"',
        )
    book = call.at_end.enter_context(_made(where, begun))
    call.books.append(book)
    codes = _filled(book, who, items, with_formulas=begun.with_formulas)
    step = _next(who, items, codes)

    def plain() -> "InitAnswer":
        return init_answer(book.shown, begun.zone)

    say(call, plain, *_told(book, begun, who, items, codes), f"Next: {step}")


def _made(where: str, begun: Beginning) -> Book:
    return make(
        where,
        name=begun.house,
        currency=begun.currency,
        address=begun.address,
        country=begun.country,
        time_zone=begun.zone,
        fluid_ounce=begun.fluid_ounce,
        phone=begun.phone,
    )


def _filled(
    book: Book,
    who: tuple[str, str] | None,
    items: tuple[Shelved, ...],
    *,
    with_formulas: bool,
) -> list[str]:
    """Enter who writes, the materials and the formulas; return the formulas' short names."""
    if who is None:
        return []
    how = How(who[0])
    person(book, How(), initials=who[0], name=who[1])
    shelve(book, how, items)
    starters = _starters(items) if with_formulas else []
    for code, text in starters:
        load_text(book, how, text, f"{code}.toml")
    return [code for code, _ in starters]


def _told(
    book: Book,
    begun: Beginning,
    who: tuple[str, str] | None,
    items: tuple[Shelved, ...],
    codes: list[str],
) -> list[str]:
    lines = [f"Made a new book for {begun.house} at {book.shown}."]
    if not begun.is_zone_told:
        lines.append(
            f"Times without a zone are read on the clock of {begun.zone}, which is this machine's; "
            "for another: pottle house --time-zone ZONE"
        )
    if who:
        lines.append(f"{who[0]} is {who[1]}; so that entries carry it: export POTTLE_BY={who[0]}")
    if items:
        lines.append(f"On the shelf: {', '.join(item.code for item in items)}.")
        lines.append(
            "Densities and cautions are the usual ones; the papers of a delivery say better."
        )
    if codes:
        lines.append(f"Formulas: {', '.join(codes)}. See one: pottle formula show {codes[0]}")
    return lines


def _next(who: tuple[str, str] | None, items: tuple[Shelved, ...], codes: list[str]) -> str:
    if who is None:
        return 'pottle person add INITIALS "NAME"'
    return "pottle receive" if items else 'pottle material add CODE --name "NAME" --kind KIND'
