"""The next step: what stands in the way of a release comes before it."""

from types import SimpleNamespace
from typing import Any

import pytest

from ledger.domain.entries import (
    Add,
    Check,
    Clean,
    Closing,
    Complaint,
    Contact,
    Count,
    Decant,
    Entry,
    Equipment,
    Facts,
    Filter,
    Finish,
    Formula,
    House,
    Judge,
    Labels,
    Limit,
    Look,
    MakeUp,
    Material,
    Measurement,
    Move,
    Note,
    Party,
    Person,
    Rest,
    Rinse,
    Start,
    Withdrawal,
)
from ledger.domain.entries.choices import Grade, MaterialKind, ProductKind, Purpose, Verdict
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.lots.lot import Status
from ledger.domain.rules import Finding, Severity
from ledger.service.lots.journal import Said
from reports.words.desk import next_step as module
from reports.words.desk.next_step import before_release, next_step, step_of_journal, step_of_lot
from tests.domain.builders import at, entry, lot, make
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said

RELEASE = "pottle release OE-001-5"


@pytest.mark.parametrize(
    ("commands", "step"),
    [
        (("pottle check --entry 9",), "pottle check --entry 9"),
        ((None, "pottle hold OE-001-5", "pottle due"), "pottle hold OE-001-5"),
        ((None,), RELEASE),
    ],
)
def test_the_first_command_of_what_stands_in_the_way_comes_before_a_release(
    commands: tuple[str | None, ...], step: str
) -> None:
    found = [
        Finding(Severity.GATE, "release", "It is not done.", "See to it: pottle stock", command)
        for command in commands
    ]
    assert before_release(RELEASE, found) == step


def test_nothing_in_the_way_leaves_the_release() -> None:
    assert before_release(RELEASE, []) == RELEASE


SYRUP, ESSENCE, BLEND = ProductKind.SYRUP, ProductKind.ESSENCE, ProductKind.BLEND
ENDED = make(Rest, ended_at=at(10))
HELD, RECALLED = make(Judge, verdict=Verdict.HOLD), make(Judge, verdict=Verdict.RECALL)
BY_FORMULA = make(
    Formula,
    wanted_clarity=Grade.CLEAR,
    steps=(FormulaStep("rest"), FormulaStep("filter"), FormulaStep("finish")),
)


def of(
    *acts: Facts,
    kind: str = "made",
    status: Status = Status.MAKING,
    product: ProductKind | None = ESSENCE,
    sort: MaterialKind | None = None,
    spirit: bool = False,
    on_hand: int = 450_000,
    opening: Facts | None = None,
    **more: Any,
) -> Any:
    """Return what is known of a lot after some acts."""
    brief = SimpleNamespace(
        code="E-1", status=status, product_kind=product, sort=sort, on_hand=on_hand
    )
    inputs = (SimpleNamespace(source="NS-1"),) if spirit else ()
    node = SimpleNamespace(
        brief=SimpleNamespace(code="NS-1", sort=MaterialKind.ETHANOL, product_kind=None)
    )
    empty = {"formula": None, "outputs": (), "holders": ()}
    return SimpleNamespace(
        state=lot("E-1", *acts, kind=kind, on_hand=on_hand, opening=opening),
        lot=brief,
        inputs=inputs,
        trace=SimpleNamespace(nodes=(node,)),
        **(empty | more),
    )


def wanted(
    *, material: str | None = "oil", formula: str | None = None, is_there: bool = True
) -> Any:
    """Return what is still to be put in."""
    drawn = (SimpleNamespace(lot="O-1", amount=30_000),) if is_there else ()
    called = SimpleNamespace(material=material, formula=formula, code=material or formula)
    line = SimpleNamespace(called=called, amount=30_000, measure=lot().opened.measure)
    return SimpleNamespace(wanted=line, drawn=drawn, short=0 if is_there else 30_000)


def last_of(found: Any) -> Entry:
    """Return the last act of a lot."""
    last: Entry = found.state.entries[-1]
    return last


R, F = Status.RELEASED, Status.FINISHED
TRIAL = make(Start, trial_group="rests", purpose=Purpose.TRIAL)
AFTER: dict[str, Any] = {
    "a bottle is bought": of(kind="received", status=Status.IN_STOCK, sort=MaterialKind.BOTTLE),
    "a closure is bought": of(kind="received", status=Status.IN_STOCK, sort=MaterialKind.CLOSURE),
    "a label is bought": of(kind="received", status=Status.IN_STOCK, sort=MaterialKind.LABEL),
    "an oil is bought": of(kind="received", status=Status.IN_STOCK, sort=MaterialKind.OIL),
    "a batch is begun": of(),
    "oil is in": of(make(Add)),
    "oil and spirit are in": of(make(Add), spirit=True),
    "a syrup is mixed": of(make(Add), product=SYRUP),
    "it is topped up after it was finished": of(make(Finish), make(Add), spirit=True),
    "it rests": of(make(Rest)),
    "its rest is over": of(ENDED),
    "the rest of a syrup is over": of(ENDED, product=SYRUP),
    "it is filtered": of(make(Filter)),
    "it is rinsed": of(make(Filter), make(Rinse)),
    "it is decanted": of(make(Decant)),
    "it is made up": of(make(MakeUp)),
    "it is hazy": of(make(Filter), make(Look, grade=Grade.HAZY)),
    "a syrup is hazy": of(make(Look, grade=Grade.HAZY), product=SYRUP),
    "it is clear": of(make(Look)),
    "it is measured and was not seen": of(make(Measurement)),
    "it is measured": of(make(Look), make(Measurement)),
    "it is finished and seen": of(make(Look), make(Finish), make(Look), status=F),
    "it is finished and not seen": of(make(Finish), status=F),
    "it is held": of(make(Finish), HELD, status=Status.HELD),
    "it is seen since it was held": of(make(Finish), HELD, make(Look), status=Status.HELD),
    "it is rejected": of(make(Finish), make(Judge), status=Status.REJECTED),
    "it is released": of(make(Finish), make(Look), make(Judge), status=R),
    "a syrup is released": of(make(Finish), make(Judge), status=R, product=SYRUP),
    "a blend is released": of(make(Finish), make(Judge), status=R, product=BLEND),
    "what was bought is released": of(make(Judge), kind="received", status=R, product=None),
    "bottles are filled": of(kind="packed", status=Status.PACKED, product=SYRUP),
    "bottles are released": of(make(Judge), kind="packed", status=R, product=SYRUP),
    "labels are printed": of(make(Labels), kind="packed", status=Status.PACKED, product=SYRUP),
    "bottles with labels are released": of(
        make(Labels), make(Judge), kind="packed", status=R, product=SYRUP
    ),
    "labels of what is released": of(
        make(Judge), make(Labels), kind="packed", status=R, product=SYRUP
    ),
    "somebody complains": of(make(Complaint), status=R),
    "it is sold": of(make(Move), status=R),
    "a holder is called": of(RECALLED, make(Contact), status=Status.RECALLED),
    "its recall is closed": of(RECALLED, make(Closing), status=Status.RECALLED),
    "its recall is closed and nothing is left": of(
        RECALLED, make(Closing), status=Status.RECALLED, on_hand=0
    ),
    "a holder of what is not recalled is called": of(make(Contact), status=R),
    "a jar of a trial is finished": of(make(Finish), make(Look), status=F, opening=TRIAL),
    "a jar of no group is finished": of(
        make(Finish), make(Look), status=F, opening=make(Start, purpose=Purpose.TRIAL)
    ),
    "by a formula it is begun": of(formula=BY_FORMULA),
    "by a formula it rests": of(make(Rest), formula=BY_FORMULA),
    "by a formula it rested": of(ENDED, formula=BY_FORMULA),
    "by a formula it is filtered": of(ENDED, make(Filter), formula=BY_FORMULA),
    "by a formula it is hazy": of(
        ENDED, make(Filter), make(Look, grade=Grade.HAZY), formula=BY_FORMULA
    ),
    "by a formula it is finished": of(
        ENDED, make(Filter), make(Look), make(Finish), make(Look), formula=BY_FORMULA, status=F
    ),
    "by a formula without steps it is begun": of(formula=make(Formula)),
    "a note is written": of(make(Add), make(Note)),
    "it is counted": of(make(Add), make(Count)),
    "it is checked": of(make(Add), make(Check)),
    "it is struck": of(make(Add), status=Status.STRUCK),
}
"""What is known of a lot when the last of its acts is written."""
ALONE: tuple[Facts, ...] = (
    *(make(each) for each in (Person, Material, Clean, Equipment, Formula, Withdrawal, Party)),
    *(make(each) for each in (Limit, House, Note, Check)),
    Check(about=9),
)


def test_what_comes_next_is_the_kept_command_after_every_act() -> None:
    told = [f"{name}: {next_step(found.state.entries[-1], found)}" for name, found in AFTER.items()]
    told += [
        f"{facts.KIND} of no lot: {next_step(entry(facts, lot=None), None)}" for facts in ALONE
    ]
    told.append(f"a correction: {next_step(entry(make(Note), corrects=7), None)}")
    begun = of()
    for name, lacking in {
        "oil that is there": wanted(),
        "oil that is not": wanted(is_there=False),
        "an essence that is not": wanted(material=None, formula="base", is_there=False),
    }.items():
        told.append(f"begun, lacking {name}: {next_step(last_of(begun), begun, (lacking,))}")
        by_formula = of(make(Note), formula=BY_FORMULA)
        told.append(f"by a formula, lacking {name}: {step_of_lot(by_formula, (lacking,))}")
    check_golden("next_steps.txt", "\n".join(told) + "\n")


def test_a_lot_as_it_stands_goes_on_as_after_its_last_act_that_leads_on() -> None:
    gone = (SimpleNamespace(target="S-1"),)
    told = {
        "noted": of(make(Add), make(Note)),
        "sold": of(make(Judge), make(Move), status=R, product=SYRUP),
        "filled": of(make(Finish), status=F, outputs=gone),
        "released and filled": of(make(Finish), make(Judge), status=R, outputs=gone),
        "used up": of(make(Judge), status=R, outputs=gone, on_hand=0),
        "sold out": of(make(Judge), status=R, holders=gone, on_hand=0),
        "lost": of(make(Judge), status=R, on_hand=0),
        "struck": of(status=Status.STRUCK),
        "given away": of(make(Move), opening=make(Note), status=R),
    }
    assert {name: step_of_lot(found) for name, found in told.items()} == {
        "noted": "pottle add E-1 LOT AMOUNT",
        "sold": "pottle bottle E-1 COUNT x SIZE",
        "filled": "pottle trace E-1 --forward",
        "released and filled": 'pottle start --product "NAME" --kind syrup --target VOLUME',
        "used up": "pottle trace E-1 --forward",
        "sold out": "pottle trace E-1 --forward",
        "lost": 'pottle start --product "NAME" --kind syrup --target VOLUME',
        "struck": "pottle stock",
        "given away": "pottle stock",
    }


def test_the_journal_leads_to_its_last_entry_or_to_the_lot_it_is_of() -> None:
    of_lot, of_none = (Said(entry(make(Note), 7, lot=code), None) for code in ("E-1", None))
    assert step_of_journal([of_lot], is_all=True) == "pottle journal --entry 7"
    assert step_of_journal([of_none, of_lot], is_all=False) == "pottle lot E-1"
    assert step_of_journal([of_lot, of_none], is_all=False) == "pottle journal"


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
