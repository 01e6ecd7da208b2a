"""What a label declares and the book does not know stands in the way of a release of bottles."""

from ledger.domain.entries import Judge, Material
from ledger.domain.entries.choices import MaterialKind, Verdict
from ledger.domain.masters.gaps import gaps_of
from ledger.domain.masters.substances import Concerns
from ledger.domain.rules.release.barriers import stands_in_the_way
from ledger.domain.rules.release.declared import what_a_label_declares_is_known
from tests.domain.builders import draft, packed, scene

ACID = Material("citric", "Citric acid", MaterialKind.ACID)
SUGAR = Material("sugar", "White sugar", MaterialKind.SUGAR)
GAPS = Concerns(undeclared=(*gaps_of(ACID), *gaps_of(SUGAR)))


def test_the_gaps_of_each_material_are_one_finding_of_a_release_alone() -> None:
    bottles = packed()
    releases, holds = (draft(Judge(verdict)) for verdict in (Verdict.RELEASE, Verdict.HOLD))
    around = scene(bottles, concerns=GAPS)
    assert list(what_a_label_declares_is_known(releases, around)) == [
        stands_in_the_way(
            "The class and number of the additive Citric acid are not recorded. Whether Citric "
            f"acid carries allergens is not recorded. A label of {bottles.code}, which has citric "
            "in it, declares that.",
            "Record what its papers say",
            'pottle material change citric --additive "CLASS AND NUMBER" '
            '--allergens "NONE OR WHICH"',
        ),
        stands_in_the_way(
            f"Whether White sugar carries allergens is not recorded. A label of {bottles.code}, "
            "which has sugar in it, declares that.",
            "Record what its papers say",
            'pottle material change sugar --allergens "NONE OR WHICH"',
        ),
    ]
    assert list(what_a_label_declares_is_known(holds, around)) == []
    assert list(what_a_label_declares_is_known(releases, scene(bottles))) == []
