"""What a row of label law may be answered by, and the tests that hold it, for the table of rows.

Guarantees: each name is of tests that are there, which `tests/claims/test_label_law.py` holds.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Held:
    """Something a label says or does, and the tests that hold it."""

    what: str
    tests: tuple[str, ...]
    """Each a file and the name of a test in it."""


@dataclass(frozen=True, slots=True)
class Beside:
    """Why a row asks nothing of a label of this book."""

    why: str


@dataclass(frozen=True, slots=True)
class Lacking:
    """What a label of this book does not do, and why."""

    why: str


Place = Held | Beside | Lacking

PDF, WORDS = "tests/reports/pdf/goods/test_", "tests/reports/words/goods/test_"
FITS = f"{PDF}label_fit.py::test_a_small_bottle_may_have_smaller_words_where_they_are_needed"
X_HEIGHT = f"{PDF}label_block.py::test_the_least_size_has_the_x_height_the_law_asks_for"
US_TYPE = (
    f"{PDF}label_block.py::"
    "test_net_contents_in_the_united_states_are_by_the_panel_and_the_name_half_as_large"
)
US_LEAST = f"{PDF}label_block.py::test_a_label_of_the_united_states_has_their_least_size"
CANADA = (
    f"{PDF}label_block.py::test_the_letters_of_a_label_of_canada_are_as_high_as_its_law_asks_for"
)
FIGURES = (
    f"{PDF}label_block.py::test_the_figures_of_the_volume_are_as_high_as_the_law_asks_for",
    f"{WORDS}net_volume.py::test_the_figures_grow_at_the_bounds_of_the_directive",
)
AFTER_LIST = (
    f"{PDF}label_block.py::test_a_statement_stands_right_after_the_list_and_before_the_nutrition"
)
PANELS = f"{PDF}label_panels.py::test_front_and_back_say_every_word_of_the_label_and_each_its_own"
LOWEST = (
    f"{PDF}label_panels.py::"
    "test_the_name_on_a_front_has_16_to_24_points_and_the_volume_stands_lowest",
    f"{PDF}label_panels.py::test_the_volume_stands_in_the_lowest_part_of_one_panel_too",
)
SURFACES = f"{WORDS}label.py::test_a_bottle_that_counts_as_small_or_tiny_has_that_little_surface"
LISTED = f"{WORDS}label.py::test_what_is_in_the_bottle_and_its_nutrition_need_no_typing"
SAID = f"{WORDS}label.py::test_a_label_says_what_is_in_the_bottle_and_how_to_pour_it"
BEST = f"{WORDS}label.py::test_the_best_before_day_is_the_earliest_of_the_lot_and_all_it_is_made_of"
DATE_WORDS = f"{WORDS}label_words.py::test_six_languages_have_every_word_with_its_places"
DATE_ORDER = f"{WORDS}label_words.py::test_a_day_is_written_as_annex_x_orders_it"
BOTH_UNITS = (
    f"{WORDS}net_volume.py::"
    "test_a_house_in_the_united_states_says_both_units_and_never_more_than_is_there"
)
LOT = f"{PDF}label.py::test_every_label_carries_its_lot_in_words_and_as_a_symbol"
KEEPING = (
    "tests/reports/words/lots/test_dates.py::"
    "test_a_label_promises_an_opened_bottle_no_longer_than_its_date"
)
STRENGTH = (
    "tests/reports/words/lots/test_strength.py::"
    "test_a_label_rounds_half_up_to_a_tenth_and_says_nothing_below_a_twentieth"
)
TOLD = "tests/reports/words/glass/test_declaration.py::"
CAPITALS = f"{TOLD}test_allergens_stand_in_capitals_in_their_ingredient_or_beside_it"
CONTAINS = f"{TOLD}test_the_united_states_have_a_line_of_what_it_contains"
EXEMPT = f"{TOLD}test_who_may_be_exempt_is_told_with_its_source_in_every_place"
COLUMNS = f"{TOLD}test_the_table_has_a_column_as_sold_and_one_as_drunk"
US_PANEL = f"{TOLD}test_a_panel_of_the_united_states_is_for_a_glass"
DECLARES = "tests/service/glass/test_declaration.py::"
SWEETENER = f"{DECLARES}test_a_sweetener_asks_for_its_words"
LIQUORICE = f"{DECLARES}test_liquorice_and_sulphites_ask_for_their_words"
CAFFEINE = f"{DECLARES}test_much_caffeine_in_the_drink_asks_for_its_words"
INGREDIENTS = "tests/science/contents/test_ingredients.py::"
BY_MASS = f"{INGREDIENTS}test_a_syrup_is_listed_by_mass_as_its_place_wants"
NATURAL = f"{INGREDIENTS}test_the_word_natural_is_for_what_was_obtained_by_nature"
BY_HAND = f"{INGREDIENTS}test_quinine_and_caffeine_are_named_right_after_the_word_flavouring"
ANNEX_XV = "tests/science/contents/test_declared.py::test_the_lines_stand_in_the_order_of_annex_xv"
SALT = "tests/science/contents/test_nutrition.py::test_sodium_benzoate_brings_its_sodium_as_salt"
ALLERGENS = (
    "tests/domain/masters/test_allergens.py::"
    "test_every_allergen_of_the_law_is_found_by_its_own_word"
)
CLASS = "tests/science/liquids/test_flammable.py::test_a_strength_has_its_class"
BOUNDS = "tests/science/liquids/test_flammable.py::test_the_bounds_are_those_of_clp_and_of_carriage"
FLAME = f"{WORDS}tags.py::test_what_is_flammable_says_its_class_and_what_to_keep_it_from"
HAZARDS = f"{WORDS}tags.py::test_every_class_of_flammable_liquid_has_its_statement"

QUANTITY = Held(
    "the per cent by mass of an ingredient whose name the product has, such as a juice; none of "
    "flavouring in small quantity (Annex VIII, 1(a)(iii)) and none where a mass is not known",
    (
        "tests/science/contents/test_emphasised.py::"
        "test_a_juice_that_the_name_emphasises_has_its_share_and_nothing_else_has",
        f"{DECLARES}test_a_syrup_named_after_its_juice_tells_how_much_is_in_it",
        f"{TOLD}test_a_share_stands_behind_its_ingredient_in_two_figures",
    ),
)
NO_E_MARK = Beside("No label carries the e mark, which a maker may put on and need not.")
LARGER = "the day is always told, with month and year, which is more than suffices"
EXEMPT_TOLD = "the card tells who may be exempt, with the source, and the maker decides"
