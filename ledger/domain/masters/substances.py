"""What substances are called: one name for each, whatever a certificate calls it.

Guarantees: case, spaces, hyphens and Greek letters make no difference; kinds of a substance that
are listed apart count as it together. Refuses: to take a name for another that only looks like it.
"""

import re
from collections.abc import Iterable, Mapping
from difflib import get_close_matches

from msgspec import Struct
from msgspec.structs import replace

from ledger.domain.entries import Material
from ledger.domain.masters.gaps import Gap

_GREEK = {"α": "alpha", "β": "beta", "γ": "gamma", "δ": "delta"}
_LOOKS_LIKE = 0.85
"""How like a name must be to be asked about, from 0 to 1."""


class Substance(Struct, frozen=True):
    """A substance and what else it is called."""

    name: str
    """Its common name, as limits call it."""
    also: tuple[str, ...]
    """Other names of the same thing, CAS numbers among them."""
    forms: tuple[str, ...] = ()
    """Kinds of it that may be listed apart and count as it together."""


class Substances:
    """Substances by everything that they are called."""

    def __init__(self, known: Iterable[Substance]) -> None:
        """Learn the names."""
        self._same: dict[str, str] = {}
        self._form: dict[str, str] = {}
        for item in known:
            self._same |= {folded(name): item.name for name in (item.name, *item.also)}
            self._form |= {folded(name): item.name for name in item.forms}

    def same(self, name: str) -> str | None:
        """Return the common name of a substance by any of its names; None for another thing."""
        return self._same.get(folded(name))

    def counted_as(self, name: str) -> str:
        """Return what a substance, or a kind of one, counts as; itself where nothing is known."""
        key = folded(name)
        return self._same.get(key) or self._form.get(key) or name.lower()

    def knows(self, name: str) -> bool:
        """Return whether it is the name of a substance or of a kind of one."""
        return folded(name) in self._same or folded(name) in self._form

    def like(self, name: str) -> str | None:
        """Return the common name that one may have been meant for, or None."""
        near = get_close_matches(folded(name), self._same, 1, _LOOKS_LIKE)
        return self._same[near[0]] if near else None


def folded(name: str) -> str:
    """Return a name without what makes no difference.

    >>> folded("Methyl-Salicylate"), folded("α-Thujone")
    ('methylsalicylate', 'alphathujone')
    """
    plain = name.lower()
    for letter, word in _GREEK.items():
        plain = plain.replace(letter, word)
    return re.sub(r"[\s\-\u2010-\u2015\u2212]", "", plain)


def counted(material: Material, substances: Substances) -> Material:
    """Return a material with its constituents by the names under which they count."""
    return replace(
        material,
        constituents=tuple(
            replace(item, substance=substances.counted_as(item.substance))
            for item in material.constituents
        ),
    )


class Concerns(Struct, frozen=True):
    """What is to be said at once of the constituents of a material."""

    usual: tuple[str, ...] = ()
    """What goods of its name are known to carry and it does not tell."""
    unlimited: Mapping[str, str | None] = {}
    """Names in it that no limit speaks of, each with the name it may have been meant for."""
    neat: str = ""
    """The usual caution for goods that come in, with their name; empty where none is known."""
    undeclared: tuple[Gap, ...] = ()
    """Facts that a label of bottles which are released declares, and that are missing."""


NO_CONCERNS = Concerns()
"""Nothing is to be said."""
