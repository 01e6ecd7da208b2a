"""What brought a batch to a volume is worked out by what is in both."""

from ledger.domain.entries import When
from ledger.domain.entries.plain import facts_to_plain
from ledger.service.account.made_up import used_to_make_up, volume_with
from tests.keeper import MORNING, Keeper
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


def test_a_volume_is_told_with_so_much_of_a_lot_in_it_whatever_that_is_counted_in(
    bench: Keeper,
) -> None:
    """Of the batch as it was then. OIML R 22: 339.1 g of spirit and 79.9 of water, 853.3 kg/m³."""
    then = When(bench.clock.now, 0)
    water = bench.opens("receive", material="water", amount="9L")
    bench.do("material", code="gum", kind="gum")
    gum = bench.opens("receive", material="gum", amount="1L")
    weighed = bench.opens("receive", material="orange-oil", amount="100g")
    with bench.reading() as connection:

        def together(source: str, taken: int, happened: When = then) -> int:
            return volume_with(connection, "OE-001-5", source, taken, happened)

        assert together("NS-001-J", 80_000) == 500_000
        assert together("NS-001-J", 0) == 420_000
        assert together(water, 80_000) == 491_009
        assert together("SOO-001-3", 30_000) == 450_000
        assert together(weighed, 30_000) == 455_503
        assert together("SGR-002-J", 100_000) == 483_269
        before = When(MORNING, 0)
        assert together("NS-001-J", 80_000, before) == 80_000
        assert used_to_make_up(connection, "OE-001-5", "NS-001-J", 500_000, then) == 80_000
        assert used_to_make_up(connection, "OE-001-5", "NS-001-J", 500_000, before) == 500_000
        assert used_to_make_up(connection, "OE-001-5", gum, 500_000, then) == 80_000
        assert used_to_make_up(connection, "OE-001-5", "LOT-001-X", 500_000, then) is None
