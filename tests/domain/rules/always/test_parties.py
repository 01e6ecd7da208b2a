"""Parties: goods go to somebody, and a name that is nearly another is asked about."""

import pytest

from ledger.domain.entries import Complaint, Contact, Move, Note, Party, Receipt
from ledger.domain.entries.choices import MoveAs
from ledger.domain.rules.always import parties
from ledger.domain.rules.always.parties import party_of
from ledger.domain.rules.finding import Severity
from tests.domain.builders import draft, entry, make, ml, packed, pieces, scene
from tests.domain.rules.cases import WHY, Case, find, said

NOBODY = make(Move, party=None)
TO = (
    'Name them with --to "NAME", or --to market or --to walk-in where nobody can; if it is not '
    "known, say why with --because."
)
NEAR = {"near_names": ("Café Blue", "Cafés Blue")}

CASES = [
    *(
        Case(
            f"a delivery that brings the name {name}",
            draft(make(Move, party=name)),
            scene(packed(), brings_name=True),
            said(
                Severity.REMARK,
                "name",
                f"“{name}” is named in the text of this entry, where nothing can be forgotten.",
                "So that later entries have a code instead: pottle party add "
                f"{typed} --phone NUMBER",
            ),
        )
        for name, typed in (
            ("Quay Bar", '"Quay Bar"'),
            ("XX Bar", '"XX Bar"'),
            *((f"Bar {mark}5", "NAME") for mark in '"$`\\!'),
        )
    ),
    Case("a supplier who is new", draft(make(Receipt)), scene(brings_name=True)),
    Case("to somebody", draft(make(Move, party="Quay Bar")), scene(packed())),
    Case("to a market", draft(make(Move, party="market")), scene(packed())),
    Case("poured", draft(make(Move, party=None, moved_as=MoveAs.TASTING)), scene(packed())),
    Case("broken", draft(make(Move, party=None, moved_as=MoveAs.BREAKAGE)), scene(packed())),
    Case("an old sale corrected", draft(NOBODY, corrects=2), scene(corrected=entry(NOBODY, 2))),
    *(
        Case(
            f"{told} sold to nobody, as a correction of {what}",
            draft(make(Move, party=None, amount=amount), "P-1", corrects=2),
            scene(packed(), corrected=was),
            said(WHY, "party", f"{told} sold, and it is not said to whom.", TO),
        )
        for what, was in (
            ("nothing", None),
            ("what went to somebody", entry(make(Move), 2)),
            ("a note", entry(make(Note), 2)),
        )
        for told, amount in (
            ("6 of P-1 are", pieces(6)),
            ("2 of P-1 are", pieces(2)),
            ("1 of P-1 is", pieces(1)),
            ("500 mL of P-1 is", ml(500)),
            ("1000 mL of P-1 is", ml(1000)),
        )
    ),
    Case(
        "a sample for nobody",
        draft(make(Move, party=None, moved_as=MoveAs.SAMPLE), "P-1"),
        scene(packed()),
        said(WHY, "party", "6 of P-1 are given as a sample, and it is not said to whom.", TO),
    ),
    Case(
        "sent on return to nobody",
        draft(make(Move, party=None, moved_as=MoveAs.ON_RETURN), "P-1"),
        scene(packed()),
        said(
            WHY,
            "party",
            "6 of P-1 are sent on sale or return, and it is not said to whom.",
            TO,
        ),
    ),
    Case(
        "back from nobody",
        draft(make(Move, party=None, moved_as=MoveAs.RETURNED), "P-1"),
        scene(packed()),
        said(
            WHY,
            "party",
            "6 of P-1 came back, and it is not said from whom.",
            TO.replace("--to", "--from"),
        ),
    ),
    Case(
        "a name that is nearly two others",
        draft(make(Move, party="Cafe Blue"), "P-1"),
        scene(packed(), **NEAR),
        said(
            Severity.ASK,
            "name",
            "“Cafe Blue” is not in the book, and “Café Blue” and “Cafés Blue” are.",
            "Write it as the book has it; if it is somebody else, say so with --because.",
        ),
    ),
    Case(
        "a name that is nearly another",
        draft(make(Party, name="Cafe Blue"), None),
        scene(near_names=("Café Blue",)),
        said(
            Severity.ASK,
            "name",
            "“Cafe Blue” is not in the book, and “Café Blue” is.",
            "Write it as the book has it; if it is somebody else, say so with --because.",
        ),
    ),
]


@pytest.mark.parametrize("case", CASES, ids=str)
def test_goods_go_to_somebody_by_the_name_that_the_book_has(case: Case) -> None:
    assert find(parties.RULES, case) == list(case.found)


def test_whom_an_entry_names() -> None:
    assert party_of(draft(make(Receipt, supplier="Pretend Oils"))) == "Pretend Oils"
    assert party_of(draft(make(Party, name="Quay Bar"))) == "Quay Bar"
    assert party_of(draft(make(Complaint, party="Inn"))) == "Inn"
    assert party_of(draft(make(Contact, party="Inn"))) == "Inn"
    assert party_of(draft(make(Note))) is None
