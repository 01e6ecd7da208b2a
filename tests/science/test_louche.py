"""Whether a drink clouds: forecasts that say how sure they are."""

import pytest

from ledger.domain.entries import Material
from ledger.domain.entries.masters import Constituent
from ledger.domain.entries.words import MaterialKind
from ledger.science.louche import Outlook, forecast
from ledger.service.shipped import solubilities

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
"""Eugenol dissolves to 2460 mg/L, menthol to 420 to 508 (HSDB; OECD SIDS), both from memory."""


@pytest.mark.parametrize(
    ("oil", "mg_per_l", "outlook"),
    [
        (LIMONENE, 184, Outlook.CLOUDS),
        (LIMONENE, 5, Outlook.CLEAR),
        (LIMONENE, 10, Outlook.MAY),
        (BIRCH, 268, Outlook.CLEAR),
        (BIRCH, 1000, Outlook.CLOUDS),
        (BIRCH, 700, Outlook.MAY),
        (CLOVE, 2000, Outlook.CLEAR),
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
    """Figures and sources are those of water_solubility.csv.

    Limonene 7.57 mg/L (HSDB) to 13.8 (from memory); methyl salicylate 639 to 740 mg/L; the classes
    by Fichan, Larroche and Gros, J Chem Eng Data 1999, 44, 56.
    """
    assert forecast(mg_per_l, oil, solubilities()).outlook is outlook


def oil(*constituents: tuple[str, int]) -> Material:
    told = tuple(Constituent(*item) for item in constituents)
    return Material("oil", "Oil", MaterialKind.OIL, constituents=told)


@pytest.mark.parametrize(
    ("mg_per_l", "outlook"), [(12, Outlook.CLEAR), (15, Outlook.MAY), (27, Outlook.CLOUDS)]
)
def test_constituents_of_one_oil_count_together(mg_per_l: float, outlook: Outlook) -> None:
    """By Raoult's law, an ideal oil (from memory): shares of each solubility are summed.

    Half limonene (7.57 to 13.8 mg/L), half anethole (111 mg/L): 15 mg/L are 0.99 and 0.068 of the
    least values, 27 mg/L are 0.98 and 0.12 of the greatest; neither passes any value alone.
    """
    half = oil(("limonene", 500_000), ("trans-anethole", 500_000))
    assert forecast(mg_per_l, half, solubilities()).outlook is outlook


def test_a_forecast_says_on_what_it_stands() -> None:
    limonene = (
        "of limonene, of which water dissolves 7.57 to 13.8 mg/L (HSDB citing Yalkowsky (7.57, "
        "read); Massaldi and King, J Chem Eng Data 1973, 18, 393 (13.8, recalled))"
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
            (200, oil(("safrole", 990_000))),
        )
    ] == [
        f"188 mg/L {limonene}.",
        f"13.5 mg/L {limonene}; with trans-anethole it comes to 110 to 190 % of what water holds "
        "of them together.",
        f"Its constituents are not recorded: 200 mg/L of it, {classes}",
        f"Its constituents are not recorded: 4000 mg/L of it, {classes}",
        f"Too little is known of its constituents: 10 mg/L of it, {classes}",
        f"Too little is known of its constituents: 200 mg/L of it, {classes}",
    ]
