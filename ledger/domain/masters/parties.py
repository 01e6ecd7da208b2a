"""The names of those who get goods: who can be named, and which names are nearly the same.

Guarantees: a market and a walk-in customer are told by one word each, and are nobody in particular;
names that differ by accents, case, marks or one letter are near. Refuses: to take one name for
another; whether both are the same is asked.
"""

import unicodedata
from collections.abc import Iterable

from ledger.domain.entries import Facts, Party, Person

MARKET, WALK_IN = "market", "walk-in"
"""What stands for people whom nobody can name: at a market, and who came in."""
NOBODY_IN_PARTICULAR = frozenset({MARKET, WALK_IN})
"""Words that say to whom goods went, and name nobody."""
_WORDS = {
    "market": MARKET,
    "amarket": MARKET,
    "walkin": WALK_IN,
    "walkincustomer": WALK_IN,
    "awalkincustomer": WALK_IN,
}
_SHORTEST = 5
"""From how many letters on one letter is taken for a slip; shorter names differ by little."""


def party_word(name: str) -> str:
    """Return the word for a market or a walk-in customer however it was written, else the name.

    >>> party_word("Walk in"), party_word("Market"), party_word("Market Inn")
    ('walk-in', 'market', 'Market Inn')
    """
    return _WORDS.get(plain(name), name)


def is_named(party: str | None) -> bool:
    """Tell whether a party can be called by its name.

    >>> is_named("Quay Bar"), is_named("market"), is_named(None)
    (True, False, False)
    """
    return party is not None and party not in NOBODY_IN_PARTICULAR


def is_forgotten(facts: Facts) -> bool:
    """Tell whether facts, told as the book knows them now, are of somebody who was forgotten."""
    match facts:
        case Party(name=name, code=code):
            return name == code
        case Person(name=name, initials=initials):
            return name == initials
        case _:
            return False


def plain(name: str) -> str:
    """Return a name without accents, case, spaces and marks.

    >>> plain("Café “Blue Kettle”")
    'cafebluekettle'
    """
    apart = unicodedata.normalize("NFKD", name).casefold()
    return "".join(letter for letter in apart if letter.isalnum())


def near_names(name: str, known: Iterable[str]) -> tuple[str, ...]:
    """Return the known names that one may have been meant for, without itself, in order.

    >>> near_names("Cafe Bleu", ["Café Bleu", "Café Blue", "Quay Bar"])
    ('Café Bleu', 'Café Blue')
    """
    return tuple(sorted(other for other in set(known) - {name} if _is_near(name, other)))


def _is_near(one: str, other: str) -> bool:
    a, b = plain(one), plain(other)
    if a == b:
        # Of marks alone nothing is left to compare.
        return bool(a)
    return min(len(a), len(b)) >= _SHORTEST and _is_slip(a, b)


def _is_slip(a: str, b: str) -> bool:
    """Tell whether one letter is another, too many, or changed over with the next."""
    if abs(len(a) - len(b)) > 1:
        return False
    same = next((at for at, (x, y) in enumerate(zip(a, b, strict=False)) if x != y), None)
    at = min(len(a), len(b)) if same is None else same
    # Stall 7 and stall 8 are two stalls, and no slip.
    if any(letter.isdigit() for letter in (a[at : at + 1] + b[at : at + 1])):
        return False
    if len(a) != len(b):
        short, long = sorted((a, b), key=len)
        return short[at:] == long[at + 1 :]
    is_swapped = a[at : at + 2] == b[at : at + 2][::-1] and a[at + 2 :] == b[at + 2 :]
    return a[at + 1 :] == b[at + 1 :] or is_swapped
