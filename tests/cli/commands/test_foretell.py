"""What is foretold is printed and, of a lot, kept; the score is told."""

from pathlib import Path

from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.keeper import Keeper
from tests.path import make_essence, receive_all


def test_a_lot_is_foretold_and_the_score_kept(sqlite_keeper: Keeper) -> None:
    essence = make_essence(sqlite_keeper, receive_all(sqlite_keeper))
    shell = Shell(Path(sqlite_keeper.book.where))
    lines = shell.line(f"foretell {essence}").lines
    assert lines[0] == f"Orange essence ({essence}): orange oil."
    assert any(line.startswith("Clear by ") for line in lines)
    assert lines[-2].endswith(", before the look.")
    assert lines[-1] == f"Next: pottle look {essence} GRADE --ntu NTU"
    assert shell.line("foretell --score").lines == [
        "No look was taken yet of a lot that was foretold before."
    ]
    shell.line(f"look {essence} clear --ntu 2")
    assert shell.line("foretell --score").lines == [
        "All: inside 1 of 1.",
        "Orange: inside 1 of 1.",
    ]


def test_a_machine_gets_the_keys_and_null_where_nothing_is_known(sqlite_keeper: Keeper) -> None:
    essence = make_essence(sqlite_keeper, receive_all(sqlite_keeper))
    shell = Shell(Path(sqlite_keeper.book.where))
    told = shell.line(f"foretell {essence} --json").json
    assert set(told["clear_by_abv"]) == {"low", "likely", "high"}
    assert told["dissolved_at_made_strength"] in {"yes", "edge", "no"}
    assert set(told["ntu"]) == {"neat", "syrup", "glass"}
    assert set(told["glass_against_syrup"]) == {"low", "high"}
    assert float(told["greatest_dose_ml_per_litre"]) < 5
    assert told["rests_on"][0] == "Sweet orange oil: constituents as recorded in the book."
    assert isinstance(told["recorded"], int)
    assert shell.line("foretell --score --json").json == [{"oils": None, "inside": 0, "looks": 0}]


def test_a_call_that_names_nothing_is_told_what_to_name(sqlite_keeper: Keeper) -> None:
    said = Shell(Path(sqlite_keeper.book.where)).run("foretell")
    assert said.complaints == [
        "Nothing is named.",
        "  Name a formula or a lot, or give --score to see how often it held.",
    ]


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("foretell")
