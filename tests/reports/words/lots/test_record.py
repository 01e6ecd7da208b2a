"""The record of a lot, from a small book."""

from pprint import pformat

from msgspec import to_builtins
from msgspec.structs import replace

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Formula
from ledger.domain.entries.choices import ProductKind
from ledger.service.glass.serving import card
from ledger.service.lots.dossier import dossier
from reports.views.lots import RecordView
from reports.words.goods.label import label_sheet_view
from reports.words.lots import record as module
from reports.words.lots.record import record_view
from tests.keeper import Keeper
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said
from tests.kept.told import told
from tests.path import Lots, receive_all
from tests.reports.words.bottles import pack


def record_of(keeper: Keeper, code: str) -> RecordView:
    return record_view(dossier(keeper.book, code))


def test_a_record_says_all_there_is_of_a_lot(made: tuple[Keeper, Lots, str]) -> None:
    keeper, _, essence = made
    told = to_builtins(record_of(keeper, essence))
    frame = told["frame"]
    frame["seal"] = tuple(line.split()[0] for line in frame["seal"])
    check_golden("build/record.txt", pformat(told, width=98, sort_dicts=False) + "\n")


def test_struck_and_corrected_entries_stay_with_their_notes(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, _, essence = made
    view = record_of(keeper, essence)
    rows = {row.entry: row for row in (*view.made, *view.since)}
    fated = {row.entry: row.notes for row in rows.values() if row.struck}
    assert sorted(note for notes in fated.values() for note in notes) == [
        "Corrected by entry 27.",
        "Struck by entry 28.",
    ]
    assert rows["27"].notes[0] == "Corrects entry 17."
    assert rows["27"].notes[-1] == "Reason: misread the scale."
    assert [(row.amount, row.struck) for row in view.inputs or () if row.lot.startswith("SOO")] == [
        ("25 g", True),
        ("26 g", False),
    ]


def test_cautions_come_from_the_kind_and_from_every_material_in_it(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, lots, essence = made
    cautions = record_of(keeper, essence).cautions
    assert cautions[0].startswith("Flavouring in strong alcohol: highly flammable")
    neat = "Made with Sweet orange oil. Caution for it neat: Irritates the skin."
    assert cautions[1:] == (neat,)
    packed = pack(keeper, lots, essence)
    sheet = label_sheet_view(dossier(keeper.book, packed))
    assert sheet.label.cautions == (neat,)
    assert record_of(keeper, lots.oil).cautions == ("Irritates the skin.",)


def test_a_formulas_own_words_stand_on_the_record_and_the_label(sqlite_keeper: Keeper) -> None:
    keeper, lots = sqlite_keeper, receive_all(sqlite_keeper)
    own = {"caution": "Not for children under three.", "label_text": "Shake before use."}
    amount = parse_quantity("1L")
    keeper.record(Formula("cloud", 1, "Cloud", ProductKind.GUM_EMULSION, amount, **own))  # type: ignore[arg-type]
    bulk = keeper.opens("start", formula="cloud", target="1L")
    keeper.do("add", lot=bulk, source=lots.spirit, amount="1L")
    keeper.do("finish", lot=bulk, volume="1L")
    packed = keeper.opens("bottle", source=bulk, pack="4 x 250mL", bottles=lots.bottles)
    label = label_sheet_view(dossier(keeper.book, packed)).label
    assert (label.cautions, label.text) == ((own["caution"],), own["label_text"])
    assert record_of(keeper, bulk).cautions == (own["caution"],)
    assert record_of(keeper, packed).cautions == (own["caution"],)


def test_where_goods_went_is_told_and_what_came_back_is_no_negative(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, lots, essence = made
    packed = pack(keeper, lots, essence)
    keeper.do("judge", lot=packed, verdict="release")
    keeper.do("judge", lot=packed, verdict="release", because="a test", anyway="yes")
    keeper.do("send", lot=packed, amount="6", party="Bridge Street Stall")
    keeper.do("send", lot=packed, amount="2", party="Bridge Street Stall", moved_as="returned")
    assert [
        (row.who, row.what, row.on, row.amount) for row in record_of(keeper, packed).forward
    ] == [
        ("Bridge Street Stall", "sold", "2026-03-04", "6"),
        ("Bridge Street Stall", "came back", "2026-03-04", "2"),
    ]


def test_the_record_of_a_delivery_is_headed_so_and_has_no_parts_of_a_batch(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, lots, essence = made
    view = record_of(keeper, lots.oil)
    assert (view.paper, view.inputs, view.gate) == ("Lot received", None, ())
    assert dict(view.facts)["Received"] == "2026-03-02 09:10, AB"
    assert [(row.sign, row.what, row.amount) for row in view.ladder] == [
        ("", "Received", "500 mL"),
        ("\N{MINUS SIGN}", "Used here", view.ladder[1].amount),
        ("=", "Here", view.ladder[2].amount),
        ("", "Not accounted for", "0 mL"),
    ]
    batch = record_of(keeper, essence)
    assert batch.paper == "Batch record"
    assert batch.inputs
    assert batch.ladder
    filled = record_of(keeper, pack(keeper, lots, essence))
    assert (filled.paper, "Filled" in dict(filled.facts)) == ("Batch record", True)


def test_a_batch_into_which_nothing_went_says_so(sqlite_keeper: Keeper) -> None:
    code = sqlite_keeper.opens("start", product="Empty", kind="blend", target="1L")
    assert record_of(sqlite_keeper, code).inputs == ()


def test_labels_that_were_used_and_never_printed_are_told(made: tuple[Keeper, Lots, str]) -> None:
    """12 printed: 10 used and 2 spoiled leave none; 3 more spoiled are 3 more than were printed."""
    keeper, lots, essence = made
    packed = pack(keeper, lots, essence)
    told = []
    for fate in (
        {"printed": "12"},
        {"printed": "0", "used": "10", "spoiled": "2"},
        {"printed": "0", "spoiled": "3"},
    ):
        keeper.do("labels", lot=packed, because="so it was", **fate)
        told.append(record_of(keeper, packed).labels)
    assert told == [
        (("Labels", f"12 printed{told_of}"), ("Bottles", "15 bottles"))
        for told_of in (
            "; nobody told how many were used",
            " = 10 used + 2 spoiled + 0 left",
            " = 10 used + 5 spoiled + 3 more than were printed",
        )
    ]


def kept(keeper: Keeper, code: str) -> str:
    """Return the record of a lot as text, without the seal, which is another for any change."""
    view = replace(record_view(dossier(keeper.book, code), card(keeper.book, code)), frame=None)
    return "\n".join((*told(code, view), ""))


def test_the_record_of_a_batch_by_a_formula_is_the_kept_one(orange: tuple[Keeper, str]) -> None:
    """Its amounts within limits and not, its steps done and missing, its gate and its ladder."""
    check_golden("records/batch.txt", kept(*orange))


def test_the_records_of_a_delivery_and_of_bottles_are_the_kept_ones(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, lots, essence = made
    packed = pack(keeper, lots, essence)
    keeper.do("person", initials="CD", name="Cleo Dunn")
    keeper.do("judge", lot=packed, verdict="release", because="a test", anyway="yes")
    keeper.do("send", lot=packed, amount="6", party="Bridge Street Stall", document="note DN-7")
    keeper.do("send", lot=packed, amount="1", moved_as="retained")
    keeper.do("look", lot=packed, grade="cloudy", of="as-poured", dilution="1:7", temp="6")
    keeper.do("add", lot=essence, source=lots.oil, amount="2L", because="the scale was reset")
    for name, code in (("delivery", lots.oil), ("bottles", packed), ("essence", essence)):
        check_golden(f"records/{name}.txt", kept(keeper, code))


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
