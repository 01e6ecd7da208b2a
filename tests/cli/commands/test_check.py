"""Commands of good order: stock, counts, checks, cleanings, instruments, what is due."""

import pytest

from tests.cli.cases import Answers, Refused, check_answers, check_refused
from tests.cli.formulas import write_formulas
from tests.cli.shell import Shell

BY_DATE = """\
lot        what                       on hand  status    best before  look
SOO-001-3  Sweet orange oil            470 mL  in stock  2099-06-30
OE-001-5   Orange essence              418 mL  released  2099-06-30   hazy
OS-001-O   Orange syrup                 50 mL  finished  2099-06-30   cloudy
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
    "nothing is due": ("due", "Nothing is due.\nNext: pottle stock\n"),
    "the worth of one lot": ("stock --value --of orange-oil", WORTH),
    "one product": (
        "stock --of 'orange syrup'",
        """\
lot        what                  on hand  status    best before  look
OS-001-O   Orange syrup            50 mL  finished  2099-06-30   cloudy
BOS-001-S  Orange syrup, 250 mL        9  released  2099-06-30   cloudy
Next: pottle due
""",
    ),
    "a product as a formula's code has it": (
        "stock --of orange-SYRUP",
        """\
lot        what                  on hand  status    best before  look
OS-001-O   Orange syrup            50 mL  finished  2099-06-30   cloudy
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
    "a check of a lot": (
        "check {essence} the balance",
        "Recorded 39, checked OE-001-5: the lot, the balance.\n"
        "OE-001-5, Orange essence: 418 mL, released.\n"
        'Next: pottle start --product "NAME" --kind syrup --target VOLUME\n',
    ),
    "a check of an entry": (
        "check --entry 18 read it",
        "Recorded 39, checked OE-001-5: entry 18, read it.\n"
        "OE-001-5, Orange essence: 418 mL, released.\n"
        'Next: pottle start --product "NAME" --kind syrup --target VOLUME\n',
    ),
    "a check of what is about no lot": (
        "check --entry 1",
        "Recorded 39, checked: entry 1.\nNext: pottle journal --entry 1\n",
    ),
    "a cleaning": (
        "clean Demijohn 2 --how 'Hot water' --held Lemon",
        "Recorded 39, cleaned: Demijohn 2, Hot water, held Lemon.\n"
        'Next: pottle start --product "NAME" --kind KIND --target VOLUME\n',
    ),
    "an instrument": (
        "equipment 'Scale 1' set to zero",
        "Recorded 39, equipment: Scale 1, set to zero.\nNext: pottle due\n",
    ),
    "a count that agrees": (
        "count {sugar} 23.4kg --tare 800g",
        "Recorded 39, counted WS-001-R: 22.6 kg there.\n"
        "WS-001-R, White sugar: 22.6 kg, in stock.\n"
        'Next: pottle start --product "NAME" --kind KIND --target VOLUME\n',
    ),
    "a count that is a little less": (
        "count {water} 96 L",
        "Recorded 39, counted WTR-001-0: 96 L there.\n"
        "WTR-001-0, Water: 96 L, in stock.\n"
        "Note: 96 L of WTR-001-0 are there, 1.6 L less than the 97.6 L of the book. The book "
        "takes what was found.\n"
        'Next: pottle start --product "NAME" --kind KIND --target VOLUME\n',
    ),
}
REFUSED: dict[str, Refused] = {
    "a check of nothing": (
        "check",
        2,
        (
            "A check is of a lot or of one entry.",
            "Name the lot, or give --entry with the number of the entry.",
        ),
    ),
    "a check of no entry": (
        "check --entry 999",
        3,
        (
            "There is no entry 999 in the book.",
            "pottle journal lists the entries with their numbers.",
        ),
    ),
    "a heavy vessel": (
        "count {sugar} 800g --tare 23.4kg",
        3,
        (
            "800g with the vessel and 23.4kg without it leave no weight.",
            "Give both as weights, the heavier first.",
        ),
    ),
    "much less than there should be": (
        "count {water} 50L",
        4,
        (
            "50L of WTR-001-0 are there, 47.6 L less than the 97.6 L of the book.",
            "Count again; if it is so, say why with --because.",
        ),
    ),
    "nothing where there should be something": (
        "count {water} 0",
        4,
        (
            "Nothing of WTR-001-0 is there, 97.6 L less than the 97.6 L of the book.",
            "Count again; if it is so, say why with --because.",
        ),
    ),
}


@pytest.mark.parametrize("answers", ANSWERS.values(), ids=list(ANSWERS))
def test_a_command_answers(answers: Answers, shell: Shell) -> None:
    check_answers(answers, shell)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_command_refuses_and_records_nothing(refused: Refused, shell: Shell) -> None:
    check_refused(refused, shell)


def test_stock_by_date_has_the_earliest_first(shell: Shell) -> None:
    shown = shell.run("stock", "--by-date").lines
    assert shown[:6] == BY_DATE.splitlines()


def test_what_is_due_says_when_and_what_to_do(shell: Shell) -> None:
    write_formulas()
    shell.run("formula", "load", "second.toml")
    shell.run("start", "orange", "480mL", "--at", "-4h")
    shell.run("rest", "OE-002-3", "--for", "macerate", "--at", "-3h")
    shell.run("hold", "SOO-001-3", "--because", "smells of pine")
    rest, held = shell.run("due", "--json").json
    assert (rest["waits"], rest["lot"]) == ("rest", "OE-002-3")
    assert rest["minutes"] in range(44 * 60, 45 * 60 + 1)
    assert held == {
        "waits": "hold",
        "lot": "SOO-001-3",
        "name": "Sweet orange oil",
        "says": "on hold: smells of pine",
        "due": None,
        "minutes": None,
        "next": "pottle lot SOO-001-3",
    }
    heads, first, last, step = shell.run("due").lines
    assert heads.split() == ["due", "when", "lot", "what", "to", "do"]
    assert first.startswith("in 1 d 2")
    assert "OE-002-3   Orange essence    rest to macerate, 3 h" in first
    assert last.split(maxsplit=2) == [
        "–",
        "SOO-001-3",
        "Sweet orange oil  on hold: smells of pine",
    ]
    assert step == "Next: pottle rest OE-002-3 --end"


def test_a_batch_past_its_date_is_rejected_next_whether_or_not_it_has_a_formula(
    shell: Shell,
) -> None:
    """A release would be refused, so it is not proposed."""
    oil = shell.line("receive orange-oil 100mL --best-before 2020-06-30 --at 2020-03-01 --json")
    begin = "start --product 'Old essence' --kind essence --target 90mL --at 2020-03-02 --json"
    batch = shell.line(begin).json["code"]
    shell.line(f"add {batch} {oil.json['code']} 90mL --at '2020-03-02 10:00'")
    shell.line(f"look {batch} bright --of neat --at '2020-03-02 11:00'")
    made = shell.line(f"finish {batch} 90mL --at '2020-03-02 12:00'")
    rejected = f'pottle reject {batch} --because "past its date"'
    assert made.lines[-1] == f"Next: {rejected}"
    assert shell.line(f"lot {batch}").lines[-1] == f"Next: {rejected}"
    assert shell.line(rejected.removeprefix("pottle ")).exit_code == 0
    assert shell.line(f"lot {batch}").lines[-1] == f"Next: pottle trace {batch} --forward"
