"""What of published label law a label of this book meets, and which test holds it.

Guarantees: one place for each row of `tests/reference/label_law.csv` in its order, and for each
item of the three lists under `tests/reference/labels`. A row that only allows, defines or is about
no label of this book says so; one that is not met says why. That a row is here does not say that
a label complies with any law: local law decides.
"""

from tests.claims import label_holders as by
from tests.claims.label_holders import Beside, Held, Lacking, Place

LAW: dict[tuple[str, str], Place] = {
    ("EU list of mandatory particulars", "Art. 9(1) a-l"): Beside(
        "It counts the particulars, of which each has its own line (ARTICLE_9)."
    ),
    ("EU same field of vision", "name, net quantity, strength"): Held(
        "all of it on one panel, or these three on the front", (by.PANELS,)
    ),
    ("EU x-height", "smallest, mandatory particulars"): Held(
        "no words below 6.5 pt", (by.X_HEIGHT,)
    ),
    ("EU x-height, small pack", "largest surface below 80 cm2"): Held(
        "none below 4.9 pt on a small bottle", (by.X_HEIGHT, by.FITS)
    ),
    ("EU small pack, surface for the 0.9 mm rule", "largest surface less than"): Held(
        "a bottle up to 50 mL, by the surface around it", (by.SURFACES,)
    ),
    (
        "EU tiny pack",
        "largest surface less than this: only name, allergens, net quantity, date (a, c, e, f)",
    ): Held(
        "a bottle up to 2 mL may say its allergens in place of its list", (by.SURFACES, by.LISTED)
    ),
    ("EU nutrition exempt, small pack", "largest surface less than"): Held(
        by.EXEMPT_TOLD, (by.EXEMPT,)
    ),
    (
        "EU nutrition exempt, small maker",
        "food supplied directly by the manufacturer of small quantities to the final consumer or "
        "to local retail directly supplying the final consumer",
    ): Held(by.EXEMPT_TOLD, (by.EXEMPT,)),
    (
        "EU nutrition exempt, flavourings",
        "flavourings are in Annex V (an essence sold as a flavouring)",
    ): Held(by.EXEMPT_TOLD, (by.EXEMPT,)),
    ("EU nutrition exempt, water with CO2 and flavourings only", ""): Beside(
        "It exempts flavoured soda water in bottles; what is bottled here is an essence or a syrup."
    ),
    ("EU date words, with a day", "date includes the day"): Held(
        "the official words before a day, in six languages", (by.DATE_WORDS,)
    ),
    ("EU date words, without a day", "other cases"): Beside(
        "They are for a date without its day; a label here never has one."
    ),
    ("EU date order", "uncoded"): Held("day, month, year", (by.DATE_ORDER,)),
    ("EU date, keeps up to 3 months", "sufficient"): Held(by.LARGER, (by.DATE_ORDER,)),
    ("EU date, keeps more than 3 and up to 18 months", "sufficient"): Held(
        by.LARGER, (by.DATE_ORDER,)
    ),
    ("EU date, keeps more than 18 months", "sufficient"): Held(by.LARGER, (by.DATE_ORDER,)),
    (
        "EU date not required",
        "beverages of 10 % vol alcohol or more; sugar in solid form",
    ): Held("it need not, and says the day whenever one is known", (by.BEST,)),
    (
        "EU high caffeine",
        "beside the name, same field of vision; content in brackets per",
    ): Held(
        "the statement with the content in 100 mL of the drink, on the panel that says the name; "
        "a drink named for the coffee or tea in it has it too, which the law does not ask",
        (by.CAFFEINE, by.PANELS),
    ),
    ("EU caffeine as flavouring", "named right after the word flavouring"): Held(
        "flavouring (caffeine)", (by.BY_HAND,)
    ),
    (
        "EU contains liquorice",
        "directly after the ingredient list, unless liquorice is already in it or in the name; "
        "without a list, beside the name",
    ): Held("right after the list, also where the list has it", (by.LIQUORICE, by.AFTER_LIST)),
    ("EU sweetener", "beside the name"): Held(
        "with sweetener(s), on the panel that says the name", (by.SWEETENER, by.PANELS)
    ),
    ("EU sugar and sweetener", "beside the name"): Held(
        "with sugar(s) and sweetener(s), likewise", (by.SWEETENER, by.PANELS)
    ),
    ("EU aspartame", "by E number only"): Held("its statement", (by.SWEETENER,)),
    (
        "EU nutrition order",
        "energy (kJ and kcal), fat, of which saturates, carbohydrate, of which sugars, protein, "
        "salt",
    ): Held("seven lines in this order", (by.ANNEX_XV,)),
    ("EU nutrition basis", "per 100 g or 100 ml; per portion besides"): Held(
        "100 mL; a portion is told by the card", (by.COLUMNS, by.LISTED)
    ),
    (
        "EU nutrition as prepared",
        "where appropriate for the prepared food, with sufficiently detailed preparation "
        "instructions; else as sold",
    ): Held("as sold on a label, as drunk beside it on the card", (by.COLUMNS, by.LISTED)),
    ("EU reference intake", "average adult"): Beside(
        "A label here says amounts alone; per cents of the intake are left to the maker by Art. "
        "32(4)."
    ),
    ("EU salt", "sodium x"): Held("reckoned from sodium by this factor", (by.SALT,)),
    ("net quantity figures", "nominal above 1000 g or 100 cl"): Held("figures of 6 mm", by.FIGURES),
    ("net quantity figures", "above 200 g / 20 cl, up to 1000 g / 100 cl"): Held(
        "figures of 4 mm", by.FIGURES
    ),
    ("net quantity figures", "above 50 g / 5 cl, up to 200 g / 20 cl"): Held(
        "figures of 3 mm", by.FIGURES
    ),
    ("net quantity figures", "up to 50 g / 5 cl (the page prints 2 cl: a slip)"): Held(
        "figures of 2 mm", by.FIGURES
    ),
    ("e mark", "height at least"): by.NO_E_MARK,
    ("measuring container bottle figures (AT)", "up to 20 cl / up to 100 cl / above"): Beside(
        "It is for figures in the glass of a measuring container, which its maker puts there."
    ),
    (
        "e mark tolerable negative error",
        "50-100 mL / 100-200 / 200-300 / 300-500 / 500-1000 mL",
    ): by.NO_E_MARK,
    ("lot mark", "preceded by L unless clearly distinguishable"): Held(
        "the word for a lot before its code, in the label's language", (by.LOT, by.DATE_WORDS)
    ),
    ("US principal display panel, cylinder", "share of height x circumference"): Held(
        "contents by the panel of the slimmest bottle of the size, or by the label if larger",
        (
            f"{by.WORDS}net_volume.py::test_the_panel_of_a_round_bottle_is_two_fifths_of_its_side",
            by.US_TYPE,
        ),
    ),
    ("US principal display panel, rectangle", "one whole side"): Lacking(
        "Every bottle is taken for a round one, since the book knows no bottle's form."
    ),
    ("US net contents, place", "bottom share of the panel"): Held(
        "in the lowest 30 % of the label", by.LOWEST
    ),
    ("US net contents, temperature", "liquid measure at"): Beside(
        "It says at what temperature a volume is true; a label says the size as the maker gave it, "
        "and filling is measured at the bench."
    ),
    ("US net contents type", "panel up to 5 sq in"): Held("by the panel's area", (by.US_TYPE,)),
    ("US net contents type", "panel above 5 to 25 sq in"): Held("likewise", (by.US_TYPE,)),
    ("US net contents type", "panel above 25 to 100 sq in"): Held("likewise", (by.US_TYPE,)),
    ("US net contents type", "panel above 100 sq in"): Held("likewise", (by.US_TYPE,)),
    ("US net contents type", "panel above 400 sq in"): Held("likewise", (by.US_TYPE,)),
    ("US information panel type", "ingredients, allergens, name and place"): Held(
        "no words below 8.6 pt, but on a small bottle", (by.X_HEIGHT, by.US_LEAST)
    ),
    ("US identity size", "of the largest print on the panel"): Held(
        "the name at least half as large as the contents", (by.US_TYPE,)
    ),
    ("US ingredients", "descending order by"): Held("the list, most first", (by.BY_MASS,)),
    (
        "US small business, no notice (retailer)",
        "total sales / food sales not more than",
    ): Held(by.EXEMPT_TOLD, (by.EXEMPT,)),
    (
        "US small business, notice",
        "fewer than 100 full-time equivalents and fewer units of the product a year",
    ): Held(by.EXEMPT_TOLD, (by.EXEMPT,)),
    (
        "US small business, no notice (tiny, not importer)",
        "fewer than 10 full-time equivalents and fewer units a year",
    ): Held(by.EXEMPT_TOLD, (by.EXEMPT,)),
    ("US exemption lost", "any nutrient content or health claim"): Held(
        "told beside the exemption", (by.EXEMPT,)
    ),
    ("US after growing out of it", "time to comply"): Beside(
        "It is a term for a firm that grew; the book does not know sales or people's hours."
    ),
    (
        "US nutrition exempt, flavor extracts and food colors",
        "no significant amounts",
    ): Held(by.EXEMPT_TOLD, (by.EXEMPT,)),
    (
        "US major allergens",
        "milk, eggs, fish, Crustacean shellfish, tree nuts, peanuts, wheat, soybeans, sesame",
    ): Held("each found in a material's facts and named", (by.ALLERGENS, by.CONTAINS)),
    ("US sesame from", "introduced into interstate commerce on or after"): Held(
        "named on every label, whatever its day", (by.ALLERGENS,)
    ),
    (
        "UK/EU allergens",
        "celery, cereals with gluten, crustaceans, eggs, fish, lupin, milk, molluscs, mustard, "
        "tree nuts, peanuts, sesame, soybeans, sulphites >10 mg/kg or mg/L",
    ): Held("each found and emphasised", (by.ALLERGENS, by.CAPITALS, by.LIQUORICE)),
    (
        "CA information height",
        "mandatory information on a consumer prepackaged food, at least",
    ): Held("no words below 8.7 pt", (by.CANADA,)),
    (
        "CA information height, small",
        "principal display surface of 10 cm2 or less, all on it, at least",
    ): Held("a small bottle has the larger letters too", (by.CANADA,)),
}

ARTICLE_9: dict[str, Place] = {
    "a": Held("the product's name", (by.SAID,)),
    "b": Held("the list of ingredients", (by.BY_MASS, by.LISTED)),
    "c": Held("allergens in capitals", (by.CAPITALS, by.ALLERGENS)),
    "d": by.QUANTITY,
    "e": Held("the net volume", (by.SAID, *by.FIGURES)),
    "f": Held("best before, as its dates say", (by.BEST, by.DATE_WORDS)),
    "g": Held("how to keep it, and for how long once opened", (by.KEEPING,)),
    "h": Held("the maker's name and address, with the country", (by.PANELS,)),
    "i": Beside(
        "It is asked where leaving it out would mislead (Art. 26(2)); the maker's country stands "
        "in the address, and more in the formula's text."
    ),
    "j": Held("how to pour or dose it", (by.SAID,)),
    "k": Held("% vol with one decimal", (by.STRENGTH,)),
    "l": Held("nutrition where it is asked for", (by.LISTED, by.ANNEX_XV)),
    "lot": Held("the word for a lot before its code", (by.LOT,)),
}
"""The particulars of Regulation (EU) No 1169/2011, Article 9(1), and the lot."""

PART_101: dict[str, Place] = {
    "statement of identity, principal display panel": Held("the name", (by.PANELS, by.US_TYPE)),
    "net quantity of contents, PDP bottom 30 %, US + metric": Held(
        "both units in the lowest part", (by.BOTH_UNITS, *by.LOWEST)
    ),
    "ingredient list, descending weight": Held("the list, most first", (by.BY_MASS,)),
    "flavour declaration, natural/artificial": Held("natural or artificial flavor", (by.NATURAL,)),
    "allergen declaration: milk egg fish crustacean tree nuts wheat peanut soy sesame": Held(
        "a line of what it contains", (by.CONTAINS, by.ALLERGENS)
    ),
    "name and place of business": Held("the maker's name and address", (by.PANELS,)),
    "nutrition facts or small-business exemption": Held(
        "amounts in a glass, in a line; the panel's own form is not drawn", (by.US_PANEL, by.EXEMPT)
    ),
    "percent juice when a beverage purports to contain juice": Lacking(
        "No per cent of juice is told; the maker has to add it to the formula's text."
    ),
    "information panel placement, type size": Held(
        "no words below 8.6 pt", (by.X_HEIGHT, by.US_LEAST)
    ),
    "lot code: not required by 101, needed for 117/1.345(a)(4) and recall": Held(
        "the lot in words and as a symbol", (by.LOT,)
    ),
}
"""The items of 21 CFR part 101."""

HAZARD: dict[str, Place] = {
    "flash_point_C_by_percent": Held("a class by a flash point that is reckoned", (by.CLASS,)),
    "clp_annex_I_2.6": Held(
        "diamond, signal word and statement by category, with P210; the other precautionary "
        "statements are for a maker to choose from",
        (by.BOUNDS, by.FLAME, by.HAZARDS),
    ),
    "derived_bands_from_table": Held("the same bands, by strength", (by.CLASS,)),
    "eye": Lacking(
        "No H319: the harmonised entry of ethanol has H225 alone, and suppliers differ on the rest."
    ),
    "signal_word_rule": Beside("A label here has one class of hazard, so one signal word."),
    "transport": Held("UN 1197, and none up to 24 % vol", (by.CLASS, by.BOUNDS)),
}
"""What is published of spirit as a hazard."""
