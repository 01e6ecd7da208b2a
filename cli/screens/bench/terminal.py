"""The bench at a terminal: a prompt that takes short lines, and counts rests down.

Guarantees: no colour, so that nothing depends on it; what is shown is plain lines, one below the
other, which a screen reader reads as they come. Ctrl-C drops a line, Ctrl-D leaves, Ctrl-Z on an
empty line undoes. Refuses: to hold the book open in a transaction while it waits.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime

from prompt_toolkit import PromptSession
from prompt_toolkit.application import get_app, run_in_terminal
from prompt_toolkit.completion import WordCompleter
from prompt_toolkit.key_binding import KeyBindings, KeyPressEvent
from prompt_toolkit.output import ColorDepth
from prompt_toolkit.styles import Style

from cli.kit.complete import lot_codes
from cli.kit.errors import stands
from cli.kit.tables import print_lines
from cli.screens.bench.evening import Evening
from cli.screens.bench.slots import GRADES, READINGS, VERBS
from ledger.service.masters.material import materials
from reports.kit.format import duration

TICK_S, PLAIN_TICK_S = 1.0, 10.0
"""How often rests that go on are looked at; less often where nothing is to be drawn."""
MOST_SHOWN = 3
"""How many rests are counted down at most below the line."""
STYLE = Style.from_dict({"bottom-toolbar": "noreverse"})
WELCOME = "The bench: write a line, such as oil 15; help shows all, done or Ctrl-D leaves."


@dataclass(slots=True)
class Rests:
    """The rests that are counted down while a line is written."""

    until: dict[str, datetime] = field(default_factory=dict)
    """When each ends, by the code of its lot."""
    rung: set[str] = field(default_factory=set)
    """The lots of those that were told to be over."""

    def over(self, now: datetime) -> list[str]:
        """Return the lots whose rests are over by now and were not told yet; they are told once."""
        found = [lot for lot, end in self.until.items() if end <= now and lot not in self.rung]
        self.rung.update(found)
        self.rung &= self.until.keys()
        return found

    def line(self, now: datetime) -> str:
        """Return how long the next few still go on, in one line; empty without any."""
        soon = sorted(self.until.items(), key=lambda item: item[1])[:MOST_SHOWN]
        return "   ".join(f"{lot} {left(end, now)}" for lot, end in soon)


def left(end: datetime, now: datetime) -> str:
    """Return how much of a rest is left, in words.

    >>> from datetime import UTC
    >>> left(datetime(2026, 3, 2, 12, tzinfo=UTC), datetime(2026, 3, 2, 9, 30, 30, tzinfo=UTC))
    '2 h 29 min left'
    """
    seconds = int((end - now).total_seconds())
    if seconds <= 0:
        return "is over"
    return f"{duration(seconds // 60)} left" if seconds >= 60 else f"{seconds} s left"


def play(evening: Evening, *, plain: bool) -> None:
    """Take lines at the terminal until it is left.

    Args:
        evening: The session.
        plain: Whether nothing is drawn below the line, as a screen reader wants it.
    """
    rests, session = (
        Rests(),
        PromptSession[str](
            style=STYLE,
            color_depth=ColorDepth.DEPTH_1_BIT,
            key_bindings=_keys(),
            complete_while_typing=False,
            completer=_completer(evening),
        ),
    )
    evening.is_same_meant = lambda question: _is_yes(session, question)
    print_lines([WELCOME])
    begun, tick_s = "", PLAIN_TICK_S if plain else TICK_S
    while not evening.is_over:
        rests.until = evening.rests()
        print_lines(_told(rests.over(evening.book.clock())))
        print_lines(evening.heading())
        try:
            text = session.prompt(
                evening.prompt(),
                default=begun,
                refresh_interval=tick_s if rests.until else 0,
                bottom_toolbar=_below(evening, rests, plain=plain),
            )
        except KeyboardInterrupt:
            print_lines(["The line is dropped, and nothing of it recorded; done leaves."])
            begun = ""
            continue
        except EOFError:
            break
        begun = "" if evening.do(text) == 0 else _begun_again(evening, text)
    print_lines([what for what, _ in stands(evening.book.recorded)] or ["Nothing was recorded."])


def _begun_again(evening: Evening, text: str) -> str:
    """Return a step's number to begin the next line with, where what it leaves open was missing."""
    number = text.strip()
    if not number.isdecimal() or not 1 <= int(number) <= len(evening.offered):
        return ""
    return f"{number} " if evening.offered[int(number) - 1].blanks else ""


def _told(lots: list[str]) -> list[str]:
    return [f"The rest of {lot} is over." for lot in lots]


def _below(evening: Evening, rests: Rests, *, plain: bool) -> Callable[[], str] | None:
    """Return what draws the line below, looks for rests that are over, and rings."""
    if not rests.until:
        return None

    def tick() -> str:
        now = evening.book.clock()
        if lots := rests.over(now):
            get_app().output.bell()
            get_app().create_background_task(_tell(lots))
        return "" if plain else rests.line(now)

    return tick


async def _tell(lots: list[str]) -> None:
    await run_in_terminal(lambda: print_lines(_told(lots)))


def _is_yes(session: PromptSession[str], question: str) -> bool:
    try:
        return session.prompt(f"{question} y/N: ", bottom_toolbar=None).strip().lower() in YES
    except (KeyboardInterrupt, EOFError):
        return False


YES = frozenset({"y", "yes"})


def _keys() -> KeyBindings:
    keys = KeyBindings()

    @keys.add("c-z")
    def _(event: KeyPressEvent) -> None:
        if not event.current_buffer.text:
            event.current_buffer.text = "undo"
            event.current_buffer.validate_and_handle()

    return keys


def _completer(evening: Evening) -> WordCompleter:
    def words() -> list[str]:
        known = [item.code for item in materials(evening.book)]
        codes = lot_codes(evening.book.where)
        return [*VERBS, *GRADES, *READINGS, *known, *codes, *map(str.lower, codes)]

    return WordCompleter(words)
