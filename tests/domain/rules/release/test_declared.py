"""What a label declares and the book does not know is remarked on at a release."""

from ledger.domain.entries import Judge
from ledger.domain.entries.choices import Verdict
from ledger.domain.masters.substances import Concerns
from ledger.domain.rules.finding import remark
from ledger.domain.rules.release.declared import what_a_label_declares_is_known
from tests.domain.builders import draft, packed, scene

GAPS = Concerns(undeclared=("sugar", "spirit"))


def test_gaps_are_a_remark_on_a_release_alone() -> None:
    bottles = packed()
    releases, holds = (draft(Judge(verdict)) for verdict in (Verdict.RELEASE, Verdict.HOLD))
    around = scene(bottles, concerns=GAPS)
    assert list(what_a_label_declares_is_known(releases, around)) == [
        remark(
            "undeclared",
            f"What a label of {bottles.code} declares, such as allergens, is not recorded of "
            "sugar, spirit.",
            f"pottle serving {bottles.code} says what to record.",
        )
    ]
    assert list(what_a_label_declares_is_known(holds, around)) == []
    assert list(what_a_label_declares_is_known(releases, scene(bottles))) == []
