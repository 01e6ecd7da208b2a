"""Making a batch up to a volume: what is recorded, and what is refused in which words."""

import pytest

from ledger.domain.entries.plain import facts_to_plain
from ledger.errors import RefusedError
from tests.keeper import Keeper
from tests.service.cases import UL, Said, amount, check_recorded

RECORDED: dict[str, Said] = {
    "a making up, of which the book works out what it took": (
        "makeup",
        {"lot": "OE-001-5", "volume": "450mL", "source": "NS-001-J"},
        None,
        {
            "volume": amount(450_000, UL, "450mL"),
            "source": "NS-001-J",
            "used": amount(30_000, UL, "30 mL"),
        },
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


def test_what_mixing_takes_is_made_good(bench: Keeper) -> None:
    """OIML R 22: 48 % vol is 934.0 kg/m³ and 500 mL of 96 % spirit 403.7 g: 530.3 g of water."""
    batch = bench.opens("start", product="Weak", kind="blend", target="1L")
    water = bench.opens("receive", material="water", amount="9L")
    bench.do("add", lot=batch, source="NS-001-J", amount="500mL")
    facts = bench.do("makeup", lot=batch, volume="1L", source=water).entry.facts
    assert facts_to_plain(facts)["used"] == amount(531_248, UL, "531.248 mL")


def test_a_making_up_over_sugar_is_worked_out_by_the_space_that_sugar_fills(bench: Keeper) -> None:
    bench.do("add", lot="OE-001-5", source="SGR-001-L", amount="100g")
    facts = bench.do("makeup", lot="OE-001-5", volume="600mL", source="NS-001-J").entry.facts
    assert facts_to_plain(facts)["used"] == amount(116_731, UL, "116.731 mL")


def test_a_making_up_over_solids_of_no_known_density_is_not_worked_out(bench: Keeper) -> None:
    bench.do("material", code="citric", kind="acid")
    citric = bench.opens("receive", material="citric", amount="1kg")
    bench.do("add", lot="OE-001-5", source=citric, amount="100g")
    with pytest.raises(RefusedError) as raised:
        bench.do("makeup", lot="OE-001-5", volume="600mL", source="NS-001-J")
    assert raised.value.problems == (
        (
            "100 g of solids went into OE-001-5 since its volume was last measured, so the book "
            "cannot tell how much it took.",
            "Say how much you used with --used.",
        ),
    )
