"""`pottle stock`: by product, by date, by worth, and what is low."""

from types import ModuleType

import pytest

from cli.screens.glass import spirit as cli_screens_glass_spirit
from cli.screens.lots import stock as cli_screens_lots_stock
from tests.cli.asked import check_asked
from tests.cli.cases import Answers, check_answers
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.golden import check_golden
from tests.kept.said import check_constants

BY_DATE = """\
lot        what                       on hand  status    best before  look
SOO-001-3  Sweet orange oil            470 mL  in stock  2099-06-30
OE-001-5   Orange essence              418 mL  released  2099-06-30   hazy
OS-002-M   Orange syrup                 50 mL  finished  2099-06-30   cloudy
BOS-001-S  Orange syrup, 250 mL             9  released  2099-06-30   cloudy
NS-001-J   Neutral spirit              4.56 L  in stock
"""


WORTH = """\
lot        what              on hand  value  status    best before  look
SOO-001-3  Sweet orange oil   470 mL  45.12  in stock  2099-06-30
Value of what is on hand: 45.12 EUR.
Next: pottle due
"""


ANSWERS: dict[str, Answers] = {
    "the worth of one lot": ("stock --value --of orange-oil", WORTH),
    "one product": (
        "stock --of 'orange syrup'",
        """\
lot        what                  on hand  status    best before  look
OS-002-M   Orange syrup            50 mL  finished  2099-06-30   cloudy
BOS-001-S  Orange syrup, 250 mL        9  released  2099-06-30   cloudy
Next: pottle due
""",
    ),
    "a product as a formula's code has it": (
        "stock --of orange-SYRUP",
        """\
lot        what                  on hand  status    best before  look
OS-002-M   Orange syrup            50 mL  finished  2099-06-30   cloudy
BOS-001-S  Orange syrup, 250 mL        9  released  2099-06-30   cloudy
Next: pottle due
""",
    ),
    "a product that is not there": (
        "stock --of lemons",
        "Nothing of lemons is on hand.\nNext: pottle receive MATERIAL AMOUNT\n",
    ),
    "what is low": (
        "stock --low 90",
        """\
material  name           on hand
b250      Bottle 250 mL       85
cap       Cap                 85
Next: pottle receive b250 AMOUNT
""",
    ),
    "what is low of one material": (
        "stock --low 5L --of spirit",
        "material  name            on hand\nspirit    Neutral spirit   4.56 L\n"
        "Next: pottle receive spirit AMOUNT\n",
    ),
    "nothing is low": (
        "stock --low 400g",
        "Of every material counted so, 400g or more is there.\nNext: pottle stock\n",
    ),
}


@pytest.mark.parametrize("answers", ANSWERS.values(), ids=list(ANSWERS))
def test_a_command_answers(answers: Answers, shell: Shell) -> None:
    check_answers(answers, shell)


def test_stock_by_date_has_the_earliest_first(shell: Shell) -> None:
    shown = shell.run("stock", "--by-date").lines
    assert shown[:6] == BY_DATE.splitlines()


def test_both_days_of_a_period_that_cannot_be_read_are_told(shell: Shell) -> None:
    found = shell.line("stock --from soon --to late")
    told = " ".join(found.complaints)
    assert (found.exit_code, found.out) == (2, "")
    for word in ('"soon"', '"late"'):
        assert word in told


def test_fluid_ounces_are_those_of_the_house(shell: Shell) -> None:
    """16.5 of the United States are 488 mL, and of the old empire 469: 470 mL of oil are there."""
    low = "stock --low '16.5 fl oz' --of orange-oil"
    assert shell.line(low).lines[1] == "orange-oil  Sweet orange oil   470 mL"
    shell.line("house --fluid-ounce imperial")
    assert shell.line(low).lines[0] == "Of every material counted so, 16.5 fl oz or more is there."


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("stock")


def test_the_account_is_told_with_the_lots_of_spirit(shell: Shell) -> None:
    """5 L of 96 % are 4.8 L of pure alcohol; 440 mL of it were used."""
    lines = shell.run("stock", "--spirit").lines
    told = {" ".join(line.split()[:-1]): line.split()[-1] for line in lines if line.strip()}
    assert told["received"] == "4.800"
    assert told["of it spirit"] == "4.378"
    assert any(line.split() == SPIRIT for line in lines)


SPIRIT = ["NS-001-J", "Neutral", "spirit", "4.800", "0.422", "4.378"]


def test_the_account_and_its_lots_stand_apart_as_kept(shell: Shell) -> None:
    answer = shell.line("stock --spirit --from 2026-01-01 --to 2099-12-31")
    check_golden("cli/spirit.txt", answer.out)


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("stock", still)


@pytest.mark.parametrize("module", [cli_screens_glass_spirit, cli_screens_lots_stock])
def test_its_tables_figures_and_words_are_the_kept_ones(module: ModuleType) -> None:
    check_constants(module)
