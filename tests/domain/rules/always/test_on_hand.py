"""Amounts: in a measure that fits, whole where counted, and there."""

from typing import Any

import pytest

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import (
    Add,
    Bottle,
    Count,
    MakeUp,
    Material,
    Move,
    Receipt,
    Rinse,
)
from ledger.domain.entries.choices import MoveAs, RinseTo
from ledger.domain.rules import Finding
from ledger.domain.rules.always import on_hand as amounts
from tests.domain.builders import (
    at,
    draft,
    entry,
    grams,
    lot,
    make,
    ml,
    oil,
    packed,
    pieces,
    powder,
    scene,
    when,
)
from tests.domain.rules.cases import NO, WHY, Case, find, said


def add(amount: Quantity, source: str = "O-1") -> Any:
    return draft(make(Add, source=source, amount=amount))


KNOWN = oil(material=make(Material, density_mg_per_l=845_000))
HALF = Quantity(500_000, Measure.UEACH, "0.5")
FITS = [
    Case("a volume of a liquid", add(ml(30)), scene(lot(), oil())),
    Case("a weight of a liquid of known density", add(grams(25)), scene(lot(), KNOWN)),
    Case("a count of bottles", draft(make(Count, amount=pieces(15)), "P-1"), scene(packed())),
    Case(
        "a weight of a liquid of unknown density",
        add(grams(25)),
        scene(lot(), oil()),
        said(
            NO,
            "density",
            "25 g cannot be turned into volume of O-1: its density is not in the book.",
            "Record it with: pottle material change oil --density FIGURE (in g/mL, from the "
            "certificate), or give the amount by volume.",
        ),
    ),
    Case(
        "a volume of a lot of unknown density and no material",
        add(ml(30), "C-1"),
        scene(lot(), powder(material=None)),
        said(
            NO,
            "density",
            "30 mL cannot be turned into weight of C-1: its density is not in the book.",
            "Record it with: pottle measure C-1 density FIGURE (in g/mL, from the "
            "certificate), or give the amount by weight.",
        ),
    ),
    Case(
        "pieces of a liquid",
        add(pieces(3)),
        scene(lot(), KNOWN),
        said(
            NO,
            "measure",
            "3 does not fit O-1, which is counted by volume.",
            "Give the amount by volume.",
        ),
    ),
    Case(
        "a volume of bottles sent, far more than their number: told once",
        draft(make(Move, amount=ml(20_000)), "P-1"),
        scene(packed()),
        said(
            NO,
            "measure",
            "20000 mL does not fit P-1, which is counted by number.",
            "Give the amount by number.",
        ),
    ),
    Case(
        "a liquid counted by weight, though its density is known",
        draft(make(Count, amount=grams(20)), "O-1"),
        scene(KNOWN),
        said(
            NO,
            "measure",
            "20 g does not fit O-1, which is counted by volume.",
            "Give the amount by volume.",
        ),
    ),
    Case(
        "half a bottle",
        draft(make(Move, amount=HALF), "P-1"),
        scene(packed()),
        said(NO, "whole", "0.5 is not a whole number of pieces.", "Give a whole number."),
    ),
]


def short(what: str, there: str) -> list[Finding]:
    todo = "Check the lot and the amount; if it is so, say why with --because."
    return said(WHY, "on hand", f"{what}: the book says {there}.", todo)


FILL = make(Bottle, bottles="B-1", caps="B-1")
ON_HAND = [
    Case("nothing is known of what is sent", draft(make(Move))),
    Case("nothing is known of what is counted", draft(make(Count))),
    Case(
        "the least amount of nothing",
        add(ml(0.001)),
        scene(lot(), oil(on_hand=0)),
        short("0.001 mL is more than is there of O-1", "0 mL"),
    ),
    Case("all there is", add(ml(100)), scene(lot(), oil())),
    Case(
        "more than there is",
        add(ml(100.001)),
        scene(lot(), oil()),
        short("100.001 mL is more than is there of O-1", "100 mL"),
    ),
    Case(
        "a weight counted as the volume it is",
        add(grams(84.501)),
        scene(lot(), KNOWN),
        short("100.001 mL is more than is there of O-1", "100 mL"),
    ),
    Case(
        "of what is below nothing already",
        add(ml(1)),
        scene(lot(), oil(on_hand=-5_000)),
        short("1 mL is more than is there of O-1", "-5 mL"),
    ),
    Case(
        "more bottles than there are",
        draft(make(Move, amount=pieces(16)), "P-1"),
        scene(packed()),
        short("16 is more than is there of P-1", "15"),
    ),
    Case(
        "bulk and twice the bottles, as one lot serves for both bottle and closure",
        draft(FILL, "P-1", opens=packed().opened),
        scene(None, lot(on_hand=449_000), packed("B-1", on_hand=29_000_000)),
        short("450 mL is more than is there of E-1", "449 mL")
        + short("30 is more than is there of B-1", "29"),
    ),
    Case(
        "rinse spirit, though little of it comes through",
        draft(make(Rinse, volume_in=ml(101), went_to=RinseTo.WASTE)),
        scene(lot(), oil()),
        short("101 mL is more than is there of O-1", "100 mL"),
    ),
    Case(
        "a weight to make up with is another rule's to tell",
        draft(make(MakeUp, used=grams(200))),
        scene(lot(), oil()),
    ),
    Case(
        "a packing that is no packing is another rule's to tell",
        draft(FILL, "P-1", opens=packed().opened),
        scene(None, lot(), oil("B-1", on_hand=0)),
    ),
]


def moved(word: str, count: int) -> Move:
    return make(Move, moved_as=MoveAs(word), amount=pieces(count))


def not_out(back: str, out: int) -> list[Finding]:
    return said(
        WHY,
        "returned",
        f"{back} cannot have come back of P-1: by the book {out} of what went out is still out.",
        "Check the code on what came back; if it is so, say why with --because.",
    )


OUT = (moved("sale", 4), moved("on-return", 3), moved("breakage", 2), moved("returned", 2))
BACK = [
    Case("nothing is known of what comes back", draft(moved("returned", 5))),
    Case(
        "a volume of bottles comes back: told once",
        draft(make(Move, moved_as=MoveAs.RETURNED, amount=ml(20_000)), "P-1"),
        scene(packed("P-1", *OUT)),
        said(
            NO,
            "measure",
            "20000 mL does not fit P-1, which is counted by number.",
            "Give the amount by number.",
        ),
    ),
    Case(
        "more comes back though more came back already than went out",
        draft(moved("returned", 1), "P-1"),
        scene(packed("P-1", moved("returned", 2))),
        not_out("1", 0),
    ),
    Case(
        "all that is out comes back", draft(moved("returned", 5), "P-1"), scene(packed("P-1", *OUT))
    ),
    Case(
        "what comes back before anything went out, written down after",
        draft(moved("returned", 1), "P-1", happened=when(at(9))),
        scene(packed("P-1", entry(moved("sale", 4), 2, at(10), lot="P-1"))),
        not_out("1", 0),
    ),
    Case(
        "what comes back before others of it did, written down after",
        draft(moved("returned", 2), "P-1", happened=when(at(9))),
        scene(packed("P-1", moved("sale", 4), entry(moved("returned", 3), 3, at(10), lot="P-1"))),
        not_out("2", 1),
    ),
    Case(
        "more comes back than is out",
        draft(moved("returned", 6), "P-1"),
        scene(packed("P-1", *OUT)),
        not_out("6", 5),
    ),
]


@pytest.mark.parametrize("case", [*FITS, *ON_HAND, *BACK], ids=str)
def test_amounts_are_possible_or_told(case: Case) -> None:
    assert find(amounts.RULES, case) == list(case.found)


@pytest.mark.parametrize(
    ("taken_ml", "is_reckoned", "asks"),
    [
        (3746, False, False),
        (3747, False, True),
        (3747, True, False),
        (3750, True, False),
        (3751, True, True),
    ],
)
def test_a_reckoned_volume_may_be_taken_as_far_as_it_is_told(
    taken_ml: int, is_reckoned: bool, asks: bool
) -> None:
    """3,746.512 mL were reckoned and are told as 3.75 L."""
    source = lot("S-1", on_hand=3_746_512, is_reckoned=is_reckoned)
    made = add(ml(taken_ml), "S-1")
    found = list(amounts.enough_on_hand(made, scene(lot(), source)))
    assert [finding.what for finding in found] == (
        [f"{taken_ml} mL is more than is there of S-1: the book says 3746.512 mL."] if asks else []
    )


@pytest.mark.parametrize(
    ("found", "asks", "words"),
    [
        (ml(450), None, ""),
        (ml(441), False, "441 mL of X-1 are there, 9 mL less than the 450 mL of the book."),
        (ml(440), True, "440 mL of X-1 are there, 10 mL less than the 450 mL of the book."),
        (ml(459), False, "459 mL of X-1 are there, 9 mL more than the 450 mL of the book."),
        (ml(460), True, "460 mL of X-1 are there, 10 mL more than the 450 mL of the book."),
        (ml(0), True, "Nothing of X-1 is there, 450 mL less than the 450 mL of the book."),
        (pieces(15), None, ""),
        (pieces(14), True, "14 of X-1 are there, 1 less than the 15 of the book."),
    ],
)
def test_a_count_that_is_off_by_more_than_reading_and_warmth_asks_why(
    found: Quantity, asks: bool | None, words: str
) -> None:
    """Of a volume a fiftieth may be off; things are counted to the last."""
    here = packed("X-1") if found.measure is Measure.UEACH else lot("X-1")
    told = list(amounts.count_is_near(draft(make(Count, amount=found), "X-1"), scene(here)))
    assert [item.what for item in told] == ([] if asks is None else [words])
    for item in told:
        assert item.rule == "count"
        assert (item.severity is WHY) == asks
        assert item.todo == (
            "Count again; if it is so, say why with --because."
            if asks
            else "The book takes what was found."
        )


def test_a_duty_may_be_all_of_a_cost_and_no_more() -> None:
    too_much = said(
        NO,
        "duty",
        "A duty of 48.01 cannot be part of a cost of 48.00.",
        "Give the cost with the duty in it.",
    )
    for duty, cost, is_told in ((4800, 4800, False), (4801, 4800, True), (None, 0, False)):
        made = draft(make(Receipt, duty_minor=duty, cost_minor=cost, cost_digits=2), "O-1")
        told = list(amounts.duty_is_in_the_cost(made, scene()))
        assert told == (too_much if is_told else [])
    unpriced = draft(make(Receipt, duty_minor=4801, cost_minor=None), "O-1")
    assert list(amounts.duty_is_in_the_cost(unpriced, scene())) == []
