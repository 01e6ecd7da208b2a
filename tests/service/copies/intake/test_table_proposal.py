"""What the headings of one table propose: whose rows they are, and the act of each column."""

import pytest

from ledger.domain.tables.grid import Line, Table
from ledger.service.copies.intake.table_proposal import STRENGTH, TableProposal


def proposal(*heads: str, rows: tuple[tuple[str, ...], ...] = ()) -> TableProposal:
    lines = tuple(Line(number, row) for number, row in enumerate(rows, 2))
    return TableProposal(Table("t.csv", "Table", head=heads, lines=lines))


def acts(found: TableProposal, verb: str) -> list[str]:
    return [line.strip() for line in found.lines() if f'do = "{verb}"' in line]


@pytest.mark.parametrize(
    ("heads", "place"),
    [
        (("Date", "Supplier"), 0),
        (("Date", "Supplier", "Customer"), 2),
        (("Date", "Customer"), 2),
        (("Date",), 1),
        ((), 1),
        *(
            (("Date", "Supplier", "Customer", head), 1)
            for head in ("Target", "Made", "Rested until")
        ),
        (("Date", "Supplier", "Customer", "Oil mL"), 1),
    ],
)
def test_a_table_is_of_batches_where_it_tells_of_one_else_of_sales_else_of_deliveries(
    heads: tuple[str, ...], place: int
) -> None:
    assert proposal(*heads).place == place


def test_columns_that_nothing_was_made_of_are_named_and_those_that_cannot_stand_in_a_map() -> None:
    """A point too many would be taken for the key of a table; each is told with a blank for it."""
    found = proposal("Batch", "Started", "Colour", "a.b.c.d.e.f.g", 'the "fine"', "", "a.b")
    assert list(found.lines())[-1] == '# not used: Colour, a b c d e f g, the "fine", a.b'
    bare = list(proposal("Batch", "Started", "Product", "Target").lines())
    assert not any(line.startswith("# not used") for line in bare)


def test_rows_of_batches_take_the_lot_that_their_column_tells_and_deliveries_none() -> None:
    batches = list(proposal("Batch", "Started", "Product").lines())
    assert batches[:4] == [
        "[table.Table]",
        'at = "{Started}"',
        'if = "{Started}"',
        'lot = "{Batch}"',
    ]
    nameless = list(proposal("Product", "Made").lines())
    assert nameless[:3] == [
        *("[table.Table]", '# at = "{COLUMN}": say when it happened', 'lot = "{COLUMN}"'),
    ]
    deliveries = list(proposal("Received", "Supplier", "Date").lines())
    assert deliveries[1:4] == ['at = "{Received}"', 'if = "{Received}"', "acts = ["]


def test_a_delivery_brings_each_material_once_with_the_strength_that_its_name_says() -> None:
    rows = (
        *(("Orange oil", "3 mL"), ("Alcohol 95,6 %", "1 L"), ("Spirit", "2 L")),
        *(("Orange oil", "5 mL"), ("", "9 L"), ('"odd"', "1"), ("Alcohol 1234 %", "1 L")),
    )
    found = proposal(
        "Material", "Amount", "Unit", "Supplier", "Price", "MHD", "Their lot", rows=rows
    )
    assert acts(found, "material") == [
        '{ do = "material", once = true, code = "orange-oil", name = "Orange oil", kind = "oil" },',
        '{ do = "material", once = true, code = "alcohol-95-6", name = "Alcohol 95,6 %", '
        'kind = "ethanol", abv = "95.6" },',
        '{ do = "material", once = true, code = "spirit", name = "Spirit", kind = "ethanol" },',
        '{ do = "material", once = true, code = "alcohol-1234", name = "Alcohol 1234 %", '
        'kind = "ethanol" },',
    ]
    assert sum(STRENGTH in line for line in found.lines()) == 2
    assert acts(found, "receive") == [
        '{ do = "receive", material = "{Material}", supplier = "{Supplier}", '
        'supplier_lot = "{Their lot}", cost = "{Price}", best_before = "{MHD}", '
        'amount = "{Amount} {Unit}" },'
    ]
    assert found.materials == ["Orange oil", "Alcohol 95,6 %", "Spirit", "Alcohol 1234 %"]
    assert acts(proposal("Supplier", "Price"), "receive") == [
        '{ do = "receive", material = "{COLUMN}", supplier = "{Supplier}", cost = "{Price}", '
        'amount = "{COLUMN}" },'
    ]


def test_no_more_than_forty_materials_are_proposed_and_none_of_a_table_of_batches() -> None:
    rows = tuple((f"Oil {number}", "Pretend") for number in range(50))
    assert len(proposal("Material", "Supplier", rows=rows).materials) == 40
    assert proposal("Material", "Supplier", "Made", rows=rows).materials == []


def test_what_was_put_in_came_before_unless_a_table_of_deliveries_brings_it() -> None:
    heads = ("Batch", "Started", "Oil lot", "Oil mL", "Oil €", "Spirit mL", "Spirit", "Sugar g")
    before = proposal(*heads)
    assert acts(before, "receive") == [
        '{ do = "receive", once = "sum", code = "{Oil lot}", material = "oil", '
        'amount = "{Oil mL} mL", cost = "{Oil €}" },',
        '{ do = "receive", once = "sum", code = "{Spirit}", material = "spirit", '
        'amount = "{Spirit mL} mL" },',
        '{ do = "receive", once = "sum", code = "SUGAR-BEFORE", material = "sugar", '
        'amount = "{Sugar g} g" },',
    ]
    assert acts(before, "add")[2] == (
        '{ do = "add", source = "SUGAR-BEFORE", amount = "{Sugar g} g" },'
    )
    assert 'kind = "syrup"' in acts(before, "start")[0]
    assert not any(line.startswith("# not used") for line in before.lines())
    bought = proposal(*heads)
    bought.has_deliveries = True
    bought.bought = ["White sugar", "Sweet orange oil", "Lemon oil"]
    assert (acts(bought, "receive"), acts(bought, "material")) == ([], [])
    assert acts(bought, "add")[2] == (
        '{ do = "add", source = "white-sugar", amount = "{Sugar g} g" },'
    )
    # Of two oils neither is meant.
    two = proposal("Batch", "Oil mL")
    two.has_deliveries, two.bought = True, bought.bought
    assert acts(two, "add") == ['{ do = "add", source = "oil", amount = "{Oil mL} mL" },']
    assert 'kind = "essence"' in acts(two, "start")[0]


WORKED = ("Batch", "Started", "Rested until", "Filtered mL", "NTU", "Made mL", "Minutes", "Brix")


def test_what_was_done_to_a_batch_is_told_in_its_turn_at_the_time_that_a_column_says() -> None:
    found = list(proposal(*WORKED, "Finished", "Bottles", "Customer", "Note").lines())
    told = [line.strip(" {},") for line in found if "do = " in line]
    assert [line.split('"')[1] for line in told] == [
        *("start", "measure", "rest", "filter", "look", "finish", "bottle", "send", "note"),
    ]
    assert told[1:] == [
        'do = "measure", reading = "{Brix}", what = "brix"',
        'do = "rest", purpose = "macerate", started = "{Started}", until = "{Rested until}", '
        'at = "{Rested until}"',
        'do = "filter", volume_out = "{Filtered mL} mL", at = "{Rested until}", medium = "paper"',
        'do = "look", grade = "{COLUMN}", ntu = "{NTU}", at = "{Finished}"',
        'do = "finish", volume = "{Made mL} mL", labour = "{Minutes}", at = "{Finished}"',
        'do = "bottle", code = "{Batch}-B", source = "{Batch}", pack = "{Bottles} x 250 mL", '
        'at = "{Finished}"',
        'do = "send", party = "{Customer}", at = "{Finished}", lot = "{Batch}-B", '
        'amount = "{Bottles}"',
        'do = "note", text = "{Note}"',
    ]
    bare = list(proposal("Batch", "Made mL", "Filter", "Filtered mL", "Bottles", "Size").lines())
    told = [line.strip(" {},") for line in bare if "do = " in line]
    assert told[1:] == [
        'do = "filter", volume_out = "{Filtered mL} mL", medium = "{Filter}"',
        'do = "finish", volume = "{Made mL} mL"',
        'do = "bottle", code = "{Batch}-B", source = "{Batch}", pack = "{Bottles} x {Size}"',
    ]


def test_a_sale_is_of_bottles_else_of_an_amount_else_of_what_is_to_be_named() -> None:
    for heads, amount in (
        (("Bottles", "Quantity mL"), "{Bottles}"),
        (("Quantity mL",), "{Quantity mL} mL"),
        ((), "{COLUMN}"),
    ):
        assert acts(proposal("Batch", "Customer", *heads), "send") == [
            f'{{ do = "send", party = "{{Customer}}", lot = "{{Batch}}-B", amount = "{amount}" }},'
        ]


def test_grades_in_the_words_of_a_maker_are_told_beside_those_of_the_book() -> None:
    rows = tuple((word,) for word in ("klar", "Trüb", "clear", "Clear", "schön", "", "klar"))
    assert proposal("Clarity", rows=rows).grades == {
        "klar": "clear", "Trüb": "cloudy", "schön": "GRADE",
    }  # fmt: skip
    assert proposal("Colour", rows=rows).grades == {}


def test_of_two_columns_of_one_meaning_the_second_takes_another_that_is_free() -> None:
    """Ansatz is a batch, and beside one it is how much was planned."""
    found = proposal("Charge", "Ansatz", "Los")
    assert found.named == {"batch": "Charge", "target": "Ansatz"}
    assert proposal("Ansatz").named == {"batch": "Ansatz"}


def test_a_column_of_what_was_put_in_is_no_name_of_what_was_made() -> None:
    assert proposal("Batch", "Essence", "Essence mL").named == {"batch": "Batch"}
    assert proposal("Batch", "Essence").named == {"batch": "Batch", "product": "Essence"}
