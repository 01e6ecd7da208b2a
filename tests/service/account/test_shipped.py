"""Limits that come with pottle: each names its source and says how it is known."""

from datetime import date

import pytest
from msgspec.structs import replace

from ledger.domain.entries import Material
from ledger.domain.entries.choices import (
    HowObtained,
    KnownBy,
    LimitBasis,
    LimitUnit,
    MaterialKind,
)
from ledger.domain.entries.masters import Constituent
from ledger.service.account.shipped import (
    counts,
    limit_versions,
    limited_on,
    limits_on,
    not_told,
    read_shipped,
    shipped,
    solubilities,
    usual_caution,
)
from tests.domain.builders import make
from tests.keeper import Keeper


def test_every_limit_that_comes_with_pottle_names_its_source() -> None:
    found = shipped()
    assert len({item.code for item in found}) == len(found) > 20
    assert all(item.citation and item.says and item.place for item in found)


ANNEX_III_B = {
    "eu-beta-asarone-alcoholic": ("beta-asarone", "1", "read"),
    "eu-estragole": ("estragole", "10", "proposal"),
    "eu-hydrocyanic-acid-alcoholic": ("hydrocyanic acid", "35", "press"),
    "eu-menthofuran-mint-alcoholic": ("menthofuran", "200", "memory"),
    "eu-methyleugenol": ("methyleugenol", "1", "press"),
    "eu-pulegone-mint": ("pulegone", "20", "memory"),
    "eu-pulegone-mint-alcoholic": ("pulegone", "100", "memory"),
    "eu-quassin": ("quassin", "0.5", "press"),
    "eu-quassin-alcoholic": ("quassin", "1.5", "press"),
    "eu-safrole": ("safrole", "1", "press"),
    "eu-teucrin-a-alcoholic": ("teucrin a", "2", "press"),
    "eu-teucrin-a-bitter-spirits": ("teucrin a", "5", "memory"),
    "eu-thujone": ("thujone", "0.5", "memory"),
    "eu-thujone-alcoholic": ("thujone", "10", "press"),
    "eu-thujone-artemisia-alcoholic": ("thujone", "35", "press"),
}
"""Values for beverages of Regulation (EC) 1334/2008, Annex III part B, in mg/kg, and how each is
known: read in the text, in its proposal, in the press on its proposal, or from memory alone."""


BASES = {
    "proposal": "; so in its proposal COM(2007) 671",
    "press": "; so in the press on its proposal, 2006",
    "read": "",
    "memory": "",
}


def test_the_values_for_beverages_are_those_of_the_annex_and_say_how_they_are_known() -> None:
    annex = "Regulation (EC) 1334/2008, Annex III part B, OJ L 354, 31.12.2008"
    found = {item.code: item for item in shipped() if item.citation.startswith(annex)}
    assert found.keys() == ANNEX_III_B.keys()
    for code, (substance, mg_per_kg, known) in ANNEX_III_B.items():
        item = found[code]
        assert (item.substance, item.value_micro) == (substance, int(float(mg_per_kg) * 1e6))
        assert (item.unit, item.basis) == (LimitUnit.MG_PER_KG, LimitBasis.IN_DRINK)
        assert item.citation == annex + BASES[known]
        assert item.known_by == (KnownBy.READ if known == "read" else KnownBy.RECALLED)


def test_the_shelf_and_what_oils_of_a_name_usually_are_have_one_caution() -> None:
    rows = {row["code"]: row for row in read_shipped("shelf.toml")["material"]}
    plain = make(Material, code="wintergreen-oil", name="Wintergreen oil", sort=MaterialKind.OIL)
    assert usual_caution(plain) == rows["wintergreen-oil"]["caution"]
    assert usual_caution(replace(plain, caution="Locked cupboard.")) == "Locked cupboard."
    water = replace(plain, sort=MaterialKind.WATER)
    assert usual_caution(water) == ""


def test_every_solubility_that_comes_with_pottle_is_read_whole() -> None:
    rows = read_shipped("solubility.toml")["solubility"]
    figures = ("low_mg_per_l", "high_mg_per_l", "log_kow", "density_g_per_ml", "refractive_index")
    found = solubilities()
    assert list(found) == [row["substance"] for row in rows]
    for row in rows:
        read = found[row["substance"]]
        assert (read.substance, read.citation) == (row["substance"], row["citation"])
        assert [getattr(read, name) for name in figures] == [float(row[name]) for name in figures]
    limonene = found["limonene"]
    assert (limonene.low_mg_per_l, limonene.high_mg_per_l, limonene.log_kow) == (6.0, 19.4, 4.57)


LIMITS = {limit.code: limit for limit in shipped()}


@pytest.mark.parametrize(
    ("limit", "name", "code", "how", "does_count"),
    [
        ("us-coumarin", "Cassia oil", "cassia", None, False),
        ("us-coumarin", "Coumarin", "c-1", None, True),
        ("us-coumarin", "Tonka extract", "extract", None, True),
        ("us-coumarin", "Extract", "tonka-extract", None, True),
        ("us-coumarin", "Cassia flavour", "cassia", HowObtained.SYNTHETIC, True),
        ("us-beta-asarone", "House bitter", "sweet-flag", None, True),
        ("us-beta-asarone", "Coumarin", "c-1", None, False),
        # The rule names no goods, and of most limits everything counts.
        ("eu-coumarin-added", "Tonka extract", "extract", None, False),
        ("eu-coumarin-added", "Coumarin", "c-1", None, True),
        ("eu-safrole", "Nutmeg oil", "nutmeg", None, True),
    ],
)
def test_a_limit_of_what_is_added_counts_the_substance_what_is_synthetic_and_goods_it_names(
    limit: str, name: str, code: str, how: HowObtained | None, does_count: bool
) -> None:
    assert counts(LIMITS[limit], Material(code, name, MaterialKind.OIL, how)) == does_count


def test_what_goods_are_known_to_carry_is_asked_of_oils_and_preservatives_until_it_is_told() -> (
    None
):
    """By its name, its code or the name of its ingredient; of a kind that carries none, nothing."""
    oil = Material("birch-oil", "Sweet birch oil", MaterialKind.OIL)
    assert not_told(oil) == ("methyl salicylate",)
    assert not_told(replace(oil, name="Bottle 7")) == ("methyl salicylate",)
    plain = replace(oil, name="Bottle 7", code="b-7", ingredient_name="sweet birch oil")
    assert not_told(plain) == ("methyl salicylate",)
    assert not_told(replace(oil, sort=MaterialKind.SUGAR)) == ()
    assert not_told(replace(oil, constituents=(Constituent("methyl salicylate", 990_000),))) == ()
    assert not_told(Material("lemon-oil", "Lemon oil", MaterialKind.OIL)) == ()


def test_of_a_limit_what_came_is_told_first_and_on_a_day_what_the_book_says_then(
    sqlite_keeper: Keeper,
) -> None:
    """A salt of an acid that a limit speaks of is limited, too."""
    own = {"citation": "in house", "known_by": "read"}
    sqlite_keeper.do("limit", code="us-safrole", value="1", since="2026-06-01", **own)
    with sqlite_keeper.reading() as connection:
        versions = limit_versions(connection)
        assert [*versions] == sorted(versions)
        came, said = versions["us-safrole"]
        assert (came, came.value_micro, said.value_micro) == (
            next(item for item in shipped() if item.code == "us-safrole"), 0, 1_000_000,
        )  # fmt: skip
        days = (date(2026, 5, 31), date(2026, 6, 1))
        told = [{item.code: item for item in limits_on(connection, day)} for day in days]
        assert [each["us-safrole"].value_micro for each in told] == [0, 1_000_000]
        limited = limited_on(connection, days[0])
    assert {item.substance for item in told[0].values()} < limited
    assert {"safrole", "benzoic acid", "sodium benzoate"} <= limited
