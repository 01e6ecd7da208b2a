"""The demonstration, played once for all tests of a run, with what the book said on its way."""

import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path
from unittest.mock import patch

import pytest

from cli.screens.copies import demo
from ledger.service.causes.compare import compare
from ledger.service.causes.suspects import suspects
from ledger.service.copies import season
from ledger.service.copies.season import Played, Season, SeasonClock
from ledger.service.copies.season_files import Row
from ledger.service.desk.book import Book, open_book
from tests.answers.clock import kept_time
from tests.answers.said import Said, in_folder, run
from tests.cli.shell import Shell
from tests.keeper import SetClock
from tests.once import made_once

AFTER_SEASON = datetime.fromisoformat("2026-10-06T15:00:00+00:00")
"""The day on which the season of the demonstration ends, as its files have it."""
BOOK = "pottle.db"
Asked = tuple[str, str, tuple[str, ...]]
"""Before which verb's row it was asked, the verdict, and the lots that it named."""


@dataclass(slots=True)
class Demonstration:
    """What came of it."""

    said: list[Said] = field(default_factory=list)
    """What the command said and made."""
    played: Played = field(default_factory=Played)
    """What its lots and entries became."""
    ended: datetime = AFTER_SEASON
    """When its last entry was recorded."""
    story: list[Asked] = field(default_factory=list)
    """What the book said in the season, in order."""

    def play(
        self, told: Season, book: Book, clock: SeasonClock, on_row: Callable[[int, int], None]
    ) -> Played:
        """Play the season as the program does, and ask its book on the way."""

        def go_on(done: int, total: int) -> None:
            on_row(done, total)
            if done < total:
                self.story += _asked(told, book, told.rows[done])

        self.played = season.play(told, book, clock, go_on)
        self.ended = clock.now
        return self.played


def demonstration(factory: pytest.TempPathFactory, folder: Path) -> Demonstration:
    """Put a copy of all that it made into an empty folder, and return what came of it."""
    made, found = made_once(factory, "demonstration", _demonstrated)
    shutil.copytree(made, folder, dirs_exist_ok=True)
    return found


@contextmanager
def played_season(factory: pytest.TempPathFactory) -> Iterator[tuple[Book, Demonstration]]:
    """Open a copy of its book, at the time of its last entry."""
    folder = factory.mktemp("season")
    found = demonstration(factory, folder)
    with open_book(str(folder / BOOK), SetClock(found.ended)) as book:
        yield book, found


def _demonstrated(folder: Path) -> Demonstration:
    found = Demonstration()
    with (
        in_folder(folder),
        kept_time(SetClock(AFTER_SEASON)),
        patch.object(demo, "play", found.play),
    ):
        found.said.append(run(Shell(Path(BOOK)), ("demo", ".")))
    return found


def _asked(told: Season, book: Book, following: Row) -> Iterator[Asked]:
    """Ask the book before a recall, before the trial is planned, and once its jars are old."""
    verdict, culprit = following.cells.get("verdict"), told.story.culprit
    if following.verb == "plan" or verdict == "recall":
        judgement = suspects(book, complaints=True).judgement
        lead = (judgement.lead.cause.name,) if judgement.lead else ()
        yield following.verb, judgement.verdict, lead
    if verdict == "reject" and following.cells["lot"] == culprit:
        outcome = compare(book, "cloudy orange").outcome
        assert outcome is not None
        yield following.verb, "cause", outcome.shown
