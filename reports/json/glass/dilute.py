"""A dilution, for machines."""

from typing import Any

from ledger.science.liquids.dilution import Dilution
from ledger.science.ranges import figure
from reports.words.glass.dilute import CAUTION, proof_words, thousandth


def dilution_plain(found: Dilution) -> dict[str, Any]:
    """Return a dilution as plain values; amounts are strings of mL at 20 °C and of g."""
    warmed = found.warmed
    return {
        "stock_abv": figure(found.stock_abv, 3),
        "target_abv": figure(found.target_abv, 3),
        "stock_us_proof": proof_words(found.stock_abv),
        "target_us_proof": proof_words(found.target_abv),
        "volumes_at_c": "20",
        "stock_ml": thousandth(found.stock_ul),
        "water_ml": thousandth(found.water_ul),
        "final_ml": thousandth(found.final_ul),
        "contraction_ml": thousandth(found.contraction_ul),
        "stock_g": thousandth(found.stock_mg),
        "water_g": thousandth(found.water_mg),
        "final_g": thousandth(found.final_mg),
        "rounded_to_ml": thousandth(found.step),
        "check_abv": figure(found.check_abv, 3),
        "check_ml": thousandth(found.check_ul),
        "at_temperature": warmed
        and {
            "temp_c": figure(warmed.temp_c, 3).replace("−", "-"),
            "stock_ml": thousandth(warmed.stock_ul),
            "water_ml": thousandth(warmed.water_ul),
            "final_ml": thousandth(warmed.final_ul),
            "shown_abv": None if warmed.shown_abv is None else figure(warmed.shown_abv, 2),
        },
        "source": "OIML R 22:1975",
        "cautions": [CAUTION],
    }
