"""What a label says of the bottle, and what it refuses."""

import pytest

from ledger.errors import RefusedError
from ledger.service.lots.dossier import dossier
from reports.words.goods.label import label_sheet_view
from tests.keeper import Keeper
from tests.path import Lots
from tests.reports.words.bottles import pack


def test_a_label_says_what_is_in_the_bottle_and_how_to_pour_it(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, lots, essence = made
    packed = pack(keeper, lots, essence)
    sheet = label_sheet_view(dossier(keeper.book, packed))
    label = sheet.label
    assert (label.product, label.lot, label.volume) == ("Orange syrup", packed, "250 mL")
    assert label.dilution == "1 part syrup to 7 parts soda water"
    assert label.made_on == "2026-03-04"
    assert sheet.count == 15
    assert len(sheet.seal) == 3
    assert label_sheet_view(dossier(keeper.book, packed), 4).count == 4


@pytest.mark.parametrize(
    ("own", "earliest"),
    [
        (None, "2027-06-30"),
        ("2026-09-30", "2026-09-30"),
        ("2030-01-01", "2027-06-30"),
    ],
    ids=["none of its own", "its own is first", "that of its oil is first"],
)
def test_the_best_before_day_is_the_earliest_of_the_lot_and_all_it_is_made_of(
    made: tuple[Keeper, Lots, str], own: str | None, earliest: str
) -> None:
    keeper, lots, essence = made
    packed = pack(keeper, lots, essence, **({"best_before": own} if own else {}))
    label = label_sheet_view(dossier(keeper.book, packed)).label
    assert label.best_before == earliest


def test_a_lot_that_is_not_packed_has_no_labels(made: tuple[Keeper, Lots, str]) -> None:
    keeper, _, essence = made
    with pytest.raises(RefusedError) as refused:
        label_sheet_view(dossier(keeper.book, essence))
    assert refused.value.problems == (
        (
            f"{essence} is not a packed lot, so it has no bottles to label.",
            f'Fill it first: pottle bottle {essence} "15 x 250mL"',
        ),
    )
