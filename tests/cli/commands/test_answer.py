"""`pottle answer`: what became of a complaint."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown

PACKED = "BOS-001-S"


def test_an_answer_that_was_told_closes_and_stands_with_its_lot(shell: Shell) -> None:
    number = shell.run("complain", PACKED, "ring", "--from", "Quay Bar", "--json").json["entry"]
    said = shell.line(f"answer {number} not ours --told today --words 'shaken with ice'")
    first, _, rest = said.lines[0].partition(", told on ")
    assert first == (
        f"Recorded {number + 1}, complaint answered {PACKED}: complaint {number}, not ours, told "
        "by AB"
    )
    assert rest.endswith(", shaken with ice.")
    assert shell.line("complaints --open --party 'Quay Bar'").lines == [
        "There are no such complaints.",
        'Next: pottle complain LOT "WHAT IS WRONG" --from WHO',
    ]


def test_a_complaint_closed_in_silence_needs_a_reason(shell: Shell) -> None:
    number = shell.run("complain", PACKED, "ring", "--from", "Quay Bar", "--json").json["entry"]
    problem = (
        f"Complaint {number} is to be closed, and Quay Bar was not told what became of it.",
        "Say who told them and when, with --told-by and --told; or why nobody did, with --because.",
    )
    check_refused((f"answer {number} explained --close", 4, problem), shell)
    done = shell.line(f"answer {number} explained --close --because 'the bar has shut'")
    assert done.exit_code == 0


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("answer")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("answer", still)
