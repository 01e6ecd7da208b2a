"""`pottle send`: goods that leave or come back, and more than there are."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_samples_leave_and_are_counted(shell: Shell) -> None:
    answer = (
        "Recorded 39, moved BOS-001-S: 2 given as samples to Quay Bar.\n"
        "BOS-001-S, Orange syrup, 250 mL: 7 there, released.\n"
        "Note: “Quay Bar” is named in the text of this entry, where nothing can be forgotten. So "
        'that later entries have a code instead: pottle party add "Quay Bar" --phone NUMBER\n'
        "Next: pottle stock\n"
    )
    check_answers(('send {packed} 2 --as sample --to "Quay Bar"', answer), shell)
    assert shell.line('party add "Quay Bar" --phone "01 555 0155"').exit_code == 0
    assert "Note:" not in shell.line('send {packed} 1 --as sample --to "Quay Bar"').out


def test_what_comes_back_is_here_again(shell: Shell) -> None:
    answer = (
        "Recorded 39, moved BOS-001-S: 1 came back from Bridge Street Stall.\n"
        "BOS-001-S, Orange syrup, 250 mL: 10 there, released.\n"
        "Next: pottle stock\n"
    )
    check_answers(('send {packed} 1 --from "Bridge Street Stall"', answer), shell)


def test_more_than_there_are_needs_a_reason(shell: Shell) -> None:
    problem = (
        "20 is more than is there of BOS-001-S: the book says 9.",
        "Check the lot and the amount; if it is so, say why with --because.",
    )
    check_refused(("send {packed} 20 --to Inn", 4, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("send")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("send", still)
