"""Corrections, strikes and amounts: what counts is what is in force, in the order it happened."""

from random import Random

import pytest

from ledger.domain.entries import Entry
from ledger.errors import RefusedError
from tests.keeper import Keeper
from tests.path import Lots, make_essence, receive_all
from tests.store.contract.random_verbs import scribble


def entry_of(keeper: Keeper, kind: str, lot: str | None = None) -> Entry:
    """Return the first entry of a kind about a lot, or about any."""
    found = (e for e in keeper.entries() if e.kind == kind and lot in (None, e.draft.lot))
    return next(found)


class ChangesContract:
    """Its tests need the fixture `keeper`: a book with people and materials."""

    def test_a_corrected_addition_moves_both_balances(self, keeper: Keeper) -> None:
        lots, code = _poured(keeper)
        addition = entry_of(keeper, "add", code)
        keeper.do("correct", entry=str(addition.seq), changes="amount=500mL", because="misread")
        assert (keeper.on_hand(lots.spirit), keeper.on_hand(code)) == (4_500_000, 500_000)
        assert (keeper.held(lots.spirit), keeper.held(code)) == (4_500_000, 500_000)

    def test_a_correction_keeps_the_place_of_what_it_corrects(self, keeper: Keeper) -> None:
        """An addition before a finish stays before it, so the level measured there still counts."""
        _, code = _poured(keeper)
        keeper.do("finish", lot=code, volume="390mL")
        addition = entry_of(keeper, "add", code)
        made = keeper.do(
            "correct", entry=str(addition.seq), changes="amount=450mL", because="misread"
        )
        assert (made.entry.stands_for, made.entry.draft.happened) == (
            addition.seq,
            addition.draft.happened,
        )
        assert (keeper.on_hand(code), keeper.held(code)) == (390_000, 390_000)

    @pytest.mark.parametrize(("order", "amount"), [("add count", 300_000), ("count add", 800_000)])
    def test_of_one_instant_the_first_number_of_a_chain_decides(
        self, order: str, amount: int, keeper: Keeper
    ) -> None:
        lots = receive_all(keeper)
        code = keeper.opens("start", product="Essence", kind="essence", target="1L")
        keeper.minutes_apart = 0
        for verb in order.split():
            if verb == "add":
                addition = keeper.do("add", lot=code, source=lots.spirit, amount="400mL")
            else:
                keeper.do("count", lot=code, amount="300mL", because="poured away")
        keeper.do("correct", entry=str(addition.seq), changes="amount=500mL", because="misread")
        assert (keeper.on_hand(code), keeper.held(code)) == (amount, amount)

    def test_a_corrected_level_counts_anew(self, keeper: Keeper) -> None:
        _, code = _poured(keeper)
        finish = keeper.do("finish", lot=code, volume="390mL")
        keeper.do("correct", entry=str(finish.seq), changes="volume=380mL", because="misread")
        assert (keeper.on_hand(code), keeper.held(code)) == (380_000, 380_000)

    def test_a_struck_level_lets_the_movements_count(self, keeper: Keeper) -> None:
        _, code = _poured(keeper)
        finish = keeper.do("finish", lot=code, volume="390mL")
        keeper.do("strike", entry=str(finish.seq), because="another batch")
        assert (keeper.on_hand(code), keeper.held(code)) == (400_000, 400_000)

    def test_a_struck_addition_gives_back_what_it_took(self, keeper: Keeper) -> None:
        lots, code = _poured(keeper)
        keeper.do("strike", entry=str(entry_of(keeper, "add", code).seq), because="not done")
        assert (keeper.on_hand(lots.spirit), keeper.on_hand(code)) == (5_000_000, 0)

    def test_a_corrected_entry_is_not_corrected_again(self, keeper: Keeper) -> None:
        _, code = _poured(keeper)
        old = entry_of(keeper, "add", code).seq
        keeper.do("correct", entry=str(old), changes="amount=500mL", because="misread")
        with pytest.raises(RefusedError) as raised:
            keeper.do("correct", entry=str(old), changes="amount=600mL", because="misread")
        assert raised.value.problems == (
            (
                f"Entry {old} is not in force: it was corrected or struck, or is a strike.",
                f"pottle journal --entry {old} shows which entry counts now.",
            ),
        )

    def test_a_correction_is_corrected_in_its_turn(self, keeper: Keeper) -> None:
        lots, code = _poured(keeper)
        old = entry_of(keeper, "add", code).seq
        for amount in ("500mL", "600mL"):
            last = len(keeper.bodies()) if amount == "600mL" else old
            made = keeper.do("correct", entry=str(last), changes=f"amount={amount}", because="so")
        assert made.entry.stands_for == old
        assert (keeper.on_hand(lots.spirit), keeper.on_hand(code)) == (4_400_000, 600_000)

    def test_a_strike_is_not_struck(self, keeper: Keeper) -> None:
        note = keeper.do("note", text="Words.")
        strike = keeper.do("strike", entry=str(note.seq), because="wrong book").seq
        with pytest.raises(RefusedError) as raised:
            keeper.do("strike", entry=str(strike), because="right book")
        assert raised.value.problems == (
            (
                f"Entry {strike} is not in force: it was corrected or struck, or is a strike.",
                f"pottle journal --entry {strike} shows which entry counts now.",
            ),
        )

    def test_a_lot_that_others_were_made_of_is_not_struck(self, keeper: Keeper) -> None:
        lots, _ = _poured(keeper)
        receipt = entry_of(keeper, "receipt", lots.spirit).seq
        with pytest.raises(RefusedError) as raised:
            keeper.do("strike", entry=str(receipt), because="not ours")
        assert raised.value.problems == (
            (
                f"Entry {receipt} opened a lot that 1 other entry speaks of.",
                "Strike those first, or correct this one instead: pottle correct "
                f'{receipt} --set FIELD=VALUE --because "WHY"',
            ),
        )

    def test_what_happened_earlier_counts_in_its_place(self, keeper: Keeper) -> None:
        """A delivery used before the count of its lot does not lower what was counted."""
        lots = receive_all(keeper)
        code = keeper.opens("start", product="Essence", kind="essence", target="1L")
        keeper.clock.forward(hours=2)
        keeper.do("count", lot=lots.spirit, amount="4L", because="poured away")
        keeper.do("add", lot=code, source=lots.spirit, amount="1L", at="-1h")
        assert (keeper.on_hand(lots.spirit), keeper.held(lots.spirit)) == (4_000_000, 4_000_000)

    @pytest.mark.parametrize("seed", [1, 2])
    def test_the_view_and_the_reckoning_agree_after_any_verbs(
        self, seed: int, keeper: Keeper
    ) -> None:
        lots = receive_all(keeper)
        make_essence(keeper, lots)
        scribble(keeper, Random(seed), wanted=20)
        codes = keeper.lot_codes()
        assert {c: keeper.on_hand(c) for c in codes} == {c: keeper.held(c) for c in codes}


def _poured(keeper: Keeper) -> tuple[Lots, str]:
    """Return the lots received and a batch that 400 mL of spirit went into."""
    lots = receive_all(keeper)
    code = keeper.opens("start", product="Essence", kind="essence", target="480mL")
    keeper.do("add", lot=code, source=lots.spirit, amount="400mL")
    return lots, code
