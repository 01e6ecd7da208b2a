"""What the rule asks for of a recall, and what the files lack."""

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import LotType
from ledger.domain.lots.lot import Lot
from ledger.service.recall.events import Events
from ledger.service.recall.trail import Received, Trail, Transformed, trail_of
from reports.words.recall import key_data as module
from reports.words.recall.key_data import _amount, document, key_data, key_events
from tests.keeper import Keeper
from tests.kept.filled import filled
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said
from tests.path import Lots


def test_what_was_sent_names_who_has_it_and_what_is_not_known_is_said(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    tables = {table.name: table for table in key_data(trail_of(keeper.book, lots.oil))}
    assert [*tables] == ["receiving", "transformation", "shipping"]
    shipping = tables["shipping"]
    (row,) = shipping.sheet.rows
    told = dict(zip(shipping.sheet.heads, row, strict=True))
    assert (told["traceability_lot_code"], told["quantity"], told["unit_of_measure"]) == (
        lots.packed,
        "6",
        "bottle",
    )
    assert shipping.missing[-1] == (
        "shipping.csv lacks the reference document number in 1 of 1 row."
    )


def test_every_column_of_the_tables_is_the_kept_one(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("send", lot=lots.packed, amount="1", party="Pretend Bar", document="DN-7")
    told = [
        line
        for table in key_data(trail_of(keeper.book, lots.oil))
        for line in (
            table.name,
            *(", ".join(cells) for cells in (table.sheet.heads, *table.sheet.rows)),
            *table.missing,
            "",
        )
    ]
    check_golden("key_data.txt", "\n".join(told))


def test_all_events_of_a_recall_are_one_table_by_day_under_the_columns_of_all() -> None:
    trail = filled(Trail, on="2026-03-04")
    tables, found = key_data(trail), key_events(filled(Events, on="2026-03-04"))
    assert found.name == "events"
    assert found.sheet.heads[:2] == ("critical_tracking_event", "date_of_event")
    assert {head for table in tables for head in table.sheet.heads} == {*found.sheet.heads[2:]}
    days = [row[1] for row in found.sheet.rows]
    assert days == sorted(days)
    assert all(sentence.startswith("Of ") for sentence in found.missing)


def test_only_packed_lots_that_are_counted_are_told_in_bottles() -> None:
    assert [
        _amount(3_000_000, filled(Lot, lot_type=sort, measure=measure))
        for sort in (LotType.PACKED, LotType.RECEIVED)
        for measure in (Measure.UEACH, Measure.UL)
    ] == [("3", "bottle"), ("3000", "mL"), ("3", "each"), ("3000", "mL")]


def test_goods_that_came_back_are_told_by_our_code_and_a_delivery_by_its_supplier_s() -> None:
    """Of a delivery of which the supplier's code is not known ours is told."""
    lots = [filled(Lot, code="SOO-001-3", supplier_lot=theirs) for theirs in ("8412", None)]
    received = tuple(
        filled(Received, brief=lot, is_return=is_return, on="2026-03-04")
        for is_return in (False, True)
        for lot in lots
    )
    (table, *_) = key_data(filled(Trail, received=received, on="2026-03-04"))
    codes = [row[table.sheet.heads.index("traceability_lot_code")] for row in table.sheet.rows]
    assert codes == ["8412", "SOO-001-3", "SOO-001-3", "SOO-001-3"]


def test_a_document_is_told_by_its_kind_and_its_number() -> None:
    assert document(None) == ("", "")
    assert "DN-0125" in document("DN-0125")


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module, "key_data", "key_events")


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


def test_what_is_not_done_yet_has_neither_record_nor_inputs_in_its_row() -> None:
    lot = filled(Lot, code="OE-001-5", name="Orange essence")
    known = filled(Trail, on="2026-03-04")
    made = Transformed(lot, 0, "", None, ())
    (row,) = next(
        table.sheet.rows
        for table in key_data(replace(known, transformed=(made,)))
        if table.name == "transformation"
    )
    assert row[0] == "OE-001-5"
    assert row[6:] == ("",) * 6
