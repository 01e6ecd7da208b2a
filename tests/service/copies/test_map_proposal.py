"""A map that the headings propose takes a season in once a few lines are put right."""

from pathlib import Path

from ledger.service.copies.column_map import read_map
from ledger.service.copies.map_proposal import proposed_map
from ledger.service.copies.table_files import read_tables
from ledger.service.copies.take_in import Asked, take_in
from ledger.service.desk.book import How
from tests.keeper import Keeper

GERMAN = Path(__file__).parent / "german_season"


def test_a_german_heading_proposes_a_map_that_takes_its_batches_in(sqlite_keeper: Keeper) -> None:
    text = proposed_map(read_tables(GERMAN)[0])
    assert 'dates = "dmy"' in text
    assert '{ do = "add", source = "{Öl-Los}", amount = "{Öl ml} mL" },' in text
    assert "# not used: Frei\n" in text
    mended = text.replace('"Orangenöl" =', '"klar" = "clear"\n"Orangenöl" =').replace(
        "[words]\n", '[words]\n"klar" = "clear"\n"trüb" = "cloudy"\n"Papier" = "paper"\n'
    )
    mended = mended.replace('medium = "{Filter}" }', 'medium = "{Filter}", at = "{Ruhe bis}" }')
    told = take_in(
        sqlite_keeper.book,
        How("AB", because="released on paper"),
        GERMAN,
        Asked(read_map("proposed", mended)),
    )
    assert (told.found, told.rows, told.is_recorded) == ((), 8, True)


def test_a_column_that_is_wanted_and_not_there_is_left_to_be_named(tmp_path: Path) -> None:
    file = tmp_path / "made.csv"
    file.write_text("Batch,Started,Product,Oil mL\nO1,2026-01-05,Orange,30\n", encoding="utf-8")
    text = proposed_map(read_tables(file)[0])
    assert 'target = "{COLUMN}"' in text
    assert '# dates = "dmy", "mdy" or "ymd": say which' in text
