"""A list of ingredients in the language of a market.

Guarantees: what the law itself names, such as water or a preservative, is in that language; all
else is by the name that the book has for it there, and what has none is told. Refuses: to
translate.
"""

import re
from collections.abc import Iterable

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.entries import Material
from ledger.science.contents.ingredients import Ingredient, Listed
from ledger.service.glass.card import ServingCard
from reports.words.goods.label_words import LabelWords, label_words

_PARTS = re.compile(r"(.+?) \((.+)\)")
_NUMBER = re.compile(r"E \d{3,4}[a-z]?")


class InLanguage(Struct, frozen=True):
    """A list in a language."""

    listed: Listed
    """The list, in it as far as it goes."""
    without: tuple[str, ...]
    """Codes of materials that have no name in it."""


def in_language(listed: Listed, materials: Iterable[Material], language: str | None) -> InLanguage:
    """Return a list in a language; as it is in the one in which materials are named."""
    words = label_words(language)
    if words == label_words(None):
        return InLanguage(listed, ())
    code = (language or "").strip().lower()
    names = {
        item.code: told.name for item in materials for told in item.names if told.language == code
    }
    named = [(item, _named(item, names, words)) for item in listed.ingredients]
    done = tuple(replace(item, name=name or item.name) for item, name in named)
    without = [material for item, name in named if not name for material in item.materials]
    return InLanguage(
        replace(listed, ingredients=done), tuple(code for code in without if code not in names)
    )


def card_in_language(
    card: ServingCard | None, materials: Iterable[Material], language: str | None
) -> ServingCard | None:
    """Return a card with its list of ingredients in a language."""
    if card is None:
        return None
    listed = in_language(card.declaration.listed, materials, language).listed
    return replace(card, declaration=replace(card.declaration, listed=listed))


def _named(item: Ingredient, names: dict[str, str], words: LabelWords) -> str | None:
    """Return what a list calls an ingredient; None where nobody said."""
    if apart := _PARTS.fullmatch(item.name):
        klass, what = apart[1], apart[2]
        own = what if _NUMBER.fullmatch(what) else words.listed.get(what) or _own(item, names)
        known = words.listed.get(klass)
        return f"{known} ({own})" if known and own else None
    if item.name.endswith("flavouring"):
        return words.listed.get(item.name)
    return _own(item, names) or words.listed.get(item.name)


def _own(item: Ingredient, names: dict[str, str]) -> str | None:
    """Return the one name that all materials of an ingredient have; None where there is none."""
    own = {names.get(code) for code in item.materials}
    return own.pop() if len(own) == 1 else None


def unnamed_lines(
    card: ServingCard | None, materials: Iterable[Material], language: str | None
) -> tuple[str, ...]:
    """Return which materials have no name in the language of a label, in a line."""
    if card is None:
        return ()
    without = in_language(card.declaration.listed, materials, language).without
    if not without:
        return ()
    return (
        f"Not in {label_words(language).name} on the list: {', '.join(without)}. Say each with: "
        f"pottle material change CODE --name-in {(language or '').strip().lower()}=NAME",
    )


def typed_lines(language: str | None) -> tuple[str, ...]:
    """Return what of a label in another language stays as it was typed, in a line."""
    words = label_words(language)
    if words == label_words(None):
        return ()
    return (
        f"Its fixed words are in {words.name}. The product, texts, allergens, nutrition and other "
        "cautions stay as they were typed: have them put into that language where the law asks for "
        "it.",
    )
