"""The names of those who get goods: who can be named.

Guarantees: a market and a walk-in customer are told by one word each, and are nobody in particular.
Refuses: to compare names; see `ledger.domain.masters.near_names`.
"""

import unicodedata

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
    return "".join(filter(str.isalnum, apart))
