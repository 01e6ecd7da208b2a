"""Deliveries: what is recorded, and what is refused in which words."""

import pytest

from ledger.domain.entries.plain import facts_to_plain
from ledger.errors import RefusedError
from tests.keeper import Keeper
from tests.service.cases import EACH, UL, Refused, Said, amount, check_recorded, check_refused
from tests.service.said_alone import Alone, check_said_alone
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
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
        "SOO-004-Y",
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
    made = bench.do("receive", material="spirit", amount="1L", hold="yes", because="no papers")
    judged = bench.entry(made.seq + 1)
    assert (judged.kind, judged.draft.lot) == ("judge", made.code)
    assert facts_to_plain(judged.draft.facts) == {"verdict": "hold"}


def test_a_delivery_held_that_cannot_be_kept_leaves_nothing(
    bench: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Both entries of one verb are recorded or neither is."""

    def fail(*_: object) -> None:
        raise KeyboardInterrupt

    before = bench.bodies()
    monkeypatch.setattr("ledger.service.bench.receive.Judge", fail)
    with pytest.raises(KeyboardInterrupt):
        bench.do("receive", material="spirit", amount="1L", hold="yes", because="no papers")
    assert bench.bodies() == before


def test_birch_oil_comes_in_with_its_usual_caution_though_nobody_typed_one(bench: Keeper) -> None:
    bench.do("material", code="birch-oil", name="Sweet birch oil", kind="oil")
    neat = "Sweet birch oil neat: Nearly pure methyl salicylate: poisons children in teaspoons; "
    care = ("keep it locked away.", "Its papers and local law say how it is kept.")
    assert bench.do("receive", material="birch-oil", amount="1L").remarks == (
        (neat + care[0], care[1]),
    )
    assert not bench.do("receive", material="orange-oil", amount="1L").remarks


def test_goods_come_in_with_the_caution_that_their_material_has(bench: Keeper) -> None:
    said = {"code": "birch-oil", "name": "Sweet birch oil", "kind": "oil"}
    bench.do("material", **said, caution="Poison; locked cupboard.")
    assert bench.do("receive", material="birch-oil", amount="1L").remarks == (
        (
            "Sweet birch oil neat: Poison; locked cupboard.",
            "Its papers and local law say how it is kept.",
        ),
    )


ALONE: Alone = (
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
)


def test_a_word_that_is_said_alone_changes_its_own_field_and_no_other(bench: Keeper) -> None:
    check_said_alone(bench, "receive", ALONE)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "receive")
