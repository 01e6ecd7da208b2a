"""The values that a correction gives, read as their own verb reads them."""

from typing import Any

import pytest
from msgspec.structs import replace

from ledger.domain.entries import Facts, Look, Note, Receipt
from ledger.domain.entries.plain import facts_to_plain
from ledger.errors import LedgerError
from ledger.service.evidence.values import with_digits
from tests.domain.builders import make
from tests.keeper import Keeper
from tests.service.cases import UL, amount


@pytest.mark.parametrize(
    ("word", "is_so"),
    [("Yes", True), ("true", True), ("1", True), ("no", False), ("FALSE", False), ("0", False)],
)
def test_a_correction_says_yes_or_no(word: str, is_so: bool, bench: Keeper) -> None:
    told = f"sediment={word}; ring={'no' if is_so else 'yes'}"
    look = bench.do("correct", entry="19", changes=told, because="seen again").entry.draft.facts
    assert isinstance(look, Look)
    assert (look.sediment, look.ring) == (is_so, not is_so)


PAID = make(Receipt, cost_minor=950, duty_minor=None, cost_digits=None)


@pytest.mark.parametrize(
    ("was", "changed", "digits", "told"),
    [
        # Money of two digits stays without saying so, and of three it says so.
        (PAID, {"cost_minor": 1000}, 2, {"cost_minor": 1000, "cost_digits": None}),
        (PAID, {"cost_minor": 1000}, 3, {"cost_minor": 1000, "cost_digits": 3}),
        # What stays keeps its value: 9.50 beside a duty that is told in thousandths, or in whole.
        (
            PAID,
            {"duty_minor": 1234},
            3,
            {"cost_minor": 9500, "duty_minor": 1234, "cost_digits": 3},
        ),
        (PAID, {"duty_minor": 3}, 0, {"cost_minor": 950, "duty_minor": 300, "cost_digits": None}),
        (PAID, {"cost_minor": 9}, 0, {"cost_minor": 9, "cost_digits": 0}),
        (
            replace(PAID, cost_digits=3, duty_minor=20),
            {"cost_minor": 5},
            2,
            {"duty_minor": 20, "cost_minor": 50, "cost_digits": 3},
        ),
        # What is taken away is nothing in any scale.
        (PAID, {"cost_minor": None}, 3, {"cost_digits": 3}),
        (
            replace(PAID, duty_minor=5),
            {"cost_minor": None},
            3,
            {"duty_minor": 50, "cost_digits": 3},
        ),
        # No money changes.
        (PAID, {"supplier": "Bar"}, 3, {}),
        (PAID, {}, 3, {}),
        (make(Note), {"text": "x"}, 3, {}),
    ],
)
def test_money_that_changes_is_counted_as_finely_as_what_stays_beside_it(
    was: Facts, changed: dict[str, Any], digits: int, told: dict[str, Any]
) -> None:
    assert with_digits(was, changed, digits) == told


RIGHT: dict[str, tuple[int, str, dict[str, Any]]] = {
    "an amount": (16, "amount=0.4L", {"amount": amount(400_000, UL, "0.4L")}),
    "a lot by its ending": (16, "source=001-3", {"source": "SOO-001-3"}),
    "a choice": (16, "added-as=Top-Up", {"added_as": "top-up"}),
    "a figure with its unit": (16, "temp=18.5 C", {"temp_mdegc": 18_500}),
    "a whole number": (16, "minutes=5", {"minutes": 5}),
    "words": (16, "instrument=Cylinder  2", {"instrument": "Cylinder 2"}),
    "money": (10, "cost=9.50", {"cost_minor": 950}),
    "a day": (10, "BEST_before = 2027-06-30", {"best_before": "2027-06-30"}),
    "several fields": (
        10,
        " supplier=Bar ;; document=DN 1; ",
        {"supplier": "Bar", "document": "DN 1"},
    ),
    "a field without its unit": (10, "density=0.807", {"density_mg_per_l": 807_000}),
}


@pytest.mark.parametrize(("seq", "changes", "changed"), RIGHT.values(), ids=list(RIGHT))
def test_a_correction_changes_the_fields_it_names_and_no_other(
    seq: int, changes: str, changed: dict[str, Any], bench: Keeper
) -> None:
    before = facts_to_plain(bench.entry(seq).facts)
    done = bench.do("correct", entry=str(seq), changes=changes, because="misread")
    assert facts_to_plain(done.entry.facts) == {**before, **changed}


def test_what_may_be_left_empty_is_taken_away_and_nothing_is_counted_as_it_was(
    bench: Keeper,
) -> None:
    """Nothing has no unit: of a count in litres nothing is no bottles."""
    told = bench.do("receive", material="spirit", amount="1L", supplier="Bar", cost="9.50")
    for field in ("supplier", "cost"):
        done = bench.do("correct", entry=str(told.seq), changes=f"{field}=", because="not so")
        told = done
    assert facts_to_plain(told.entry.facts) == {
        "material": "spirit", "amount": amount(1_000_000, UL, "1L"),
    }  # fmt: skip
    counted = bench.do("count", lot="NS-001-J", amount="4.5L", because="spilt")
    done = bench.do("correct", entry=str(counted.seq), changes="amount=0", because="all of it")
    assert facts_to_plain(done.entry.facts)["amount"]["measure"] == UL


@pytest.mark.parametrize(
    ("seq", "changes", "problem"),
    [
        (
            19,
            "ring=maybe",
            ('The ring must be yes or no, and "maybe" is neither.', "Write yes or no."),
        ),
        (16, "amount=", ("The amount cannot be left empty.", "Give its right value.")),
        (
            10,
            "amount=5kg",
            (
                "NS-001-J is counted in the measure of 5L, so it cannot become 5kg.",
                "Strike entry 10 and receive it again.",
            ),
        ),
        (
            16,
            "added_as=dregs",
            (
                '"dregs" is not an added_as.',
                "Choose one of: ingredient, top-up, rework, rinse-liquor, old-cake.",
            ),
        ),
    ],
)
def test_a_value_that_its_field_cannot_have_is_refused_with_what_to_write(
    seq: int, changes: str, problem: tuple[str, str], bench: Keeper
) -> None:
    with pytest.raises(LedgerError) as raised:
        bench.do("correct", entry=str(seq), changes=changes, because="misread")
    assert raised.value.problems == (problem,)
