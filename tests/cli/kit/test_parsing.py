"""The words of a command before its options are told apart: units, signs, former names, help."""

from pathlib import Path
from typing import Any

import pytest
from typer.core import TyperOption

from cli.kit import parsing as module
from cli.kit.parsing import closed_list, with_minus_signs, with_new_names, with_units
from tests.cli.shell import Answer, Shell
from tests.kept.golden import check_golden
from tests.kept.said import check_constants

UNITS = [
    "µl",
    "ul",
    "mL",
    "cl",
    "dl",
    "L",
    "mg",
    "g",
    "kg",
    "oz",
    "lb",
    "each",
    "fl",
    "pt",
    "qt",
    "gal",
    "US",
    "imp",
    "av",
    "%",
    "kPa",
    "mbar",
    "hPa",
    "bar",
    "inHg",
    "mmHg",
    "°C",
    "°F",
    "C",
    "F",
    "µm",
    "um",
    "min",
    "h",
    "d",
    "NTU",
    "°Bx",
]


@pytest.fixture
def parsed(tmp_path: Path) -> Shell:
    """No book: the help is asked for, or the words are wrong before one is opened."""
    return Shell(tmp_path / "none.db")


@pytest.mark.parametrize("unit", UNITS)
def test_a_unit_written_apart_stays_with_its_figure(unit: str) -> None:
    for figure in ("30", "0,5", "-1.5", "−2", "+3", "1/2", "amount=30", "co-2=8"):
        assert with_units(["X-1", figure, unit]) == ["X-1", f"{figure} {unit}"]


def test_units_of_more_than_one_word_stay_together_and_other_words_stay_apart() -> None:
    assert with_units(["1", "US", "fl", "oz", "5"]) == ["1 US fl oz", "5"]
    assert with_units(["1.", "g"]) == ["1.", "g"]
    assert with_units(["30", "drops", "g"]) == ["30", "drops", "g"]
    assert with_units(["g", "30"]) == ["g", "30"]
    assert with_units(["30", "--", "30", "g"]) == ["30", "--", "30", "g"]
    assert with_units(["due 30", "g"]) == ["due 30", "g"]


def test_a_figure_below_zero_is_no_option_and_what_an_option_takes_stays_as_it_is() -> None:
    for figure in ("30mL", ".5", ",5"):
        assert with_minus_signs(["X-1", f"-{figure}"]) == ["X-1", f"−{figure}"]
        assert with_minus_signs(["--at", f"-{figure}", "X"]) == ["--at", f"-{figure}", "X"]
    assert with_minus_signs(["-2", "-x", "X-1", "-y"]) == ["−2", "-x", "X-1", "-y"]
    assert with_minus_signs([]) == []


def test_a_help_that_ends_in_a_list_of_words_names_them() -> None:
    assert closed_list("sold, tasting or own-use.") == ["sold", "tasting", "own-use"]
    assert closed_list("For parts: weight or volume.") == ["weight", "volume"]
    assert closed_list("fresh or same") == closed_list("Of one word.") == []


@pytest.mark.parametrize(
    ("command", "old", "new"),
    [
        ("add", "--over", "--took"),
        ("suspects", "--since", "--from"),
        ("start", "--print", "--out"),
        ("trial plan", "--print", "--out"),
    ],
)
def test_what_an_option_was_called_before_still_works_with_a_remark(
    command: str, old: str, new: str, parsed: Shell
) -> None:
    remark = f"Note: {old} is called {new} now; {old} still works.\n"
    for words in ((old, "x"), (f"{old}=x",)):
        said = parsed.run(*command.split(), *words, "--help")
        assert (said.exit_code, said.err) == (0, remark)
    assert parsed.run(*command.split(), new, "x", "--help").err == ""
    for quiet in (("--json",), ()):
        ahead = () if quiet else ("--json",)
        assert parsed.run(*ahead, *command.split(), old, "x", *quiet, "--help").err == ""
    assert with_new_names([f"{old}=x", "--", old], {old: new}) == [f"{new}=x", "--", old]


def refused(said: Answer) -> tuple[int, list[str]]:
    return said.exit_code, said.complaints


def test_an_option_without_its_value_never_takes_the_next_option_for_one(parsed: Shell) -> None:
    how = "  See how it is called: pottle look --help"
    assert refused(parsed.run("look", "X", "--ntu", "--of", "neat")) == (
        2,
        ["Option '--ntu' requires an argument.", how],
    )
    assert parsed.run("look", "X", "hazy", "--json", "--ntu", "9").exit_code == 5
    said = parsed.run("note", "X", "--text", "a", "--", "--at", "--by")
    assert "requires an argument" not in said.err


def test_an_option_that_is_none_is_refused_with_the_help_of_its_command(parsed: Shell) -> None:
    assert parsed.run("look", "--ntx", "9").complaints[-1] == (
        "  See how it is called: pottle look --help"
    )


def test_the_help_of_a_command_names_what_it_takes_and_gives_examples(parsed: Shell) -> None:
    check_golden("cli/help_of_look.txt", parsed.run("look", "--help").out)


def test_a_list_of_words_completes_an_option_unless_that_has_words_of_its_own() -> None:
    texts = ("steam, lye or soap.", "sold or lost.", "Any.")
    options = [TyperOption(param_decls=[f"--o{at}"], help=each) for at, each in enumerate(texts)]

    def own(*_: object) -> list[str]:
        return ["its own"]

    options[1]._custom_shell_complete = own
    module.Verb("clean", params=list(options))
    completes = [option._custom_shell_complete for option in options]
    assert completes[1:] == [own, None]
    found: Any = completes[0]
    assert (found(None, None, ""), found(None, None, "s")) == (
        ["steam", "lye", "soap"],
        ["steam", "soap"],
    )


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
