"""A list of ingredients that somebody typed into a formula's text, where the book reckons one.

Guarantees: it is found by the word before it, in every language of labels, up to the end of its
sentence. Refuses: to take out anything else, such as a line on traces of nuts.
"""

import re

from msgspec import Struct

HEADS = (
    *("Ingredients", "Zutaten", "Ingrédients"),
    *("Ingredientes", "Ingredienti", "Ingrediënten"),
)
"""The words that may stand before a list."""
_LIST = re.compile(
    # A full stop ends it where the next word begins a sentence, as after "approx." none does.
    rf"(?:^|(?<=[.!;\n])\s*)(?i:{'|'.join(HEADS)})\s*:\s*.+?(?:\.(?=\s+[A-ZÀ-Þ]|\s*$)|\n|$)",
    re.MULTILINE,
)


class Parted(Struct, frozen=True):
    """A text, and the list that stood in it."""

    rest: str
    """The text without the list."""
    typed: str
    """The list with the word before it; empty where there is none."""


def parted(text: str) -> Parted:
    """Return a text and the list of ingredients in it, apart.

    >>> parted("Store upright. Ingredients: sugar, water. May hold traces of nuts.")
    Parted(rest='Store upright. May hold traces of nuts.', typed='Ingredients: sugar, water.')
    """
    typed = " ".join(found.group().strip() for found in _LIST.finditer(text))
    if not typed:
        return Parted(text, "")
    return Parted(re.sub(r"[ \t]{2,}", " ", _LIST.sub(" ", text)).strip(), typed)
