"""`pottle receive`: a delivery opens a lot, and what is not known of it is asked for."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.cli.terminal import Seat
from tests.kept.golden import check_golden


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


def test_every_word_of_a_delivery_is_in_its_entry(shell: Shell) -> None:
    said = shell.run(
        *("receive", "spirit", "1", "US", "gal", "--from", "Harbour Oils", "--their-lot", "C9"),
        *("--cost", "61.00", "--best-before", "2099-01-31", "--certificate", "17/3"),
        *("--density", "0.807", "--abv", "96.2", "--food-grade", "yes", "--duty", "40.50"),
        *("--document", "DN-8", "--code", "SP-9"),
    )
    assert (said.exit_code, said.err) == (0, "")
    check_golden("cli/received.txt", said.out)


def test_a_material_that_is_not_there_is_to_be_added(shell: Shell) -> None:
    problem = (
        (
            "The material tonic is not in the book; it knows b250, cap, carb, orange-oil, "
            "spirit, sugar, water."
        ),
        'Add it with: pottle material add tonic --name "NAME" --kind KIND',
    )
    check_refused(("receive tonic 1L", 3, problem), shell)


def test_at_a_terminal_it_asks_for_what_is_missing(shell: Shell) -> None:
    env = {"POTTLE_LEDGER": str(shell.book), "POTTLE_BY": "AB"}
    known = "Material (b250, cap, carb, orange-oil, spirit, sugar, water):"
    with Seat(["receive"], 100, **env) as seat:
        seat.wait(known)
        assert "Did you mean spirit?" in " ".join(seat.type("spirt\r", known))
        seat.type("spirit\r", "How much, in mL or with its unit:")
        seat.type("2 L\r", "Supplier:")
        seat.type("\r", "Their lot:")
        seat.type("88-3\r", "Cost in all:")
        seat.type("75\r", "Best before, as 2027-06-30:")
        seat.type("soon\r", "Best before, as 2027-06-30:")
        seat.type("\r", "Certificate:")
        seat.type("\r", "Strength of this lot in % vol:")
        assert seat.leave("96.4\r") == 0
        told = " ".join(seat.lines)
    assert "2 L of spirit, their lot 88-3, cost 75.00, 96.4 % vol." in told


def test_a_script_is_told_what_is_missing(shell: Shell) -> None:
    assert shell.run("receive").complaints == [
        "Missing argument 'MATERIAL'.",
        "  See how it is called: pottle receive --help",
    ]
    assert shell.run("receive", "spirit").complaints == [
        "Missing argument 'AMOUNT'.",
        "  See how it is called: pottle receive --help",
    ]


def test_questions_that_are_broken_off_record_nothing(shell: Shell) -> None:
    before = shell.entries()
    env = {"POTTLE_LEDGER": str(shell.book), "POTTLE_BY": "AB"}
    with Seat(["receive", "spirit"], **env) as seat:
        seat.wait("How much, in mL or with its unit:")
        assert seat.leave("\x04") == 3
        assert seat.lines[-1] == "The questions were broken off, so nothing was recorded."
    assert shell.entries() == before


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("receive")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("receive", still)
