"""What is foretold is printed and, of a lot, kept; the score is told."""

from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from cli.kit.call import Call
from cli.screens.glass import foretell as module
from cli.screens.glass import foretell as screen
from ledger.errors import InputError
from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.keeper import Keeper
from tests.kept.said import check_constants
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


WORDS = SimpleNamespace(
    head=lambda _: ["OE-001-5 will be hazy."],
    bands=lambda _: [("neat", "4 to 12", "hazy"), ("1:7", "110", "milky")],
    notes=lambda _: ["Below its usual strength."],
    rests=lambda _: ["It rests on one oil."],
    score_words=lambda found: [f"Nothing foretold yet: {found}"],
)


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[tuple[Any, ...]]:
    """What is asked of the ledger, where `orange` is a formula and all else a lot."""
    told: list[tuple[Any, ...]] = []

    def formula(_: object, *words: Any) -> SimpleNamespace | None:
        told.append(words)
        return SimpleNamespace(shown=(False, True), code="") if words[0] == "orange" else None

    def lot(_: object, how: Any, *words: Any) -> tuple[SimpleNamespace, int]:
        told.append((how.by, *words))
        return SimpleNamespace(shown=(), code="OE-001-5"), 41

    monkeypatch.setattr(screen, "words", WORDS)
    monkeypatch.setattr(screen, "foretell_formula", formula)
    monkeypatch.setattr(screen, "record_lot", lot)
    monkeypatch.setattr(screen, "scores", lambda _: "none")
    return told


def printed(shell: Shell, capsys: pytest.CaptureFixture[str], *words: str) -> list[str]:
    call = Call(ledger=str(shell.book), by="AB")
    with call.at_end:
        screen.show_forecast(call, *words)
    return capsys.readouterr().out.splitlines()


def test_a_formula_is_foretold_in_a_table_and_nothing_is_recorded(
    bare: Shell, asked: list[tuple[Any, ...]], capsys: pytest.CaptureFixture[str]
) -> None:
    assert printed(bare, capsys, "orange", "1:7", "20") == [
        "OE-001-5 will be hazy.",
        "",
        "looked at      NTU  looks",
        "neat       4 to 12  hazy",
        "1:7            110  milky",
        "Below its usual strength.",
        "",
        "It rests on one oil.",
        "Nothing was recorded.",
        "Next: pottle start FORMULA VOLUME",
    ]
    assert asked == [("orange", "1:7", "20")]


def test_a_lot_is_foretold_once_its_forecast_is_recorded_and_without_a_band_without_a_table(
    bare: Shell, asked: list[tuple[Any, ...]], capsys: pytest.CaptureFixture[str]
) -> None:
    assert printed(bare, capsys, "OE-001-5", "1:7") == [
        "OE-001-5 will be hazy.",
        "Below its usual strength.",
        "",
        "It rests on one oil.",
        "Recorded 41, before the look.",
        "Next: pottle look OE-001-5 GRADE --ntu NTU",
    ]
    assert asked == [("OE-001-5", "1:7", None), ("AB", "OE-001-5", "1:7", None)]


@pytest.mark.usefixtures("asked")
def test_how_often_it_held_is_told_and_nothing_named_is_refused(
    bare: Shell, capsys: pytest.CaptureFixture[str]
) -> None:
    call = Call(ledger=str(bare.book), by="AB")
    with call.at_end:
        screen.show_score(call)
    assert capsys.readouterr().out == "Nothing foretold yet: none\n"
    with pytest.raises(InputError) as caught:
        screen.show_forecast(call, None, None)
    assert caught.value.problems == (
        (
            "Nothing is named.",
            "Name a formula or a lot, or give --score to see how often it held.",
        ),
    )


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("foretell", still)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
