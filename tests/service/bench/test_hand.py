"""The lot in hand, as a short line needs it."""

from ledger.domain.amounts.quantity import Measure
from ledger.service.bench.hand import (
    first_lot,
    hand,
    hand_of,
    in_hand_after,
    is_as_read,
    known_code,
    measure_of,
)
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


def test_what_a_batch_is_made_up_or_rinsed_with_is_its_liquid_and_a_rinse_kept_apart_is_none(
    bench: Keeper,
) -> None:
    """Spirit counts before water, whichever went in last."""
    spirits = [bench.opens("receive", material="spirit", amount="1L") for _ in range(3)]
    new = bench.opens("start", product="Orange essence", kind="essence", target="240mL")

    def liquid() -> str | None:
        return hand(bench.book, new, None).liquid

    bench.do("add", lot=new, source=spirits[0], amount="100mL")
    bench.do("add", lot=new, source="water", amount="50mL")
    assert liquid() == spirits[0]
    bench.do("makeup", lot=new, volume="180mL", source=spirits[1])
    assert liquid() == spirits[1]
    bench.do("filter", lot=new, medium="paper", volume_in="180mL", volume_out="170mL")
    words = {"lot": new, "source": spirits[2], "volume_in": "20mL", "volume_out": "15mL"}
    bench.do("rinse", **words, went_to="apart")
    bench.do("rinse", **words, went_to="waste")
    assert liquid() == spirits[1]
    bench.do("rinse", **words, went_to="batch")
    assert liquid() == spirits[2]


def test_a_lot_is_as_it_was_read_until_anything_is_recorded(bench: Keeper) -> None:
    found = hand(bench.book, "OE-001-5", None)
    assert found == hand_of(bench.book, found.state)
    assert found.at_entry == len(bench.bodies())
    assert is_as_read(bench.book, found)
    bench.do("note", text="Elsewhere.")
    assert not is_as_read(bench.book, found)


def test_a_lot_is_known_by_its_whole_code_alone(bench: Keeper) -> None:
    assert known_code(bench.book, "oe-001-5")
    assert not known_code(bench.book, "001-5")
    assert measure_of(bench.book, " oe-001-5 ", None) is Measure.UL
    assert measure_of(bench.book, bench.lot_codes()[-1], None) is Measure.UEACH


def test_of_several_entries_the_last_that_says_which_lot_is_in_hand_counts(bench: Keeper) -> None:
    first, second = (
        bench.do("start", product="Orange essence", kind="essence", target="240mL")
        for _ in range(2)
    )
    note = bench.do("note", text="Nothing of it.")
    assert in_hand_after(bench.book, [first.seq, second.seq, note.seq]) == second.code
    assert in_hand_after(bench.book, [second.seq, first.seq]) == first.code
    assert in_hand_after(bench.book, [note.seq, 9999]) is None
    assert in_hand_after(bench.book, []) is None
