"""`pottle contact`: what somebody said is told in the recall."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers
from tests.cli.shell import Shell
from tests.cli.shown import check_shown

OIL, PACKED, STALL = "SOO-001-3", "BOS-001-S", "Bridge Street Stall"


def test_calls_and_returns_show_when_it_is_asked_again(shell: Shell) -> None:
    shell.run("recall", OIL, "--because", "throws haze")
    said = shell.run("contact", OIL, STALL, "--still", "4", "--words", "two open")
    assert said.lines[-1] == f"Next: pottle recall {OIL}"
    shell.run("send", PACKED, "3", "--from", STALL)
    lines = shell.run("recall", OIL).lines
    assert "Spoken to 1 of 1 holder; 3 came back since it began." in lines
    assert "15 bottles made = 12 here + 3 sent + 0 unexplained (3 came back)." in lines
    assert any(line.endswith(": spoken to, 4 still there, two open") for line in lines)
    assert lines[-1] == f"Next: pottle send {OIL} AMOUNT --as destroyed"
    lines = shell.run("recall", OIL, "--close", "the oil was old", "--because", "it is kept").lines
    assert any(
        line.startswith("Closed ") and line.endswith(" Cause: the oil was old.") for line in lines
    )


def test_nothing_left_is_told_as_their_answer_on_screen_and_to_machines(shell: Shell) -> None:
    shell.run("recall", OIL, "--because", "throws haze")
    shell.run("contact", OIL, STALL, "--reached", "left-word", "--still", "0")
    answer = shell.run("recall", OIL)
    assert f"1. {STALL}: no telephone number in the book; nothing left, as they say" in answer.lines
    assert "Spoken to 1 of 1 holder; 0 came back since it began." in answer.lines
    (call,) = shell.run("recall", OIL, "--json").json["to_call"]
    assert call["may_have"] == {"amount": "0", "unit": "each"}
    assert (call["may_have_volume"], call["spoken_to"]) == ({"amount": "0", "unit": "mL"}, True)
    (told,) = call["contacts"]
    assert told["still_there"] == {"amount": "0", "unit": "each"}


def test_a_call_that_nobody_answered_leads_back_to_the_drill(shell: Shell) -> None:
    answer = (
        "Recorded 39, called SOO-001-3: Bridge Street Stall, no answer.\n"
        "SOO-001-3, Sweet orange oil: 470 mL, in stock.\n"
        "Next: pottle recall SOO-001-3 --drill\n"
    )
    check_answers(('contact {oil} "Bridge Street Stall" --reached no-answer', answer), shell)


def test_a_name_that_ends_in_a_full_stop_is_told_once_of_a_call(shell: Shell) -> None:
    shell.line('send {packed} 2 --to "Pretend Bar Ltd."')
    shell.run("recall", OIL, "--because", "throws haze")
    done = shell.run("contact", OIL, "Pretend Bar Ltd.", "--reached", "no-answer")
    assert ": Pretend Bar Ltd, " in done.lines[0]
    lines = shell.run("recall", OIL, "--out", "pack").lines
    (called,) = [line for line in lines if line.startswith("     called ")]
    assert called.endswith(": no answer")
    assert "Pretend Bar" not in called


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("contact")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("contact", still)
