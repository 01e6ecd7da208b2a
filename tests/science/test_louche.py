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


def test_a_forecast_says_on_what_it_stands() -> None:
    told = forecast(200, LIMONENE, solubilities()).because
    assert told.startswith("188 mg/L of limonene, of which water dissolves 7.57 to 13.8 mg/L (")
    between = forecast(700, BIRCH, solubilities()).because
    assert between.startswith("686 mg/L of methyl salicylate, of which water dissolves 639 to 740")
    little = forecast(200, MINT, solubilities()).because
    assert little.startswith("Too little is known of its constituents: 200 mg/L of it, where ")
    unknown = forecast(200, LEMON, solubilities()).because
    assert unknown.startswith("Its constituents are not recorded: 200 mg/L of it, where water ")
