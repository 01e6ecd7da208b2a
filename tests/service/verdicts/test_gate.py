"""What stands in the way of a release is asked before the release is."""

import pytest

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Formula
from ledger.domain.entries.choices import LookedAt, ProductKind
from ledger.domain.entries.masters import FormulaStep
from ledger.errors import FindingError
from ledger.service.verdicts.gate import in_the_way
from tests.keeper import Keeper
from tests.path import Lots

STEPS = (FormulaStep("look", looked_at=LookedAt.AS_POURED, dilution="1:7"), FormulaStep("bottle"))


def test_what_stands_in_the_way_is_what_a_release_is_refused_for(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    basis = parse_quantity("1L")
    keeper.record(Formula("plain", 1, "Plain essence", ProductKind.ESSENCE, basis, steps=STEPS))
    code = keeper.opens("start", formula="plain", target="300mL")
    keeper.do("add", lot=code, source=lots.spirit, amount="300mL")
    keeper.do("look", lot=code, grade="bright")
    before, found = len(keeper.entries()), in_the_way(keeper.book, code)
    assert len(keeper.entries()) == before
    assert [finding.todo for finding in found] == [
        f"Finish it with what came out: pottle finish {code} VOLUME",
        f"Look at it: pottle look {code} GRADE --of as-poured --dilution 1:7",
    ]
    with pytest.raises(FindingError) as raised:
        keeper.do("judge", lot=code, verdict="release")
    assert raised.value.problems == tuple((finding.what, finding.todo) for finding in found)
    keeper.do("finish", lot=code, volume="300mL")
    keeper.do("look", lot=code, grade="bright", of="as-poured", dilution="1:7")
    assert in_the_way(keeper.book, code) == ()
