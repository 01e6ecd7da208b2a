"""`pottle complaints`: a list with filters."""

from datetime import date, timedelta

import pytest

from cli.screens.lots import complaints as module
from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.said import check_constants

PACKED = "BOS-001-S"


@pytest.fixture
def numbers(shell: Shell) -> list[int]:
    """Three complaints: by a bar, by nobody, and one that is answered."""
    lines = (
        f"complain {PACKED} ring --from 'Quay Bar' --opened yesterday",
        f"complain {PACKED} gas",
        f"complain {PACKED} dust --from 'Quay Bar'",
    )
    made = [int(shell.line(f"{line} --json").json["entry"]) for line in lines]
    shell.line(f"answer {made[2]} replaced --told today")
    return made


@pytest.mark.parametrize(
    ("words", "places"),
    [
        ("", {0, 1, 2}),
        ("--open", {0, 1}),
        ("--party 'Quay Bar'", {0, 2}),
        ("--outcome replaced", {2}),
        ("--from today", {0, 1, 2}),
        ("--from 2099-01-01", set()),
        ("--to yesterday", set()),
        ("OE-001-5", set()),
        (f"{PACKED} --open --from yesterday", {0, 1}),
    ],
)
def test_each_filter_lets_through_what_it_names(
    shell: Shell, numbers: list[int], words: str, places: set[int]
) -> None:
    found = {row["entry"] for row in shell.line(f"complaints {words} --json").json}
    assert found & set(numbers) == {numbers[place] for place in places}


def test_yesterday_is_kept_as_its_date_and_the_list_shows_what_became(
    shell: Shell, numbers: list[int]
) -> None:
    rows = {row["entry"]: row for row in shell.line("complaints --json").json}
    today = date.fromisoformat(rows[numbers[0]]["happened"][:10])
    assert rows[numbers[0]]["opened"] == f"{today - timedelta(days=1)}"
    assert rows[numbers[0]]["answer_by"] == f"{today + timedelta(days=7)}"
    lines = shell.line("complaints").lines
    assert lines[0].split() == ["complaint", "day", "lot", "from", "what", "became"]
    assert any(line.endswith(f"replaced, told {today} by AB") for line in lines)
    assert shell.line("due").out.count("answer complaint") >= 2


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("complaints")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("complaints", still)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
