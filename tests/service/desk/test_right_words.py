"""Each word of a verb that is said beside the needed ones is kept in its own field, as it was told.

Every word is said alone in a transaction that leaves nothing, so that none leans on another; a
figure is said with the unit of its field, which may be left out.
"""

from typing import Any

import pytest

from ledger.domain.entries.plain import facts_to_plain
from ledger.service.copies.intake.together import Within, together
from ledger.service.copies.season_verbs import VERBS
from ledger.service.desk.book import How
from tests.keeper import Keeper
from tests.service.cases import MG, UL, amount

Plain = dict[str, Any]
OWN = {"lot": "OE-001-5"}
SAID: dict[str, tuple[dict[str, str], dict[str, tuple[str, Plain]]]] = {
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
    "bottle": (
        {"source": "PS-001-T", "pack": "2 x 100mL"},
        {
            "drawn": ("210mL", {"drawn": amount(210_000, UL, "210mL")}),
            "bottles": ("LOT-001-X", {"bottles": "LOT-001-X"}),
            "best_before": ("2026-09-30", {"best_before": "2026-09-30"}),
            "fill_check": ("301.5 g", {"fill_check_mg": 301_500}),
            "labour": ("30min", {"labour_minutes": 30}),
        },
    ),
    "complain": (
        {"lot": "PS-001-T", "symptom": "cloudy"},
        {
            "party": ("Bar", {"party": "Bar"}),
            "opened": ("yesterday", {"opened": "2026-03-08"}),
            "stored": ("in the sun", {"stored": "in the sun"}),
            "mixed": ("1:7", {"mixed": "1:7"}),
            "words": ("Like milk.", {"words": "Like milk."}),
            "answer_days": ("3", {"answer_days": 3}),
        },
    ),
    "send": (
        {"lot": "PS-001-T", "amount": "10mL", "moved_as": "sample"},
        {
            "party": ("Bar", {"party": "Bar"}),
            "document": ("DN-1", {"document": "DN-1"}),
            "witness": ("CD", {"witness": "CD"}),
        },
    ),
}


def facts(keeper: Keeper, verb: str, words: dict[str, str]) -> Plain:
    """Return what a verb would record; nothing stays."""
    told: list[Plain] = []

    def act(within: Within) -> None:
        how = How("AB", because="to see")
        told.append(facts_to_plain(VERBS[verb](within, how, **words).entry.facts))

    together(keeper.book, act)
    return told[0]


@pytest.mark.parametrize("verb", SAID)
def test_a_word_that_is_said_alone_changes_its_own_field_and_no_other(
    verb: str, bench: Keeper
) -> None:
    needed, words = SAID[verb]
    bare = facts(bench, verb, needed)
    for word, (value, changed) in words.items():
        told = facts(bench, verb, {**needed, word: value})
        if value.endswith((" g/mL", " %", " °C", " NTU", " µm", " g")):
            assert facts(bench, verb, {**needed, word: value.rsplit(" ")[0]}) == told
        assert {**bare, **changed} == told, word
        assert all(bare.get(name) != fact for name, fact in changed.items()), word
