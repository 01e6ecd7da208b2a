"""The clearance of a lot with a formula: its papers, inputs and claims stand in the way."""

from datetime import date
from typing import Any

import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Check, Deviation, Entry, Facts, Filter, Formula, Labels, Limit
from ledger.domain.entries.choices import Bound, LimitBasis, LimitUnit, MaterialKind, ProductKind
from ledger.domain.lots.control import Input
from ledger.domain.lots.lot import Status
from ledger.domain.lots.state import LotState
from ledger.domain.rules import Finding
from tests.domain.builders import at, entry, lot, make, packed
from tests.domain.rules.cases import HM, Case, find, said
from tests.domain.rules.release.leaving import LABELS, WHOLE_GATE, released, stop

DEVIATION = make(Deviation, about=7)


def reviewed(*later: Facts | Entry) -> tuple[Any, Any]:
    return released(lot("E-1", *later))


def alone_with(state: LotState) -> tuple[Any, Any]:
    """Return a release in a house of one person."""
    told, around = released(state)
    return told, replace(around, people=frozenset({"AB"}))


UNREVIEWED = stop(
    "Deviation 2 has not been reviewed: Something was found.", "Review it", "pottle check --entry 2"
)
OWN_REVIEW = stop(
    "Deviation 2 was reviewed by AB alone, whose own it is: Something was found.",
    "Have another person review it",
    "pottle check --entry 2 --by INITIALS",
)
DEVIATIONS = [
    Case("a deviation that nobody reviewed", *reviewed(DEVIATION), UNREVIEWED),
    Case("reviewed", *reviewed(DEVIATION, entry(make(Check, about=2), 5, by="CD"))),
    Case(
        "the entry that it is about was checked",
        *reviewed(DEVIATION, entry(make(Check, about=7), 5, by="CD")),
    ),
    Case("reviewed by who departed alone", *reviewed(DEVIATION, make(Check, about=2)), OWN_REVIEW),
    Case(
        "reviewed by the only person there is",
        *alone_with(lot("E-1", DEVIATION, make(Check, about=2))),
        said(
            HM,
            "reviewed alone",
            "Deviation 2 was reviewed by AB alone, whose own it is: Something was found.",
            "",
        ),
    ),
    Case("another entry was checked", *reviewed(DEVIATION, make(Check, about=3)), UNREVIEWED),
    Case("the lot as a whole was checked", *reviewed(DEVIATION, make(Check)), UNREVIEWED),
    Case(
        "two deviations, of which one was reviewed",
        *reviewed(
            make(Deviation, about=8),
            make(Deviation, about=9),
            entry(make(Check, about=9), 5, by="CD"),
        ),
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
                "Decide about it first",
                "pottle release X-1",
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
    return stop(f"The labels of P-1 do not add up: {told}.", *TELL_LABELS)


TELL_LABELS = ("Record what became of them", "pottle label P-1 --used N --spoiled N")
RECONCILED = [
    Case("one on each of fifteen bottles, one spoiled", *labelled(make(Labels))),
    Case("in two goes", *labelled(make(Labels, used=None, spoiled=None), make(Labels, printed=0))),
    Case(
        "none",
        *labelled(),
        stop(
            "No labels are in the book of P-1.", "Print them", "pottle label P-1 --out labels.pdf"
        ),
    ),
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


def as_strong(mpct: float | None, formula: Formula, claim: Limit | None = None) -> tuple[Any, Any]:
    return released(lot(), formula=formula, strength_mpct=mpct, claim=claim)


def free(bound: Bound, **changes: Any) -> Limit:
    told = {
        "unit": LimitUnit.PERCENT_VOL,
        "value_micro": 500_000,
        "code": "free",
        "basis": LimitBasis.IN_PRODUCT,
        **changes,
    }
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
    Case("not known, and nothing asked", *as_strong(None, PLAIN)),
    Case(
        "not known, and claimed",
        *as_strong(None, PLAIN, free(Bound.AT_MOST)),
        said(
            HM,
            "claim",
            "The strength of E-1 is not known; its label claims free (US), for at most 0.5 % vol.",
            "Measure it: pottle measure E-1 abv READING",
        ),
    ),
    Case(
        "claimed of the drink, which the lot's own strength does not settle",
        *as_strong(9000, PLAIN, free(Bound.LESS_THAN, basis=LimitBasis.IN_DRINK)),
        said(
            HM,
            "claim",
            "The strength of E-1 does not settle it: its label claims free (US), for less than "
            "0.5 % vol as served.",
            "Look at the glass: pottle serving E-1",
        ),
    ),
    *(
        Case(
            f"claimed of a limit that is not in force: {days}",
            *as_strong(9000, PLAIN, free(Bound.AT_MOST, **changes)),
            said(
                HM,
                "claim",
                "The strength of E-1 is not compared on 2026-03-02: its label claims free (US), "
                f"for at most 0.5 % vol, which holds {days}.",
                "Look at the limit: pottle limits free",
            ),
        )
        for days, changes in (
            ("until 2026-03-01", {"until": date(2026, 3, 1)}),
            ("since 2026-03-03", {"since": date(2026, 3, 3)}),
        )
    ),
    Case(
        "claimed of a limit on its only day",
        *as_strong(510, PLAIN, free(Bound.AT_MOST, since=date(2026, 3, 2), until=date(2026, 3, 2))),
        claimed("0.51 %", "free", "at most"),
    ),
    Case("claimed for at most, and just so", *as_strong(500, PLAIN, free(Bound.AT_MOST))),
    Case(
        "claimed for at most, and a little over",
        *as_strong(510, PLAIN, free(Bound.AT_MOST)),
        claimed("0.51 %", "free", "at most"),
    ),
    Case(
        "claimed for at most, and over by what a thousandth of a per cent would hide",
        *as_strong(500.4, PLAIN, free(Bound.AT_MOST)),
        claimed("0.5004 %", "free", "at most"),
    ),
    Case(
        "claimed for less, and less by as little",
        *as_strong(499.9996, PLAIN, free(Bound.LESS_THAN)),
    ),
    Case(
        "claimed for at most, and over by the rounding of a sum",
        *as_strong(500.00000000000006, PLAIN, free(Bound.AT_MOST)),
    ),
    Case(
        "stronger than the formula's limit by as little",
        *as_strong(500.0004, WEAK),
        stop("E-1 has 0.5000004 % vol; orange version 1 asks for at most 0.5 % vol.", MEND),
    ),
    Case(
        "between two limits, but for the rounding of a sum",
        *as_strong(59_999.99999999999, STRONG),
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
    "E-1 is self-released: AB made it and releases it, and nobody but its makers has checked it.",
    "Have it checked: pottle check E-1 --by INITIALS",
)
CHECKED = entry(make(Check), 5, at(9), by="CD")
SELF_CHECKED = entry(make(Check), 5, at(9), by="AB")
PASSED_BY_CD = entry(make(Filter), 4, at(9, day=1), by="CD")
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

CASES = [*DEVIATIONS, *INPUTS, *RECONCILED, *STRENGTHS, *HANDS]


@pytest.mark.parametrize("case", CASES, ids=str)
def test_a_lot_leaves_when_its_papers_inputs_and_claims_hold(case: Case) -> None:
    assert find(WHOLE_GATE, case) == list(case.found)
