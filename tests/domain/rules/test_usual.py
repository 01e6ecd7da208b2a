"""The usual slips: each is remarked on where it begins to matter, and not before."""

from typing import Any

import pytest

from ledger.domain.control import Control, Input, LastHeld
from ledger.domain.entries import (
    Add,
    Decant,
    Facts,
    Filter,
    Finish,
    Formula,
    Look,
    MakeUp,
    Measurement,
    Rest,
    Rinse,
    Start,
)
from ledger.domain.entries.words import (
    Cake,
    MaterialKind,
    Measured,
    ProductKind,
    RestFor,
    RinseTo,
)
from ledger.domain.lots import LotState, Status
from ledger.domain.quantity import Measure, Quantity
from ledger.domain.rules import Finding, usual
from ledger.domain.rules.usual import SPIRITUOUS
from ledger.domain.scene import Scene
from tests.domain.builders import draft, lot, make, ml, oil, scene, struck
from tests.domain.rules.cases import HM, Case, find, said


def hm(rule: str, what: str, todo: str) -> list[Finding]:
    return said(HM, rule, what, todo)


def among(*inputs: Input, state: LotState | None = None, **control: Any) -> Scene:
    """Return a scene with a batch that these inputs went into."""
    return scene(state or lot(), control=Control(inputs=inputs, **control))


def over(held: str) -> list[Finding]:
    return hm(
        "over-volume",
        f"E-1 now holds {held}, more than the 450 mL aimed at: weaker than meant.",
        "Keep a rinse apart instead: pottle rinse ... --to apart",
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
    Case("made up well over", made_up(460), scene(lot()), over("460 mL")),
    Case("made up, and its start was struck", made_up(460), scene(struck(lot()))),
    Case("well over in some other way", draft(make(Finish, volume=ml(460))), scene(lot())),
]

WATER = Input("W-1", Measure.UL, Status.IN_STOCK, "water", MaterialKind.WATER)
SPIRIT = Input("O-1", Measure.UL, Status.IN_STOCK, "spirit", MaterialKind.ETHANOL)
CARBONATE = Input("C-1", Measure.MG, Status.IN_STOCK, "carb", MaterialKind.CLARIFIER)
ALL = (WATER, SPIRIT, CARBONATE)
ON_POWDER = hm(
    "water on carbonate",
    "W-1 is water, and there is clarifier in E-1 or in its cake: watery liquid takes up some of "
    "it, turns alkaline and may throw a haze.",
    "Rinse with the spirit that the batch is made of; look at a diluted sample.",
)
POWDER, PASS = make(Add, source="C-1"), make(Filter)
WATERED: tuple[Facts, ...] = (
    make(Add, source="W-1"),
    make(MakeUp, source="W-1"),
    make(Rinse, source="W-1", volume_out=ml(5)),
)


def on(*before: Facts) -> Scene:
    return among(*ALL, state=lot("E-1", *before, on_hand=420_000))


WATERY = [
    *(
        Case(f"{facts.KIND} of water on the powder", draft(facts), on(POWDER), ON_POWDER)
        for facts in WATERED
    ),
    *(Case(f"{facts.KIND} of water without powder", draft(facts), on()) for facts in WATERED),
    *(
        Case(f"{facts.KIND} of spirit on the powder", draft(facts), on(POWDER))
        for facts in (make(Add), make(MakeUp), make(Rinse))
    ),
    *(
        Case(
            f"{facts.KIND} of water when the powder is filtered off", draft(facts), on(POWDER, PASS)
        )
        for facts in WATERED[:2]
    ),
    Case(
        "a rinse with water of the cake that holds the powder",
        draft(WATERED[2]),
        on(POWDER, PASS),
        ON_POWDER,
    ),
    Case(
        "water when more powder went in after a pass",
        draft(WATERED[0]),
        on(POWDER, PASS, POWDER),
        ON_POWDER,
    ),
]


def chilled(temp_mdegc: int | None) -> Rest:
    return make(Rest, purpose=RestFor.CHILL, temp_mdegc=temp_mdegc)


def ran(temp_mdegc: int | None) -> Any:
    return draft(make(Filter, temp_mdegc=temp_mdegc, cake=Cake.SAME))


def warmed(chill: str, ran_at: str) -> list[Finding]:
    return hm(
        "warmed",
        f"E-1 was chilled at {chill} and filtered at {ran_at}: what the cold threw may have "
        "dissolved again.",
        "Look at it cold before it leaves.",
    )


SETTLED = make(Rest, purpose=RestFor.SETTLE, temp_mdegc=2000)
COLD = [
    Case("filtered 5 degrees warmer", ran(7000), scene(lot("E-1", chilled(2000)))),
    Case(
        "filtered warmer than that",
        ran(7001),
        scene(lot("E-1", chilled(2000))),
        warmed("2 °C", "7.001 °C"),
    ),
    Case(
        "chilled below zero",
        ran(0),
        scene(lot("E-1", chilled(-18_000))),
        warmed("−18 °C", "0 °C"),
    ),
    Case(
        "the last chilling counts",
        ran(7000),
        scene(lot("E-1", chilled(-18_000), chilled(2000))),
    ),
    Case("a pass after the one that ran cold", ran(20_000), scene(lot("E-1", chilled(2000), PASS))),
    Case("settled, not chilled", ran(20_000), scene(lot("E-1", SETTLED))),
    Case("chilled at nobody knows what", ran(20_000), scene(lot("E-1", chilled(None)))),
    Case("filtered at nobody knows what", ran(None), scene(lot("E-1", chilled(2000)))),
]

FIRST = hm(
    "first runnings",
    "No first runnings were returned on the first pass: they carry fines and fibres.",
    "Return them until they run bright, and say how much with --first.",
)
RUNNINGS = [
    Case("none returned on the first pass", draft(make(Filter)), scene(lot()), FIRST),
    Case(
        "none returned from a fresh cake",
        draft(make(Filter, cake=Cake.FRESH)),
        scene(lot()),
        FIRST,
    ),
    Case("returned", draft(make(Filter, first_runnings=ml(20))), scene(lot())),
    Case("through the same cake", draft(make(Filter, cake=Cake.SAME)), scene(lot())),
    Case("through the cake of another lot", draft(make(Filter, cake_of="E-0")), scene(lot())),
    Case("on the second pass", draft(make(Filter, pass_no=2)), scene(lot())),
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
READINGS = [
    *(
        Case(f"Brix with {kind} in it", BRIX, among(made("X-1", kind)), read_high("X-1"))
        for kind in ProductKind
        if kind in SPIRITUOUS
    ),
    *(
        Case(f"Brix with {kind} in it", BRIX, among(made("X-1", kind)))
        for kind in (ProductKind.BASE_SYRUP, ProductKind.SYRUP, ProductKind.GUM_EMULSION)
    ),
    Case("Brix with bare spirit in it", BRIX, among(WATER, SPIRIT), read_high("O-1")),
    Case(
        "Brix with two strong things in it",
        BRIX,
        among(made("X-1", ProductKind.ESSENCE), SPIRIT),
        read_high("X-1, O-1"),
    ),
    Case("Brix of sugar and water", BRIX, among(WATER)),
    *(
        Case(f"{what} with spirit in it", draft(make(Measurement, what=what)), among(SPIRIT))
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
        "Check which gallon is meant; strike the start if it is wrong: pottle strike ...",
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


def held(product: str, kind: ProductKind = ProductKind.ESSENCE, code: str = "L-1") -> Control:
    return Control(last_held=LastHeld("jar 1", code, product, kind))


DIRTY = hm(
    "vessel",
    "jar 1 last held Wintergreen essence (L-1) and no cleaning of it is in the book since.",
    'If it was cleaned: pottle clean "jar 1" --how HOW --at WHEN',
)
STRONG = held("Wintergreen essence")
STARTED, RESTED = draft(make(Start)), draft(make(Rest))
VESSELS = [
    Case("begun in a vessel that held another flavour", STARTED, scene(control=STRONG), DIRTY),
    Case("rested in one", RESTED, scene(lot(), control=STRONG), DIRTY),
    Case("it held the same product", STARTED, scene(control=held("Orange essence"))),
    Case("it held the lot itself", RESTED, scene(lot(), control=held("Old name", code="E-1"))),
    Case(
        "it held base syrup, which has no flavour",
        STARTED,
        scene(control=held("Base syrup", ProductKind.BASE_SYRUP)),
    ),
    Case("it was cleaned, or never held anything", STARTED, scene()),
    Case("rested, and its start was struck", RESTED, scene(struck(lot()), control=STRONG)),
    *(
        Case(f"{facts.KIND} takes no vessel", draft(facts), scene(lot(), control=STRONG))
        for facts in (make(Add), make(Decant), make(Look))
    ),
]

CASES = [*VOLUMES, *WATERY, *COLD, *RUNNINGS, *READINGS, *TWENTY, *GALLONS, *VESSELS]


@pytest.mark.parametrize("case", CASES, ids=str)
def test_usual_slips_are_remarked_on_where_they_matter(case: Case) -> None:
    assert find(usual.RULES, case) == list(case.found)
