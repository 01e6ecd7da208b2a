"""The lot in hand, as a short line needs it."""

from ledger.domain.amounts.quantity import Measure
from ledger.service.bench.hand import first_lot, hand, in_hand_after, measure_of
from tests.keeper import Keeper


def test_a_batch_that_was_begun_has_no_pass_no_liquid_and_no_rest(bench: Keeper) -> None:
    new = bench.opens("start", product="Orange essence", kind="essence", target="240mL")
    found = hand(bench.book, new, None)
    assert (found.last_pass, found.liquid, found.rest) == (None, None, None)


def test_the_spirit_that_went_in_last_is_what_it_is_made_up_with(bench: Keeper) -> None:
    weak = bench.opens("receive", material="spirit", amount="1L")
    new = bench.opens("start", product="Orange essence", kind="essence", target="240mL")
    bench.do("add", lot=new, source="water", amount="10mL")
    assert hand(bench.book, new, None).liquid == "WTR-002-Y"
    bench.do("add", lot=new, source="NS-001-J", amount="100mL")
    bench.do("add", lot=new, source=weak, amount="50mL")
    bench.do("add", lot=new, source="orange-oil", amount="5mL")
    assert hand(bench.book, new, None).liquid == weak


def test_the_last_pass_and_the_rest_that_goes_on_are_told(bench: Keeper) -> None:
    new = bench.opens("start", product="Orange essence", kind="essence", target="240mL")
    bench.do("add", lot=new, source="NS-001-J", amount="100mL")
    for medium in ("paper", "frit"):
        bench.do("filter", lot=new, medium=medium, volume_in="90mL", volume_out="90mL")
    bench.do("rest", lot=new, purpose="settle")
    found = hand(bench.book, new, None)
    assert found.last_pass is not None
    assert found.last_pass.medium == "frit"
    assert found.rest is not None


def test_a_lot_and_a_material_are_counted_in_what_came(bench: Keeper) -> None:
    assert measure_of(bench.book, "LMC-001-F", None) is Measure.MG
    assert measure_of(bench.book, "MC-001-F", None) is Measure.MG
    assert measure_of(bench.book, "Spirit", None) is Measure.UL
    assert measure_of(bench.book, "nothing", None) is None
    assert first_lot(bench.book, "orange-oil") == "SOO-001-3"


def test_a_batch_is_in_hand_once_begun_and_bottles_once_nothing_is_left_to_fill(
    bench: Keeper,
) -> None:
    started = bench.do("start", product="Orange essence", kind="essence", target="240mL")
    assert in_hand_after(bench.book, [started.seq]) == started.code
    bench.do("add", lot=started.code or "", source="NS-001-J", amount="100mL")
    some = bench.do("bottle", source=started.code or "", pack="2 x 30mL")
    assert in_hand_after(bench.book, [some.seq]) == started.code
    rest = bench.do("bottle", source=started.code or "", pack="1 x 30mL")
    assert in_hand_after(bench.book, [rest.seq]) == rest.code
    noted = bench.do("note", lot=started.code or "", text="Emptied.")
    assert in_hand_after(bench.book, [noted.seq]) is None
