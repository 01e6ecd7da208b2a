"""The whole path from a new book to a traced complaint, by commands alone."""

from pathlib import Path

import pytest

from tests.cli.path import LISTS, MAIN_PATH
from tests.cli.shell import Answer, Shell, walk
from tests.keeper import copy_book

FILLED = {
    "INITIALS": "AB",
    "AMOUNT": "10mL",
    "VOLUME": "10mL",
    "GRADE": "bright",
    "SUPPLIER": "Harbour Oils",
    "COUNT": "1",
    "SIZE": "100mL",
    "WHO": "Somebody",
    "NAME": "Something",
    "LOT": "NS-001-J",
    "CODE": "lemon-oil",
}
"""What a maker might fill in for the capitals of a next step."""
ANSWERS = 6
"""Most lines of an answer that is no list; a release says what labels lack besides."""


@pytest.fixture
def new_shell(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shell:
    monkeypatch.chdir(tmp_path)
    return Shell(tmp_path / "pottle.db")


def test_every_command_of_the_path_is_done_in_few_lines_and_without_complaint(
    new_shell: Shell,
) -> None:
    for command, answer in walk(new_shell, MAIN_PATH):
        assert (answer.exit_code, answer.err) == (0, ""), command
        if "code" not in answer.out and command.split()[0] not in LISTS:
            assert 0 < len(answer.lines) <= ANSWERS, answer.out
    assert new_shell.codes == {
        "oil": "SOO-001-3",
        "spirit": "NS-001-J",
        "carb": "LMC-001-F",
        "sugar": "WS-001-R",
        "water": "WTR-002-Y",
        "bottles": "BM-002-G",
        "caps": "CAP-001-B",
        "essence": "OE-001-5",
        "syrup": "OS-002-M",
        "packed": "BOS-001-S",
    }
    for paper in ("labels.pdf", "record.pdf"):
        assert Path(paper).read_bytes().startswith(b"%PDF-")


def test_every_next_step_is_done_as_it_stands_once_its_capitals_are_filled_in(
    new_shell: Shell, tmp_path: Path
) -> None:
    steps = 0
    for command, answer in walk(new_shell, MAIN_PATH):
        if step := next_step(answer):
            steps += 1
            trial = Shell(copy_book(new_shell.book, tmp_path / f"trial{steps}.db"))
            done = trial.line(filled(step).removeprefix("pottle "))
            assert done.exit_code == 0, (command, step, done.err)
            Path("labels.pdf").unlink(missing_ok=True)
    assert steps > 30


def next_step(answer: Answer) -> str | None:
    if answer.out.startswith("{"):
        return answer.json.get("next") if "next" in answer.json else None
    last = answer.lines[-1]
    return last.removeprefix("Next: ") if last.startswith("Next: ") else None


def filled(step: str) -> str:
    kind = "essence" if "start" in step else "oil"
    each = "10g" if " carb " in step or " sugar " in step else "10mL"
    amount = "10" if " b250 " in step or " cap " in step else each
    for capitals, words in {**FILLED, "KIND": kind, "AMOUNT": amount}.items():
        step = step.replace(f" {capitals}", f" {words}").replace(f'"{capitals}"', f'"{words}"')
    return step


def test_options_before_the_command_count_and_those_after_it_win(shell: Shell) -> None:
    before = shell.run("--by", "ZZ", "--json", "note", "-", "A note.")
    assert "The initials ZZ are not in the book; it knows AB." in before.err
    after = shell.run("--by", "ZZ", "note", "-", "A note.", "--by", "AB", "--json")
    assert after.json["says"] == "A note."


def test_the_nearest_book_upwards_is_used(shell: Shell, monkeypatch: pytest.MonkeyPatch) -> None:
    below = shell.book.parent / "bench" / "left"
    below.mkdir(parents=True)
    monkeypatch.chdir(below)
    monkeypatch.delenv("POTTLE_LEDGER", raising=False)
    from cli.kit.call import Call

    assert Call().where == str(shell.book)
    assert Call(ledger="other.db").where == "other.db"


def test_a_dot_is_the_lot_one_wrote_about_last(shell: Shell) -> None:
    shell.line("note {syrup} Tasted.")
    assert shell.run("note", ".", "Again.", "--json").json["code"] == shell.codes["syrup"]


def test_an_ending_names_a_lot(shell: Shell) -> None:
    assert shell.run("lot", "E-001-5", "--json").json["code"] == shell.codes["essence"]
