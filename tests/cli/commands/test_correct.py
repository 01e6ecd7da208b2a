"""`pottle correct`: a new entry stands in the place of the old one."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.golden import check_golden


def test_the_new_entry_stands_in_place_of_the_old_one(shell: Shell) -> None:
    answer = (
        "Recorded 39 in place of 18, added OE-001-5: 32 mL of Sweet orange oil (expressed), "
        "SOO-001-3.\n"
        "OE-001-5, Orange essence: 418 mL, released.\n"
        "Note: What is in OE-001-5 is another by the book now, and it was released by entry 27. "
        "Decide about it anew: pottle hold OE-001-5, or pottle release OE-001-5\n"
        "Note: What is in BOS-001-S is another by the book now, and it was released by entry 35, "
        "had 15 labels printed, was sent out 1 time. "
        "Decide about it anew: pottle hold BOS-001-S, or pottle release BOS-001-S\n"
        "Next: pottle journal --entry 18\n"
    )
    check_answers(('correct 18 --set amount=32mL --because "misread the cylinder"', answer), shell)


def test_nothing_to_change_is_refused(shell: Shell) -> None:
    problem = (
        "Nothing to change in entry 18 was given.",
        "Say what is right with --set FIELD=VALUE, or when it happened with --at.",
    )
    check_refused(("correct 18 --because why", 2, problem), shell)


def test_each_thing_that_is_set_stands_in_the_new_entry(shell: Shell) -> None:
    said = shell.run(
        *("correct", "18", "--set", "amount=32mL", "--set", "temp=19", "--because", "misread")
    )
    assert (said.exit_code, said.err) == (0, "")
    entry = " ".join(shell.run("journal", "--entry", "39").out.split())
    assert "32 mL of SOO-001-3, at 19 °C" in entry
    assert "misread" in entry


def test_what_is_set_is_a_field_with_a_value(shell: Shell) -> None:
    said = shell.run("correct", "18", "--set", "colour=red", "--because", "why")
    check_golden("cli/correct_refused.txt", said.err)
    assert said.exit_code == 2


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("correct")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("correct", still)
