"""Which lot a material or an ending means is found by a server as the readers find it."""

import pytest

from ledger.service.account.codes import first_of_material, lot_named
from ledger.store.ahead import foreseen as reads
from ledger.store.ahead.named import foresee_ending, foresee_first_of
from ledger.store.engine.acts import acting
from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.turn import turn_of
from tests.keeper import LATER, Keeper

TODAY = LATER.date()


def receive(keeper: Keeper, amount: str, best_before: str = "") -> str:
    words = {"best_before": best_before} if best_before else {}
    return keeper.opens("receive", material="sugar", amount=amount, because="old", **words)


def test_of_a_material_the_first_to_expire_of_those_on_hand_is_found(
    postgres_keeper: Keeper,
) -> None:
    """One that is past its date, one that is used up and one without a date come after it."""
    receive(postgres_keeper, "1 kg", "2026-03-01")
    receive(postgres_keeper, "2 kg")
    receive(postgres_keeper, "3 kg", "2027-05-01")
    first = receive(postgres_keeper, "4 kg", "2027-01-01")
    gone = receive(postgres_keeper, "5 kg", "2026-12-01")
    postgres_keeper.do("send", lot=gone, amount="5 kg", moved_as="destroyed", because="spilt")

    def foretell(foreseen: Foreseen) -> None:
        reads.foresee_source(foreseen, foresee_first_of(foreseen, "sugar", TODAY))

    with acting(postgres_keeper.book.engine, foretell) as connection:
        turn = turn_of(connection)
        assert turn
        asked = {cells for _, cells in turn.lasting}
        lot, is_choice = first_of_material(connection, "sugar", TODAY)
        assert (lot.code, is_choice) == (first, True)
        assert frozenset({("code", first)}) in asked


@pytest.mark.parametrize(("ending", "code"), [("001-J", "NS-001-J"), ("OE-001-5", "OE-001-5")])
def test_an_ending_is_found_and_a_whole_code(
    ending: str, code: str, postgres_walked: Keeper
) -> None:
    def foretell(foreseen: Foreseen) -> None:
        reads.foresee_source(foreseen, foresee_ending(foreseen, ending))

    with acting(postgres_walked.book.engine, foretell) as connection:
        turn = turn_of(connection)
        assert turn
        asked = {cells for _, cells in turn.lasting}
        assert lot_named(connection, ending) == code
        assert frozenset({("code", code)}) in asked
