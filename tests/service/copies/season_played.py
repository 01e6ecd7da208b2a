"""The demo season, played into a real book, with what the book said on its way."""

from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path

from msgspec.structs import asdict

from ledger.domain.entries import Entry, Material, Receipt
from ledger.domain.entries.choices import MaterialKind
from ledger.service.causes.compare import compare
from ledger.service.causes.suspects import suspects
from ledger.service.copies.season import (
    Played,
    Season,
    SeasonClock,
    play,
    read_season,
    start_time,
)
from ledger.service.desk.book import Book
from ledger.service.lots.journal import entries_of_kind, journal
from ledger.service.masters.house import init
from ledger.service.masters.material import materials

FOLDER = Path(__file__).parents[3] / "sample_data" / "season"


STORY: list[tuple[str, str, tuple[str, ...]]] = []
"""What the book said in the season, in order: of which verb's row before, the verdict, and lots."""


@contextmanager
def played_season(where: Path) -> Iterator[tuple[Book, Played]]:
    """Play the season into a new book, and ask it on the way as its story does."""
    told = read_season(FOLDER)
    clock = SeasonClock(start_time(told))
    with init(str(where), **asdict(told.house), clock=clock) as book:
        yield book, play(told, book, clock, partial(_ask, told, book))


def _ask(told: Season, book: Book, done: int, total: int) -> None:
    """Ask the book before a recall, before the trial is planned, and once its jars are old."""
    following = told.rows[done] if done < total else None
    if following is None:
        return
    if following.verb == "plan" or following.cells.get("verdict") == "recall":
        judgement = suspects(book, complaints=True).judgement
        lead = (judgement.lead.cause.name,) if judgement.lead else ()
        STORY.append((following.verb, judgement.verdict, lead))
    if following.cells.get("verdict") == "reject" and following.cells["lot"] == told.story.culprit:
        outcome = compare(book, "cloudy orange").outcome
        assert outcome is not None
        STORY.append((following.verb, "cause", outcome.shown))


def in_force(book: Book) -> list[Entry]:
    """Return the entries that nothing corrects or strikes."""
    return [
        said.entry
        for said in journal(book).said
        if said.corrected_by is None and said.entry.kind != "strike"
    ]


def received(book: Book, sort: MaterialKind) -> list[Material]:
    """Return the material of each delivery of a kind of material."""
    known = {material.code: material for material in materials(book)}
    facts = (entry.facts for entry in entries_of_kind(book, Receipt))
    codes = (item.material for item in facts if isinstance(item, Receipt))
    return [known[code] for code in codes if known[code].sort is sort]
