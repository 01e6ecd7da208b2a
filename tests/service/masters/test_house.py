"""Setting up and receiving: what is recorded, and what is refused in which words."""

import pytest

from ledger.domain.entries.plain import facts_to_plain
from ledger.errors import InputError, RefusedError
from tests.keeper import Keeper
from tests.service.cases import EACH, UL, Refused, Said, amount, check_recorded, check_refused

RECORDED: dict[str, Said] = {
    "a person": (
        "person",
        {"initials": "cd", "name": "Cora Dunne", "role": "bottler"},
        None,
        {"initials": "CD", "name": "Cora Dunne", "role": "bottler"},
    ),
    "a material with what is known of it": (
        "material",
        {
            "code": "Clove-Oil",
            "name": "Clove oil",
            "kind": "oil",
            "obtained": "distilled",
            "density": "1.045",
            "density_temp": "20",
            "food_grade": "yes",
            "caution": "Burns the skin.",
            "constituents": "eugenol 82.5%; eugenyl acetate 9%",
        },
        None,
        {
            "code": "clove-oil",
            "name": "Clove oil",
            "sort": "oil",
            "how_obtained": "distilled",
            "density_mg_per_l": 1_045_000,
            "density_temp_mdegc": 20_000,
            "food_grade": "yes",
            "caution": "Burns the skin.",
            "constituents": [
                {"substance": "eugenol", "fraction_ppm": 825_000},
                {"substance": "eugenyl acetate", "fraction_ppm": 90_000},
            ],
        },
    ),
    "a material of which little is known": (
        "material",
        {"code": "gum", "kind": "gum"},
        None,
        {"code": "gum", "name": "gum", "sort": "gum", "food_grade": "unknown"},
    ),
    "a change of a material keeps the rest": (
        "material",
        {"code": "spirit", "density": "0.807", "change": "yes"},
        None,
        {
            "code": "spirit",
            "name": "Neutral spirit",
            "sort": "ethanol",
            "density_mg_per_l": 807_000,
            "abv_mpct": 96_000,
            "food_grade": "unknown",
        },
    ),
    "a density read in ice water": (
        "material",
        {"code": "spirit", "density": "0.83", "density_temp": "0", "change": "yes"},
        None,
        {
            "code": "spirit",
            "name": "Neutral spirit",
            "sort": "ethanol",
            "density_mg_per_l": 830_000,
            "density_temp_mdegc": 0,
            "abv_mpct": 96_000,
            "food_grade": "unknown",
        },
    ),
    "a delivery": (
        "receive",
        {
            "material": "orange-oil",
            "amount": "½ L",
            "supplier": "Harbour Oils",
            "supplier_lot": "C 7732",
            "cost": "48,50",
            "best_before": "2027-06-30",
            "density": "0.843",
        },
        "SOO-002-1",
        {
            "material": "orange-oil",
            "amount": amount(500_000, UL, "½ L"),
            "supplier": "Harbour Oils",
            "supplier_lot": "C 7732",
            "cost_minor": 4850,
            "best_before": "2027-06-30",
            "density_mg_per_l": 843_000,
        },
    ),
    "a delivery of bottles": (
        "receive",
        {"material": "b250", "amount": "48", "code": "own-7"},
        "OWN-7",
        {"material": "b250", "amount": amount(48_000_000, EACH, "48")},
    ),
}

REFUSED: dict[str, Refused] = {
    "initials that are none": (
        "person",
        {"initials": "A1", "name": " "},
        InputError,
        (
            ('"A1" are not initials.', "Write one to four letters A-Z."),
            ("The name is missing.", "Give the name in words."),
        ),
    ),
    "initials taken": (
        "person",
        {"initials": "ab", "name": "Abel Byrne"},
        RefusedError,
        (("The initials AB are in the book already.", "Choose others for this person."),),
    ),
    "a material known already": (
        "material",
        {"code": "spirit", "kind": "ethanol"},
        RefusedError,
        (
            (
                "The material spirit is in the book already.",
                "Say what is new about it with: pottle material change spirit ...",
            ),
        ),
    ),
    "a change of a material that is not there": (
        "material",
        {"code": "tonic", "change": "yes"},
        RefusedError,
        (
            (
                "The material tonic is not in the book.",
                "Add it with: pottle material add tonic",
            ),
            (
                "The kind of material is missing.",
                "Choose one of: oil, ethanol, clarifier, sugar, water, acid, preservative, gum, "
                "colour, bottle, closure, label, filter, other.",
            ),
        ),
    ),
    "a material with a name no one can type": (
        "material",
        {"code": "orange oil!", "kind": "oil"},
        InputError,
        (
            (
                '"orange oil!" cannot be the short name of a material.',
                "Use at most 30 letters a-z, digits and dashes, such as orange-oil.",
            ),
        ),
    ),
    "a strength above all": (
        "material",
        {"code": "proof", "kind": "ethanol", "abv": "151"},
        RefusedError,
        (
            (
                "A strength of 151 % cannot be: it lies between 0 and 100 % by volume.",
                "Read the label again; US proof is twice the per cent.",
            ),
        ),
    ),
    "a constituent without its share": (
        "material",
        {"code": "clove-oil", "kind": "oil", "constituents": "eugenol"},
        InputError,
        (
            (
                '"eugenol" is not a constituent with its share.',
                "Write each as NAME SHARE%, with ; between them.",
            ),
        ),
    ),
    "a delivery of what is not known": (
        "receive",
        {"material": "Tonic", "amount": "0 L", "best_before": "soon", "abv": "40"},
        RefusedError,
        (
            (
                "The material tonic is not in the book; it knows b250, carb, orange-oil, spirit, "
                "sugar, water.",
                'Add it with: pottle material add tonic --name "NAME" --kind KIND',
            ),
            (
                "An amount must be more than zero, and 0 L is not.",
                "Write how much there really was.",
            ),
            ('"soon" is not a date.', "Write it as 2027-06-30."),
        ),
    ),
    "a code taken": (
        "receive",
        {"material": "spirit", "amount": "1L", "code": "oe-001-5"},
        RefusedError,
        (
            (
                "The code OE-001-5 belongs to a lot already.",
                "Give another code, or leave --code out and the book makes one.",
            ),
        ),
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def test_a_delivery_is_held_from_the_start(bench: Keeper) -> None:
    made = bench.do("receive", material="spirit", amount="1L", hold="yes")
    judged = bench.entry(made.seq + 1)
    assert (judged.kind, judged.draft.lot) == ("judge", made.code)
    assert facts_to_plain(judged.facts) == {"verdict": "hold"}


def test_a_delivery_held_that_cannot_be_kept_leaves_nothing(
    bench: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Both entries of one verb are recorded or neither is."""

    def fail(*_: object) -> None:
        raise KeyboardInterrupt

    before = bench.bodies()
    monkeypatch.setattr("ledger.service.bench.receive.Judge", fail)
    with pytest.raises(KeyboardInterrupt):
        bench.do("receive", material="spirit", amount="1L", hold="yes")
    assert bench.bodies() == before


def test_a_person_may_enter_herself(bench: Keeper) -> None:
    bench.by = "CD"
    made = bench.do("person", initials="CD", name="Cora Dunne")
    assert made.entry.draft.by == "CD"
