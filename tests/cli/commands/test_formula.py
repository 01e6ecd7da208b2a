"""`pottle formula`: load, list, compare, scale and withdraw versions."""

import re
from pathlib import Path
from types import ModuleType

import pytest

from cli.screens.masters import formula as cli_screens_masters_formula
from cli.screens.masters import samples as cli_screens_masters_samples
from tests.cli.asked import check_asked
from tests.cli.cases import Answers, Refused, check_answers, check_refused
from tests.cli.shell import Shell
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.readback import text_of

ANSWERS: dict[str, Answers] = {
    "versions that differ": (
        "formula diff orange 1 2",
        """\
what        version 1                         version 2
orange-oil  15 mL, ± 2 %                      16 mL, ± 2 %
step 1      rest: for macerate, at least 1 d  rest: for macerate, at least 2 d
""",
    ),
    "versions that do not": (
        "formula diff orange 1 1",
        "Versions 1 and 1 of orange say the same.\n",
    ),
    "a formula for another volume": (
        "formula scale orange 480mL",
        """\
orange version 2, Orange essence, 480 mL
what        amount  overage  tolerance  within
orange-oil   32 mL           2 %        31.4 mL to 32.6 mL
spirit      440 mL
Next: pottle start orange 480mL
""",
    ),
    "an old version for another volume": (
        "formula scale orange 1L --version 1",
        """\
orange version 1, Orange essence, 1 L
what         amount  overage  tolerance  within
orange-oil  62.5 mL           2 %        61.3 mL to 63.7 mL
spirit       917 mL
Next: pottle start orange 1L
""",
    ),
    "a withdrawal": (
        "formula withdraw orange 2 --because weak",
        "Recorded 41, formula withdrawn: orange version 2.\nNext: pottle formula show orange\n",
    ),
}

REFUSED: dict[str, Refused] = {
    "a version that is not there": (
        "formula diff orange 1 9",
        3,
        (
            "The formula orange version 9 is not in the book.",
            "pottle formula list shows those that are.",
        ),
    ),
    "a weight for a volume": (
        "formula scale orange 480g",
        2,
        ("480g is not a volume.", "Give a volume, such as 480mL."),
    ),
    "a formula that is not there": (
        "formula scale lemon 1L",
        3,
        ("The formula lemon is not in the book.", "pottle formula list shows those that are."),
    ),
    "a withdrawal of what is not there": (
        "formula withdraw orange 7",
        3,
        (
            "There is no version 7 of a formula orange in the book.",
            "pottle formula list shows those that are.",
        ),
    ),
}


@pytest.mark.parametrize("answers", ANSWERS.values(), ids=list(ANSWERS))
def test_a_command_answers(answers: Answers, formulas: Shell) -> None:
    check_answers(answers, formulas)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_command_refuses_and_records_nothing(refused: Refused, formulas: Shell) -> None:
    check_refused(refused, formulas)


def test_a_formula_is_loaded_once(formulas: Shell) -> None:
    assert formulas.run("formula", "load", "first.toml").lines == [
        "In the book already, unchanged, as entry 39, formula: orange version 1 for Orange "
        "essence, basis 240 mL, 2 lines and 2 steps.",
        "Next: pottle start orange VOLUME",
    ]
    assert formulas.entries() == 40


def test_a_version_is_withdrawn_once(formulas: Shell) -> None:
    formulas.run("formula", "withdraw", "orange", "2", "--because", "too weak")
    again = formulas.run("formula", "withdraw", "orange", "2", "--because", "too weak")
    assert (again.exit_code, again.lines) == (
        0,
        [
            "In the book already, unchanged, as entry 41, formula withdrawn: orange version 2.",
            "Next: pottle formula show orange",
        ],
    )
    assert formulas.entries() == 41
    formulas.run("strike", "41", "--because", "still in use")
    once_more = formulas.run("formula", "withdraw", "orange", "2", "--because", "too weak")
    assert once_more.lines == [
        "Recorded 43, formula withdrawn: orange version 2.",
        "Next: pottle formula show orange",
    ]


def test_a_withdrawn_version_is_not_followed_and_stays_listed(formulas: Shell) -> None:
    formulas.run("formula", "withdraw", "orange", "2", "--because", "too weak")
    assert formulas.run("start", "orange", "480mL").lines[0].endswith("formula orange version 1.")
    assert formulas.run("formula", "list").lines == [
        "formula  version  product         kind     basis   state",
        "orange         1  Orange essence  essence  240 mL",
        "orange         2  Orange essence  essence  240 mL  withdrawn",
    ]
    assert formulas.run("formula", "list", "--json").json[0]["basis"] == {
        "amount": "240",
        "unit": "mL",
    }


def test_a_formula_to_begin_with_is_loaded_as_it_stands(shell: Shell) -> None:
    answer = shell.run("formula", "new", "orange-dry")
    assert answer.lines == [
        "A formula to begin with is in orange-dry.toml: change it to what you do.",
        "Next: pottle formula load orange-dry.toml",
    ]
    assert shell.run("formula", "load", "orange-dry.toml").exit_code == 0
    shown = shell.run("formula", "show", "orange-dry").out
    assert "Orange dry" in shown
    assert shell.run("formula", "new", "orange-dry").exit_code == 5


def test_the_samples_are_written_and_can_be_loaded(shell: Shell) -> None:
    said = shell.run("formula", "samples", "mine")
    assert said.lines == [
        f"Written: {Path('mine/orange-essence.toml')}",
        f"Written: {Path('mine/orange-syrup.toml')}",
        "They are invented; read one, change it, and load it.",
        f"Next: pottle formula load {Path('mine/orange-essence.toml')}",
    ]
    again = shell.run("formula", "samples", "mine")
    assert (again.exit_code, again.complaints) == (
        5,
        [
            f"There is a file {Path('mine/orange-essence.toml')} already; it was left as it is.",
            "  Give another folder, or --force to write over it.",
        ],
    )


def test_a_book_without_a_formula_says_so_and_how_to_load_one(bare: Shell) -> None:
    assert bare.run("formula", "list").lines == [
        "There is no formula in the book yet.",
        "Next: pottle formula load FILE",
    ]


def test_a_formula_is_a_paper_too(formulas: Shell) -> None:
    done = formulas.line("formula show orange --out orange.pdf --json")
    assert done.json == {"path": "orange.pdf"}
    text = text_of(Path("orange.pdf").read_bytes())
    for words in ("Master formula", "What goes in for", "What is done", "Prepared by"):
        assert words in text


def test_a_formula_to_begin_with_names_the_materials_of_the_book(bare: Shell) -> None:
    bare.run("person", "add", "AB", "Anna Bell")
    for code, kind in (("potato", "ethanol"), ("chalk", "clarifier"), ("neroli", "oil")):
        bare.run("material", "add", code, "--name", code, "--kind", kind)
    assert bare.run("formula", "new", "neroli-essence").exit_code == 0
    text = Path("neroli-essence.toml").read_text(encoding="utf-8")
    assert re.findall(r'^material = "(.+)"', text, re.MULTILINE) == ["neroli", "chalk", "potato"]


def test_a_volume_in_fluid_ounces_is_in_those_of_the_house(formulas: Shell) -> None:
    """10 of the United States are 295.7 mL, and of the old empire 284.1: 16 mL of oil in 240."""
    asked = ("formula scale orange '10 fl oz' --json", "sheet --formula orange --target '10 fl oz'")
    scaled, sheet = (formulas.line(command) for command in asked)
    assert scaled.json["target"] == {"amount": "295.735", "unit": "mL"}
    formulas.line("house --fluid-ounce imperial")
    assert formulas.line(asked[0]).json["target"] == {"amount": "284.131", "unit": "mL"}
    assert formulas.line(asked[1]).out != sheet.out


def test_a_formula_is_shown_as_kept_and_says_when_it_is_withdrawn(formulas: Shell) -> None:
    shown = formulas.line("formula show orange").out
    formulas.line("formula withdraw orange 2 --because weak")
    again = formulas.line("formula show orange --version 2").out
    check_golden("cli/formula.txt", f"{shown}--\n{again}")


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("formula")


@pytest.mark.parametrize("module", [cli_screens_masters_formula, cli_screens_masters_samples])
def test_its_tables_figures_and_words_are_the_kept_ones(module: ModuleType) -> None:
    check_constants(module)
