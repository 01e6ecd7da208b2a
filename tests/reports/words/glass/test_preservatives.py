"""Preservatives on a serving card: a salt is held against the limits of its acid."""

from ledger.service.glass.serving import serving
from reports.words.glass.explain import explained
from reports.words.glass.limits import limit_table
from reports.words.glass.serving import glass_table, missing_lines
from tests.keeper import Keeper


def preserved(keeper: Keeper, **told: str) -> str:
    """Return a litre of water with 1.4 g of a preservative in it."""
    keeper.do("material", code="keeps", name="Sodium benzoate", kind="preservative", **told)
    water = keeper.opens("receive", material="water", amount="5L")
    salt = keeper.opens("receive", material="keeps", amount="50g")
    code = keeper.opens("start", product="Cordial", kind="syrup", target="1L")
    keeper.do("add", lot=code, source=water, amount="1000mL")
    keeper.do("add", lot=code, source=salt, amount="1.4g")
    return code


def test_benzoate_is_held_against_the_limit_for_the_acid(sqlite_keeper: Keeper) -> None:
    """By hand: 1.4 g/L in 30 mL of 240 mL are 175 mg/L, x 122.12/144.10 = 148.3 mg/L of acid.

    So a glass stays below 150 mg/L counted as the acid, which as salt it would pass; and what a
    litre of it weighs is 0.9982 kg and 1.4 g, of which the salt is 0.140 %.
    """
    code = preserved(sqlite_keeper, constituents="sodium benzoate 100%")
    card = serving(sqlite_keeper.book, code)
    assert [row[:2] for row in limit_table(card).rows] == [
        ("EU, benzoic acid in the glass at most 150 mg/L: soft drinks, counted as the acid",
         "148 mg/L"),
        ("US, sodium benzoate in the bottle at most 0.1 % mass: as a preservative in food",
         "0.14 % mass PAST"),
    ]  # fmt: skip
    assert glass_table(card).rows[-2:] == (
        ("benzoic acid, with its salts", "35.6 mg"),
        ("sodium benzoate", "42 mg"),
    )


def test_the_factor_is_told_where_figures_are_explained(sqlite_keeper: Keeper) -> None:
    code = preserved(sqlite_keeper, constituents="sodium benzoate 100%")
    told = explained(serving(sqlite_keeper.book, code))
    assert (
        "Glass (as it is): 42 mg of sodium benzoate count as 35.6 mg of benzoic acid: 122.12 g of "
        "it in 144.10 g, a factor of 0.8475 (molar masses by IUPAC's atomic weights, from memory)."
    ) in told


def test_a_preservative_of_which_nothing_is_recorded_is_named(sqlite_keeper: Keeper) -> None:
    code = preserved(sqlite_keeper)
    card = serving(sqlite_keeper.book, code)
    assert missing_lines(card) == [
        "Missing: what of concern keeps carries is not recorded, so none is reckoned. By its name "
        "it usually carries sodium benzoate. Record it: pottle material change keeps "
        '--constituents "NAME SHARE%"'
    ]
    assert not limit_table(card).rows


def test_sorbate_beside_benzoate_is_held_against_the_lower_limit_too(
    sqlite_keeper: Keeper,
) -> None:
    """By hand: 2.9 g/L in 30 mL of 240 mL are 362.5 mg/L, x 112.13/150.22 = 270.6 mg/L of acid.

    So a glass is within 300 mg/L, which is for sorbates alone, and past the 250 mg/L that hold
    beside benzoates (trade press report of the Union list for soft drinks, 25 November 2008).
    """
    code = preserved(sqlite_keeper, constituents="sodium benzoate 100%")
    alone = "EU, sorbic acid in the glass at most 300 mg/L: soft drinks, alone, counted as the acid"
    beside = (
        "EU, sorbic acid in the glass at most 250 mg/L: soft drinks, with benzoates, counted as "
        "the acid"
    )
    sqlite_keeper.do(
        "material",
        code="sorb",
        name="Potassium sorbate",
        kind="preservative",
        constituents="potassium sorbate 100%",
    )
    salt = sqlite_keeper.opens("receive", material="sorb", amount="50g")
    sqlite_keeper.do("add", lot=code, source=salt, amount="2.9g")
    told = {row[0]: row[1] for row in limit_table(serving(sqlite_keeper.book, code)).rows}
    assert (told[alone], told[beside]) == ("271 mg/L", "271 mg/L PAST")


def test_sorbate_alone_is_not_held_against_the_limit_beside_benzoate(
    sqlite_keeper: Keeper,
) -> None:
    code = preserved(sqlite_keeper, constituents="potassium sorbate 100%")
    rows = limit_table(serving(sqlite_keeper.book, code)).rows
    assert [row[0] for row in rows if "sorbic" in row[0]] == [
        "EU, sorbic acid in the glass at most 300 mg/L: soft drinks, alone, counted as the acid"
    ]
