"""`pottle party`: whom to reach and how."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers
from tests.cli.shell import Shell
from tests.cli.shown import check_shown

OIL, PACKED, STALL = "SOO-001-3", "BOS-001-S", "Bridge Street Stall"


def test_parties_are_listed_with_how_to_reach_them(shell: Shell) -> None:
    assert shell.run("party", "list").lines == [
        "The book knows nobody's telephone number yet.",
        'Next: pottle party add "NAME" --phone NUMBER',
    ]
    shell.run("party", "add", STALL, "--phone", "01 555 0100")
    shell.run("party", "add", STALL, "--email", "stall@example.com")
    assert shell.run("party", "list", "--json").json == [
        {
            "party": STALL,
            "phone": "01 555 0100",
            "email": "stall@example.com",
            "address": None,
            "words": None,
            "gln": None,
        }
    ]


def test_a_party_is_entered_with_a_telephone_number(shell: Shell) -> None:
    answer = "Recorded 39, party: P1 is Quay Bar, 01 555 0142.\nNext: pottle party list\n"
    check_answers(('party add "Quay Bar" --phone "01 555 0142"', answer), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("party")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("party", still)
