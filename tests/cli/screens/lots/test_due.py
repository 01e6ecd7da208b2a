"""What is due, kept on a screen: as wide as it, what comes next on top."""

from datetime import UTC, datetime
from io import StringIO
from itertools import count
from pathlib import Path

import pytest
from rich.console import Console

from cli.kit.call import Call
from cli.screens.lots import due as screen
from cli.screens.lots.due import screen_of
from ledger.errors import StorageError
from ledger.service.lots.due import Due, DueList, Waits, due
from reports.words.lots.calendar import calendar
from tests.cli.shell import Shell

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
