"""The fixed words of labels in the language of a market, read from data.

Guarantees: every language has every word; a date is day, month and year in that order. Refuses: to
translate what the maker typed.

References:
    Regulation (EU) No 1169/2011, Article 15 (a language easily understood where it is sold),
    Annex X, 1 (the words before the date, and its order) (read, see label_law.csv).
"""

import tomllib
from collections.abc import Mapping
from datetime import date
from functools import cache
from importlib.resources import files

import msgspec
from msgspec import Struct

from ledger.errors import InputError

ENGLISH = "en"
"""The language where none is named."""


class LabelWords(Struct, frozen=True, forbid_unknown_fields=True):
    """The fixed words of one language."""

    name: str
    """The language in English."""
    best_before: str
    """Before the day until which it is best."""
    made: str
    """Before the day on which it was made."""
    lot: str
    """Before the lot."""
    strength: str
    """Around the strength."""
    ingredients: str
    """Before the list of ingredients."""
    contains: str
    """Before allergens."""
    opened: str
    """Within how many days to use it once opened."""
    pour: str
    """How a syrup is diluted."""
    makes: str
    """What a pour makes."""
    care: str
    """The caution on an essence."""
    months: tuple[str, ...] = ()
    """Names of the months; in figures without them."""
    listed: Mapping[str, str] = {}
    """What a list of ingredients names by law, by its English name; none for English itself."""

    def day(self, day: date) -> str:
        """Return a day as this language writes it on a label.

        >>> label_words("en").day(date(2026, 12, 28)), label_words("de").day(date(2026, 2, 3))
        ('28 Dec 2026', '3.2.2026')
        """
        if self.months:
            return f"{day.day} {self.months[day.month - 1]} {day.year}"
        return f"{day.day}.{day.month}.{day.year}"


@cache
def languages() -> Mapping[str, LabelWords]:
    """Return the words of all languages, by their two letters."""
    text = (files("reports.words.goods") / "label_words.toml").read_text(encoding="utf-8")
    return msgspec.convert(tomllib.loads(text), dict[str, LabelWords])


def label_words(code: str | None) -> LabelWords:
    """Return the words of a language; English where none is named.

    Raises:
        InputError: There are none for it.
    """
    known = languages()
    key = (code or ENGLISH).strip().lower()
    if key not in known:
        told = ", ".join(f"{code} ({words.name})" for code, words in known.items())
        raise InputError(f'There are no words for labels in "{code}".', f"Give one of: {told}.")
    return known[key]
