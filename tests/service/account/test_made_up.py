"""What brought a batch to a volume is worked out by what is in both."""

from ledger.domain.entries.plain import facts_to_plain
from tests.keeper import Keeper
from tests.service.cases import UL, amount


def test_what_mixing_takes_is_made_good(bench: Keeper) -> None:
    """OIML R 22: 48 % vol is 934.0 kg/m³ and 500 mL of 96 % spirit 403.7 g: 530.3 g of water."""
    batch = bench.opens("start", product="Weak", kind="blend", target="1L")
    water = bench.opens("receive", material="water", amount="9L")
    bench.do("add", lot=batch, source="NS-001-J", amount="500mL")
    facts = bench.do("makeup", lot=batch, volume="1L", source=water).entry.facts
    assert facts_to_plain(facts)["used"] == amount(531_248, UL, "531.248 mL")


def test_a_making_up_over_sugar_is_worked_out_by_the_space_that_sugar_fills(bench: Keeper) -> None:
    bench.do("add", lot="OE-001-5", source="SGR-002-J", amount="100g")
    facts = bench.do("makeup", lot="OE-001-5", volume="600mL", source="NS-001-J").entry.facts
    assert facts_to_plain(facts)["used"] == amount(116_731, UL, "116.731 mL")
