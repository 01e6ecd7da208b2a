"""The starter shelf: usual materials that a new book may begin with.

Guarantees: each is recorded by the verb of every material, with its density, allergens and caution
beside their source in the file. Refuses: to stand for the papers of a delivery, which say better.
"""

from collections.abc import Iterable

from msgspec import Struct

from ledger.errors import InputError, did_you_mean
from ledger.service.account.shipped import read_shipped
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.masters.material import material

ALL = "all"
"""The word for every material of the shelf."""


class Shelved(Struct, frozen=True):
    """A material of the starter shelf."""

    code: str
    """Its short name."""
    name: str
    """Its name for people."""
    kind: str
    """What it is to the trade."""
    how: str | None = None
    """How it is obtained."""
    density: str | None = None
    """Its density in g/mL."""
    density_temp: str | None = None
    """The temperature of that in °C."""
    abv: str | None = None
    """Its strength in % vol."""
    allergens: str | None = None
    """The allergens it carries, as it usually is; none, as a word."""
    additive: str | None = None
    """Its class and number as an additive."""
    caution: str | None = None
    """What to be careful of."""
    citation: str | None = None
    """Where density, strength or number are from."""
    essence: str | None = None
    """The essence that a starter formula makes of it."""


def starter_shelf() -> tuple[Shelved, ...]:
    """Return the materials of the starter shelf, oils first."""
    return tuple(_shelved(row) for row in read_shipped("shelf.toml")["material"])


def _shelved(row: dict[str, str]) -> Shelved:
    told = {name.replace("-", "_"): value for name, value in row.items()}
    return Shelved(**{name: told[name] for name in Shelved.__struct_fields__ if name in told})


def chosen(text: str) -> tuple[Shelved, ...]:
    """Return the materials that a text ticks: their short names or numbers, or all.

    Raises:
        InputError: It names one that is not on the shelf.

    >>> [item.code for item in chosen("1-2, spirit")]
    ['orange-oil', 'lemon-oil', 'spirit']
    """
    shelf = starter_shelf()
    by_name = {item.code: item for item in shelf} | {str(n): i for n, i in enumerate(shelf, 1)}
    words = [name for word in text.replace(",", " ").split() for name in _spread(word)]
    if [word.casefold() for word in words] == [ALL]:
        return shelf
    for word in words:
        if word not in by_name:
            hint = did_you_mean(word, [item.code for item in shelf])
            raise InputError(
                f'"{word}" is not on the starter shelf.{hint}',
                f"Choose from: {', '.join(item.code for item in shelf)}; or all.",
            )
    return tuple(dict.fromkeys(by_name[word] for word in words))


def _spread(word: str) -> Iterable[str]:
    """Return the numbers of a span, or the word.

    >>> list(_spread("2-4")), list(_spread("cap"))
    (['2', '3', '4'], ['cap'])
    """
    first, _, last = word.partition("-")
    if first.isdecimal() and last.isdecimal() and len(last) < 3:
        return map(str, range(int(first), int(last) + 1))
    return (word,)


def shelve(book: Book, how: How, items: Iterable[Shelved]) -> list[Recorded]:
    """Record materials of the shelf."""
    return [
        material(
            book,
            how,
            code=item.code,
            name=item.name,
            kind=item.kind,
            obtained=item.how,
            density=item.density,
            density_temp=item.density_temp,
            abv=item.abv,
            allergens=item.allergens,
            additive=item.additive,
            caution=item.caution,
        )
        for item in items
    ]
