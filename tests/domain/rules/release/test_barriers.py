"""Release: what stands in the way of a lot's leaving, all at once."""

from datetime import date
from typing import Any

import pytest

from ledger.domain.entries import (
    Add,
    Bottle,
    Decant,
    Facts,
    Filter,
    Finish,
    Judge,
    Look,
    MakeUp,
    Rinse,
    Start,
)
from ledger.domain.entries.choices import Grade, ProductKind, RinseTo, Verdict
from ledger.domain.rules import Finding
from ledger.domain.rules.release import barriers as release
from ledger.domain.rules.release.barriers import stands_in_the_way
from tests.domain.builders import at, draft, entry, lot, make, oil, packed, scene, when
from tests.domain.rules.cases import GATE, HM, Case, find, said

ADD, FILTER, LOOK, FINISH = make(Add), make(Filter), make(Look), make(Finish)
RINSE = make(Rinse)


def gate(what: str, todo: str, command: str | None = None) -> list[Finding]:
    return said(GATE, "release", what, todo, command)


def release_of(state: Any, **changes: Any) -> tuple[Any, Any]:
    return draft(make(Judge), state.code, **changes), scene(state)


def batch(*later: Any, **changes: Any) -> Any:
    return lot("E-1", *later, **changes)


def unseen(code: str = "E-1") -> list[Finding]:
    command = f"pottle look {code} GRADE --of neat"
    return gate("E-1 has not been looked at.", "Look at it", command)


def unseen_since(code: str = "E-1") -> list[Finding]:
    command = f"pottle look {code} GRADE --of neat"
    return gate("E-1 has not been looked at since it last changed.", "Look at it", command)


NO_YIELD = gate(
    "E-1 has no yield in the book.", "Finish it with what came out", "pottle finish E-1 VOLUME"
)
NO_YIELD_SINCE = gate(
    "E-1 has no yield in the book since something went in.",
    "Finish it with what came out",
    "pottle finish E-1 VOLUME",
)
HOLD = make(Judge, verdict=Verdict.HOLD)
UNSEEN_SINCE_HOLD = gate(
    "E-1 has not been looked at since it was put on hold.",
    "Look at it",
    "pottle look E-1 GRADE --of neat",
)
REWORK = make(Judge, verdict=Verdict.REWORK)
APART, WASTE = make(Rinse, went_to=RinseTo.APART), make(Rinse, went_to=RinseTo.WASTE)
MAKE_UP = make(MakeUp, source="W-1")
CLOUDED = said(
    HM,
    "looks",
    "E-1 was made up with W-1 after its last look, which may have clouded it.",
    "Look at it before it leaves: pottle look E-1 GRADE --of neat",
)
HARMLESS: tuple[Facts, ...] = (make(Decant), APART, WASTE, FINISH)
BATCHES = [
    Case("seen and measured", *release_of(batch(ADD, FILTER, LOOK, FINISH))),
    Case("never seen", *release_of(batch(ADD, FINISH)), unseen()),
    Case("no yield", *release_of(batch(ADD, LOOK)), NO_YIELD),
    Case("nothing done yet: all told", *release_of(batch()), unseen() + NO_YIELD),
    *(
        Case(
            f"{facts.KIND} after the look", *release_of(batch(LOOK, FINISH, facts)), unseen_since()
        )
        for facts in (FILTER, REWORK)
    ),
    *(
        Case(
            f"{facts.KIND} after the look and the end",
            *release_of(batch(LOOK, FINISH, facts)),
            unseen_since() + NO_YIELD_SINCE,
        )
        for facts in (ADD, RINSE)
    ),
    Case("made up after the end", *release_of(batch(FINISH, MAKE_UP, LOOK)), NO_YIELD_SINCE),
    Case("added to and measured again", *release_of(batch(LOOK, FINISH, ADD, LOOK, FINISH))),
    *(
        Case(
            f"{facts.KIND} after the look does not matter", *release_of(batch(LOOK, FINISH, facts))
        )
        for facts in HARMLESS
    ),
    Case("made up after the look", *release_of(batch(LOOK, MAKE_UP, FINISH)), CLOUDED),
    Case("made up and seen", *release_of(batch(LOOK, MAKE_UP, LOOK, FINISH))),
    Case("made up and never seen", *release_of(batch(MAKE_UP, FINISH)), unseen()),
    Case(
        "made up, then filtered, after the look",
        *release_of(batch(LOOK, MAKE_UP, FILTER, FINISH)),
        unseen_since(),
    ),
    Case("seen again", *release_of(batch(LOOK, FINISH, FILTER, LOOK))),
    Case(
        "seen in the same second, by a later entry",
        *release_of(batch(entry(FILTER, 2, at(9)), entry(LOOK, 3, at(9)), FINISH)),
    ),
    Case("any other verdict", draft(REWORK), scene(batch())),
    Case("a received lot need not be looked at", *release_of(oil())),
    Case("a lot that is not known", draft(make(Judge)), scene()),
    Case("a rinse lot has no yield", *release_of(lot("E-1", LOOK, kind="rinse"))),
]

BULK = batch(FILTER, LOOK, FINISH)


FILLED_AT_NINE = entry(make(Bottle), 1, at(9), lot="P-1")


def bottles(*later: Any, bulk: Any = BULK) -> Any:
    return packed("P-1", *later, bulk=bulk, opening=FILLED_AT_NINE)


def filled_at_nine(*of_bulk: Any) -> Any:
    return packed("P-1", opening=FILLED_AT_NINE, bulk=batch(*of_bulk))


PACKED = [
    Case("bottles inherit the look at their bulk", *release_of(bottles())),
    Case("bottles of a bulk not seen", *release_of(bottles(bulk=batch(FINISH))), unseen("P-1")),
    Case("seen in the bottle", *release_of(bottles(LOOK, bulk=batch(FINISH)))),
    Case("no yield of the bulk", *release_of(bottles(LOOK, bulk=batch())), NO_YIELD),
    Case(
        "the bulk changed after the filling",
        *release_of(filled_at_nine(LOOK, FINISH, entry(ADD, 8, at(10)))),
    ),
    Case(
        "the bulk was seen only after the filling, but had not changed",
        *release_of(filled_at_nine(FINISH, entry(LOOK, 8, at(10)), entry(ADD, 9, at(11)))),
    ),
    Case(
        "the bulk was seen only after it had changed",
        *release_of(filled_at_nine(FINISH, entry(ADD, 8, at(10)), entry(LOOK, 9, at(11)))),
        unseen("P-1"),
    ),
    Case(
        "the bulk had something more in it before the filling",
        *release_of(filled_at_nine(FINISH, ADD, LOOK)),
        NO_YIELD_SINCE,
    ),
    Case(
        "the bulk was measured only after the filling",
        *release_of(filled_at_nine(ADD, LOOK, entry(FINISH, 8, at(10)))),
    ),
    Case("bottles of a received lot", *release_of(bottles(LOOK, bulk=oil("E-1")))),
]

DATE = date(2026, 3, 1)
GOOD = (LOOK, FINISH)
PAST_DATE = gate(
    "E-1 was best before 2026-03-01.",
    "Reject it",
    'pottle reject E-1 --because "past its date"',
)


def made_of(listed: str) -> list[Finding]:
    return gate(
        f"E-1 is made of {listed}, now held, rejected or recalled.",
        "Decide about that lot first",
        "pottle lot X-1",
    )


JUDGED = [
    Case(
        "past its date",
        *release_of(batch(*GOOD, best_before=DATE)),
        PAST_DATE,
    ),
    Case(
        "on its last day, by the writer's clock",
        *release_of(batch(*GOOD, best_before=DATE), happened=when(at(4), -300)),
    ),
    Case(
        "made of held lots",
        *release_of(batch(*GOOD, barred_inputs=("X-1", "X-2"))),
        made_of("X-1, X-2"),
    ),
    Case("a hold", *release_of(batch(*GOOD, HOLD)), UNSEEN_SINCE_HOLD),
    Case(
        "a hold, with other things",
        *release_of(batch(LOOK, FINISH, ADD, HOLD)),
        UNSEEN_SINCE_HOLD + NO_YIELD_SINCE,
    ),
    Case("seen since the hold", *release_of(batch(*GOOD, HOLD, LOOK))),
    Case("a delivery on hold", *release_of(lot("E-1", HOLD, kind="received"))),
    Case(
        "bottles on hold",
        *release_of(bottles(LOOK, HOLD)),
        gate(
            "P-1 has not been looked at since it was put on hold.",
            "Look at it",
            "pottle look P-1 GRADE --of neat",
        ),
    ),
    Case(
        "their bulk seen since",
        *release_of(bottles(LOOK, entry(HOLD, 8, at(8, day=1)))),
    ),
    Case("rework that was seen", *release_of(batch(*GOOD, REWORK, FILTER, *GOOD))),
    *(
        Case(
            f"a lot that was {now}",
            *release_of(batch(*GOOD, make(Judge, verdict=verdict))),
            gate(f"E-1 is {now}.", "If it may leave after all, say why with --because."),
        )
        for verdict, now in ((Verdict.REJECT, "rejected"), (Verdict.RECALL, "recalled"))
    ),
    Case(
        "everything at once",
        *release_of(batch(REWORK, best_before=DATE, barred_inputs=("X-1",))),
        unseen() + NO_YIELD + PAST_DATE + made_of("X-1"),
    ),
]


def looked(*flags: str, grade: str = "bright", code: str = "E-1", kind: str = "essence") -> Any:
    look = make(Look, grade=Grade(grade), **dict.fromkeys(flags, True))
    start = make(Start, product_kind=ProductKind(kind))
    return lot(code, look, FINISH, opening=start)


def looks(found: str) -> list[Finding]:
    what = f"The last look at E-1 found {found}."
    return said(HM, "looks", what, 'If it should not be so: pottle hold E-1 --because "WHY"')


LOOKS = [
    *(
        Case(f"it looked {grade}", *release_of(looked(grade=grade)))
        for grade in ("bright", "clear")
    ),
    *(
        Case(f"it looked {grade}", *release_of(looked(grade=grade)), looks(f"it {grade}"))
        for grade in ("hazy", "opalescent", "cloudy", "milky")
    ),
    Case("a gum emulsion is meant so", *release_of(looked(grade="milky", kind="gum-emulsion"))),
    Case(
        "and so it is in the bottle",
        *release_of(bottles(bulk=looked(grade="milky", kind="gum-emulsion"))),
    ),
    Case("louche as poured is no flaw", *release_of(looked("louche"))),
    Case("a ring", *release_of(looked("ring")), looks("an oil ring")),
    Case(
        "a ring on a gum emulsion",
        *release_of(looked("ring", grade="milky", kind="gum-emulsion")),
        looks("an oil ring"),
    ),
    Case(
        "all flaws",
        *release_of(looked("ring", "floc", "crystals", "sediment", grade="hazy")),
        looks("it hazy, with an oil ring and flakes and crystals and sediment"),
    ),
    Case(
        "only the last look counts",
        *release_of(batch(make(Look, grade=Grade.MILKY), *GOOD)),
    ),
    Case(
        "bottles of what looked cloudy",
        *release_of(bottles(bulk=looked(grade="cloudy"))),
        said(
            HM,
            "looks",
            "The last look at P-1 found it cloudy.",
            'If it should not be so: pottle hold P-1 --because "WHY"',
        ),
    ),
]


@pytest.mark.parametrize("case", [*BATCHES, *PACKED, *JUDGED, *LOOKS], ids=str)
def test_a_lot_leaves_only_when_nothing_stands_in_its_way(case: Case) -> None:
    assert find(release.RULES, case) == list(case.found)


def test_a_lot_that_is_released_again_is_remarked_on_unless_the_release_is_corrected() -> None:
    told, around = release_of(batch(ADD, LOOK, FINISH, make(Judge)))
    assert list(release.released_already(told, around)) == said(
        HM, "release", "E-1 was released already.", "See by whom: pottle journal E-1"
    )
    told, around = release_of(batch(ADD, LOOK, FINISH, make(Judge)), corrects=5)
    assert list(release.released_already(told, around)) == []
    told, around = release_of(batch(ADD, LOOK, FINISH))
    assert list(release.released_already(told, around)) == []


def test_the_sentence_of_what_to_do_is_written_from_its_command() -> None:
    found = stands_in_the_way("It was not looked at.", "Look at it", "pottle look A GRADE")
    assert (found.todo, found.command) == ("Look at it: pottle look A GRADE", "pottle look A GRADE")
    told = stands_in_the_way("It is rejected.", "Say why with --because.")
    assert (told.todo, told.command) == ("Say why with --because.", None)
