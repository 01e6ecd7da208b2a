"""The gate of a lot with a formula: each thing that the formula asks for stands in the way."""

from typing import Any

import pytest

from ledger.domain.control import Control, Input
from ledger.domain.entries import (
    Add,
    Bottle,
    Check,
    Decant,
    Deviation,
    Facts,
    Filter,
    Finish,
    Formula,
    Judge,
    Labels,
    Limit,
    Look,
    MakeUp,
    Measurement,
    Rest,
    Rinse,
)
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.entries.words import (
    Bound,
    Grade,
    LimitUnit,
    LookedAt,
    MaterialKind,
    ProductKind,
    RestFor,
    Verdict,
)
from ledger.domain.lots import LotState, Status
from ledger.domain.quantity import Measure
from ledger.domain.rules import Finding, clearance, gate
from tests.domain.builders import at, draft, entry, lot, make, oil, packed, scene
from tests.domain.rules.cases import GATE, HM, Case, find, said

LOOK, FILTER, FINISH = make(Look), make(Filter), make(Finish)
HOLD = "Hold it: pottle hold E-1, or rework it."


def stop(what: str, todo: str) -> list[Finding]:
    return said(GATE, "release", what, todo)


def released(state: LotState, by: str = "CD", **control: Any) -> tuple[Any, Any]:
    """Return a release by somebody who did not make the lot, and the scene of it."""
    held_to = Control(**{"formula": make(Formula), **control})
    return draft(make(Judge), state.code, by=by), scene(state, control=held_to)


def stepped(steps: tuple[FormulaStep, ...], *later: Facts) -> tuple[Any, Any]:
    return released(lot("E-1", *later), formula=make(Formula, steps=steps))


DONE: tuple[tuple[str, Facts, str], ...] = (
    ("rest", make(Rest), "rest E-1 --for PURPOSE --started WHEN --until WHEN"),
    ("filter", FILTER, "filter E-1 --medium paper --pore SIZE --out VOLUME"),
    ("rinse", make(Rinse), "rinse E-1 --with LOT --in VOLUME --out VOLUME --to WHERE"),
    ("decant", make(Decant), "decant E-1 VOLUME"),
    ("measure", make(Measurement), "measure E-1 WHAT READING"),
    ("makeup", make(MakeUp), "makeup E-1 VOLUME --with LOT"),
)
MACERATE = FormulaStep("rest", rest_for=RestFor.MACERATE)
CHILL = FormulaStep("rest", rest_for=RestFor.CHILL)
TWICE = FormulaStep("filter", passes_min=2)
ONCE = FormulaStep("filter")
PACK = FormulaStep("bottle")


def missing(number: int, what: str, todo: str) -> list[Finding]:
    return stop(
        f"Step {number} of orange version 1, {what}, is not in the book of E-1.",
        f"Record it: pottle {todo}",
    )


def too_few(passed: int, asked: int) -> list[Finding]:
    return stop(
        f"E-1 had {passed} of the {asked} passes that orange version 1 asks for.",
        "Filter it again: pottle filter E-1 --medium paper --pore SIZE --out VOLUME",
    )


STEPS = [
    *(
        Case(f"the step {verb} is done", *stepped((FormulaStep(verb),), facts))
        for verb, facts, _ in DONE
    ),
    *(
        Case(
            f"the step {verb} is not in the book",
            *stepped((FormulaStep("start"), FormulaStep(verb))),
            missing(2, verb, todo),
        )
        for verb, _, todo in DONE
    ),
    *(
        Case(f"the step {verb} is told by other rules", *stepped((FormulaStep(verb),)))
        for verb in ("start", "add", "finish")
    ),
    *(
        Case(f"after the step {verb} nothing is asked for", *stepped((FormulaStep(verb), MACERATE)))
        for verb in ("bottle", "labels")
    ),
    Case(
        "rested for one thing, not for the other",
        *stepped((MACERATE, CHILL), make(Rest)),
        missing(2, "rest to chill", DONE[0][2]),
    ),
    Case(
        "two steps are missing, both told",
        *stepped((MACERATE, FormulaStep("decant"))),
        missing(1, "rest to macerate", DONE[0][2]) + missing(2, "decant", DONE[3][2]),
    ),
    Case(
        "the bottles of a batch that missed a step",
        *released(
            packed("P-1", make(Labels, printed=15, used=15, spoiled=0), bulk=lot("E-1")),
            formula=make(Formula, steps=(CHILL, PACK)),
        ),
        missing(1, "rest to chill", DONE[0][2]),
    ),
    Case("as many passes as asked", *stepped((TWICE,), FILTER, FILTER)),
    Case("too few passes", *stepped((TWICE,), FILTER), too_few(1, 2)),
    Case("too few passes for two steps", *stepped((TWICE, ONCE), FILTER, FILTER), too_few(2, 3)),
    Case("no pass at all is told once", *stepped((TWICE,)), missing(1, "filter", DONE[1][2])),
]

POURED = FormulaStep(
    "look", looked_at=LookedAt.AS_POURED, dilution="1:7", worst=Grade.CLEAR, temp_max_mdegc=5000
)
AGED = FormulaStep("look", age_minutes=1440)
WARM = FormulaStep("look", temp_min_mdegc=18_000, temp_max_mdegc=22_000)
AS_ASKED = make(Look, looked_at=LookedAt.AS_POURED, dilution="1:7", temp_mdegc=5000)
POURED_ASKED = "as poured, 1:7, at most 5 °C"


def unseen(how: str, todo: str, code: str = "E-1") -> list[Finding]:
    return stop(
        f"{code} has not been looked at {how} since it last changed, as orange version 1 asks.",
        f"Look at it: pottle look {code} GRADE --of {todo}",
    )


NOT_AS_POURED = unseen(POURED_ASKED, "as-poured --dilution 1:7")


def otherwise(**changes: Any) -> Look:
    told = {"looked_at": LookedAt.AS_POURED, "dilution": "1:7", "temp_mdegc": 5000, **changes}
    return make(Look, **told)


def seen_at(day: int, hour: int, **changes: Any) -> tuple[Any, Any]:
    """Return the release of a lot finished at noon of the first of March and seen then."""
    finish = entry(FINISH, 2, at(12, day=1))
    look = entry(make(Look, **changes), 3, at(hour, day=day))
    return released(lot("E-1", finish, look), formula=make(Formula, steps=(AGED,)))


TOO_FRESH = unseen("neat, 1 d after finishing", "neat")
LOOKS = [
    Case("looked at as asked", *stepped((POURED,), AS_ASKED)),
    Case("not looked at", *stepped((POURED,)), NOT_AS_POURED),
    *(
        Case(f"looked at, but {what}", *stepped((POURED,), look), NOT_AS_POURED)
        for what, look in (
            ("neat", otherwise(looked_at=LookedAt.NEAT)),
            ("more dilute", otherwise(dilution="1:8")),
            ("too warm", otherwise(temp_mdegc=5001)),
            ("at nobody knows what", otherwise(temp_mdegc=None)),
        )
    ),
    *(
        Case(f"{facts.KIND} after the look", *stepped((POURED,), AS_ASKED, facts), NOT_AS_POURED)
        for facts in (make(Add), FILTER, make(Rinse), make(Judge, verdict=Verdict.REWORK))
    ),
    Case("looked at again", *stepped((POURED,), AS_ASKED, FILTER, AS_ASKED)),
    Case("as clear as asked", *stepped((POURED,), otherwise(grade=Grade.CLEAR))),
    Case(
        "less clear",
        *stepped((POURED,), otherwise(grade=Grade.HAZY)),
        stop(
            f"Looked at {POURED_ASKED}, E-1 was hazy; orange version 1 asks for clear or better.",
            "Clear it and look again, or hold it: pottle hold E-1",
        ),
    ),
    Case(
        "the last look as asked counts",
        *stepped((POURED,), otherwise(grade=Grade.HAZY), AS_ASKED),
    ),
    *(
        Case(f"seen at {temp}", *stepped((WARM,), make(Look, temp_mdegc=temp)))
        for temp in (18_000, 22_000)
    ),
    *(
        Case(
            f"seen at {temp}",
            *stepped((WARM,), make(Look, temp_mdegc=temp)),
            unseen("neat, at 18 °C to 22 °C", "neat"),
        )
        for temp in (17_999, 22_001, None)
    ),
    Case("a day after it was finished", *seen_at(2, 12)),
    Case("less than a day after it was finished", *seen_at(2, 11), TOO_FRESH),
    Case("of a sample a day old, as told", *seen_at(1, 13, age_minutes=1440)),
    Case("of a fresh sample, as told", *seen_at(3, 12, age_minutes=1439), TOO_FRESH),
    Case("never finished", *stepped((AGED,), LOOK), TOO_FRESH),
    Case("looks after the filling are not asked for", *stepped((PACK, POURED))),
]

FILLED = entry(make(Bottle), 1, at(9), lot="P-1")
LABELS = make(Labels, printed=15, used=15, spoiled=0)
SEEN_NEAT = (FormulaStep("look", looked_at=LookedAt.NEAT), PACK)


def filled(*of_bulk: Any, later: tuple[Any, ...] = (LABELS,)) -> tuple[Any, Any]:
    """Return the release of bottles that were filled at nine."""
    state = packed("P-1", *later, opening=FILLED, bulk=lot("E-1", *of_bulk))
    return released(state, formula=make(Formula, steps=SEEN_NEAT))


UNSEEN_BOTTLES = unseen("neat", "neat", "P-1")
BOTTLES = [
    Case("bottles inherit the look at their bulk", *filled(LOOK)),
    Case("bottles of a bulk not seen", *filled(), UNSEEN_BOTTLES),
    Case("seen in the bottle", *filled(later=(LABELS, LOOK))),
    Case("the bulk changed before the filling", *filled(LOOK, FILTER), UNSEEN_BOTTLES),
    Case(
        "what was left of the bulk changed after the filling",
        *filled(LOOK, entry(make(Add), 8, at(10))),
    ),
    Case(
        "the bulk was seen only after it had changed",
        *filled(entry(make(Add), 8, at(10)), entry(LOOK, 9, at(11))),
        UNSEEN_BOTTLES,
    ),
    Case(
        "the bottles are to be reworked since",
        *filled(LOOK, later=(LABELS, make(Judge, verdict=Verdict.REWORK))),
        UNSEEN_BOTTLES,
    ),
]


def looked(
    grade: str, meant: Grade | None, kind: str = "essence", **flaws: bool
) -> tuple[Any, Any]:
    formula = make(Formula, product_kind=ProductKind(kind), wanted_clarity=meant)
    return released(lot("E-1", make(Look, grade=Grade(grade), **flaws)), formula=formula)


def meant_to_be(grade: str, wanted: str) -> list[Finding]:
    what = f"The last look at E-1 found it {grade}; orange version 1 wants it {wanted}."
    return stop(what, HOLD)


CLARITY = [
    *(
        Case(f"{grade} where clear is wanted", *looked(grade, Grade.CLEAR))
        for grade in ("bright", "clear")
    ),
    *(
        Case(
            f"{grade} where clear is wanted",
            *looked(grade, Grade.CLEAR),
            meant_to_be(grade, "clear or better"),
        )
        for grade in ("hazy", "opalescent", "cloudy", "milky")
    ),
    *(
        Case(f"a gum emulsion that is {grade}", *looked(grade, Grade.CLOUDY, "gum-emulsion"))
        for grade in ("cloudy", "milky")
    ),
    *(
        Case(
            f"a gum emulsion that is {grade}",
            *looked(grade, Grade.CLOUDY, "gum-emulsion"),
            meant_to_be(grade, "cloudy or cloudier"),
        )
        for grade in ("bright", "clear", "hazy", "opalescent")
    ),
    Case("no clarity is wanted", *looked("milky", None)),
    Case("louche as poured is no flaw", *looked("bright", Grade.CLEAR, louche=True)),
    Case(
        "a ring",
        *looked("bright", Grade.CLEAR, ring=True),
        stop("The last look at E-1 found an oil ring.", HOLD),
    ),
    Case(
        "hazy with flakes and sediment",
        *looked("hazy", Grade.CLEAR, floc=True, sediment=True),
        meant_to_be("hazy", "clear or better")
        + stop("The last look at E-1 found flakes and sediment.", HOLD),
    ),
]

DEVIATION = make(Deviation, about=7)


def reviewed(*later: Facts) -> tuple[Any, Any]:
    return released(lot("E-1", *later))


UNREVIEWED = stop(
    "Deviation 2 has not been reviewed: Something was found.", "Review it: pottle check --entry 2"
)
DEVIATIONS = [
    Case("a deviation that nobody reviewed", *reviewed(DEVIATION), UNREVIEWED),
    Case("reviewed", *reviewed(DEVIATION, make(Check, about=2))),
    Case("the entry that it is about was checked", *reviewed(DEVIATION, make(Check, about=7))),
    Case("another entry was checked", *reviewed(DEVIATION, make(Check, about=3)), UNREVIEWED),
    Case("the lot as a whole was checked", *reviewed(DEVIATION, make(Check)), UNREVIEWED),
    Case(
        "two deviations, of which one was reviewed",
        *reviewed(make(Deviation, about=8), make(Deviation, about=9), make(Check, about=9)),
        UNREVIEWED,
    ),
    Case("released against the gate before", *reviewed(make(Deviation, rule="release", about=7))),
    Case(
        "a deviation of the bulk",
        *released(packed("P-1", LABELS, bulk=lot("E-1", DEVIATION))),
        UNREVIEWED,
    ),
]

OIL = Input("O-1", Measure.UL, Status.IN_STOCK, "oil", MaterialKind.OIL)


def with_essence(now: Status) -> tuple[Any, Any]:
    essence = Input("X-1", Measure.UL, now, formula="x", product_kind=ProductKind.ESSENCE)
    return released(lot(), inputs=(OIL, essence))


PENDING = (Status.MAKING, Status.FINISHED, Status.REWORK)
INPUTS = [
    *(
        Case(
            f"an essence that is {now} went in",
            *with_essence(now),
            stop(
                f"X-1, which is in E-1, is not released; it is {now}.",
                "Decide about it first: pottle release X-1",
            ),
        )
        for now in PENDING
    ),
    *(
        Case(f"an essence that is {now} went in, which others tell or is well", *with_essence(now))
        for now in (Status.RELEASED, Status.HELD, Status.REJECTED, Status.RECALLED)
    ),
]


def labelled(*sheets: Labels) -> tuple[Any, Any]:
    return released(packed("P-1", *sheets, bulk=lot()))


def uneven(told: str) -> list[Finding]:
    return stop(f"The labels of P-1 do not add up: {told}.", TELL_LABELS)


TELL_LABELS = "Record what became of them: pottle label P-1 --used N --spoiled N"
RECONCILED = [
    Case("one on each of fifteen bottles, one spoiled", *labelled(make(Labels))),
    Case("in two goes", *labelled(make(Labels, used=None, spoiled=None), make(Labels, printed=0))),
    Case("none", *labelled(), stop("No labels are in the book of P-1.", TELL_LABELS)),
    Case(
        "one is missing",
        *labelled(make(Labels, printed=17)),
        uneven("17 printed, 15 used on 15 bottles, 1 spoiled"),
    ),
    Case(
        "more used than there are bottles",
        *labelled(make(Labels, printed=16, used=16, spoiled=0)),
        uneven("16 printed, 16 used on 15 bottles, 0 spoiled"),
    ),
    Case(
        "printed only",
        *labelled(make(Labels, used=None, spoiled=None)),
        uneven("16 printed, 0 used on 15 bottles, 0 spoiled"),
    ),
    Case("a bulk needs no labels", *released(lot())),
]

WEAK = make(Formula, abv_max_mpct=500)
SOLD_WEAK = make(Formula, abv_max_mpct=500, claim="alcohol-free")
STRONG = make(Formula, abv_min_mpct=60_000, abv_max_mpct=75_000)
MEND = "Measure it, and mend it or its label."


def as_strong(mpct: int | None, formula: Formula, claim: Limit | None = None) -> tuple[Any, Any]:
    return released(lot(), formula=formula, strength_mpct=mpct, claim=claim)


def free(bound: Bound, **changes: Any) -> Limit:
    told = {"unit": LimitUnit.PERCENT_VOL, "value_micro": 500_000, "code": "free", **changes}
    return make(Limit, bound=bound, **told)


def claimed(strength: str, says: str, bound: str) -> list[Finding]:
    return stop(
        f"E-1 has {strength} vol; its label claims {says} (US), for {bound} 0.5 % vol.",
        "Leave the claim off the label; the source is 21 CFR 189.180.",
    )


PLAIN = make(Formula)
STRENGTHS = [
    Case("as strong as allowed", *as_strong(500, WEAK)),
    Case(
        "stronger",
        *as_strong(1200, WEAK),
        stop("E-1 has 1.2 % vol; orange version 1 asks for at most 0.5 % vol.", MEND),
    ),
    Case(
        "stronger by so little that one decimal would hide it",
        *as_strong(540, WEAK),
        stop("E-1 has 0.54 % vol; orange version 1 asks for at most 0.5 % vol.", MEND),
    ),
    Case(
        "a limit with two decimals",
        *as_strong(60, make(Formula, abv_max_mpct=50)),
        stop("E-1 has 0.1 % vol; orange version 1 asks for at most 0.05 % vol.", MEND),
    ),
    Case(
        "stronger than its label says",
        *as_strong(1200, SOLD_WEAK),
        stop(
            "E-1 has 1.2 % vol; orange version 1 asks for at most 0.5 % vol, and its label says "
            '"alcohol-free".',
            MEND,
        ),
    ),
    *(Case(f"between two limits: {mpct}", *as_strong(mpct, STRONG)) for mpct in (60_000, 75_000)),
    Case(
        "weaker than the least",
        *as_strong(59_940, STRONG),
        stop("E-1 has 59.9 % vol; orange version 1 asks for 60 % to 75 % vol.", MEND),
    ),
    Case(
        "not known",
        *as_strong(None, SOLD_WEAK),
        said(
            HM,
            "strength",
            "The strength of E-1 is not known; orange version 1 asks for at most 0.5 % vol, and "
            'its label says "alcohol-free".',
            "Measure it: pottle measure E-1 abv READING",
        ),
    ),
    Case("not known, and nothing asked", *as_strong(None, PLAIN, free(Bound.AT_MOST))),
    Case("claimed for at most, and just so", *as_strong(500, PLAIN, free(Bound.AT_MOST))),
    Case(
        "claimed for at most, and a little over",
        *as_strong(510, PLAIN, free(Bound.AT_MOST)),
        claimed("0.51 %", "free", "at most"),
    ),
    Case("claimed for less, and less", *as_strong(499, PLAIN, free(Bound.LESS_THAN))),
    Case(
        "claimed for less, and just so",
        *as_strong(500, PLAIN, free(Bound.LESS_THAN, says="alcohol-free")),
        claimed("0.5 %", "alcohol-free", "less than"),
    ),
    *(
        Case(f"a limit {bound} is no claim to be weak", *as_strong(9000, PLAIN, free(bound)))
        for bound in (Bound.FROM, Bound.ABOVE)
    ),
    Case(
        "a claim of something else than strength",
        *as_strong(9000, PLAIN, free(Bound.AT_MOST, unit=LimitUnit.MG_PER_KG)),
    ),
    Case(
        "over the formula's limit and over the claim's, both told",
        *as_strong(1200, WEAK, free(Bound.AT_MOST)),
        claimed("1.2 %", "free", "at most")
        + stop("E-1 has 1.2 % vol; orange version 1 asks for at most 0.5 % vol.", MEND),
    ),
]

ALONE = said(
    HM,
    "self-released",
    "E-1 is self-released: AB made it and releases it, and no other person has checked it.",
    "Have it checked: pottle check E-1 --by INITIALS",
)
CHECKED = entry(make(Check), 5, at(9), by="CD")
SELF_CHECKED = entry(make(Check), 5, at(9), by="AB")
PASSED_BY_CD = entry(FILTER, 4, at(9, day=1), by="CD")
HANDS = [
    Case("made and released by one", *released(lot(), by="AB"), ALONE),
    Case("checked by another", *released(lot("E-1", CHECKED), by="AB")),
    Case("checked by the maker alone", *released(lot("E-1", SELF_CHECKED), by="AB"), ALONE),
    Case("checked by one who made it too", *released(lot("E-1", PASSED_BY_CD, CHECKED), by="AB"),
         ALONE),
    Case("released by somebody else", *released(lot())),
    Case(
        "bottles whose bulk was checked",
        *released(packed("P-1", LABELS, bulk=lot("E-1", CHECKED)), by="AB"),
    ),
]  # fmt: skip

BAD = lot("E-1", DEVIATION, make(Look, grade=Grade.MILKY, ring=True))
ASKS = make(Formula, steps=(CHILL, POURED), wanted_clarity=Grade.CLEAR, abv_max_mpct=500)
ELSEWISE = [
    Case(
        f"a lot that is told to {verdict}",
        draft(make(Judge, verdict=verdict)),
        scene(BAD, control=Control(formula=ASKS, strength_mpct=9000)),
    )
    for verdict in Verdict
    if verdict is not Verdict.RELEASE
]
UNDECIDED = Input("X-1", Measure.UL, Status.FINISHED, product_kind=ProductKind.ESSENCE)
WITHOUT = [
    Case("a lot that follows no formula", *released(BAD, by="AB", formula=None)),
    Case(
        "with what is not released in it",
        draft(make(Judge), by="CD"),
        scene(lot(), control=Control(inputs=(UNDECIDED,))),
    ),
    Case("bottles that follow no formula", *released(packed(), by="AB", formula=None)),
    Case("a received lot", *released(oil(), by="AB", formula=None)),
    Case("a lot that is not known", draft(make(Judge)), scene()),
    Case(
        "everything at once",
        *released(BAD, by="AB", formula=ASKS, strength_mpct=9000),
        missing(1, "rest to chill", DONE[0][2])
        + NOT_AS_POURED
        + meant_to_be("milky", "clear or better")
        + stop("The last look at E-1 found an oil ring.", HOLD)
        + UNREVIEWED
        + stop("E-1 has 9 % vol; orange version 1 asks for at most 0.5 % vol.", MEND)
        + ALONE,
    ),
]

CASES = [
    *STEPS, *LOOKS, *BOTTLES, *CLARITY, *DEVIATIONS, *INPUTS, *RECONCILED, *STRENGTHS, *HANDS,
    *ELSEWISE, *WITHOUT,
]  # fmt: skip


@pytest.mark.parametrize("case", CASES, ids=str)
def test_a_lot_leaves_when_it_is_what_its_formula_asks_for(case: Case) -> None:
    assert find(gate.RULES + clearance.RULES, case) == list(case.found)
