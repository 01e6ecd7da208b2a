"""Reading words: free text on one line, and one of a closed list.

Guarantees: text is folded to one line; capitals, blanks, dashes and low lines do not matter in a
word of a list. Refuses: characters that nobody can see, text too long, words outside the list.
"""

from enum import StrEnum
from typing import TypeVar

from ledger.domain.amounts.scaled import with_article
from ledger.errors import InputError

WordT = TypeVar("WordT", bound=StrEnum)


MANY = frozenset({"allergens", "last contents", "words"})
"""Texts whose names are of many things."""
LONGEST_TEXT = 2000
"""Most characters of any free text."""


def read_word(text: str, words: type[WordT], what: str) -> WordT:
    """Return one of a closed list of words.

    Raises:
        InputError: It is not in the list, which is named.
    """
    chosen = next((word for word in words if _folded(word) == _folded(text)), None)
    if chosen is None:
        raise InputError(
            f'"{text}" is not {with_article(what)}.' if text else f"The {what} is missing.",
            f"Choose one of: {', '.join(words)}.",
        )
    return chosen


def _folded(word: str) -> str:
    return "-".join(word.strip().lower().replace("_", " ").split())


def read_text(text: str, what: str) -> str:
    """Return free text on one line, as it will be stored.

    Raises:
        InputError: It is empty, too long, or holds characters nobody can see.
    """
    folded = " ".join(text.split())
    if not folded:
        todo = "Say them." if what in MANY else f"Give the {what} in words."
        raise InputError(f"The {what} {'are' if what in MANY else 'is'} missing.", todo)
    if len(folded) > LONGEST_TEXT:
        raise InputError(
            f"The {what} {'have' if what in MANY else 'has'} {len(folded)} characters; at most "
            f"{LONGEST_TEXT} are kept.",
            "Say it in fewer words, or in several notes.",
        )
    hidden = next((letter for letter in folded if not letter.isprintable()), None)
    if hidden:
        raise InputError(
            f"The {what} {'hold' if what in MANY else 'holds'} the invisible character "
            f"U+{ord(hidden):04X}.",
            "Type it again without it.",
        )
    return folded
