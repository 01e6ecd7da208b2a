"""`pottle material`: what is bought and used, and what is new of it."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_a_material_is_received_next(shell: Shell) -> None:
    answer = (
        "Recorded 39, material: acid is Citric acid, acid.\n"
        'Next: pottle receive acid AMOUNT --from "SUPPLIER"\n'
    )
    check_answers(('material add acid --name "Citric acid" --kind acid', answer), shell)


def test_a_change_keeps_what_was_known(shell: Shell) -> None:
    answer = (
        "Recorded 39, material: spirit is Neutral spirit, ethanol, 0.807 g/mL, 96 % vol, "
        "allergens none.\n"
        'Next: pottle receive spirit AMOUNT --from "SUPPLIER"\n'
    )
    check_answers(("material change spirit --density 0.807", answer), shell)


def test_a_material_that_is_known_is_changed_not_added(shell: Shell) -> None:
    problem = (
        "The material spirit is in the book already.",
        "Say what is new about it with: pottle material change spirit ...",
    )
    check_refused(("material add spirit --kind ethanol", 3, problem), shell)


def test_the_list_has_what_is_known_of_each(shell: Shell) -> None:
    answer = (
        "material    name                       kind       how         g/mL  %vol\n"
        "b250        Bottle 250 mL              bottle\n"
        "cap         Cap                        closure\n"
        "carb        Light magnesium carbonate  clarifier\n"
        "orange-oil  Sweet orange oil           oil        expressed  0.845\n"
        "spirit      Neutral spirit             ethanol                        96\n"
        "sugar       White sugar                sugar\n"
        "water       Water                      water\n"
    )
    check_answers(("material list", answer), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("material")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("material", still)
