"""Each word of a verb that is said alone is kept in its own field, as it was told."""

import pytest

from tests.keeper import Keeper
from tests.service.cases import MG, UL, amount
from tests.service.said_alone import Said, check_said_alone

OWN = {"lot": "OE-001-5"}
SAID: dict[str, Said] = {
    "receive": (
        {"material": "spirit", "amount": "1L"},
        {
            "supplier": ("Pretend Spirit", {"supplier": "Pretend Spirit"}),
            "supplier_lot": ("88-2", {"supplier_lot": "88-2"}),
            "cost": ("9.50", {"cost_minor": 950}),
            "best_before": ("2027-06-30", {"best_before": "2027-06-30"}),
            "certificate": ("CoA 12", {"certificate": "CoA 12"}),
            "density": ("0.807 g/mL", {"density_mg_per_l": 807_000}),
            "abv": ("95.5 %", {"abv_mpct": 95_500}),
            "food_grade": ("yes", {"food_grade": "yes"}),
            "duty": ("3", {"duty_minor": 300}),
            "document": ("DN 5", {"document": "DN 5"}),
        },
    ),
    "start": (
        {"product": "Lime", "kind": "syrup", "target": "1L"},
        {
            "pour": ("1:9", {"pour_parts": 9}),
            "best_before": ("2027-06-30", {"best_before": "2027-06-30"}),
            "vessel": ("Jar 1", {"vessel": "Jar 1"}),
            "purpose": ("trial", {"purpose": "trial"}),
            "trial": ("rests", {"purpose": "trial", "trial_group": "rests"}),
        },
    ),
    "add": (
        {**OWN, "source": "NS-001-J", "amount": "10mL"},
        {
            "added_as": ("top-up", {"added_as": "top-up"}),
            "temp": ("18.5 °C", {"temp_mdegc": 18_500}),
            "minutes": ("5min", {"minutes": 5}),
            "triturated": ("1h", {"triturated_minutes": 60}),
            "instrument": ("Cylinder 1", {"instrument": "Cylinder 1"}),
        },
    ),
    "rest": (
        {**OWN, "purpose": "settle"},
        {
            "temp": ("4 °C", {"temp_mdegc": 4_000}),
            "shaken": ("3", {"times_shaken": 3}),
            "vessel": ("Jar 1", {"vessel": "Jar 1"}),
            "started": ("2026-03-08 10:00", {"started_at": "2026-03-08T10:00:00Z"}),
        },
    ),
    "filter": (
        {**OWN, "medium": "paper", "volume_out": "400mL"},
        {
            "volume_in": ("410mL", {"volume_in": amount(410_000, UL, "410mL")}),
            "pore": ("20-25 µm", {"pore_low_nm": 20_000, "pore_high_nm": 25_000}),
            "vacuum": ("40kPa", {"vacuum_pa": 40_000, "vacuum_reference": "below-atmosphere"}),
            "temp": ("12 °C", {"temp_mdegc": 12_000}),
            "cake": ("fresh", {"cake": "fresh"}),
            "precoat": ("4g", {"precoat": amount(4_000, MG, "4g")}),
            "first_runnings": ("20mL", {"first_runnings": amount(20_000, UL, "20mL")}),
            "minutes": ("20min", {"minutes": 20}),
            "in_cake": ("6mL", {"in_cake": amount(6_000, UL, "6mL")}),
        },
    ),
    "look": (
        {**OWN, "grade": "clear"},
        {
            "of": ("in-syrup", {"looked_at": "in-syrup"}),
            "ntu": ("2.5 NTU", {"ntu_milli": 2_500}),
            "instrument": ("Meter 1", {"instrument": "Meter 1"}),
            "zeroed_on": ("water", {"zeroed_on": "water"}),
            "age": ("24h", {"age_minutes": 1_440}),
            "temp": ("20 °C", {"temp_mdegc": 20_000}),
            "flags": ("ring, floc", {"ring": True, "floc": True}),
            "words": ("Pale gold.", {"words": "Pale gold."}),
        },
    ),
    "measure": (
        {**OWN, "what": "abv", "reading": "89.9"},
        {
            "temp": ("20 °C", {"temp_mdegc": 20_000}),
            "instrument": ("Hydrometer 1", {"instrument": "Hydrometer 1"}),
        },
    ),
    "makeup": (
        {**OWN, "volume": "450mL", "source": "NS-001-J"},
        {
            "used": ("25mL", {"used": amount(25_000, UL, "25mL")}),
            "temp": ("20 °C", {"temp_mdegc": 20_000}),
        },
    ),
    "finish": (
        {**OWN, "volume": "400mL"},
        {
            "temp": ("20 °C", {"temp_mdegc": 20_000}),
            "waste": ("4mL", {"waste": amount(4_000, UL, "4mL")}),
            "labour": ("45min", {"labour_minutes": 45}),
        },
    ),
}


@pytest.mark.parametrize("verb", SAID)
def test_a_word_that_is_said_alone_changes_its_own_field_and_no_other(
    verb: str, bench: Keeper
) -> None:
    check_said_alone(bench, verb, SAID[verb])
