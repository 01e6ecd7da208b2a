"""A simple syrup, for machines."""

from typing import Any

from ledger.science.liquids.syrup_asked import SyrupAnswer
from ledger.science.ranges import figure


def syrup_plain(found: SyrupAnswer) -> dict[str, Any]:
    """Return a syrup as plain values; figures are strings, at 20 °C where no other is said."""
    made = found.made
    return {
        "brix": figure(found.brix, 3),
        "sugar_g_per_l": figure(found.sugar_g_per_l, 1),
        "density_g_per_l": figure(found.density_g_per_l, 2),
        "specific_gravity": f"{found.specific_gravity:.4f}",
        "basis": made and str(made.basis),
        "litres_per_kg_water": made and figure(made.yield_ul_per_kg_water / 1e6, 3),
        "bulk_g_per_ml": found.bulk_g_per_ml and figure(found.bulk_g_per_ml, 3),
        "read_at_c": None if found.read_at_c is None else figure(found.read_at_c),
        "kept_at_c": figure(found.kept_at_c),
        "warning": found.warning,
        "source": "ICUMSA SPS-4 (1998)",
    }
