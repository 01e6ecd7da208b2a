"""The books that are asked: a demonstration, rare things, small batches, old and random books.

Guarantees: each is the same wherever and whenever it is made, so that all that it answers can be
kept to the letter.
"""

import shlex
import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

from tests.answers.asked import asked
from tests.answers.clock import kept_time
from tests.answers.said import Said, in_folder, run
from tests.answers.story import told
from tests.claims.batch_papers import keep_batch
from tests.cli.shell import Shell
from tests.conftest import new_keeper
from tests.demonstration import AFTER_SEASON, Demonstration
from tests.formula_texts import line, orange, step
from tests.keeper import LATER, MORNING, Keeper, SetClock
from tests.model.books import played
from tests.old_books import OLD_BOOKS, OldBook
from tests.path import fill_every_table, receive_all
from tests.service.bench.makings import essence, oil_lots
from tests.service.orange import make_orange

STORY = Path(__file__).with_name("told.txt")
AT = "pottle.db"
FORMULA = orange(
    "240mL",
    line("orange-oil", "15mL", tolerance="2%"),
    line("carb", "8g", tolerance="20%"),
    line("spirit", "220mL", overage="1%"),
    step("rest", rest_for="macerate", words="In the dark.", at_least="24h", at_most="72h"),
    step("filter", pore_max="25", precoat_min="4g", passes_min=2, words="Return the first."),
    step("rinse", words="With the same spirit."),
    step("decant"),
    step("makeup", words="To the mark."),
    step("measure", words="The strength."),
    step("look", looked_at="neat", worst="clear"),
    step("finish"),
    step("bottle"),
    step("labels"),
    caution="Highly flammable.",
    prepared_by="AB",
    checked_by="CD",
)
FILES = {
    "orange.toml": FORMULA,
    "broken.toml": "code = ",
    "wrong.toml": orange(
        "much", line("rum", "15", tolerance="wide"), step("pray"), kind="perfume", step=3
    ),
}


@dataclass(slots=True)
class Held:
    """A book that was made, in a folder of its own."""

    folder: Path
    shell: Shell
    clock: SetClock
    said: list[Said] = field(default_factory=list)
    """What the commands said that made it."""
    asked: list[str] = field(default_factory=list)
    """The commands that ask it."""

    def lines(self, folder: Path, verb: str = "") -> Iterator[str]:
        """Yield all that it says, or what one command does; a copy of it in a folder is asked."""
        shutil.copytree(self.folder, folder, dirs_exist_ok=True)
        for said in self.said:
            if verb in ("", said.verb):
                yield from said.lines()
        with in_folder(folder), kept_time(self.clock):
            for words in map(shlex.split, self.asked):
                if verb in ("", words[0]):
                    yield from run(self.shell, words).lines()


def held(name: str, folder: Path) -> Held:
    """Make a book in an empty folder."""
    clock = SetClock(MORNING)
    book = Held(folder, Shell(Path(AT)), clock)
    with in_folder(folder), kept_time(clock):
        MAKERS[name](book)
        book.asked += asked(name, book.shell)
    return book


def season(made: Demonstration, folder: Path) -> Held:
    """Return the demonstration, which was put into a folder."""
    book = Held(folder, Shell(Path(AT), "NM"), SetClock(AFTER_SEASON), made.said)
    with in_folder(folder), kept_time(book.clock):
        book.asked += asked("season", book.shell)
    return book


def _story(book: Held) -> None:
    for name, text in FILES.items():
        Path(name).write_text(text, encoding="utf-8")
    book.said += told(STORY.read_text("utf-8"), book.shell, book.clock)


def _kept(keep: Callable[[Keeper], object]) -> Callable[[Held], None]:
    def make(book: Held) -> None:
        with new_keeper(AT) as keeper:
            keeper.clock.now = MORNING
            keep(keeper)
            book.clock.now = max(keeper.clock.now, LATER)

    return make


def _old(old: OldBook) -> Callable[[Held], None]:
    def make(book: Held) -> None:
        old.put(AT)
        book.clock.now = LATER
        book.said.append(run(book.shell, ("upgrade",)))

    return make


def _trial(keeper: Keeper) -> None:
    lots = receive_all(keeper)
    ways = (("1 d", 24, "hazy"), ("1 d", 24, "cloudy"), ("3 d", 72, "clear"), ("3 d", 72, "bright"))
    for oil, (rest, hours, grade) in zip(oil_lots(keeper, 4), ways, strict=True):
        words = {"trial": "rests", "factors": f"rest={rest}; jar={grade[0]}"}
        essence(keeper, lots, oil, grade, grade, rest_h=hours, ntu="3.1", **words)
    essence(keeper, lots, lots.oil, "opalescent", filter_c="4")


MAKERS: dict[str, Callable[[Held], None]] = {
    "story": _story,
    "full": _kept(fill_every_table),
    "batch": _kept(lambda keeper: keep_batch(keeper, Path())),
    "open batch": _kept(lambda keeper: make_orange(keeper, Path())),
    "trial": _kept(_trial),
    "random": _kept(lambda keeper: played(keeper, 3)),
    "random again": _kept(lambda keeper: played(keeper, 7)),
    **{f"version {book.version}": _old(book) for book in OLD_BOOKS[:3]},
}
"""Every book by its name."""
SMALL = tuple(name for name in MAKERS if name != "story")
