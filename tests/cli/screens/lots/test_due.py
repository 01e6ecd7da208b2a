"""What is due, kept on a screen: as wide as it, what comes next on top."""

from datetime import UTC, datetime
from io import StringIO

from rich.console import Console

from cli.screens.lots.due import screen_of
from ledger.service.lots.due import Due, DueList, Waits

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
