"""Names that are nearly the same: which of many one may have been meant for.

Guarantees: names that differ by accents, case, marks or one letter are near; the answer is that of
comparing with every name, and few are compared. Refuses: to take one name for another.

A slip of one letter leaves what stands before it and what stands behind it, together all letters of
the shorter name but two; so the longer of both parts has at least half of these, and names that
share neither need not be compared.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator

from ledger.domain.masters.parties import plain

_SHORTEST = 5
"""From how many letters on one letter is taken for a slip; shorter names differ by little."""


class NearNames:
    """Names, found by others that are nearly they; more can be added.

    >>> NearNames(["Café Bleu", "Café Blue", "Quay Bar"]).of("Cafe Bleu")
    ('Café Bleu', 'Café Blue')
    """

    def __init__(self, names: Iterable[str] = ()) -> None:
        """Take in names."""
        self._names = set[str]()
        self._same: dict[str, list[str]] = defaultdict(list)
        self._alike: dict[tuple[int, str, str], list[tuple[str, str]]] = defaultdict(list)
        for name in names:
            self.add(name)

    def add(self, name: str) -> None:
        """Take in a name; one that is there stays as it is."""
        if name in self._names:
            return
        self._names.add(name)
        letters = plain(name)
        self._same[letters].append(name)
        if len(letters) >= _SHORTEST:
            for kept in {_kept(len(letters) - 1), _kept(len(letters))}:
                for part in _parts(letters, kept):
                    self._alike[len(letters), *part].append((letters, name))

    def of(self, name: str) -> tuple[str, ...]:
        """Return the names that one may have been meant for, without itself, in order."""
        letters = plain(name)
        # Of marks alone nothing is left to compare.
        found = set(self._same.get(letters, ()) if letters else ())
        found.update(other for those, other in self._like(letters) if _is_slip(letters, those))
        return tuple(sorted(found - {name}))

    def _like(self, letters: str) -> Iterator[tuple[str, str]]:
        size = len(letters)
        for length in range(max(size - 1, _SHORTEST), size + 2) if size >= _SHORTEST else ():
            for part in _parts(letters, _kept(min(size, length))):
                yield from self._alike.get((length, *part), ())


def _kept(shorter: int) -> int:
    """Return how many letters a slip leaves at least at one end of the shorter of two names."""
    return (shorter - 1) // 2


def _parts(letters: str, kept: int) -> Iterator[tuple[str, str]]:
    yield "head", letters[:kept]
    yield "tail", letters[-kept:]


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
