"""Passes through a filter: what is recorded, and what is refused in which words."""

import pytest

from ledger.domain.entries.plain import facts_to_plain
from ledger.errors import InputError, RefusedError
from ledger.service.bench.filter import read_pores
from tests.keeper import Keeper
from tests.service.cases import MG, UL, Refused, Said, amount, check_recorded, check_refused
from tests.service.said_alone import Alone, check_said_alone
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
    "a filtering": (
        "filter",
        {
            "lot": "OE-001-5",
            "medium": "paper",
            "pore": "20-25 µm",
            "volume_out": "400mL",
            "vacuum": "40",
            "cake": "fresh",
            "precoat": "5g",
            "minutes": "1h",
        },
        None,
        {
            "pass_no": 1,
            "medium": "paper",
            "volume_in": amount(420_000, UL, "420 mL"),
            "volume_out": amount(400_000, UL, "400mL"),
            "pore_low_nm": 20_000,
            "pore_high_nm": 25_000,
            "cake": "fresh",
            "precoat": amount(5_000, MG, "5g"),
            "vacuum_pa": 40_000,
            "vacuum_reference": "below-atmosphere",
            "minutes": 60,
        },
    ),
}

REFUSED: dict[str, Refused] = {
    "a pore size that is none": (
        "filter",
        {"lot": "OE-001-5", "medium": "paper", "volume_out": "400mL", "pore": "1-2-3"},
        InputError,
        (('"1-2-3" is not a pore size.', "Write it in µm as 20 or 20-25."),),
    ),
    "a pore size of nothing": (
        "filter",
        {"lot": "OE-001-5", "medium": "paper", "volume_out": "400mL", "pore": "0-20"},
        RefusedError,
        (
            (
                "A pore size must be more than zero, and 0-20 is not.",
                "Read it on the filter or its box, in µm.",
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


def test_a_second_pass_is_counted_by_the_book(bench: Keeper) -> None:
    for number, volume in enumerate(["410mL", "400mL"], start=1):
        made = bench.do("filter", lot="OE-001-5", medium="paper", volume_out=volume)
        assert facts_to_plain(made.entry.facts)["pass_no"] == number


def test_what_is_proposed_of_an_entry_names_it_and_can_be_done(bench: Keeper) -> None:
    done = bench.do("filter", lot="OE-001-5", medium="unsaid", volume_out="400mL")
    told = dict(done.remarks)
    assert told["What it ran through is not said, so no cause of haze can be sought in it."] == (
        f'Say it with: pottle correct {done.seq} --set medium=paper --because "left unsaid"'
    )
    bench.do("correct", entry=str(done.seq), changes="medium=paper", because="left unsaid")


def test_where_solids_went_in_since_it_was_measured_what_went_on_is_to_be_said(
    bench: Keeper,
) -> None:
    bench.do("material", code="gum", name="Gum", kind="gum")
    gum = bench.opens("receive", material="gum", amount="100g")
    bench.do("add", lot="OE-001-5", source=gum, amount="20g")
    with pytest.raises(InputError) as raised:
        bench.do("filter", lot="OE-001-5", medium="paper", volume_out="400mL")
    assert raised.value.problems == (
        (
            "20 g of solids went into OE-001-5 since its volume was last measured, so the book "
            "cannot tell how much went onto the filter.",
            "Say how much with --in.",
        ),
    )


ALONE: Alone = (
    {"lot": "OE-001-5", "medium": "paper", "volume_out": "400mL"},
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
)


def test_a_word_that_is_said_alone_changes_its_own_field_and_no_other(bench: Keeper) -> None:
    check_said_alone(bench, "filter", ALONE)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "filter")


@pytest.mark.parametrize(
    ("text", "pores"),
    [
        (None, (None, None)),
        ("", (None, None)),
        ("20", (20_000, 20_000)),
        ("20-25", (20_000, 25_000)),
        ("25 um – 20UM", (20_000, 25_000)),
        ("0.45 \u00b5m", (450, 450)),
        ("0.45 \u03bcm", (450, 450)),
    ],
)
def test_a_pore_size_is_one_or_both_ends_in_any_order(
    text: str | None, pores: tuple[int | None, int | None]
) -> None:
    """The micro sign and the Greek mu are two letters."""
    assert read_pores(text) == pores


def test_what_is_left_to_be_said_of_a_pass_is_what_was_there_and_one_below_the_air(
    bench: Keeper,
) -> None:
    words = {"lot": "OE-001-5", "medium": "paper", "vacuum": "60"}
    first = bench.do("filter", **words, volume_out="410mL", absolute="yes")
    facts = facts_to_plain(first.entry.facts)
    assert (facts["vacuum_pa"], facts["vacuum_reference"]) == (60_000, "absolute")
    new = bench.opens("start", product="Blend", kind="blend", target="1L")
    bench.do("add", lot=new, source="NS-001-J", amount="0.001mL")
    least = bench.do("filter", lot=new, medium="paper", volume_out="0.001mL", because="to see")
    assert facts_to_plain(least.entry.facts)["volume_in"] == amount(1, UL, "0.001 mL")
