"""`pottle lot`: what a lot is, of what it was made, what was done and where it went."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_a_packed_lot_is_told_from_what_it_holds_to_who_has_it(shell: Shell) -> None:
    lines = shell.line("lot {packed}").lines
    assert lines[:6] == [
        "BOS-001-S, Orange syrup, 250 mL: 9 there, released.",
        "Best before 2099-06-30, never later than SOO-001-3, which it is made of.",
        "Strength: 0.69 % vol at 20 °C.",
        "Sugar: 611 g/L, 49.8 % by weight.",
        "Oil: Sweet orange oil 0.411 g/L, 0.0487 % by volume.",
        "In a glass: 0.09 % vol, 18.3 g sugar, 240 mL (1:7).",
    ]
    place = lines.index("Made of")
    assert lines[place + 1 : place + 5] == [
        "lot        what           amount",
        "BM-002-G   Bottle 250 mL  15",
        "CAP-001-B  Cap            15",
        "OS-002-M   Orange syrup   3.75 L",
    ]
    done = [line for line in lines if line[:5].strip().isdigit()]
    assert [line.split()[0] for line in done] == ["34", "35", "36", "37", "38"]
    assert done[-1].endswith(
        "AB  complaint: cloudy, from Bridge Street Stall, to be answered in 7 d."
    )
    assert lines[-1] == "Next: pottle trace BOS-001-S"


def test_a_delivery_went_into_what_was_made_of_it(shell: Shell) -> None:
    lines = shell.line("lot {oil}").lines
    assert lines[:2] == [
        "SOO-001-3, Sweet orange oil: 470 mL, in stock.",
        "Best before 2099-06-30, as its supplier gave it.",
    ]
    assert "OE-001-5  Orange essence  30 mL" in lines


def test_a_slip_in_a_code_is_told_with_the_codes_near_to_it(shell: Shell) -> None:
    problem = (
        "The lot code OE-001-6 ends in 6, but OE-001 calls for 5, so at least one character is "
        "wrong: read the code again. Near to it: OE-001-5, BOS-001-S, SOO-001-3.",
        "pottle stock lists the lots that are.",
    )
    check_refused(("lot OE-001-6", 3, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("lot")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("lot", still)
