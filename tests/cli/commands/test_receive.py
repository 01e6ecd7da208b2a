"""`pottle receive`: a delivery opens a lot, and what is not known of it is asked for."""

from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell


def test_a_delivery_on_hold_says_what_is_not_known_yet(shell: Shell) -> None:
    answer = (
        "Recorded 39, received SOO-004-Y: 100 mL of orange-oil, from Harbour Oils, their lot "
        "C7732, cost 10.50, best before 2099-01-31.\n"
        "SOO-004-Y, Sweet orange oil: 100 mL, on hold.\n"
        "Not known yet: the certificate.\n"
        'Next: pottle start --product "NAME" --kind KIND --target VOLUME\n'
    )
    command = (
        'receive orange-oil 100mL --from "Harbour Oils" --their-lot C7732 --cost 10.50 --hold '
        '--best-before 2099-01-31 --because "no papers yet"'
    )
    check_answers((command, answer), shell)


def test_a_material_that_is_not_there_is_to_be_added(shell: Shell) -> None:
    problem = (
        (
            "The material tonic is not in the book; it knows b250, cap, carb, orange-oil, "
            "spirit, sugar, water."
        ),
        'Add it with: pottle material add tonic --name "NAME" --kind KIND',
    )
    check_refused(("receive tonic 1L", 3, problem), shell)
