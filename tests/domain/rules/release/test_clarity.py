"""The gate of a lot with a formula: its looks and its clarity stand in the way."""

from typing import Any

import pytest

from ledger.domain.entries import (
    Add,
    Bottle,
    Filter,
    Finish,
    Formula,
    Judge,
    Look,
    Rest,
    Rinse,
)
from ledger.domain.entries.choices import Grade, LookedAt, ProductKind, RestFor, Verdict
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.rules import Finding
from tests.domain.builders import at, entry, lot, make, packed
from tests.domain.rules.cases import Case, find
from tests.domain.rules.release.leaving import LABELS, WHOLE_GATE, released, stepped, stop

LOOK, FILTER, FINISH = make(Look), make(Filter), make(Finish)
HOLD = ("Rework it, or hold it", 'pottle hold E-1 --because "WHY"')


PACK = FormulaStep("bottle")
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
        "Look at it",
        f"pottle look {code} GRADE --of {todo}",
    )


NOT_AS_POURED = unseen(POURED_ASKED, "as-poured --dilution 1:7 --temp DEGREES")


def otherwise(**changes: Any) -> Look:
    told = {"looked_at": LookedAt.AS_POURED, "dilution": "1:7", "temp_mdegc": 5000, **changes}
    return make(Look, **told)


def seen_at(day: int, hour: int, minute: int = 0, second: int = 0, **told: Any) -> tuple[Any, Any]:
    """Return the release of a lot finished at noon of the first of March and seen then."""
    finish = entry(FINISH, 2, at(12, day=1))
    look = entry(make(Look, **told), 3, at(hour, minute, second, day=day))
    return released(lot("E-1", finish, look), formula=make(Formula, steps=(AGED,)))


TOO_FRESH = unseen("neat, 1 d after finishing", "neat")
LOOKS = [
    Case("looked at as asked", *stepped((POURED,), AS_ASKED)),
    Case(
        "looked at in some dilution, where the step says none",
        *stepped((FormulaStep("look", looked_at=LookedAt.AS_POURED),), AS_ASKED),
    ),
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
        for facts in (
            *(make(Add), FILTER, make(Rinse)),
            make(Judge, verdict=Verdict.REWORK),
        )
    ),
    Case("looked at again", *stepped((POURED,), AS_ASKED, FILTER, AS_ASKED)),
    Case("as clear as asked", *stepped((POURED,), otherwise(grade=Grade.CLEAR))),
    Case(
        "less clear",
        *stepped((POURED,), otherwise(grade=Grade.HAZY)),
        stop(
            f"Looked at {POURED_ASKED}, E-1 was hazy; orange version 1 asks for clear or better.",
            "Clear it and look again, or hold it",
            'pottle hold E-1 --because "WHY"',
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
            unseen("neat, at 18 °C to 22 °C", "neat --temp DEGREES"),
        )
        for temp in (17_999, 22_001, None)
    ),
    Case("a day after it was finished", *seen_at(2, 12)),
    Case("less than a day after it was finished", *seen_at(2, 11), TOO_FRESH),
    Case("a second less than a day after it", *seen_at(2, 11, 59, 59), TOO_FRESH),
    Case("of a sample a day old, as told", *seen_at(1, 13, age_minutes=1440)),
    Case("of a fresh sample, as told", *seen_at(3, 12, age_minutes=1439), TOO_FRESH),
    Case(
        "finished, and not old enough yet",
        *stepped((FormulaStep("look", age_minutes=43_200),), FINISH, LOOK),
        stop(
            "E-1 has not been looked at neat, 30 d after finishing since it last changed, as "
            "orange version 1 asks.",
            "Look at it when it is old enough",
            "pottle due",
        ),
    ),
    Case(
        "never finished",
        *stepped((AGED,), LOOK),
        stop(
            "E-1 has not been looked at neat, 1 d after finishing since it last changed, as orange "
            "version 1 asks.",
            "Finish it, and look at it when it is old enough",
            "pottle finish E-1 VOLUME",
        ),
    ),
    Case("looks after the filling are not asked for", *stepped((PACK, POURED))),
]

NEAT, SYRUP = (FormulaStep("look", looked_at=LookedAt(of)) for of in ("neat", "in-syrup"))
CHILL, PASS = FormulaStep("rest", rest_for=RestFor.CHILL), FormulaStep("filter")
CHILLED = make(Rest, purpose=RestFor.CHILL, started_at=at(9), ended_at=at(10))
IN_SYRUP = make(Look, looked_at=LookedAt.IN_SYRUP)


def once_more(how: str, todo: str, code: str = "E-1") -> list[Finding]:
    return stop(
        f"{code} has not been looked at {how} once more since it last changed, as orange version "
        "1 asks: one look answers one step.",
        "Look at it",
        f"pottle look {code} GRADE --of {todo}",
    )


OWN = [
    Case("one look for two steps", *stepped((NEAT, NEAT), LOOK), once_more("neat", "neat")),
    Case("two looks for two steps", *stepped((NEAT, NEAT), LOOK, LOOK)),
    Case(
        "one look for one before a chill and one after",
        *stepped((NEAT, CHILL, NEAT), CHILLED, LOOK),
        once_more("neat", "neat"),
    ),
    Case("a look before a chill and one after", *stepped((NEAT, CHILL, NEAT), LOOK, CHILLED, LOOK)),
    Case("each stage was seen", *stepped((NEAT, SYRUP), IN_SYRUP, LOOK)),
    Case(
        "two looks, but of one stage",
        *stepped((NEAT, SYRUP), LOOK, LOOK),
        unseen("in syrup", "in-syrup"),
    ),
    Case(
        "a look that only one step takes is left to it",
        *stepped((FormulaStep("look"), SYRUP), IN_SYRUP, LOOK),
    ),
    Case("a look before a pass and one after", *stepped((NEAT, PASS, NEAT), LOOK, FILTER, LOOK)),
    Case(
        "only one look, after the pass",
        *stepped((NEAT, PASS, NEAT), FILTER, LOOK),
        stop(
            "E-1 has not been looked at neat once more, as orange version 1 asks: one look "
            "answers one step.",
            "Look at it",
            "pottle look E-1 GRADE --of neat",
        ),
    ),
    Case(
        "two looks, none after the pass",
        *stepped((NEAT, PASS, NEAT), LOOK, LOOK, FILTER),
        unseen("neat", "neat"),
    ),
    Case(
        "no look before the pass, of what is looked at otherwise after it",
        *stepped((NEAT, PASS, SYRUP), FILTER, IN_SYRUP),
        stop(
            "E-1 has not been looked at neat, as orange version 1 asks.",
            "Look at it",
            "pottle look E-1 GRADE --of neat",
        ),
    ),
]

FILLED = entry(make(Bottle), 1, at(9), lot="P-1")


def filled(*of_bulk: Any, later: tuple[Any, ...] = (LABELS,), asked: int = 1) -> tuple[Any, Any]:
    """Return the release of bottles that were filled at nine, to be looked at so often."""
    state = packed("P-1", *later, opening=FILLED, bulk=lot("E-1", *of_bulk))
    return released(state, formula=make(Formula, steps=(*(NEAT,) * asked, PACK)))


UNSEEN_BOTTLES = unseen("neat", "neat", "P-1")
BOTTLES = [
    Case("bottles inherit the look at their bulk", *filled(LOOK)),
    Case("one look at the bulk, one at the bottles", *filled(LOOK, later=(LABELS, LOOK), asked=2)),
    Case("one look at the bulk for two", *filled(LOOK, asked=2), once_more("neat", "neat", "P-1")),
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
    return stop(what, *HOLD)


def poured(grade: str) -> tuple[Any, Any]:
    """A look at a glass, of which a step asks for opalescent or better."""
    step = FormulaStep("look", looked_at=LookedAt.AS_POURED, worst=Grade.OPALESCENT)
    formula = make(
        Formula, product_kind=ProductKind.SYRUP, wanted_clarity=Grade.CLEAR, steps=(step,)
    )
    look = make(Look, grade=Grade(grade), looked_at=LookedAt.AS_POURED)
    return released(lot("E-1", look), formula=formula)


CLARITY = [
    Case("a glass that is as its step wants it", *poured("opalescent")),
    Case(
        "a glass that is worse",
        *poured("cloudy"),
        stop(
            "Looked at as poured, E-1 was cloudy; orange version 1 asks for opalescent or better.",
            "Clear it and look again, or hold it",
            HOLD[1],
        ),
    ),
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
        stop("The last look at E-1 found an oil ring.", *HOLD),
    ),
    Case(
        "hazy with flakes and sediment",
        *looked("hazy", Grade.CLEAR, floc=True, sediment=True),
        meant_to_be("hazy", "clear or better")
        + stop("The last look at E-1 found flakes and sediment.", *HOLD),
    ),
]

CASES = [*LOOKS, *OWN, *BOTTLES, *CLARITY]


@pytest.mark.parametrize("case", CASES, ids=str)
def test_a_lot_leaves_when_it_was_seen_as_its_formula_asks(case: Case) -> None:
    assert find(WHOLE_GATE, case) == list(case.found)
