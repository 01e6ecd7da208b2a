"""Forgetting asks for a reason and a yes, tells what stays, and erases."""

from pathlib import Path

import pytest

from cli.screens.recall import forget as screen
from reports.words.recall.forget import COPIES, LAW
from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.keeper import Keeper

BEFORE = [
    "Quay Bar is P1 in the book.",
    "Erased for good: all that stands beside entry 9 of who that is.",
    COPIES,
    LAW,
]


@pytest.fixture
def shell(sqlite_keeper: Keeper) -> Shell:
    found = Shell(Path(sqlite_keeper.book.where))
    found.line('party add "Quay Bar" --phone "01 555 0155"')
    return found


def test_without_a_reason_it_is_told_what_would_be_and_nothing_is_erased(shell: Shell) -> None:
    answer = shell.line('forget "Quay Bar"')
    assert (answer.exit_code, answer.lines) == (4, BEFORE)
    assert answer.complaints == [
        "Forgetting Quay Bar erases for good who that is.",
        "  Say why with --because. What has to be kept, and how long, is for you to know.",
    ]


def test_nobody_who_cannot_be_asked_erases_without_saying_yes(shell: Shell) -> None:
    answer = shell.line('forget "Quay Bar" --because "asked for it"')
    assert (answer.exit_code, answer.complaints) == (
        3,
        [
            "Nobody can be asked here whether Quay Bar is to be forgotten for good.",
            "  Say so with --yes. Nothing was erased.",
        ],
    )
    assert shell.entries() == 9


@pytest.mark.parametrize(("typed", "code"), [("p1", 0), ("yes", 3)])
def test_somebody_at_a_terminal_is_asked_for_the_code(
    typed: str, code: int, shell: Shell, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(screen, "can_ask", lambda: True)
    answer = shell.run("forget", "Quay Bar", "--because", "asked for it", given=f"{typed}\n")
    assert answer.exit_code == code
    assert "Write P1 to erase it for good: " in answer.out
    assert shell.entries() == (10 if code == 0 else 9)
    if code:
        assert answer.complaints == [
            "That was not P1, so Quay Bar was not forgotten.",
            "  Nothing was erased.",
        ]


def test_it_is_erased_and_verified(shell: Shell) -> None:
    answer = shell.line('forget "Quay Bar" --because "asked for it" --yes')
    assert answer.lines == [
        *BEFORE,
        "Recorded 10, forgotten: party P1, details erased of entry 9.",
        "What was erased is nowhere in the book's file any more.",
        "Next: pottle verify",
    ]
    assert shell.line("verify").lines[1] == (
        "1 entry tells of somebody who was forgotten since; who that was is not there any more."
    )
    assert b"Quay Bar" not in shell.book.read_bytes()
    assert shell.line("forget P1 --json").json["is_new"] is False
    struck = shell.line("strike 10 --because wrong")
    assert struck.complaints == [
        "Entry 10 says who was forgotten; what was erased cannot be brought back, so it stays.",
        "  If they are to be in the book again, tell them anew: pottle party add ...",
    ]
    corrected = shell.line('correct 9 --set name="Quay Bar" --because wrong')
    assert corrected.complaints == [
        "What entry 9 told of was forgotten, so it cannot be corrected.",
        "  If they are to be in the book again, tell them anew: pottle party add ...",
    ]


def test_a_copy_of_any_sort_carries_what_is_left_and_no_more(shell: Shell, tmp_path: Path) -> None:
    shell.line('party add "Madeup Café" --email cafe@example.com')
    shell.line('forget "Quay Bar" --because "asked for it" --yes')
    listed, seal = shell.line("party list").out, shell.line("seal").out
    lines, book = tmp_path / "book.jsonl", tmp_path / "other.db"
    shell.run("export", str(lines))
    assert b"Quay Bar" not in lines.read_bytes()
    assert shell.run("import", "--book", str(lines), "--ledger", str(book)).exit_code == 0
    other = Shell(book)
    assert (other.line("party list").out, other.line("seal").out) == (listed, seal)
    assert other.line("verify").exit_code == 0
    copies = tmp_path / "copies"
    copies.mkdir()
    shell.run("backup", str(copies))
    (copy,) = copies.iterdir()
    assert b"Quay Bar" not in copy.read_bytes()
    assert b"Madeup" in copy.read_bytes()


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("forget")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("forget", still)
