"""`pottle cost`: the sums of a lot, what has no price, and the price for a margin."""

from pathlib import Path

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.reports.pdf.readback import text_of


def test_a_delivery_with_a_price_is_reckoned_to_the_ml(shell: Shell) -> None:
    answer = (
        "SOO-001-3, Sweet orange oil: 48.00 EUR for 500 mL.\n"
        "A mL: 0.09600 EUR.\n"
        "Price of a mL for a margin of 50 %: 0.1920 EUR.\n"
        "\n"
        "what              lot        amount   cost\n"
        "Sweet orange oil  SOO-001-3  500 mL  48.00\n"
        "Total                                48.00\n"
        "Work is not counted: pottle house --hour PRICE says what an hour costs.\n"
        "Next: pottle lot SOO-001-3\n"
    )
    check_answers(("cost {oil} --margin 50", answer), shell)


def test_a_margin_of_all_of_the_price_is_refused(shell: Shell) -> None:
    problem = (
        "A margin of 100 cannot be: it is a share of the price, from 0 to below 100 %.",
        "A price of twice the cost is a margin of 50 %.",
    )
    check_refused(("cost {packed} --margin 100", 3, problem), shell)


def test_all_that_is_wrong_is_told_at_once(shell: Shell) -> None:
    found = shell.line("cost NO-001-X --glass tall --pour seven --hour x --margin 100")
    told = " ".join(found.complaints)
    assert (found.exit_code, found.out) == (3, "")
    for word in ('"tall"', '"seven"', '"x"', "A margin of 100", "NO-001"):
        assert word in told


def test_the_card_is_a_paper_too(shell: Shell) -> None:
    done = shell.line("cost {essence} --out card.pdf")
    assert done.lines == ["The cost card of OE-001-5 is in card.pdf."]
    assert "Cost card" in text_of(Path("card.pdf").read_bytes())
    assert shell.line("cost {essence} --out card.pdf").exit_code == 5


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("cost")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("cost", still)
