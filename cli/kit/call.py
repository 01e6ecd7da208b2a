"""What every command shares: its common options, and the call that it is given.

Guarantees: every command says what it answers under --json, so that the schema of that can be
printed without running it; a book that a command opened is closed when it ends.
"""

import inspect
import os
from collections.abc import Callable, Sequence
from contextlib import ExitStack
from dataclasses import dataclass, field, replace
from functools import wraps
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any, get_args

import typer

from cli.kit.errors import is_asked, reason_for, run_safely
from cli.kit.schema import SCHEMA, Answers, recorded, schema_option
from ledger.errors import ReasonNeededError

if TYPE_CHECKING:
    from ledger.service.desk.book import Book, How, Recorded
    from ledger.service.lots.dossier import Dossier

BOOK_NAME = "pottle.db"

LedgerOption = Annotated[
    str | None,
    typer.Option(
        "--ledger",
        metavar="PATH|URL",
        help="The book; default POTTLE_LEDGER, or the nearest pottle.db upwards.",
    ),
]
ByOption = Annotated[
    str | None, typer.Option("--by", metavar="INITIALS", help="Who writes; default POTTLE_BY.")
]
AtOption = Annotated[
    str | None,
    typer.Option(
        "--at",
        metavar="WHEN",
        help='When it happened: 14:30, "yesterday 18:00", -2h, 2026-03-02; default now.',
    ),
]
BecauseOption = Annotated[
    str | None, typer.Option("--because", metavar="REASON", help="Why, where a reason is needed.")
]
OriginOption = Annotated[
    str | None,
    typer.Option("--origin", metavar="ORIGIN", help="bench, paper, instrument or memory."),
]
SheetOption = Annotated[
    str | None, typer.Option("--sheet", metavar="NUMBER", help="Paper sheet it is copied from.")
]
JsonOption = Annotated[bool, typer.Option("--json", help="Answer as JSON.")]

_READS = {"ledger": LedgerOption, "by": ByOption, "json": JsonOption}
_WRITES = {
    "ledger": LedgerOption,
    "by": ByOption,
    "at": AtOption,
    "because": BecauseOption,
    "origin": OriginOption,
    "sheet": SheetOption,
    "json": JsonOption,
}
COMMON = frozenset(get_args(option)[1].help for option in _WRITES.values())
"""The help of the options that every command has."""


@dataclass(frozen=True, slots=True)
class Held:
    """A book that stays open over several commands, as in a session at the bench."""

    book: "Book"
    """The book."""
    hear: "Callable[[Recorded, Dossier | None, str | None], None]"
    """Told what was recorded, all of its lot and the next step, in place of a printed answer."""
    since: int = 0
    """How many entries were recorded through the book before this command."""


@dataclass(frozen=True, slots=True)
class Call:
    """One call of a command."""

    ledger: str | None = None
    """Where the book is, as given."""
    by: str | None = None
    """Who writes."""
    at: str | None = None
    """When it happened."""
    because: str | None = None
    """Why."""
    origin: str | None = None
    """Where it came from."""
    sheet: str | None = None
    """Paper sheet."""
    json: bool = False
    """Whether to answer as JSON."""
    at_end: ExitStack = field(default_factory=ExitStack)
    """What is closed when the command ends."""
    books: "list[Book]" = field(default_factory=list)
    """The books it opened."""
    held: Held | None = None
    """The session it is called in."""

    @property
    def where(self) -> str:
        """The book's path or URL: as given, as set, or the nearest upwards."""
        if self.held and not self.ledger:
            return self.held.book.where
        given = self.ledger or os.environ.get("POTTLE_LEDGER")
        return given or nearest_book(Path.cwd())

    @property
    def writer(self) -> str | None:
        """Initials of who writes."""
        return self.by or os.environ.get("POTTLE_BY") or None

    def book(self) -> "Book":
        """Open the book; it is closed when the command ends, unless a session holds it."""
        from ledger.service.desk.book import open_book

        if self.held and self.where == self.held.book.where:
            self.books.append(self.held.book)
            return self.held.book
        self.books.append(self.at_end.enter_context(open_book(self.where)))
        return self.books[-1]

    def recorded(self) -> list[int]:
        """Return the numbers of the entries that were recorded by now."""
        books = {id(book): book for book in self.books}.values()
        since = self.held.since if self.held else 0
        return [number for book in books for number in book.recorded[since:]]

    def how(self) -> "How":
        """Return who writes and how it is known."""
        from ledger.service.desk.book import How

        return How(self.writer, self.at, self.because, self.origin, self.sheet)

    def damage(self) -> Sequence[tuple[str, str]]:
        """Return what is wrong with the books it opened, as problems; none if all is well."""
        from ledger.service.evidence.verify import verify
        from reports.words.evidence.damage import damage_of

        return [problem for book in self.books for problem in damage_of(verify(book))]


def nearest_book(folder: Path) -> str:
    """Return the path of the nearest book in `folder` or above; in `folder` when there is none."""
    for place in (folder, *folder.parents):
        if (place / BOOK_NAME).is_file():
            return str(place / BOOK_NAME)
    return str(folder / BOOK_NAME)


def reads(
    function: Callable[..., None], answers: Answers, *, is_live: bool = False
) -> Callable[..., None]:
    """Give a command that only reads its common options and its errors.

    An option may also be given before the command; the one after it wins. At a terminal its answer
    is shown a screen at a time.

    Args:
        function: The command.
        answers: Returns what it answers under --json; called only when that is asked for.
        is_live: Whether it prints as it goes.
    """
    return _command(function if is_live else _paged(function), _READS, answers)


def _paged(function: Callable[..., None]) -> Callable[..., None]:
    """Return a command whose answer is shown once it is whole, and that says that it goes on."""

    @wraps(function)
    def shown(call: Call, **words: Any) -> None:  # noqa: ANN401 - words of any command
        # Loaded here, since help has no use for them.
        from cli.kit.pager import paged
        from cli.kit.progress import waiting

        if words.get("watch"):
            function(call, **words)
            return
        with paged(), waiting():
            function(call, **words)

    return shown


def writes(function: Callable[..., None], answers: Answers = recorded) -> Callable[..., None]:
    """Give a command that records its common options and its errors; see `reads`."""
    return _command(function, _WRITES, answers)


def _command(
    function: Callable[..., None], common: dict[str, Any], answers: Answers
) -> Callable[..., None]:
    # The first parameter is the call itself.
    own = list(inspect.signature(function, eval_str=True).parameters.values())[1:]
    clash = common.keys() & {parameter.name for parameter in own}
    shared = [
        inspect.Parameter(
            name,
            inspect.Parameter.KEYWORD_ONLY,
            default=False if name == "json" else None,
            annotation=annotation,
        )
        for name, annotation in common.items()
        if name not in clash
    ]

    def run(context: typer.Context, **words: Any) -> None:  # noqa: ANN401 - words of any command
        before = context.find_root().params
        words.pop(SCHEMA)
        told = {name: words.pop(name) for name in common if name not in clash}
        given = {name: value or before.get(name) or value for name, value in told.items()}
        call = Call(**given, held=context.obj if isinstance(context.obj, Held) else None)

        def work() -> None:
            try:
                with call.at_end:
                    function(call, **words)
            except ReasonNeededError as error:
                # Of what only reads, and of machines, nobody is asked.
                if "because" not in told or call.because or call.json or not is_asked():
                    raise
                again = replace(call, because=reason_for(error))
                with again.at_end:
                    function(again, **words)

        run_safely(work, as_json=call.json, recorded=call.recorded, damage=call.damage)

    first = inspect.Parameter(
        "context", inspect.Parameter.POSITIONAL_OR_KEYWORD, annotation=typer.Context
    )
    mine = (p.replace(kind=inspect.Parameter.KEYWORD_ONLY) for p in own)
    parameters = (first, *mine, *shared, schema_option(answers))
    # Typer reads the options of a command from both of these.
    run.__signature__ = inspect.Signature(parameters)  # type: ignore[attr-defined]
    run.__annotations__ = {p.name: p.annotation for p in parameters}
    run.__name__, run.__doc__ = function.__name__, function.__doc__
    return run
