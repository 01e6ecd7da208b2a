"""Every table goes out, and every column is explained."""

from ledger.domain.entries import FACTS
from ledger.service.copies.export_tables import export_tables
from ledger.store.engine.statements import ask
from ledger.store.form.tables import METADATA
from tests.keeper import Keeper, row_counts
from tests.kept.golden import check_golden


def test_every_table_goes_out_with_all_its_columns_and_rows(sqlite_walked: Keeper) -> None:
    found = export_tables(sqlite_walked.book)
    told = {name: (set(columns), len(rows)) for name, columns, rows in found.tables}
    counts = row_counts(sqlite_walked.book)
    assert told == {
        name: ({column.name for column in table.columns}, counts[name])
        for name, table in METADATA.tables.items()
    }
    assert FACTS.keys() <= told.keys()


def test_a_cell_is_told_as_text_a_hash_by_its_digits_and_what_is_absent_as_nothing(
    sqlite_walked: Keeper,
) -> None:
    tables = {
        name: (columns, rows) for name, columns, rows in export_tables(sqlite_walked.book).tables
    }
    columns, rows = tables["entry"]
    with sqlite_walked.reading() as connection:
        leaf, body = ask(connection, "SELECT leaf, body FROM entry WHERE seq = 1")[0]
    first = dict(zip(columns, rows[0], strict=True))
    assert (first["seq"], first["lot"], first["leaf"], first["body"]) == ("1", "", leaf.hex(), body)


def test_every_column_has_words_and_a_list_where_only_some_words_may_stand(
    sqlite_walked: Keeper,
) -> None:
    meanings = export_tables(sqlite_walked.book).meanings
    assert all(each.words.endswith(".") for each in meanings)
    by_column = {(each.table, each.column): each for each in meanings}
    assert by_column["entry", "origin"].codes == ("bench", "paper", "instrument", "memory")
    assert by_column["add", "amount"].unit == "smallest unit: µL, mg or millionths of a piece"
    assert by_column["formula_lines", "material"].words == (
        "Code of the material, of what is bought."
    )


def test_the_words_the_units_and_the_codes_of_every_column_are_the_kept_ones(
    sqlite_walked: Keeper,
) -> None:
    meanings = export_tables(sqlite_walked.book).meanings
    lines = (f"{m.table}.{m.column} [{m.unit}] {m.words} {' '.join(m.codes)}" for m in meanings)
    check_golden("columns.txt", "\n".join((*(line.rstrip() for line in lines), "")))
