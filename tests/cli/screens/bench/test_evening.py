"""A session at the bench, called step by step: what it remembers, weighs, counts down and asks."""

from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path
from typing import Any
from unittest.mock import Mock

import pytest
import typer.main

from cli.kit.answer import step_for
from cli.kit.call import Call, Held
from cli.screens.bench import device, evening, run
from cli.screens.bench.evening import Evening
from cli.screens.bench.parts import Act
from ledger.service.desk.book import open_book
from tests.cli.shell import Shell
from tests.kept.said import check_constants

START = 'start --product "Orange essence" --kind essence --target 240mL'
BATCH = "OE-002-3"


@pytest.fixture
def bench(shell: Shell, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Evening]:
    """A session on a book that is kept, at a device that remembers nothing yet."""
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    with open_book(str(shell.book)) as book:
        yield Evening(Call(ledger=str(shell.book), by="AB"), book)


def test_a_weight_of_the_scale_stands_in_the_line_and_says_what_it_was_read_on(
    bench: Evening, shell: Shell, monkeypatch: pytest.MonkeyPatch
) -> None:
    ports: list[str] = []

    def weighed(port: str) -> str:
        ports.append(port)
        return "7.52g"

    monkeypatch.setattr(evening, "weigh", weighed)
    bench.scale = "/dev/scale"
    assert [bench.do(line) for line in (START, "carb weigh", "spirit 100")] == [0] * 3
    assert ports == ["/dev/scale"]
    told = " ".join(shell.run("journal", "--last", "2").out.split())
    assert "added: 7.52 g of LMC-001-F, on scale at /dev/scale. From instrument." in told
    assert "added: 100 mL of NS-001-J. Next:" in told


def test_without_a_scale_nothing_is_weighed(
    bench: Evening, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(evening, "weigh", lambda _: pytest.fail("weighed"))
    assert [bench.do(line) for line in (START, "carb weigh")] == [0, 2]
    assert '"weigh" has no place in a line of add.' in capsys.readouterr().err


def test_the_rest_of_the_lot_in_hand_is_counted_down_until_it_ends(bench: Evening) -> None:
    now = bench.book.clock()
    assert [bench.do(line) for line in (START, "spirit 100", "rest 48h")] == [0] * 3
    assert bench.lot == BATCH
    (left,) = [ends - now for lot, ends in bench.rests().items() if lot == BATCH]
    assert timedelta(hours=48) <= left < timedelta(hours=48, minutes=1)
    assert list(device.rests(bench.book.where)) == [BATCH]
    bench.others[BATCH] = now
    assert bench.do("end") == 0
    assert bench.rests() == {}


def test_a_rest_that_the_formula_ends_is_counted_down_by_the_book(
    bench: Evening, formulas: Shell
) -> None:
    assert [bench.do(line) for line in ("start orange 480mL", "spirit 100", "rest")] == [0] * 3
    assert bench.hand is not None
    assert bench.hand.rest_ends is not None
    assert bench.rests() == {BATCH: bench.hand.rest_ends}
    assert device.rests(bench.book.where) == {}
    other = Evening(bench.call, bench.book)
    other.begin(None)
    assert (other.lot, other.others) == (BATCH, {BATCH: bench.hand.rest_ends})
    beside = Evening(bench.call, bench.book)
    beside.begin(formulas.codes["essence"])
    assert beside.others == {BATCH: bench.hand.rest_ends}


def test_a_line_that_says_how_long_wins_over_the_book(bench: Evening) -> None:
    bench.others = {"A": bench.book.clock(), "B": bench.book.clock()}
    until = bench.book.clock() + timedelta(hours=1)
    device.count_down(bench.book.where, "A", until)
    assert bench.rests() == {"A": until, "B": bench.others["B"]}


def test_it_begins_with_the_lot_that_is_named_else_with_that_in_hand_here_else_with_the_last(
    bench: Evening, shell: Shell
) -> None:
    bench.begin(shell.codes["essence"])
    assert bench.lot == shell.codes["essence"]
    again = Evening(bench.call, bench.book)
    again.begin(None)
    assert again.lot == shell.codes["essence"]
    device.take_in_hand(bench.book.where, "AB", "GONE-1")
    last = Evening(bench.call, bench.book)
    last.begin(None)
    assert last.lot == shell.codes["packed"]


def test_what_was_bought_is_asked_for_its_amount_in_what_it_is_counted_in(
    bench: Evening, capsys: pytest.CaptureFixture[str]
) -> None:
    bench.do(START)
    assert bench.prompt() == f"{BATCH} Orange essence, 0 mL > "
    assert bench.heading()[0].startswith("  1  ")
    for source, unit in (("carb", "g"), ("spirit", "mL"), ("cap", "each")):
        assert bench.do(source) == 0
        assert bench.source is not None
        assert bench.prompt() == f"How much of {bench.source}, in {unit}: "
        assert bench.heading() == []
    bench.take(BATCH)
    assert bench.source is None
    capsys.readouterr()


def test_a_step_that_is_not_offered_is_refused_with_how_many_there_are(
    bench: Evening, capsys: pytest.CaptureFixture[str]
) -> None:
    bench.do(START)
    many = len(bench.offered)
    capsys.readouterr()
    for number in (0, many + 1):
        assert bench.do(str(number)) == 2
        assert capsys.readouterr().err.splitlines() == [
            f"There is no step {number}.",
            f"  Write a number up to {many}, or a line; help shows which.",
        ]


def test_a_step_that_is_offered_ends_as_its_command_does(
    bench: Evening, monkeypatch: pytest.MonkeyPatch
) -> None:
    done = []

    def act(_evening: Evening, told: Act) -> int:
        done.append(told.words)
        return 7

    monkeypatch.setattr(Evening, "_act", act)
    monkeypatch.setattr(evening, "filled_in", lambda offer, *_: (offer,))
    offered: Any = ["first", "last"]
    bench.offered = offered
    assert [bench._pick(number, []) for number in (1, 2)] == [7, 7]
    assert done == [("first",), ("last",)]


def test_done_ends_the_session_and_help_and_an_empty_line_do_nothing(
    bench: Evening, capsys: pytest.CaptureFixture[str]
) -> None:
    assert [bench.do(line) for line in ("", "help")] == [0, 0]
    assert (bench.is_over, bench.answers) == (False, [])
    assert len(capsys.readouterr().out.splitlines()) > 10
    assert (bench.do("done"), bench.is_over) == (0, True)


def test_an_act_is_no_longer_the_one_before_once_it_was_undone(
    bench: Evening, shell: Shell, capsys: pytest.CaptureFixture[str]
) -> None:
    assert [bench.do(line) for line in (START, "spirit 100", "cloudy", "undo", "cloudy")] == [0] * 5
    assert [bench.do("cloudy"), bench.do("cloudy again")] == [4, 0]
    assert "Note:" not in capsys.readouterr().out.splitlines()[-1]


def test_a_rest_that_may_not_end_yet_keeps_the_act_from_being_done(
    bench: Evening, formulas: Shell, capsys: pytest.CaptureFixture[str]
) -> None:
    assert [bench.do(line) for line in ("start orange 480mL", "spirit 100", "rest")] == [0] * 3
    before = len(bench.book.recorded)
    capsys.readouterr()
    assert bench.do("filter 90 20") == 4
    assert len(bench.book.recorded) == before
    assert capsys.readouterr().err.splitlines()[-2:] == [
        "The rest that goes on is not ended by this line, so nothing of it was recorded.",
        "  End it by a line of its own: end because WHY",
    ]


def test_the_options_of_commands_are_worked_out_once_for_all_lines(
    bench: Evening, monkeypatch: pytest.MonkeyPatch
) -> None:
    made = Mock(wraps=typer.main.get_command)
    monkeypatch.setattr(typer.main, "get_command", made)
    run._front.cache_clear()
    assert [bench.do(line) for line in (START, "note Quiet.", "spirit 100")] == [0] * 3
    assert made.call_count == 1


def test_who_says_that_it_was_not_done_twice_has_nothing_recorded(
    bench: Evening, capsys: pytest.CaptureFixture[str]
) -> None:
    asked: list[str] = []

    def meant(question: str) -> bool:
        asked.append(question)
        return len(asked) == 2

    bench.is_same_meant = meant
    assert [bench.do(line) for line in (START, "spirit 100", "cloudy")] == [0] * 3
    before = bench.book.recorded[-1]
    capsys.readouterr()
    assert bench.do("cloudy") == 3
    what = f"The line before said the same, and it is entry {before}."
    assert asked == [f"{what} Was it done twice?"]
    assert capsys.readouterr().err.splitlines() == [
        f"{what} It was not done twice, so nothing was recorded."
    ]
    assert bench.book.recorded[-1] == before
    assert (bench.do("cloudy"), len(asked)) == (0, 2)
    bench.is_same_meant = None
    assert bench.do("cloudy") == 4
    assert capsys.readouterr().err.splitlines() == [
        f"The line before said the same, and it is entry {before + 1}.",
        "  If it was done twice, write again behind it; if not, leave it out.",
    ]
    assert bench.do("bench") == 2
    assert capsys.readouterr().err.splitlines() == [
        "This is the bench already.",
        "  Write a line; help shows which.",
    ]


def test_what_was_read_for_an_answer_is_not_read_again_unless_an_older_entry_was_changed(
    bench: Evening, monkeypatch: pytest.MonkeyPatch
) -> None:
    read = Mock(wraps=step_for)
    monkeypatch.setattr(evening, "step_for", read)
    assert [bench.do(line) for line in (START, "spirit 100")] == [0] * 2
    taken = read.call_count
    assert [bench.do(line) for line in ("spirit 100 again", "hazy")] == [0] * 2
    assert read.call_count == taken
    assert bench.do("undo") == 0
    assert read.call_count == taken + 1


def test_the_lot_in_hand_is_read_anew_where_anybody_wrote_since(
    bench: Evening, shell: Shell
) -> None:
    bench.begin(shell.codes["essence"])
    before = bench._in_hand()
    assert bench._in_hand() is before
    shell.run("note", shell.codes["essence"], "smells of the peel")
    found = bench._in_hand()
    assert before is not None
    assert found is not None
    assert found.at_entry == before.at_entry + 1


def test_without_a_lot_in_hand_the_prompt_says_so(bench: Evening) -> None:
    assert (bench.prompt(), bench.heading()) == ("no lot in hand > ", [])


ENDS: tuple[tuple[Any, int], ...] = (
    (lambda: None, 0),
    (lambda: 3, 3),
    (Mock(side_effect=SystemExit(2)), 2),
    (Mock(side_effect=SystemExit("no")), 0),
    (Mock(side_effect=KeyboardInterrupt), 130),
)


def test_a_line_is_called_with_what_the_session_was_and_ends_with_an_exit_code(
    bench: Evening, monkeypatch: pytest.MonkeyPatch
) -> None:
    front = Mock()
    monkeypatch.setattr(run, "_front", lambda: front)
    held: Any = "the book"
    whole = Call(by="CD", at="-2h", origin="paper", sheet="17", json=True)
    shared = ["--by", "CD", "--at", "-2h", "--origin", "paper", "--sheet", "17", "--json"]
    for call, before in ((Call(), []), (whole, shared)):
        for ended, code in ENDS:
            front.main.side_effect = lambda *_, ended=ended, **__: ended()
            assert run.run(call, held, ("look", "clear")) == code
            (words,), told = front.main.call_args
            assert words == [*before, "look", "clear"]
            assert told == {"prog_name": "pottle", "standalone_mode": False, "obj": held}


def test_a_line_that_is_no_command_is_told_and_ends_as_bad_usage(
    bench: Evening, capsys: pytest.CaptureFixture[str]
) -> None:
    held = Held(bench.book, lambda *_: None)
    assert run.run(Call(), held, ("stock", "--odd")) == 2
    assert capsys.readouterr().err.splitlines() == [
        "No such option: --odd. Did you mean --to or --of?",
        "  See how it is called: pottle stock --help",
    ]


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(evening)
