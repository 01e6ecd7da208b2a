"""The errors of the book, each a whole sentence and a next step.

Guarantees: every error that leaves ``ledger`` on purpose is a `LedgerError`; it holds one or more
problems, each saying what happened and what to do next, in characters that can be seen, whatever
it quotes. Refuses: bare strings and codes.

The tree, by who must act::

    LedgerError
    ├── InputError         the words typed could not be read; say them again
    ├── RefusedError       it cannot be true; nothing was recorded
    ├── ReasonNeededError  it should not have happened; say why and it is recorded
    ├── FindingError       a check was made and found something (a failed verification ...)
    └── StorageError       the file or the server could not be used
        └── MovedError     somebody else wrote since the book was looked at; look again
"""

import re
from collections.abc import Callable, Iterable, Sequence
from typing import Self, TypeVar

ValueT = TypeVar("ValueT")


def visible(text: str) -> str:
    r"""Return a text with the number of each character that cannot be seen in its place.

    >>> visible("30\x1bmL")
    '30U+001BmL'
    """
    # Quoted raw, such characters would be obeyed by a terminal.
    if text.isprintable():
        return text
    return "".join(letter if letter.isprintable() else f"U+{ord(letter):04X}" for letter in text)


_ADDRESS = re.compile(r"(\b[\w+.-]+:/{1,3}[^\s:@/]*:)(?!PASSWORD@)\S*@")
_PASSWORD = re.compile(r"(password=)[^&\s]+", re.IGNORECASE)


def masked(text: str) -> str:
    """Return a text without the passwords of the addresses in it, well-formed or not.

    >>> masked("No book at postgresql:/ada:se/cr:et@host/book?sslpassword=x&a=b.")
    'No book at postgresql:/ada:***@host/book?sslpassword=***&a=b.'
    """
    if "@" in text:
        text = _ADDRESS.sub(r"\1***@", text)
    return _PASSWORD.sub(r"\1***", text) if "=" in text else text


LEAST_BEGINNING = 3
"""The fewest letters by which a word is known from its beginning."""


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """Return a question after the nearest of known words, each once, a blank before it; or nothing.

    Words that begin as the one given are nearer than those that are much like it.

    >>> did_you_mean("orang-oil", ["orange-oil", "spirit"]), did_you_mean("rum", ["spirit"])
    (' Did you mean orange-oil?', '')
    >>> did_you_mean("oran", ["orange-oil", "spirit", "orange-oil"])
    ' Did you mean orange-oil?'
    """
    from difflib import get_close_matches  # for who mistyped, and for nobody else

    asked, words = word.casefold(), list(dict.fromkeys(known))
    near = [other for other in words if other.startswith(asked)][:3]
    if len(asked.strip("-")) < LEAST_BEGINNING or not near:
        near = get_close_matches(asked, words, 3, 0.65)
    return f" Did you mean {' or '.join(near)}?" if near else ""


class LedgerError(Exception):
    """Base of all errors of the book.

    Args:
        what: What happened, with what was expected and what was got, as whole sentences.
        todo: What to do next, as a whole sentence; may be empty.
    """

    def __init__(self, what: str, todo: str = "") -> None:
        """Hold one problem; `of` holds several."""
        self.what = masked(visible(what))
        self.todo = masked(visible(todo))
        super().__init__(f"{self.what} {self.todo}".strip())
        self.problems: tuple[tuple[str, str], ...] = ((self.what, self.todo),)

    @classmethod
    def of(cls, problems: Sequence[tuple[str, str]]) -> Self:
        """Return one error that tells several problems, each once, in their order."""
        told = tuple(
            dict.fromkeys((masked(visible(what)), masked(visible(todo))) for what, todo in problems)
        )
        error = cls(" ".join(f"{what} {todo}".strip() for what, todo in told))
        error.problems = told
        return error


class InputError(LedgerError):
    """The words typed could not be read as what was asked for."""


class RefusedError(LedgerError):
    """What was entered cannot be true, so nothing was recorded."""


class ReasonNeededError(LedgerError):
    """What was entered should not have happened: it is recorded only with a reason."""


class FindingError(LedgerError):
    """A check was carried out and found something wrong."""


class StorageError(LedgerError):
    """The book's file or server could not be opened, read or written."""


class MovedError(StorageError):
    """Somebody else wrote since the book was looked at; who looks again may write."""


def together(errors: Sequence[LedgerError]) -> LedgerError:
    """Return one error that tells all the problems of several.

    Its class is `RefusedError` when one of them is, else that of the first.

    >>> together([InputError("A.", "Do a."), RefusedError("B.", "Do b.")]).problems
    (('A.', 'Do a.'), ('B.', 'Do b.'))
    """
    refused = any(isinstance(error, RefusedError) for error in errors)
    kind = RefusedError if refused else type(errors[0])
    return kind.of([problem for error in errors for problem in error.problems])


def attempt(errors: list[LedgerError], reader: Callable[[], ValueT], stand_in: ValueT) -> ValueT:
    """Return what a reader reads; what it raises joins the errors, and a stand-in is returned.

    So all that is wrong can be told at once: whoever reads raises the errors `together` before any
    stand-in is used.
    """
    try:
        return reader()
    except LedgerError as error:
        errors.append(error)
        return stand_in
