"""Whether a drink clouds: forecasts that say how sure they are."""

import pytest
from msgspec.structs import replace

from ledger.domain.entries import Material
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.entries.masters import Constituent
from ledger.science.contents.louche import Outlook, forecast, forecast_together
from ledger.service.account.shipped import solubilities

LEMON = Material("lemon-oil", "Lemon oil", MaterialKind.OIL)
LIMONENE = Material(
    "orange-oil", "Orange oil", MaterialKind.OIL, constituents=(Constituent("limonene", 940_000),)
)
BIRCH = Material(
    "birch-oil",
    "Sweet birch oil",
    MaterialKind.OIL,
    constituents=(Constituent("methyl salicylate", 980_000),),
)

CLOVE = Material(
    "clove-oil", "Clove oil", MaterialKind.OIL, constituents=(Constituent("Eugenol", 900_000),)
)
MINT = Material(
    "mint-oil", "Mint oil", MaterialKind.OIL, constituents=(Constituent("menthol", 450_000),)
)
"""Eugenol dissolves to 1154 to 4523 mg/L, menthol to 375 to 508 (AqSolDB, CC0)."""


@pytest.mark.parametrize(
    ("oil", "mg_per_l", "outlook"),
    [
        (LIMONENE, 184, Outlook.CLOUDS),
        (LIMONENE, 5, Outlook.CLEAR),
        (LIMONENE, 10, Outlook.MAY),
        (BIRCH, 268, Outlook.CLEAR),
        (BIRCH, 1000, Outlook.CLOUDS),
        (BIRCH, 700, Outlook.MAY),
        (CLOVE, 1200, Outlook.CLEAR),
        (MINT, 1000, Outlook.MAY),
        (LEMON, 2, Outlook.CLEAR),
        (LEMON, 200, Outlook.MAY),
        (LEMON, 4000, Outlook.CLOUDS),
        (None, 200, Outlook.MAY),
    ],
)
def test_an_oil_is_held_against_what_water_dissolves(
    oil: Material | None, mg_per_l: float, outlook: Outlook
) -> None:
    """Figures and sources are those of solubility.toml.

    Limonene 6 to 19.4 mg/L (AqSolDB, CC0; HSDB between); methyl salicylate 639 to 740 mg/L; classes
    by Fichan, Larroche and Gros, J Chem Eng Data 1999, 44, 56.
    """
    assert forecast(mg_per_l, oil, solubilities()).outlook is outlook


def oil(*constituents: tuple[str, int]) -> Material:
    told = tuple(Constituent(*item) for item in constituents)
    return Material("oil", "Oil", MaterialKind.OIL, constituents=told)


@pytest.mark.parametrize(
    ("mg_per_l", "outlook"), [(10, Outlook.CLEAR), (12, Outlook.MAY), (34, Outlook.CLOUDS)]
)
def test_constituents_of_one_oil_count_together(mg_per_l: float, outlook: Outlook) -> None:
    """By Raoult's law, an ideal oil (from memory): shares of each solubility are summed.

    Half limonene (6 to 19.4 mg/L), half anethole (111 mg/L): 12 mg/L are 1.00 and 0.054 of the
    least values, 34 mg/L are 0.88 and 0.15 of the greatest; neither passes any value alone.
    """
    half = oil(("limonene", 500_000), ("trans-anethole", 500_000))
    assert forecast(mg_per_l, half, solubilities()).outlook is outlook


def test_a_forecast_says_on_what_it_stands() -> None:
    limonene = (
        "of limonene, of which water dissolves 6 to 19.4 mg/L (HSDB citing Yalkowsky (7.57, read); "
        "Massaldi and King, J Chem Eng Data 1973, 18, 393 (13.8, recalled); AqSolDB (6 to 19, "
        "read; 2.4 to 3.3 and 78 to 540 left out))"
    )
    classes = (
        "where water dissolves 5.04 to 30 mg/L of terpene hydrocarbons and 308 to 3085 mg/L of "
        "oxygenated monoterpenes (Fichan, Larroche and Gros, J Chem Eng Data 1999, 44, 56: 0.037 "
        "to 0.22 mmol/L, at 136.23 g/mol)."
    )
    assert [
        forecast(mg_per_l, material, solubilities()).because
        for mg_per_l, material in (
            (200, LIMONENE),
            (27, oil(("limonene", 500_000), ("trans-anethole", 500_000))),
            (200, LEMON),
            (4000, LEMON),
            (10, oil(("limonene", 650_000))),
            (200, oil(("nootkatone", 990_000))),
        )
    ] == [
        f"188 mg/L {limonene}.",
        f"13.5 mg/L {limonene}; with trans-anethole it comes to 81.7 to 237 % of what water holds "
        "of them together.",
        f"Its constituents are not recorded: 200 mg/L of it, {classes}",
        f"Its constituents are not recorded: 4000 mg/L of it, {classes}",
        f"Too little is known of its constituents: 10 mg/L of it, {classes}",
        f"Too little is known of its constituents: 200 mg/L of it, {classes}",
    ]


@pytest.mark.parametrize(
    ("oils", "outlook"),
    [
        ([(3, LIMONENE), (3, LIMONENE)], Outlook.CLEAR),
        ([(5, LIMONENE), (4, LIMONENE)], Outlook.MAY),
        ([(11, LIMONENE), (11, LIMONENE)], Outlook.CLOUDS),
        ([(5, LIMONENE), (268, BIRCH)], Outlook.MAY),
        ([(2, LIMONENE), (268, BIRCH)], Outlook.CLEAR),
        ([(11, LIMONENE), (400, BIRCH)], Outlook.CLOUDS),
        ([(2, LEMON), (2, LEMON)], Outlook.CLEAR),
        ([(3, LEMON), (3, LEMON)], Outlook.MAY),
        ([(1600, LEMON), (1600, None)], Outlook.CLOUDS),
        ([(2, LIMONENE), (3, LEMON)], Outlook.CLEAR),
        ([(4, LIMONENE), (3, LEMON)], Outlook.MAY),
    ],
)
def test_the_oils_of_a_drink_count_together(
    oils: list[tuple[float, Material | None]], outlook: Outlook
) -> None:
    """Shares by hand, of the least and the greatest values of solubility.toml.

    94 % limonene: 0.157 to 0.048 a mg/L; 98 % methyl salicylate: 0.001534 to 0.001324 a mg/L; what
    is not known: 1/5.04 to 1/3085 a mg/L. So 5 and 268 mg/L are 1.19 to 0.60, and 11 and 400
    mg/L are 2.34 to 1.06, though neither oil alone would be sure to cloud.
    """
    found = forecast_together(oils, solubilities())
    assert found is not None
    assert found.outlook is outlook


def test_two_halves_of_one_oil_are_forecast_as_the_whole() -> None:
    for mg_per_l in (2, 7, 9, 12, 20, 700, 4000):
        for material in (LIMONENE, BIRCH, CLOVE, MINT, LEMON, None):
            halves = forecast_together([(mg_per_l / 2, material)] * 2, solubilities())
            assert halves is not None
            whole = forecast(mg_per_l, material, solubilities())
            assert halves.outlook is whole.outlook, (mg_per_l, material)


def test_a_forecast_of_all_oils_says_on_what_it_stands() -> None:
    basis = (
        "of what water holds of them together. They are taken for one oil, since what parts from a "
        "drink mixes with the others (Raoult's law for an ideal mixture, from memory)"
    )
    known = forecast_together([(5, LIMONENE), (268, BIRCH)], solubilities())
    unknown = forecast_together([(5, LIMONENE), (3, LEMON)], solubilities())
    assert known is not None
    assert unknown is not None
    assert known.because == (
        f"273 mg/L of them come to 59.7 to 119 % {basis}. A drink in the glass decides."
    )
    assert unknown.because == (
        f"8 mg/L of them come to 24.3 to 138 % {basis}; where too little is known of constituents, "
        "the least counts oxygenated monoterpenes and the most terpene hydrocarbons. A drink in "
        "the glass decides."
    )
    assert forecast_together([(5, LIMONENE)], solubilities()) is None


@pytest.mark.parametrize(
    ("mg_per_l", "outlook"),
    [(5.9, Outlook.CLEAR), (6, Outlook.MAY), (19.4, Outlook.MAY), (19.5, Outlook.CLOUDS)],
)
def test_just_what_water_holds_at_the_least_and_at_the_most_may_cloud(
    mg_per_l: float, outlook: Outlook
) -> None:
    """Limonene alone: 6 to 19.4 mg/L."""
    assert forecast(mg_per_l, oil(("limonene", 1_000_000)), solubilities()).outlook is outlook


def test_what_is_known_of_an_oil_is_told_once_it_is_sure_to_cloud_alone() -> None:
    """65 % limonene: of 30 mg/L it is 19.5 mg/L, just above 19.4, of 29.8 mg/L just below."""
    part = oil(("limonene", 650_000))
    told = [forecast(mg_per_l, part, solubilities()).because for mg_per_l in (29.8, 30)]
    just = replace(part, constituents=(replace(part.constituents[0], fraction_ppm=500_000),))
    at_most = forecast(38.8, just, solubilities()).because
    assert at_most.startswith("Too little is known of its constituents: 38.8 mg/L of it, where ")
    assert told[0].startswith("Too little is known of its constituents: 29.8 mg/L of it, where ")
    assert told[1].startswith("19.5 mg/L of limonene, of which water dissolves 6 to 19.4 mg/L (")
