"""Characters that no font here has a shape for: on paper their number stands in a box.

Guarantees: whoever has a paper drawn can tell which these were. Refuses: to let one vanish.
"""

import unicodedata
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar

_BOXED: ContextVar[set[str] | None] = ContextVar("boxed", default=None)


@contextmanager
def noting_boxed() -> Iterator[set[str]]:
    """Give the set of all characters that are boxed on papers drawn meanwhile."""
    boxed: set[str] = set()
    token = _BOXED.set(boxed)
    try:
        yield boxed
    finally:
        _BOXED.reset(token)


def note_boxed(char: str) -> None:
    """Note a character that is boxed, where somebody wants to know."""
    boxed = _BOXED.get()
    if boxed is not None:
        boxed.add(char)


def number_of(char: str) -> str:
    """Return what stands in the box: the character's number, as Unicode writes it.

    >>> number_of("☃"), number_of(chr(7))
    ('2603', '0007')
    """
    return f"{ord(char):04X}"


def boxed_words(chars: Iterable[str]) -> str:
    """Return a sentence that names boxed characters.

    >>> boxed_words({"☃"})
    'No font here has a shape for “☃” (U+2603 SNOWMAN); its number stands in a box on the paper.'
    """
    named = [_named(char) for char in sorted(chars)]
    many = ("their numbers stand in boxes", "its number stands in a box")[len(named) == 1]
    return f"No font here has a shape for {', '.join(named)}; {many} on the paper."


def _named(char: str) -> str:
    """Name a character so that it can be found, even if it is invisible."""
    number = f"U+{number_of(char)} {unicodedata.name(char, '')}".rstrip()
    return f"“{char}” ({number})" if char.isprintable() else f"({number})"
