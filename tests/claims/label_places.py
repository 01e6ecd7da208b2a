"""What of published label law a label of this book meets, and which test holds it.

Guarantees: one place for each row of `tests/reference/label_law.csv` in its order, and for each
item of the three lists under `tests/reference/labels`. A row that only allows, defines or is about
no label of this book says so; one that is not met says why. That a row is here does not say that
a label complies with any law: local law decides.
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

_PDF, _WORDS = "tests/reports/pdf/goods/test_", "tests/reports/words/goods/test_"
_FITS = f"{_PDF}label_fit.py::test_a_small_bottle_may_have_smaller_words_where_they_are_needed"
_X_HEIGHT = f"{_PDF}label_block.py::test_the_least_size_has_the_x_height_the_law_asks_for"
_US_TYPE = (
    f"{_PDF}label_block.py::"
    "test_net_contents_in_the_united_states_are_by_the_panel_and_the_name_half_as_large"
)
_US_LEAST = f"{_PDF}label_block.py::test_a_label_of_the_united_states_has_their_least_size"
_CANADA = (
    f"{_PDF}label_block.py::test_the_letters_of_a_label_of_canada_are_as_high_as_its_law_asks_for"
)
_FIGURES = (
    f"{_PDF}label_block.py::test_the_figures_of_the_volume_are_as_high_as_the_law_asks_for",
    f"{_WORDS}net_volume.py::test_the_figures_grow_at_the_bounds_of_the_directive",
)
_AFTER_LIST = (
    f"{_PDF}label_block.py::test_a_statement_stands_right_after_the_list_and_before_the_nutrition"
)
_PANELS = f"{_PDF}label_panels.py::test_front_and_back_say_every_word_of_the_label_and_each_its_own"
_LOWEST = (
    f"{_PDF}label_panels.py::"
    "test_the_name_on_a_front_has_16_to_24_points_and_the_volume_stands_lowest",
    f"{_PDF}label_panels.py::test_the_volume_stands_in_the_lowest_part_of_one_panel_too",
)
_SURFACES = f"{_WORDS}label.py::test_a_bottle_that_counts_as_small_or_tiny_has_that_little_surface"
_LISTED = f"{_WORDS}label.py::test_what_is_in_the_bottle_and_its_nutrition_need_no_typing"
_SAID = f"{_WORDS}label.py::test_a_label_says_what_is_in_the_bottle_and_how_to_pour_it"
_BEST = (
    f"{_WORDS}label.py::test_the_best_before_day_is_the_earliest_of_the_lot_and_all_it_is_made_of"
)
_DATE_WORDS = f"{_WORDS}label_words.py::test_six_languages_have_every_word_with_its_places"
_DATE_ORDER = f"{_WORDS}label_words.py::test_a_day_is_written_as_annex_x_orders_it"
_BOTH_UNITS = (
    f"{_WORDS}net_volume.py::"
    "test_a_house_in_the_united_states_says_both_units_and_never_more_than_is_there"
)
_LOT = f"{_PDF}label.py::test_every_label_carries_its_lot_in_words_and_as_a_symbol"
_KEEPING = (
    "tests/reports/words/lots/test_dates.py::"
    "test_a_label_promises_an_opened_bottle_no_longer_than_its_date"
)
_STRENGTH = (
    "tests/reports/words/lots/test_strength.py::"
    "test_a_label_rounds_half_up_to_a_tenth_and_says_nothing_below_a_twentieth"
)
_TOLD = "tests/reports/words/glass/test_declaration.py::"
_CAPITALS = f"{_TOLD}test_allergens_stand_in_capitals_in_their_ingredient_or_beside_it"
_CONTAINS = f"{_TOLD}test_the_united_states_have_a_line_of_what_it_contains"
_EXEMPT = f"{_TOLD}test_who_may_be_exempt_is_told_with_its_source_in_every_place"
_COLUMNS = f"{_TOLD}test_the_table_has_a_column_as_sold_and_one_as_drunk"
_US_PANEL = f"{_TOLD}test_a_panel_of_the_united_states_is_for_a_glass"
_DECLARES = "tests/service/glass/test_declaration.py::"
_SWEETENER = f"{_DECLARES}test_a_sweetener_asks_for_its_words"
_LIQUORICE = f"{_DECLARES}test_liquorice_and_sulphites_ask_for_their_words"
_CAFFEINE = f"{_DECLARES}test_much_caffeine_in_the_drink_asks_for_its_words"
_INGREDIENTS = "tests/science/contents/test_ingredients.py::"
_BY_MASS = f"{_INGREDIENTS}test_a_syrup_is_listed_by_mass_as_its_place_wants"
_NATURAL = f"{_INGREDIENTS}test_the_word_natural_is_for_what_was_obtained_by_nature"
_BY_HAND = f"{_INGREDIENTS}test_quinine_and_caffeine_are_named_right_after_the_word_flavouring"
_ANNEX_XV = "tests/science/contents/test_declared.py::test_the_lines_stand_in_the_order_of_annex_xv"
_SALT = "tests/science/contents/test_nutrition.py::test_sodium_benzoate_brings_its_sodium_as_salt"
_ALLERGENS = (
    "tests/domain/masters/test_allergens.py::"
    "test_every_allergen_of_the_law_is_found_by_its_own_word"
)
_CLASS = "tests/science/liquids/test_flammable.py::test_a_strength_has_its_class"
_BOUNDS = (
    "tests/science/liquids/test_flammable.py::test_the_bounds_are_those_of_clp_and_of_carriage"
)
_FLAME = f"{_WORDS}tags.py::test_what_is_flammable_says_its_class_and_what_to_keep_it_from"
_HAZARDS = f"{_WORDS}tags.py::test_every_class_of_flammable_liquid_has_its_statement"

_QUANTITY = Held(
    "the per cent by mass of an ingredient whose name the product has, such as a juice; none of "
    "flavouring in small quantity (Annex VIII, 1(a)(iii)) and none where a mass is not known",
    (
        "tests/science/contents/test_emphasised.py::"
        "test_a_juice_that_the_name_emphasises_has_its_share_and_nothing_else_has",
        f"{_DECLARES}test_a_syrup_named_after_its_juice_tells_how_much_is_in_it",
        f"{_TOLD}test_a_share_stands_behind_its_ingredient_in_two_figures",
    ),
)
_NO_E_MARK = Beside("No label carries the e mark, which a maker may put on and need not.")
_LARGER = "the day is always told, with month and year, which is more than suffices"
_EXEMPT_TOLD = "the card tells who may be exempt, with the source, and the maker decides"

LAW: dict[tuple[str, str], Place] = {
    ("EU list of mandatory particulars", "Art. 9(1) a-l"): Beside(
        "It counts the particulars, of which each has its own line (ARTICLE_9)."
    ),
    ("EU same field of vision", "name, net quantity, strength"): Held(
        "all of it on one panel, or these three on the front", (_PANELS,)
    ),
    ("EU x-height", "smallest, mandatory particulars"): Held("no words below 6.5 pt", (_X_HEIGHT,)),
    ("EU x-height, small pack", "largest surface below 80 cm2"): Held(
        "none below 4.9 pt on a small bottle", (_X_HEIGHT, _FITS)
    ),
    ("EU small pack, surface for the 0.9 mm rule", "largest surface less than"): Held(
        "a bottle up to 50 mL, by the surface around it", (_SURFACES,)
    ),
    (
        "EU tiny pack",
        "largest surface less than this: only name, allergens, net quantity, date (a, c, e, f)",
    ): Held("a bottle up to 2 mL may say its allergens in place of its list", (_SURFACES, _LISTED)),
    ("EU nutrition exempt, small pack", "largest surface less than"): Held(
        _EXEMPT_TOLD, (_EXEMPT,)
    ),
    (
        "EU nutrition exempt, small maker",
        "food supplied directly by the manufacturer of small quantities to the final consumer or "
        "to local retail directly supplying the final consumer",
    ): Held(_EXEMPT_TOLD, (_EXEMPT,)),
    (
        "EU nutrition exempt, flavourings",
        "flavourings are in Annex V (an essence sold as a flavouring)",
    ): Held(_EXEMPT_TOLD, (_EXEMPT,)),
    ("EU nutrition exempt, water with CO2 and flavourings only", ""): Beside(
        "It exempts flavoured soda water in bottles; what is bottled here is an essence or a syrup."
    ),
    ("EU date words, with a day", "date includes the day"): Held(
        "the official words before a day, in six languages", (_DATE_WORDS,)
    ),
    ("EU date words, without a day", "other cases"): Beside(
        "They are for a date without its day; a label here never has one."
    ),
    ("EU date order", "uncoded"): Held("day, month, year", (_DATE_ORDER,)),
    ("EU date, keeps up to 3 months", "sufficient"): Held(_LARGER, (_DATE_ORDER,)),
    ("EU date, keeps more than 3 and up to 18 months", "sufficient"): Held(_LARGER, (_DATE_ORDER,)),
    ("EU date, keeps more than 18 months", "sufficient"): Held(_LARGER, (_DATE_ORDER,)),
    (
        "EU date not required",
        "beverages of 10 % vol alcohol or more; sugar in solid form",
    ): Held("it need not, and says the day whenever one is known", (_BEST,)),
    (
        "EU high caffeine",
        "beside the name, same field of vision; content in brackets per",
    ): Held(
        "the statement with the content in 100 mL of the drink, on the panel that says the name; "
        "a drink named for the coffee or tea in it has it too, which the law does not ask",
        (_CAFFEINE, _PANELS),
    ),
    ("EU caffeine as flavouring", "named right after the word flavouring"): Held(
        "flavouring (caffeine)", (_BY_HAND,)
    ),
    (
        "EU contains liquorice",
        "directly after the ingredient list, unless liquorice is already in it or in the name; "
        "without a list, beside the name",
    ): Held("right after the list, also where the list has it", (_LIQUORICE, _AFTER_LIST)),
    ("EU sweetener", "beside the name"): Held(
        "with sweetener(s), on the panel that says the name", (_SWEETENER, _PANELS)
    ),
    ("EU sugar and sweetener", "beside the name"): Held(
        "with sugar(s) and sweetener(s), likewise", (_SWEETENER, _PANELS)
    ),
    ("EU aspartame", "by E number only"): Held("its statement", (_SWEETENER,)),
    (
        "EU nutrition order",
        "energy (kJ and kcal), fat, of which saturates, carbohydrate, of which sugars, protein, "
        "salt",
    ): Held("seven lines in this order", (_ANNEX_XV,)),
    ("EU nutrition basis", "per 100 g or 100 ml; per portion besides"): Held(
        "100 mL; a portion is told by the card", (_COLUMNS, _LISTED)
    ),
    (
        "EU nutrition as prepared",
        "where appropriate for the prepared food, with sufficiently detailed preparation "
        "instructions; else as sold",
    ): Held("as sold on a label, as drunk beside it on the card", (_COLUMNS, _LISTED)),
    ("EU reference intake", "average adult"): Beside(
        "A label here says amounts alone; per cents of the intake are left to the maker by Art. "
        "32(4)."
    ),
    ("EU salt", "sodium x"): Held("reckoned from sodium by this factor", (_SALT,)),
    ("net quantity figures", "nominal above 1000 g or 100 cl"): Held("figures of 6 mm", _FIGURES),
    ("net quantity figures", "above 200 g / 20 cl, up to 1000 g / 100 cl"): Held(
        "figures of 4 mm", _FIGURES
    ),
    ("net quantity figures", "above 50 g / 5 cl, up to 200 g / 20 cl"): Held(
        "figures of 3 mm", _FIGURES
    ),
    ("net quantity figures", "up to 50 g / 5 cl (the page prints 2 cl: a slip)"): Held(
        "figures of 2 mm", _FIGURES
    ),
    ("e mark", "height at least"): _NO_E_MARK,
    ("measuring container bottle figures (AT)", "up to 20 cl / up to 100 cl / above"): Beside(
        "It is for figures in the glass of a measuring container, which its maker puts there."
    ),
    (
        "e mark tolerable negative error",
        "50-100 mL / 100-200 / 200-300 / 300-500 / 500-1000 mL",
    ): _NO_E_MARK,
    ("lot mark", "preceded by L unless clearly distinguishable"): Held(
        "the word for a lot before its code, in the label's language", (_LOT, _DATE_WORDS)
    ),
    ("US principal display panel, cylinder", "share of height x circumference"): Held(
        "contents by the panel of the slimmest bottle of the size, or by the label if larger",
        (
            f"{_WORDS}net_volume.py::test_the_panel_of_a_round_bottle_is_two_fifths_of_its_side",
            _US_TYPE,
        ),
    ),
    ("US principal display panel, rectangle", "one whole side"): Lacking(
        "Every bottle is taken for a round one, since the book knows no bottle's form."
    ),
    ("US net contents, place", "bottom share of the panel"): Held(
        "in the lowest 30 % of the label", _LOWEST
    ),
    ("US net contents, temperature", "liquid measure at"): Beside(
        "It says at what temperature a volume is true; a label says the size as the maker gave it, "
        "and filling is measured at the bench."
    ),
    ("US net contents type", "panel up to 5 sq in"): Held("by the panel's area", (_US_TYPE,)),
    ("US net contents type", "panel above 5 to 25 sq in"): Held("likewise", (_US_TYPE,)),
    ("US net contents type", "panel above 25 to 100 sq in"): Held("likewise", (_US_TYPE,)),
    ("US net contents type", "panel above 100 sq in"): Held("likewise", (_US_TYPE,)),
    ("US net contents type", "panel above 400 sq in"): Held("likewise", (_US_TYPE,)),
    ("US information panel type", "ingredients, allergens, name and place"): Held(
        "no words below 8.6 pt, but on a small bottle", (_X_HEIGHT, _US_LEAST)
    ),
    ("US identity size", "of the largest print on the panel"): Held(
        "the name at least half as large as the contents", (_US_TYPE,)
    ),
    ("US ingredients", "descending order by"): Held("the list, most first", (_BY_MASS,)),
    (
        "US small business, no notice (retailer)",
        "total sales / food sales not more than",
    ): Held(_EXEMPT_TOLD, (_EXEMPT,)),
    (
        "US small business, notice",
        "fewer than 100 full-time equivalents and fewer units of the product a year",
    ): Held(_EXEMPT_TOLD, (_EXEMPT,)),
    (
        "US small business, no notice (tiny, not importer)",
        "fewer than 10 full-time equivalents and fewer units a year",
    ): Held(_EXEMPT_TOLD, (_EXEMPT,)),
    ("US exemption lost", "any nutrient content or health claim"): Held(
        "told beside the exemption", (_EXEMPT,)
    ),
    ("US after growing out of it", "time to comply"): Beside(
        "It is a term for a firm that grew; the book does not know sales or people's hours."
    ),
    (
        "US nutrition exempt, flavor extracts and food colors",
        "no significant amounts",
    ): Held(_EXEMPT_TOLD, (_EXEMPT,)),
    (
        "US major allergens",
        "milk, eggs, fish, Crustacean shellfish, tree nuts, peanuts, wheat, soybeans, sesame",
    ): Held("each found in a material's facts and named", (_ALLERGENS, _CONTAINS)),
    ("US sesame from", "introduced into interstate commerce on or after"): Held(
        "named on every label, whatever its day", (_ALLERGENS,)
    ),
    (
        "UK/EU allergens",
        "celery, cereals with gluten, crustaceans, eggs, fish, lupin, milk, molluscs, mustard, "
        "tree nuts, peanuts, sesame, soybeans, sulphites >10 mg/kg or mg/L",
    ): Held("each found and emphasised", (_ALLERGENS, _CAPITALS, _LIQUORICE)),
    (
        "CA information height",
        "mandatory information on a consumer prepackaged food, at least",
    ): Held("no words below 8.7 pt", (_CANADA,)),
    (
        "CA information height, small",
        "principal display surface of 10 cm2 or less, all on it, at least",
    ): Held("a small bottle has the larger letters too", (_CANADA,)),
}

ARTICLE_9: dict[str, Place] = {
    "a": Held("the product's name", (_SAID,)),
    "b": Held("the list of ingredients", (_BY_MASS, _LISTED)),
    "c": Held("allergens in capitals", (_CAPITALS, _ALLERGENS)),
    "d": _QUANTITY,
    "e": Held("the net volume", (_SAID, *_FIGURES)),
    "f": Held("best before, as its dates say", (_BEST, _DATE_WORDS)),
    "g": Held("how to keep it, and for how long once opened", (_KEEPING,)),
    "h": Held("the maker's name and address, with the country", (_PANELS,)),
    "i": Beside(
        "It is asked where leaving it out would mislead (Art. 26(2)); the maker's country stands "
        "in the address, and more in the formula's text."
    ),
    "j": Held("how to pour or dose it", (_SAID,)),
    "k": Held("% vol with one decimal", (_STRENGTH,)),
    "l": Held("nutrition where it is asked for", (_LISTED, _ANNEX_XV)),
    "lot": Held("the word for a lot before its code", (_LOT,)),
}
"""The particulars of Regulation (EU) No 1169/2011, Article 9(1), and the lot."""

PART_101: dict[str, Place] = {
    "statement of identity, principal display panel": Held("the name", (_PANELS, _US_TYPE)),
    "net quantity of contents, PDP bottom 30 %, US + metric": Held(
        "both units in the lowest part", (_BOTH_UNITS, *_LOWEST)
    ),
    "ingredient list, descending weight": Held("the list, most first", (_BY_MASS,)),
    "flavour declaration, natural/artificial": Held("natural or artificial flavor", (_NATURAL,)),
    "allergen declaration: milk egg fish crustacean tree nuts wheat peanut soy sesame": Held(
        "a line of what it contains", (_CONTAINS, _ALLERGENS)
    ),
    "name and place of business": Held("the maker's name and address", (_PANELS,)),
    "nutrition facts or small-business exemption": Held(
        "amounts in a glass, in a line; the panel's own form is not drawn", (_US_PANEL, _EXEMPT)
    ),
    "percent juice when a beverage purports to contain juice": Lacking(
        "No per cent of juice is told; the maker has to add it to the formula's text."
    ),
    "information panel placement, type size": Held("no words below 8.6 pt", (_X_HEIGHT, _US_LEAST)),
    "lot code: not required by 101, needed for 117/1.345(a)(4) and recall": Held(
        "the lot in words and as a symbol", (_LOT,)
    ),
}
"""The items of 21 CFR part 101."""

HAZARD: dict[str, Place] = {
    "flash_point_C_by_percent": Held("a class by a flash point that is reckoned", (_CLASS,)),
    "clp_annex_I_2.6": Held(
        "diamond, signal word and statement by category, with P210; the other precautionary "
        "statements are for a maker to choose from",
        (_BOUNDS, _FLAME, _HAZARDS),
    ),
    "derived_bands_from_table": Held("the same bands, by strength", (_CLASS,)),
    "eye": Lacking(
        "No H319: the harmonised entry of ethanol has H225 alone, and suppliers differ on the rest."
    ),
    "signal_word_rule": Beside("A label here has one class of hazard, so one signal word."),
    "transport": Held("UN 1197, and none up to 24 % vol", (_CLASS, _BOUNDS)),
}
"""What is published of spirit as a hazard."""
