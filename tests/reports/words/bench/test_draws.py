"""What to draw for a batch, in rows, sentences and commands."""

from pathlib import Path

from ledger.service.bench.draws import propose
from reports.words.bench import draws as module
from reports.words.bench.draws import commands, offers_of, rows, shortages
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.service.orange import start_orange


def test_rows_sentences_and_commands_agree(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    code = start_orange(sqlite_keeper, tmp_path)
    found = propose(sqlite_keeper.book, code)
    assert rows(found) == [
        ("orange-oil", "30 mL", "SOO-004-Y", "20 mL", "2026-12-31"),
        ("", "", "SOO-001-3", "10 mL", "2027-06-30"),
        ("carb", "20 g", "LMC-001-F", "15 g", ""),
        ("spirit", "450 mL", "NS-002-H", "450 mL", ""),
    ]
    assert shortages(found) == [
        "Short of carb: 5 g of 20 g are in no lot that may be used.",
    ]
    assert commands(code, found) == [
        f"pottle add {code} SOO-004-Y 20mL",
        f"pottle add {code} SOO-001-3 10mL",
        f"pottle add {code} LMC-001-F 15g",
        f"pottle add {code} NS-002-H 450mL",
    ]
    assert offers_of(code, found)[0] == (
        f"pottle add {code} SOO-004-Y 20mL",
        "20 mL of Sweet orange oil, from SOO-004-Y",
    )


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
