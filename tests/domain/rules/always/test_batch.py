"""Making: volumes are volumes, and no more comes out than was there."""

from typing import Any

import pytest

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries import (
    Bottle,
    Decant,
    Filter,
    Finish,
    Formula,
    MakeUp,
    Rinse,
    Start,
)
from ledger.domain.entries.fields import specs
from ledger.domain.rules import Finding
from ledger.domain.rules.always import batch as making
from ledger.domain.rules.always.volumes import PLAIN_NAMES
from tests.domain.builders import draft, grams, lot, make, ml, scene
from tests.domain.rules.cases import HM, NO, WHY, Case, find, said

WET = (Formula, Start, Filter, Rinse, Decant, MakeUp, Finish, Bottle)
"""Kinds of facts whose amounts are volumes."""


def not_a(kind: str, text: str, name: str, such: str) -> list[Finding]:
    what = f"{text} is not a {kind}, so it cannot be the {name}."
    return said(NO, "volume", what, f"Give a {kind}, such as {such}.")


MEASURES = [
    *(Case(f"the volumes of a {facts.KIND}", draft(make(facts))) for facts in WET),
    *(
        Case(
            f"a weight as {spec.name} of a {facts.KIND}",
            draft(make(facts, **{spec.name: grams(500)})),
            scene(),
            not_a("volume", "500 g", PLAIN_NAMES[spec.name], "430 mL"),
        )
        for facts in WET
        for spec in specs(facts)
        if spec.shape is Quantity and spec.name != "precoat"
    ),
    Case("a weight of precoat", draft(make(Filter, precoat=grams(5)))),
    Case(
        "a volume of precoat",
        draft(make(Filter, precoat=ml(15))),
        scene(),
        not_a("weight", "15 mL", "weight of the precoat", "15 g"),
    ),
    Case(
        "all weights of a pass at once, and nothing else that would not be so",
        draft(make(Filter, volume_in=grams(1), volume_out=grams(900))),
        scene(lot()),
        not_a("volume", "1 g", "volume put on", "430 mL")
        + not_a("volume", "900 g", "volume that ran through", "430 mL"),
    ),
]


def passed(volume_in: float, volume_out: float) -> Any:
    return draft(make(Filter, volume_in=ml(volume_in), volume_out=ml(volume_out)))


def less(what: str, book: str = "the book says 450 mL", code: str = "E-1") -> list[Finding]:
    todo = "Record what else went in first: pottle add ..."
    return said(NO, "volume", f"{what}, but {code} held less: {book}.", todo)


def little(what: str) -> list[Finding]:
    todo = "Read it again at the temperature of the other volumes if it matters."
    sentence = f"{what}, a little more than was in E-1: the book says 450 mL."
    return said(HM, "volume", sentence, todo)


MORE_THAN_IN = "Read both volumes again; note a rinse apart: pottle rinse ..."
MISSING = (
    "Check the volumes and whether an addition is missing; if it is so, say why with --because."
)
SWEET = lot(on_hand=2_400_000, solids_mg=2_400_000)
LIQUID_AND_SOLIDS = "2.4 L of liquid and 2.4 kg of solids make at most 4.8 L"
FILTRATES = [
    Case("445 of 450 in, 430 out", passed(445, 430), scene(lot())),
    Case("nothing is lost", passed(450, 450), scene(lot())),
    Case("a syrup filtered whole", passed(3850, 3800), scene(SWEET)),
    Case(
        "a syrup of which the book cannot know how much there is", passed(2000, 1900), scene(SWEET)
    ),
    Case("nine tenths of what was there", passed(405, 400), scene(lot())),
    Case(
        "more out than in",
        passed(430, 430.5),
        scene(lot()),
        said(
            NO,
            "filtrate",
            "430.5 mL of filtrate is more than the 430 mL that went onto the filter.",
            MORE_THAN_IN,
        ),
    ),
    Case(
        "more in than was there",
        passed(460, 430),
        scene(lot()),
        said(
            WHY,
            "volume",
            "460 mL on the filter is more than was in E-1: the book says 450 mL.",
            MISSING,
        ),
    ),
    Case(
        "both more out than in and more than was there: all told",
        passed(460, 470),
        scene(lot()),
        less("470 mL came through the filter")
        + said(
            NO,
            "filtrate",
            "470 mL of filtrate is more than the 460 mL that went onto the filter.",
            MORE_THAN_IN,
        )
        + said(
            WHY,
            "volume",
            "460 mL on the filter is more than was in E-1: the book says 450 mL.",
            MISSING,
        ),
    ),
    Case(
        "out of an empty lot: only that is told",
        passed(0.001, 430),
        scene(lot(on_hand=0)),
        less("430 mL came through the filter", "the book says 0 mL"),
    ),
    Case(
        "out of a lot of one drop: all is told",
        passed(0.001, 430),
        scene(lot(on_hand=1)),
        less("430 mL came through the filter", "the book says 0.001 mL")
        + said(
            NO,
            "filtrate",
            "430 mL of filtrate is more than the 0.001 mL that went onto the filter.",
            MORE_THAN_IN,
        ),
    ),
    Case(
        "out of a syrup more than liquid and solids can be",
        passed(4800, 4900),
        scene(SWEET),
        less("4900 mL came through the filter", LIQUID_AND_SOLIDS)
        + said(
            NO,
            "filtrate",
            "4900 mL of filtrate is more than the 4800 mL that went onto the filter.",
            MORE_THAN_IN,
        ),
    ),
    Case(
        "only a part of what was there",
        passed(404, 400),
        scene(lot()),
        said(
            HM,
            "volume",
            "Only 404 mL of the 450 mL in E-1 went onto the filter; from now on the book takes "
            "the filtrate, 400 mL, for all of it.",
            "If the rest is still there, strike this and record one pass with both parts.",
        ),
    ),
]


def decanted(drawn: float, heel: Quantity | None = None) -> Any:
    return draft(make(Decant, drawn=ml(drawn), heel=heel))


OUTCOMES = [
    Case("a finish with all there is", draft(make(Finish, volume=ml(450))), scene(lot())),
    Case(
        "a warm finish of what was made up cold",
        draft(make(Finish, volume=ml(459))),
        scene(lot()),
        little("459 mL came out"),
    ),
    Case(
        "a finish with more than warmth explains",
        draft(make(Finish, volume=ml(459.001))),
        scene(lot()),
        less("459.001 mL came out"),
    ),
    *(
        Case(
            f"a finish of what was reckoned, with {volume} mL",
            draft(make(Finish, volume=ml(volume))),
            scene(lot(was_reckoned=True)),
            found,
        )
        for volume, found in (
            (450, ()),
            (459.001, less("459.001 mL came out", "the book reckons about 450 mL")),
        )
    ),
    Case("a finished syrup", draft(make(Finish, volume=ml(3800))), scene(SWEET)),
    Case(
        "a syrup of more than its parts",
        draft(make(Finish, volume=ml(5000))),
        scene(SWEET),
        less("5000 mL came out", LIQUID_AND_SOLIDS),
    ),
    Case("a decant without its heel", decanted(450), scene(lot())),
    Case("a decant with its heel", decanted(430, ml(20)), scene(lot())),
    Case(
        "a heel by weight is told as such",
        decanted(900, grams(1)),
        scene(lot()),
        not_a("volume", "1 g", "volume of the heel", "430 mL"),
    ),
    Case(
        "more drawn than was there",
        decanted(500),
        scene(lot()),
        less("500 mL was drawn off"),
    ),
    Case(
        "more drawn and left than was there",
        decanted(430, ml(40)),
        scene(lot()),
        less("430 mL and a heel of 40 mL were drawn off and left"),
    ),
    Case(
        "a little more drawn and left than was there",
        decanted(430, ml(22)),
        scene(lot()),
        little("430 mL and a heel of 22 mL were drawn off and left"),
    ),
    Case("nothing is known of the lot", draft(make(Finish, volume=ml(900))), scene()),
]


@pytest.mark.parametrize("case", [*MEASURES, *FILTRATES, *OUTCOMES], ids=str)
def test_volumes_of_a_batch_are_possible_or_told(case: Case) -> None:
    assert find(making.RULES, case) == list(case.found)


def test_every_amount_of_the_bench_has_a_name_in_words() -> None:
    names = {spec.name for facts in WET for spec in specs(facts) if spec.shape is Quantity}
    assert names == set(PLAIN_NAMES)


def test_a_volume_and_what_the_book_says_of_it_never_look_the_same() -> None:
    held = scene(lot(on_hand=2_100_300))
    (remark,) = making.outcome_was_there(draft(make(Finish, volume=ml(2100.4))), held)
    assert remark.what == (
        "2100.4 mL came out, a little more than was in E-1: the book says 2.1003 L."
    )
    nearly = scene(lot(on_hand=2_100_400))
    (stop,) = making.make_up_goes_up(draft(make(MakeUp, volume=ml(2100))), nearly)
    assert stop.what == "E-1 holds 2.1004 L already, so it cannot be made up to 2100 mL."
    filled = make(Bottle, count=4, size=ml(525.1), drawn=ml(2100))
    (stop,) = making.fill_takes_what_it_fills(draft(filled), scene(lot()))
    assert stop.what == "4 bottles of 525.1 mL hold 2.1004 L, more than the 2100 mL drawn."
