"""`pottle due`: what waits, when and what to do."""

from datetime import UTC, datetime
from io import StringIO
from itertools import count
from pathlib import Path

import pytest
from icalendar import Calendar
from rich.console import Console

from cli.kit.call import Call
from cli.screens.lots import due as module
from cli.screens.lots import due as screen
from cli.screens.lots.due import screen_of
from ledger.errors import StorageError
from ledger.service.lots.due import Due, DueList, Waits, due
from reports.words.lots.calendar import calendar
from tests.cli.asked import check_asked
from tests.cli.cases import Answers, check_answers
from tests.cli.formulas import write_formulas
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.said import check_constants

ANSWERS: dict[str, Answers] = {
    "nothing is due": ("due", "Nothing is due.\nNext: pottle stock\n"),
}


def answered(shell: Shell) -> Shell:
    """A book whose one complaint is answered."""
    (waiting,) = shell.run("complaints", "--json").json
    shell.run("answer", str(waiting["entry"]), "explained", "--told", "today")
    return shell


@pytest.mark.parametrize("answers", ANSWERS.values(), ids=list(ANSWERS))
def test_a_command_answers(answers: Answers, shell: Shell) -> None:
    check_answers(answers, answered(shell))


def test_what_is_due_says_when_and_what_to_do(shell: Shell) -> None:
    write_formulas()
    answered(shell)
    shell.run("formula", "load", "second.toml")
    shell.run("start", "orange", "480mL", "--at", "-4h")
    shell.run("rest", "OE-002-3", "--for", "macerate", "--at", "-3h")
    shell.run("hold", "SOO-001-3", "--because", "smells of pine")
    rest, held = shell.run("due", "--json").json
    assert (rest["waits"], rest["code"]) == ("rest", "OE-002-3")
    assert rest["minutes"] in range(44 * 60, 45 * 60 + 1)
    assert held == {
        "waits": "hold",
        "code": "SOO-001-3",
        "name": "Sweet orange oil",
        "says": "on hold: smells of pine",
        "due": None,
        "minutes": None,
        "next": "pottle lot SOO-001-3",
    }
    heads, first, last, step = shell.run("due").lines
    assert heads.split() == ["due", "when", "lot", "what", "to", "do"]
    assert first.startswith("in 1 d 2")
    assert "OE-002-3   Orange essence    rest to macerate, 3 h" in first
    assert last.split(maxsplit=2) == [
        "–",
        "SOO-001-3",
        "Sweet orange oil  on hold: smells of pine",
    ]
    assert step == "Next: pottle rest OE-002-3 --end"


def test_what_is_due_is_written_for_a_calendar(shell: Shell) -> None:
    shell.run("start", "--product", "Peel", "--kind", "macerate", "--target", "1L")
    said = shell.run("due", "--ics", "due.ics")
    text = Path("due.ics").read_bytes().decode()
    assert said.lines == [
        "1 event in due.ics: hand it to your calendar; written again, it renews them."
    ]
    (complaint,) = Calendar.from_ical(text).walk("VEVENT")
    assert str(complaint["SUMMARY"]).startswith("BOS-001-S, Orange syrup, 250 mL: answer")
    again = shell.run("due", "--ics", "due.ics")
    assert (again.exit_code, again.complaints[1]) == (
        5,
        "  Give another name with --ics, or --force to write over it.",
    )


def test_what_is_long_past_is_one_line_until_all_is_asked_for(shell: Shell) -> None:
    answered(shell)
    shell.line("receive cap 10 --best-before 2024-01-31")
    shell.line("receive cap 10 --best-before 2024-02-29")
    assert shell.run("due").lines == [
        "Nothing else is due.",
        "Long past, 30 days or more: 2 dates; pottle due --all lists them.",
        'Next: pottle reject CAP-002-9 --because "past its date"',
    ]
    everything = shell.run("due", "--all").lines
    assert sum("past its date: reject it" in line for line in everything) == 2
    assert len(shell.run("due", "--json").json) == 2


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("due")


NOW = datetime(2026, 3, 2, 12, 0, tzinfo=UTC)
PAST = datetime(2026, 3, 1, 23, 59, tzinfo=UTC)


def shown(found: DueList, width: int) -> list[str]:
    out = StringIO()
    Console(file=out, width=width, highlight=False).print(screen_of(found, width))
    return [line.rstrip() for line in out.getvalue().splitlines()]


def test_what_comes_next_stands_above_the_list_and_long_words_stay_in_their_column() -> None:
    held = "a syrup made with it came back cloudy, and the retained bottle is opalescent"
    found = DueList(
        NOW,
        (
            Due(Waits.DATE, "OS-002-M", "Orange syrup", "", PAST),
            Due(Waits.HOLD, "OE-001-5", "Orange essence, 250 mL", held, None),
        ),
    )
    lines = shown(found, 80)
    assert lines[:4] == [
        "Due at 2026-03-02 12:00; Ctrl-C ends.",
        'Next: pottle reject OS-002-M --because "past its date"',
        "",
        "due             when        lot       what                    to do",
    ]
    assert max(map(len, lines)) <= 80
    assert lines[4].startswith("12 h 1 min ago  2026-03-01  OS-002-M  Orange syrup")
    column = lines[3].index("to do")
    first = next(place for place, line in enumerate(lines) if "OE-001-5" in line)
    assert lines[first][column:].startswith("on hold: a")
    told = " ".join(line[column:] for line in lines[first:])
    assert told == f"on hold: {held}"


def test_nothing_due_is_said_with_what_comes_next() -> None:
    assert shown(DueList(NOW, ()), 80) == [
        "Due at 2026-03-02 12:00; Ctrl-C ends.",
        "",
        "Nothing is due.",
        "Next: pottle stock",
    ]


LONG_AGO = datetime(2026, 1, 2, 12, 0, tzinfo=UTC)
OLD = Due(Waits.DATE, "CAP-002-9", "Cap", "", LONG_AGO)
WAITING = Due(Waits.HOLD, "OE-001-5", "Orange essence", "smells of pine", None)
PAST_LINE = "Long past, 30 days or more: 1 date; pottle due --all lists them."
REJECT = 'Next: pottle reject CAP-002-9 --because "past its date"'


def printed(capsys: pytest.CaptureFixture[str], *items: Due, everything: bool = False) -> list[str]:
    screen._print(DueList(NOW, items), everything=everything)
    return capsys.readouterr().out.splitlines()


def test_a_list_ends_with_the_command_for_its_first_line(
    capsys: pytest.CaptureFixture[str],
) -> None:
    held = "–          OE-001-5  Orange essence  on hold: smells of pine"
    assert printed(capsys) == ["Nothing is due.", "Next: pottle stock"]
    assert printed(capsys, OLD) == ["Nothing else is due.", PAST_LINE, REJECT]
    heads, line, past, step = printed(capsys, OLD, WAITING)
    assert heads == "due  when  lot       what            to do"
    assert line.split() == held.split()
    assert (past, step) == (PAST_LINE, "Next: pottle lot OE-001-5")
    whole = printed(capsys, OLD, WAITING, everything=True)
    assert (len(whole), whole[-1]) == (4, REJECT)
    assert PAST_LINE not in whole


def test_on_the_screen_too_what_is_long_past_is_one_line_below() -> None:
    lines = shown(DueList(NOW, (OLD, WAITING)), 80)
    assert lines[1:3] == ["Next: pottle lot OE-001-5", ""]
    assert lines[-1] == PAST_LINE
    assert shown(DueList(NOW, (OLD,)), 80)[1] == REJECT


def test_it_is_read_anew_each_half_minute_until_ctrl_c(monkeypatch: pytest.MonkeyPatch) -> None:
    naps: list[float] = []
    read = count()

    def nap(seconds: float) -> None:
        naps.append(seconds)
        if len(naps) == 3:
            raise KeyboardInterrupt

    def none_due(_: object) -> DueList:
        next(read)
        return DueList(NOW, ())

    monkeypatch.setattr(screen, "sleep", nap)
    monkeypatch.setattr(screen, "due", none_due)
    screen.keep_watching(None)  # type: ignore[arg-type]
    assert naps == [30, 30, 30]
    assert next(read) == 3


def test_a_file_that_is_there_is_written_over_only_when_that_is_said(
    shell: Shell, capsys: pytest.CaptureFixture[str]
) -> None:
    call = Call(ledger=str(shell.book), by="AB")
    files = Path("due.csv"), Path("due.ics")
    with call.at_end:
        screen.show_due(call, *files)
        told = capsys.readouterr().out.splitlines()
        assert told[-1] == (
            "1 event in due.ics: hand it to your calendar; written again, it renews them."
        )
        for csv, ics in ((files[0], None), (None, files[1])):
            with pytest.raises(StorageError):
                screen.show_due(call, csv, ics)
        screen.show_due(call, *files, force=True)
        assert capsys.readouterr().out.splitlines() == told
        found = due(call.book())
        uid = next(line for line in calendar(found, "Wren & Co").split("\r\n") if "UID" in line)
        assert uid in files[1].read_text()
        assert "BOS-001-S" in files[0].read_text()


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("due", still)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
