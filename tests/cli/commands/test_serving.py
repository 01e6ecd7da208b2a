"""`pottle serving`: only what was made here is poured."""

from pathlib import Path

from tests.cli.asked import check_asked
from tests.cli.cases import check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.reports.pdf.readback import text_of


def test_a_received_lot_is_not_poured(shell: Shell) -> None:
    problem = (
        "SOO-001-3 is a received lot, which nobody pours as it is.",
        "Name a lot that was made of it; pottle trace SOO-001-3 --forward shows them.",
    )
    check_refused(("serving {oil}", 3, problem), shell)


def test_a_glass_is_told_by_what_is_in_it(shell: Shell) -> None:
    """The syrup of the main path holds 611 g of sugar in a litre, so 30 mL of it hold 18.3 g."""
    lines = shell.line("serving {packed}").lines
    assert lines[:5] == [
        "BOS-001-S, Orange syrup, 250 mL: 0.69 % vol.",
        "A glass of 240 mL: 30 mL of it and 210 mL of soda water (1:7).",
        "A bottle holds 8 glasses.",
        "On hand: 75 glasses.",
        "",
    ]
    assert "sugar                      18.3 g" in lines
    assert lines[-1] == "Next: pottle serving BOS-001-S --explain"


def test_all_that_is_wrong_is_told_at_once(shell: Shell) -> None:
    found = shell.line("serving NO-001-X --glass tall --pour seven --dose 3g --adult x --child 0kg")
    told = " ".join(found.complaints)
    assert (found.exit_code, found.out) == (3, "")
    for word in ('"tall"', '"seven"', '"3g"', '"x"', "0kg", "NO-001"):
        assert word in told


def test_the_card_is_a_paper_too(shell: Shell) -> None:
    done = shell.line("serving {essence} --out card.pdf")
    assert done.lines == ["The serving card of OE-001-5 is in card.pdf."]
    assert "Serving card" in text_of(Path("card.pdf").read_bytes())
    assert shell.line("serving {essence} --out card.pdf").exit_code == 5


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("serving")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("serving", still)
