"""The serving card, for machines."""

from msgspec.structs import asdict

from ledger.service.glass.card import Pouring, ServingCard
from ledger.service.glass.serving import serving
from reports.json.glass import serving as module
from reports.json.glass.serving import serving_answer
from tests.keeper import Keeper
from tests.kept.filled import bare, filled
from tests.kept.said import check_constants
from tests.path import Lots
from tests.reports.json.kept import check
from tests.reports.words.glass.preserved import preserved


def test_a_card_has_the_figures_of_its_first_way_to_pour(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    told = serving_answer(serving(keeper.book, lots.packed))
    assert (told.abv_lot, told.abv_glass, told.sugar_g) == ("0.685", "0.086", "18.33")
    assert (told.syrup_ml, told.soda_ml, told.glasses_per_bottle) == ("30", "210", 8)
    (oil,), (concern,) = told.oils, told.concerns
    assert (oil.mg_per_glass, oil.clouds) == ("12.63", "will cloud")
    assert (concern.substance, concern.mg_per_glass) == ("limonene", "11.87")
    assert asdict(told.pourings[0]).items() <= asdict(told).items()


def test_the_sugar_of_a_dosed_syrup_is_not_told(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    told = serving_answer(serving(keeper.book, lots.essence))
    assert [way.pour for way in told.pourings] == ["30 mL in 1 L", "30 mL in 1 US gal"]
    assert told.sugar_g is None


def test_every_figure_of_a_card_is_the_kept_one(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    check(
        "serving",
        serving_answer(serving(keeper.book, lots.packed), explain=True),
        serving_answer(serving(keeper.book, lots.essence)),
        serving_answer(serving(keeper.book, preserved(keeper, constituents="benzoic acid 84.7%"))),
    )


def test_every_part_of_a_card_stands_under_its_own_key_and_what_there_is_none_of_is_null() -> None:
    """Ceilings are passed in the first card: by a share, or since nothing at all is allowed."""
    none = bare(ServingCard, pourings=(bare(Pouring),))
    check("serving_filled", serving_answer(filled(ServingCard)), serving_answer(none))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
