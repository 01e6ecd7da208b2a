"""The usual slips of measuring: too much volume, Brix after essence, warmth, the other gallon."""

from datetime import datetime
from typing import Any

import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import (
    Add,
    Finish,
    Formula,
    MakeUp,
    Measurement,
    Posting,
    Receipt,
    Rinse,
    Start,
)
from ledger.domain.entries.choices import Measured, ProductKind, RinseTo
from ledger.domain.lots.control import Control, Input
from ledger.domain.lots.lot import Status
from ledger.domain.lots.scene import Scene
from ledger.domain.rules import Finding, Severity
from ledger.domain.rules.usual import measures
from tests.domain.builders import BEGUN, at, draft, entry, lot, make, ml, oil, scene, struck, when
from tests.domain.rules.cases import Case
from tests.domain.rules.usual.slips import SPIRIT, WATER, among, hm, remarked

KEEP_APART = "Keep a rinse apart instead: pottle rinse ... --to apart"
MEASURE = "Read it again; if it is so, measure it: pottle measure E-1 abv READING"


def over(held: str, todo: str = KEEP_APART) -> list[Finding]:
    return hm(
        "over-volume",
        f"E-1 now holds {held}, more than the 450 mL aimed at: weaker than meant.",
        todo,
    )


def rinsed(out: float, went_to: RinseTo = RinseTo.BATCH) -> tuple[Any, Any]:
    facts = make(Rinse, volume_in=ml(100), volume_out=ml(out), went_to=went_to)
    return draft(facts), scene(lot(on_hand=430_000), oil())


def made_up(volume: float) -> Any:
    return draft(make(MakeUp, volume=ml(volume)))


VOLUMES = [
    Case("a rinse up to what reading and warmth explain", *rinsed(29)),
    Case("a rinse beyond that", *rinsed(29.001), over("459.001 mL")),
    *(
        Case(f"more than that, to {where}", *rinsed(90, where))
        for where in RinseTo
        if where is not RinseTo.BATCH
    ),
    Case("made up a little over", made_up(459), scene(lot())),
    Case("made up well over", made_up(460), scene(lot()), over("460 mL", MEASURE)),
    Case("made up, and its start was struck", made_up(460), scene(struck(lot()))),
    Case("well over in some other way", draft(make(Finish, volume=ml(460))), scene(lot())),
]


def made(code: str, kind: ProductKind) -> Input:
    return Input(code, Measure.UL, Status.RELEASED, formula="made", product_kind=kind)


def read_high(strong: str) -> list[Finding]:
    return hm(
        "Brix after essence",
        f"{strong} with its alcohol is in E-1 already: a refractometer reads too high and a "
        "hydrometer too low.",
        "Take the base syrup's reading before the essence goes in.",
    )


BRIX = draft(make(Measurement))


def went_in(*inputs: Input, moment: datetime = BEGUN) -> Scene:
    """Return a scene with a batch that these inputs went into at a moment."""
    added = [
        replace(
            entry(make(Add, source=item.code), number, moment),
            postings=(Posting(item.code, "E-1", None, 30_000, 30_000),),
        )
        for number, item in enumerate(inputs, start=2)
    ]
    return among(*inputs, state=lot("E-1", *added))


WITHOUT_SPIRIT = (ProductKind.BASE_SYRUP, ProductKind.SYRUP, ProductKind.GUM_EMULSION)
READINGS = [
    *(
        Case(f"Brix with {kind} in it", BRIX, went_in(made("X-1", kind)), read_high("X-1"))
        for kind in ProductKind
        if kind not in WITHOUT_SPIRIT
    ),
    *(Case(f"Brix with {kind} in it", BRIX, went_in(made("X-1", kind))) for kind in WITHOUT_SPIRIT),
    Case("Brix with bare spirit in it", BRIX, went_in(WATER, SPIRIT), read_high("O-1")),
    Case(
        "Brix with two strong things in it",
        BRIX,
        went_in(made("X-1", ProductKind.ESSENCE), SPIRIT),
        read_high("X-1, O-1"),
    ),
    Case(
        "Brix read before the spirit went in, written down after",
        draft(make(Measurement), happened=when(at(9))),
        went_in(WATER, SPIRIT, moment=at(10)),
    ),
    Case(
        "Brix read in the second in which the spirit went in",
        draft(make(Measurement), happened=when(at(9))),
        went_in(SPIRIT, moment=at(9)),
        read_high("O-1"),
    ),
    Case("Brix of sugar and water", BRIX, went_in(WATER)),
    *(
        Case(f"{what} with spirit in it", draft(make(Measurement, what=what)), went_in(SPIRIT))
        for what in Measured
        if what is not Measured.BRIX
    ),
]


def at_temp(temp_mdegc: int | None) -> tuple[Any, Any]:
    return draft(make(MakeUp, temp_mdegc=temp_mdegc)), scene(lot(), oil())


def turns(at: str, how: str) -> list[Finding]:
    return hm(
        "make-up temperature",
        f"It was made up at {at}: at 20 °C the volume is {how}, for spirit about 0.11 % a degree.",
        "Make up to volume at about 20 °C.",
    )


TWENTY = [
    *(Case(f"made up at {temp}", *at_temp(temp)) for temp in (None, 15_000, 20_000, 25_000)),
    Case("made up cold", *at_temp(14_500), turns("14.5 °C", "over")),
    Case("made up warm", *at_temp(26_000), turns("26 °C", "short")),
]


def gallons(ul: int, written: str) -> Quantity:
    return Quantity(ul, Measure.UL, written)


ONE_US, FIVE_US = gallons(3_785_412, "1 US gal"), gallons(18_927_059, "5 US gal")
ONE_IMP, FIVE_IMP = gallons(4_546_090, "1 imp gal"), gallons(22_730_450, "5 imp gal")


def sized(basis: Quantity, target: Quantity) -> tuple[Any, Any]:
    formula = make(Formula, basis=basis)
    return draft(make(Start, target=target)), scene(control=Control(formula=formula))


def slip(got: tuple[str, str], basis: tuple[str, str]) -> list[Finding]:
    return hm(
        "gallon",
        f"{got[0]} is a number of {got[1]}, but the basis of orange, {basis[0]}, is one of "
        f"{basis[1]}.",
        "Check which gallon is meant; if it is wrong, strike the start: pottle strike ENTRY "
        '--because "the other gallon"',
    )


US, IMP = "US gallons", "imperial gallons"
GALLONS = [
    Case("the same gallon", *sized(ONE_US, FIVE_US)),
    Case("the same gallon, of which six of the other are nearly five", *sized(FIVE_IMP, ONE_IMP)),
    Case(
        "imperial by a formula in US gallons",
        *sized(ONE_US, ONE_IMP),
        slip(("1 imp gal", IMP), ("1 US gal", US)),
    ),
    Case(
        "US by a formula in imperial gallons",
        *sized(FIVE_IMP, FIVE_US),
        slip(("5 US gal", US), ("5 imp gal", IMP)),
    ),
    Case(
        "written in litres, a little rounded",
        *sized(ONE_US, gallons(4_546_000, "4.546 L")),
        slip(("4.546 L", IMP), ("1 US gal", US)),
    ),
    Case(
        "ten gallons",
        *sized(ONE_US, gallons(45_460_900, "10 imp gal")),
        slip(("10 imp gal", IMP), ("1 US gal", US)),
    ),
    Case("a round number of litres", *sized(ONE_US, gallons(4_000_000, "4 L"))),
    Case("a formula for litres", *sized(ml(450), ONE_US)),
    Case(
        "more gallons than anybody counts here", *sized(ONE_US, gallons(50_006_990, "11 imp gal"))
    ),
    Case("no formula", draft(make(Start, target=ONE_IMP)), scene()),
]


CASES = [*VOLUMES, *READINGS, *TWENTY, *GALLONS]


@pytest.mark.parametrize("case", CASES, ids=str)
def test_slips_of_measuring_are_remarked_on_where_they_matter(case: Case) -> None:
    assert remarked(case) == list(case.found)


def test_a_cost_of_nothing_is_asked_about_for_a_shell_may_have_made_it() -> None:
    free = draft(make(Receipt, cost_minor=0))
    (found,) = measures.cost_is_something(free, scene())
    assert found == Finding(
        Severity.ASK,
        "cost",
        "The cost is 0.00. A shell makes 0.00 of $20.00, taking $2 for a name of its own.",
        "Write the cost without a sign, as 20.00; if it cost nothing, say so with --because.",
    )
    corrected = draft(make(Receipt, cost_minor=0), corrects=3)
    assert not list(measures.cost_is_something(corrected, scene()))
    assert not list(measures.cost_is_something(draft(make(Receipt, cost_minor=1)), scene()))
    assert not list(measures.cost_is_something(draft(make(Receipt)), scene()))


@pytest.mark.parametrize(
    ("volume_ul", "gallon"),
    [
        *((3_785_412 + off, "US gal") for off in (-7_550, 0, 7_580)),
        *((3_785_412 + off, None) for off in (-7_560, 7_590)),
        *((37_854_118, "US gal"), (11 * 3_785_412, None), (45_460_900, "imp gal"), (1, None)),
    ],
)
def test_a_volume_is_a_number_of_gallons_within_one_part_in_five_hundred_and_up_to_ten(
    volume_ul: int, gallon: str | None
) -> None:
    assert measures.gallons(volume_ul) == gallon
