"""What ends a command is one object on standard error when JSON is asked for."""

import json
import signal

import pytest
import typer
from typer.testing import CliRunner

from cli.kit import errors as module
from cli.kit.errors import FAMILIES, STORAGE, run_safely, unsaid
from cli.main import app
from reports.json.kit.problems import error_answer
from tests.cli.shell import Shell
from tests.kept.said import check_constants

ERRORS: dict[str, tuple[tuple[str, ...], int, str]] = {
    "a lot that is not in the book": (("lot", "XYZ-1"), 3, "refused"),
    "an amount without a unit": (("add", "OE-001-5", "NS-001-J", "30"), 2, "usage"),
    "less than the book has": (("count", "NS-001-J", "1L"), 4, "reason-needed"),
    "a file that is there": (("record", "OE-001-5", "--out", "there.pdf"), 5, "storage"),
    "a word that is missing": (("add", "OE-001-5"), 2, "usage"),
    "an option that is none": (("stock", "--everything"), 2, "usage"),
    "a command that is none": (("stocks",), 2, "usage"),
    "no command": ((), 2, "usage"),
}


@pytest.mark.parametrize(("words", "exit_code", "family"), ERRORS.values(), ids=ERRORS)
def test_an_error_is_one_object_on_standard_error(
    shell: Shell, words: tuple[str, ...], exit_code: int, family: str
) -> None:
    (shell.book.parent / "there.pdf").touch()
    answer = shell.run(*words, "--json")
    assert (answer.exit_code, answer.out) == (exit_code, "")
    told = json.loads(answer.err)
    assert list(told) == ["error", "code", "what_to_do", "problems"]
    assert told["code"] == family
    assert told["error"] == told["problems"][0]["error"]
    assert told["what_to_do"] == told["problems"][0]["what_to_do"]
    assert told["error"].endswith((".", "?"))
    assert told["what_to_do"]


def test_all_that_is_wrong_with_one_entry_is_told_at_once(shell: Shell) -> None:
    answer = shell.run("look", "OE-001-5", "murky", "--ntu", "many", "--json")
    told = json.loads(answer.err)
    assert [item["error"] for item in told["problems"]] == [
        '"murky" is not a grade of clarity.',
        '"many" is not a turbidity in NTU.',
    ]
    assert told["error"] == " ".join(item["error"] for item in told["problems"])


def test_a_fault_inside_is_told_as_json_too(shell: Shell, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("cli.screens.evidence.seal.seal", lambda book: 1 // 0)
    answer = shell.run("seal", "--json")
    assert (answer.exit_code, answer.out) == (70, "")
    assert json.loads(answer.err)["code"] == "inside"


def test_a_sentence_that_two_problems_share_is_said_once() -> None:
    told = error_answer([("A.", "See."), ("B.", "See."), ("C.", "")], "refused")
    assert (told.error, told.what_to_do) == ("A. B. C.", "See.")
    assert len(told.problems) == 3


def test_of_an_answer_that_finds_no_room_what_was_recorded_is_told_and_no_failure(
    capsys: pytest.CaptureFixture[str],
) -> None:
    full, gone = OSError(28, "No space left on device"), BrokenPipeError(32, "Broken pipe")

    def told(error: OSError, *recorded: int) -> tuple[int, str]:
        code = unsaid(error, recorded, as_json=True)
        said = json.loads(capsys.readouterr().err or '{"code": "", "error": ""}')
        return code, f"{said['code']}: {said['error']} {said.get('what_to_do')}"

    answer = "The answer could not be written:"
    assert told(full) == (
        STORAGE,
        f"storage: {answer} No space left on device. Choose a place with room for it.",
    )
    shows = "pottle journal --entry 7 shows it."
    assert told(full, 7) == (0, f"storage: Recorded 7. {answer} No space left on device. {shows}")
    assert told(gone, 7) == (0, f"storage: Recorded 7. {answer} Broken pipe. {shows}")
    assert told(gone) == (0, ":  None")


def test_a_fault_in_a_damaged_book_is_told_as_what_is_wrong_with_the_book(
    capsys: pytest.CaptureFixture[str],
) -> None:
    with pytest.raises(typer.Exit) as ended:
        run_safely(
            lambda: print(1 // 0),
            as_json=True,
            recorded=lambda: [7],
            damage=lambda: [("A page is torn.", "Restore a backup.")],
        )
    told = json.loads(capsys.readouterr().err)
    assert (ended.value.exit_code, told["code"]) == (STORAGE, "storage")
    assert told["error"] == "Recorded 7. A page is torn."


def test_each_family_has_an_exit_code_of_its_own() -> None:
    assert [code for _, _, code in FAMILIES] == [1, 2, 3, 4, 5]


def test_a_reason_that_is_missing_is_asked_for_at_a_terminal(
    shell: Shell, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("cli.kit.call.is_asked", lambda: True)
    env = {"POTTLE_LEDGER": str(shell.book), "POTTLE_BY": "AB"}
    done = CliRunner().invoke(app, ["strike", "37"], env=env, input="wrong lot\n")
    assert (done.exit_code, done.stderr.splitlines()) == (
        0,
        [
            "Entry 37 cannot be changed without a reason.",
            '  Say why: --because "what was wrong"',
            "Why? (nothing: it is not recorded) ",
        ],
    )
    assert shell.run("journal", "--entry", "37", "--json").json[-1]["reason"] == "wrong lot"
    before = shell.entries()
    none = CliRunner().invoke(app, ["strike", "36"], env=env, input="\n")
    assert (none.exit_code, none.stdout, shell.entries()) == (4, "", before)
    assert none.stderr.splitlines() == [
        "Entry 36 cannot be changed without a reason.",
        '  Say why: --because "what was wrong"',
        "Why? (nothing: it is not recorded) Without a reason nothing was recorded.",
    ]


def test_machines_are_not_asked(shell: Shell, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("cli.kit.call.is_asked", lambda: True)
    answer = shell.run("strike", "37", "--json")
    assert (answer.exit_code, json.loads(answer.err)["code"]) == (4, "reason-needed")


def test_a_number_that_no_book_can_hold_is_told(shell: Shell) -> None:
    answer = shell.run("journal", "--entry", "9" * 20)
    assert (answer.exit_code, answer.complaints) == (
        2,
        [
            "A number in this is larger than any that a book can hold.",
            "  Look at the numbers again. Nothing was recorded.",
        ],
    )


def test_an_unknown_option_is_quoted_without_what_is_hidden_in_it(shell: Shell) -> None:
    answer = shell.run("journal", "--en\u202etry")
    assert "No such option: --enU+202Etry" in answer.err


def test_after_a_command_a_break_is_told_to_whom_it_was_told_before() -> None:
    """As a session is, between its lines."""
    before = signal.signal(signal.SIGINT, signal.SIG_IGN)
    try:
        run_safely(lambda: None, as_json=False)
        assert signal.getsignal(signal.SIGINT) is signal.SIG_IGN
    finally:
        signal.signal(signal.SIGINT, before)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
