"""What a terminal is asked and told at the bench, line by line, without one."""

import asyncio
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from types import SimpleNamespace
from typing import Any

import pytest
from prompt_toolkit import PromptSession
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import ColorDepth, DummyOutput

from cli.screens.bench import terminal
from cli.screens.bench.offer import Offer
from cli.screens.bench.slots import GRADES, READINGS, VERBS
from cli.screens.bench.terminal import Rests, left, play

NOW = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)


class Typed:
    """A terminal at which these lines are typed, or keys pressed that end one."""

    def __init__(self, *lines: str | BaseException) -> None:
        self.lines = list(lines)
        self.asked: list[tuple[str, str | None, float | None]] = []
        self.below: list[str | None] = []
        self.made: dict[str, Any] = {}

    def __getitem__(self, _: object) -> Callable[..., "Typed"]:
        return self.begun

    def begun(self, **made: Any) -> "Typed":
        self.made = made
        return self

    def prompt(self, shown: str, **told: Any) -> str:
        below = told.pop("bottom_toolbar")
        self.below.append(below and below())
        self.asked.append((shown, told.get("default"), told.get("refresh_interval")))
        line = self.lines.pop(0)
        if isinstance(line, BaseException):
            raise line
        return line


class Bench:
    """A session in which a line is done unless it is a number or says so."""

    def __init__(self, **rests: int) -> None:
        self.is_over = False
        self.is_same_meant: Callable[[str], bool] = lambda _: False
        finish, rest = Offer(("finish", "X", "VOLUME"), "finish VOLUME"), Offer(("rest",), "rest")
        self.offered = [finish, rest, finish]
        self.book = SimpleNamespace(clock=lambda: NOW, recorded=[], where="a.db")
        self.left = {lot: NOW + timedelta(minutes=span) for lot, span in rests.items()}
        self.done: list[object] = []

    def rests(self) -> dict[str, datetime]:
        return self.left

    def heading(self) -> list[str]:
        return ["  1  finish VOLUME", "  2  rest"]

    def prompt(self) -> str:
        return "X > "

    def do(self, text: str) -> int:
        self.done.append(self.is_same_meant("Twice?") if text == "twice" else text)
        self.is_over = text == "done"
        return 2 if (text.strip()[:1].isdigit() and text != "03") or text == "wrong" else 0


def sit(
    monkeypatch: pytest.MonkeyPatch,
    bench: Bench,
    *lines: str | BaseException,
    plain: bool = False,
) -> Typed:
    """Play a session at which these lines are typed."""
    typed, evening = Typed(*lines), bench
    monkeypatch.setattr(terminal, "PromptSession", typed)
    play(evening, plain=plain)  # type: ignore[arg-type]
    assert typed.lines == []
    return typed


HEADING = ["  1  finish VOLUME", "  2  rest"]


def test_lines_are_taken_until_it_is_left_and_what_lacks_a_blank_is_begun_again(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The first step and the third leave something open, there is no other, and 03 is done."""
    said = ("oil 15", " 1 ", "1", KeyboardInterrupt(), "2", "0", "3", "03", "4", "wrong", "done")
    bench = Bench()
    typed = sit(monkeypatch, bench, *said)
    begun = ("", "", "1 ", "1 ", "", "", "", "3 ", "", "", "")
    assert typed.asked == [("X > ", default, 0) for default in begun]
    assert typed.below == [None] * len(said)
    assert bench.done == [line for line in said if isinstance(line, str)]
    assert capsys.readouterr().out.splitlines() == [
        "The bench: write a line, such as oil 15; help shows all, done or Ctrl-D leaves.",
        *HEADING * 4,
        "The line is dropped, and nothing of it recorded; done leaves.",
        *HEADING * 7,
        "Nothing was recorded.",
    ]


def test_the_end_of_what_is_typed_leaves_and_says_what_was_recorded(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    bench = Bench()
    bench.book.recorded = [7, 8, 9]
    sit(monkeypatch, bench, EOFError())
    assert bench.done == []
    assert capsys.readouterr().out.splitlines()[1:] == [*HEADING, "Recorded 7 to 9."]


@pytest.mark.parametrize(
    ("plain", "tick_s", "below"), [(False, 1.0, "A is over   B 5 min left"), (True, 10.0, "")]
)
def test_rests_that_go_on_stand_below_the_line_unless_it_is_to_be_plain(
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    plain: bool,
    tick_s: float,
    below: str,
) -> None:
    bench = Bench(A=0, B=5)
    typed = sit(monkeypatch, bench, "oil 15", EOFError(), plain=plain)
    assert typed.asked == [("X > ", "", tick_s)] * 2
    assert typed.below == [below] * 2
    told = capsys.readouterr().out.splitlines()
    assert told[1:-1] == ["The rest of A is over.", *HEADING, *HEADING]


def test_a_rest_that_is_over_while_a_line_is_written_rings_and_is_told_once(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    rung: list[str] = []
    tasks: list[Any] = []
    output = SimpleNamespace(bell=lambda: rung.append("bell"))
    app = SimpleNamespace(output=output, create_background_task=tasks.append)
    monkeypatch.setattr(terminal, "get_app", lambda: app)

    async def shown(what: Callable[[], None]) -> None:
        what()

    monkeypatch.setattr(terminal, "run_in_terminal", shown)
    bench: Any = Bench(A=0, B=5)
    tick = terminal._below(bench, Rests(bench.left), plain=False)
    assert tick is not None
    assert [tick(), tick()] == ["A is over   B 5 min left"] * 2
    assert rung == ["bell"]
    (task,) = tasks
    asyncio.run(task)
    assert capsys.readouterr().out == "The rest of A is over.\n"
    assert terminal._below(bench, Rests(), plain=False) is None


@pytest.mark.parametrize(
    ("said", "is_meant"),
    [
        *(("y", True), ("YES ", True), ("n", False), ("", False), ("yeah", False)),
        *((KeyboardInterrupt(), False), (EOFError(), False)),
    ],
)
def test_only_yes_says_that_it_was_done_twice(
    monkeypatch: pytest.MonkeyPatch, said: str | BaseException, is_meant: bool
) -> None:
    bench = Bench(B=5)
    typed = sit(monkeypatch, bench, "twice", said, EOFError())
    assert bench.done == [is_meant]
    assert typed.asked[1] == ("Twice? y/N: ", None, None)
    assert typed.below == ["B 5 min left", None, "B 5 min left"]


def test_ctrl_z_undoes_on_an_empty_line_alone() -> None:
    for keys, line in (("\x1a", "undo"), ("oil 15\x1a\r", "oil 15")):
        with create_pipe_input() as pressed:
            pressed.send_text(keys)
            session = PromptSession[str](
                input=pressed, output=DummyOutput(), key_bindings=terminal._keys()
            )
            assert session.prompt("> ") == line


def test_no_colour_is_asked_for_and_words_are_completed_when_asked(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Acts, grades, readings, materials and lots, these in small letters too."""
    monkeypatch.setattr(terminal, "materials", lambda _: [SimpleNamespace(code="oil")])
    monkeypatch.setattr(terminal, "lot_codes", lambda where: [f"OE of {where}"])
    made = sit(monkeypatch, Bench(), EOFError()).made
    assert made["style"].style_rules == [("bottom-toolbar", "noreverse")]
    assert (made["color_depth"], made["complete_while_typing"]) == (ColorDepth.DEPTH_1_BIT, False)
    assert made["completer"].words() == [
        *VERBS,
        *GRADES,
        *READINGS,
        *("oil", "OE of a.db", "oe of a.db"),
    ]


@pytest.mark.parametrize(
    ("seconds", "words"),
    [(-1, "is over"), (0, "is over"), (1, "1 s left"), (59, "59 s left"), (60, "1 min left")],
)
def test_what_is_left_is_told_in_minutes_and_below_one_in_seconds(seconds: int, words: str) -> None:
    assert left(NOW + timedelta(seconds=seconds), NOW) == words


def test_of_four_rests_the_nearest_three_are_shown() -> None:
    many = {f"L{number}": NOW + timedelta(minutes=number) for number in (4, 2, 3, 1)}
    assert Rests(many).line(NOW) == "L1 1 min left   L2 2 min left   L3 3 min left"


def test_a_rest_that_begins_again_is_told_to_be_over_again() -> None:
    rests = Rests({"A": NOW, "B": NOW})
    assert rests.over(NOW) == ["A", "B"]
    rests.until = {"B": NOW}
    assert rests.over(NOW) == []
    rests.until = {"A": NOW, "B": NOW}
    assert rests.over(NOW) == ["A"]
