"""`pottle note`: words of a lot, or of none."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_a_note_of_a_lot_says_how_the_lot_stands(shell: Shell) -> None:
    answer = (
        "Recorded 39, note OE-001-5: Smells of peel.\n"
        "OE-001-5, Orange essence: 418 mL, released.\n"
        'Next: pottle start --product "NAME" --kind syrup --target VOLUME\n'
    )
    check_answers(("note {essence} Smells of peel", answer), shell)


def test_a_note_of_no_lot_is_kept_as_it_is(shell: Shell) -> None:
    answer = "Recorded 39, note: The scale was moved.\n"
    check_answers(("note - The scale was moved", answer), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("note")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("note", still)
