"""`pottle init`: a new book, or none."""

from pathlib import Path

import pytest
import tzlocal

from tests.cli.asked import check_asked
from tests.cli.cases import check_refused
from tests.cli.shell import Shell


def test_a_telephone_number_nobody_can_read_makes_no_book(shell: Shell) -> None:
    answer = shell.run(
        *("init", "--house", "A", "--currency", "EUR", "--ledger", "new.db", "--phone", "01\u202e5")
    )
    assert (answer.exit_code, answer.complaints) == (
        2,
        [
            "The telephone number holds the invisible character U+202E.",
            "  Type it again without it.",
        ],
    )
    assert not Path("new.db").exists()


def test_a_currency_that_is_none_makes_no_book(shell: Shell) -> None:
    problem = (
        '"money" is not a currency code.',
        "Write three letters, such as EUR.",
    )
    check_refused(("init --house A --currency money --ledger new.db", 2, problem), shell)


def test_a_new_book_has_its_house_as_the_first_entry(shell: Shell) -> None:
    told = ("--house", "Wren & Co", "--currency", "GBP", "--time-zone", "Europe/London")
    answer = shell.run("init", *told, "--ledger", "new.db")
    assert (answer.exit_code, answer.err) == (0, "")
    assert answer.lines[-1] == 'Next: pottle person add INITIALS "NAME"'
    assert shell.run("house", "--ledger", "new.db").lines == [
        "name: Wren & Co",
        "currency: GBP",
        "time zone: Europe/London",
        "fluid ounce: US",
    ]


@pytest.fixture
def empty(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shell:
    monkeypatch.chdir(tmp_path)
    return Shell(tmp_path / "pottle.db")


MADE = ("init", "--house", "Wren & Co", "--currency", "EUR")


def test_a_house_that_names_no_zone_has_that_of_the_machine_and_is_told_so(
    empty: Shell, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(tzlocal, "get_localzone_name", lambda: "Europe/Dublin")
    assert empty.run(*MADE).lines[1] == (
        "Times without a zone are read on the clock of Europe/Dublin, which is this machine's; for "
        "another: pottle house --time-zone ZONE"
    )
    assert empty.run("house", "--json").json["time_zone"] == "Europe/Dublin"


def test_a_machine_without_a_zone_that_has_a_name_is_taken_for_utc(
    empty: Shell, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(tzlocal, "get_localzone_name", lambda: "local")
    assert empty.run(*MADE, "--json").json["time_zone"] == "UTC"


def test_a_zone_that_is_named_is_taken_and_needs_no_telling(empty: Shell) -> None:
    lines = empty.run(*MADE, "--time-zone", "Europe/Dublin").lines
    assert not any("clock" in line for line in lines)


def test_an_hour_that_the_clock_showed_twice_is_shown_with_its_offset(empty: Shell) -> None:
    empty.run(*MADE, "--time-zone", "Europe/Dublin")
    empty.run("person", "add", "AB", "Ada Brook", "--by", "AB")
    # Summer time ended in Ireland on 26 October 2025 at 1:00 UTC.
    for at in ("2025-10-26 00:30", "2025-10-26 01:30", "2025-10-26T01:30+00:00"):
        empty.run("note", "-", "Read the cellar.", "--at", at, "--by", "AB")
    shown = [entry["happened"] for entry in empty.run("journal", "--json").json[-3:]]
    assert shown == [
        "2025-10-26T00:30:00+01:00",
        "2025-10-26T01:30:00+01:00",
        "2025-10-26T01:30:00+00:00",
    ]
    lines = empty.run("journal").lines
    assert any("2025-10-26 01:30+00:00" in line for line in lines)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("init")
