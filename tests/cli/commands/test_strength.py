"""`pottle strength`: what it prints, for people and machines, and how it refuses."""

from pathlib import Path

import pytest

from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


@pytest.fixture
def bare(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shell:
    """Return a shell in an empty folder, without a book."""
    monkeypatch.chdir(tmp_path)
    return Shell(tmp_path / "pottle.db")


def test_it_says_a_strength_and_an_amount_and_reads_no_book(bare: Shell, tmp_path: Path) -> None:
    answer = bare.line('strength "100 proof" "1 US gal" --temp 60F')
    assert (answer.exit_code, answer.err) == (0, "")
    assert "US proof gallons: 1." in answer.out
    assert "1.9018 L of pure alcohol at 20 °C" in answer.out
    told = bare.line("strength 96% --json").json
    assert (told["abv"], told["amount"]) == ("96", None)
    assert list(tmp_path.iterdir()) == []


def test_what_cannot_be_is_refused(bare: Shell) -> None:
    answer = bare.line("strength 120% 1L")
    assert (answer.exit_code, answer.complaints) == (
        3,
        [
            "A strength is from 0 to 100 % vol, and 120 % vol is outside.",
            "  Read the label or the instrument again.",
        ],
    )


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("strength")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("strength", still)
