"""Labels by kind: what they say of a lot, and which a lot cannot have."""

import pytest
from msgspec.structs import replace

from ledger.errors import InputError, RefusedError
from ledger.science.liquids.flammable import flammable
from ledger.service.glass.serving import card
from ledger.service.lots.dossier import dossier
from reports.views.goods import TagView
from reports.words.goods import tags as module
from reports.words.goods.tags import STATEMENTS, tag_view
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.path import Lots
from tests.reports.words.bottles import pack


def tag(keeper: Keeper, kind: str, code: str, gtin: str | None = None) -> TagView:
    found = dossier(keeper.book, code)
    return tag_view(kind, found, card(keeper.book, code), gtin)


def test_a_delivery_says_whose_it_is_when_it_came_and_its_code_twice(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, lots, _ = made
    told = tag(keeper, "received", lots.oil)
    assert (told.symbol, told.bars, told.blanks) == (lots.oil, lots.oil, ("Opened",))
    assert dict(told.rows)["Received"] == "2026-03-02"


def test_a_case_has_gs1_where_the_house_has_a_number_and_its_check_digit_is_right(
    made: tuple[Keeper, Lots, str],
) -> None:
    """GTIN 9521234543213: tests/reference, from gs1/gs1-syntax-engine."""
    keeper, lots, essence = made
    packed = pack(keeper, lots, essence)
    told = tag(keeper, "case", packed, "9521234543213")
    assert told.bars.startswith("\xf10109521234543213")
    assert told.bars.endswith(f"10{packed}")
    assert told.under.startswith("(01)09521234543213")
    assert tag(keeper, "case", packed).bars == packed
    with pytest.raises(InputError) as raised:
        tag(keeper, "case", packed, "9521234543214")
    assert raised.value.problems == (
        ("9521234543214 ends in 4, and its check digit is 3.", "Copy the number again."),
    )


def test_an_essence_is_flammable_by_its_class_and_a_syrup_is_not(
    made: tuple[Keeper, Lots, str],
) -> None:
    """CLP, Annex I, 2.6: category 2 is Danger, H225 (ethanol-hazard.json)."""
    keeper, lots, essence = made
    told = tag(keeper, "flammable", essence)
    assert told.title == "Danger: Orange essence"
    assert told.statements[0] == "H225 Highly flammable liquid and vapour."
    packed = pack(keeper, lots, essence)
    with pytest.raises(RefusedError) as raised:
        tag(keeper, "flammable", packed)
    assert raised.value.problems == (
        (
            f"{packed} has no class of flammable liquids by what the book knows of it.",
            "pottle serving says how its flash point is reckoned.",
        ),
    )


@pytest.mark.parametrize(
    ("abv", "signal", "statement"),
    [
        (None, "Danger", "H225 Highly flammable liquid and vapour."),
        (20.0, "Warning", "H226 Flammable liquid and vapour."),
    ],
)
def test_what_is_flammable_says_its_class_and_what_to_keep_it_from(
    abv: float | None, signal: str, statement: str, made: tuple[Keeper, Lots, str]
) -> None:
    """CLP, Annex III and IV (from memory): H225, H226, P210."""
    keeper, _, essence = made
    served = card(keeper.book, essence)
    assert served
    weaker = replace(served, flammable=flammable(0.162, abv)) if abv else served
    told = tag_view("flammable", dossier(keeper.book, essence), weaker, None)
    assert told == TagView(
        f"{signal}: Orange essence",
        essence,
        has_flame=True,
        statements=(
            statement,
            "P210 Keep away from heat, hot surfaces, sparks, open flames and other ignition "
            "sources. No smoking.",
            "Reckoned from its strength; the carrier and local law decide.",
        ),
    )


def test_every_class_of_flammable_liquid_has_its_statement() -> None:
    """CLP, Annex III (from memory): H224 extremely, H225 highly, H226 flammable."""
    assert STATEMENTS == {
        "H224": "Extremely flammable liquid and vapour.",
        "H225": "Highly flammable liquid and vapour.",
        "H226": "Flammable liquid and vapour.",
    }


def test_a_lot_has_only_labels_that_can_be_of_it(made: tuple[Keeper, Lots, str]) -> None:
    keeper, lots, essence = made
    with pytest.raises(RefusedError) as refused:
        tag(keeper, "received", essence)
    assert refused.value.problems == (
        (f"{essence} was not received, so it has no such label.", "Take --kind vessel."),
    )
    with pytest.raises(InputError) as raised:
        tag(keeper, "wreath", essence)
    assert raised.value.problems == (
        (
            'There is no kind of label called "wreath".',
            "Give one of: bottle, received, vessel, sample, case, hold, reject, flammable.",
        ),
    )
    assert tag(keeper, "hold", essence).is_barred
    assert tag(keeper, "vessel", essence).blanks == ("In it now", "Since, by", "Next")
    assert tag(keeper, "sample", lots.oil).title.startswith("Retained sample")


def test_every_kind_of_label_says_what_it_is_for(made: tuple[Keeper, Lots, str]) -> None:
    keeper, lots, essence = made
    packed = pack(keeper, lots, essence)
    assert tag(keeper, "received", lots.oil).rows == (
        ("From", "Harbour Oils"),
        ("Their lot", "C7731"),
        ("Received", "2026-03-02"),
        ("Best before", "2027-06-30"),
    )
    vessel = tag(keeper, "vessel", essence)
    assert (vessel.rows, vessel.symbol) == ((("Begun", "2026-03-02"),), essence)
    sample = tag(keeper, "sample", packed)
    assert sample.title == "Retained sample: Orange syrup, 250 mL"
    assert sample.rows == (
        ("Taken from the lot of", "2026-03-04"), ("Best before", "2027-06-30"),
    )  # fmt: skip
    assert (sample.blanks, sample.symbol) == (("Taken on, by", "Looked at"), packed)
    reject, hold = tag(keeper, "reject", essence), tag(keeper, "hold", essence)
    assert reject == replace(hold, big="REJECT")
    assert (hold.big, hold.is_barred) == ("HOLD", True)
    assert (hold.blanks, hold.symbol, hold.rows) == (("Why", "Since, by"), "", ())
    case = tag(keeper, "case", packed)
    assert (case.rows, case.blanks) == (
        (("Bottles of", "250 mL"), ("Best before", "2027-06-30")),
        ("How many",),
    )
    for kind, code, why in (
        ("case", essence, f"{essence} is not bottled, so it has no such label."),
        ("received", packed, f"{packed} was not received, so it has no such label."),
    ):
        with pytest.raises(RefusedError) as refused:
            tag(keeper, kind, code)
        assert refused.value.problems == ((why, "Take --kind vessel."),)
    with pytest.raises(InputError) as raised:
        tag(keeper, "hold", essence, "9521234543213")
    assert raised.value.problems == (
        ("Only a case has a number of its article.", "Leave --gtin out."),
    )


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


def test_a_case_of_goods_without_an_end_tells_no_day_in_its_bars(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, lots, essence = made
    packed = pack(keeper, lots, essence)
    found = dossier(keeper.book, packed)
    dates = replace(found.state.dates, best_before=None)
    endless = replace(found, state=replace(found.state, dates=dates))
    told = tag_view("case", endless, card(keeper.book, packed), "9521234543213")
    assert told.bars == f"\xf1010952123454321310{packed}"
    assert told.under == f"(01)09521234543213(10){packed}"
    assert dict(told.rows)["Best before"] == "not known"
