"""What a lot is held to is gathered only where a rule asks for it."""

from pathlib import Path

from ledger.domain.entries import Add, Draft, Facts, Judge, Note, Rest, When
from ledger.domain.lots.control import Control
from ledger.service.account.state import lot_state
from ledger.service.desk.control import control_of
from tests.domain.builders import make
from tests.keeper import Keeper
from tests.service.orange import make_orange


def held_to(keeper: Keeper, code: str, facts: Facts) -> Control:
    draft = Draft(facts=facts, lot=code, happened=When(keeper.clock.now, 0), by="AB")
    with keeper.reading() as connection:
        return control_of(connection, draft, lot_state(connection, code), ())


def test_a_delivery_is_held_to_nothing(sqlite_keeper: Keeper) -> None:
    code = sqlite_keeper.opens("receive", material="spirit", amount="1L")
    assert held_to(sqlite_keeper, code, make(Note)) == Control()


def test_inputs_are_gathered_for_an_addition_and_not_for_a_note(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    code = make_orange(sqlite_keeper, tmp_path)
    added, noted = held_to(sqlite_keeper, code, make(Add)), held_to(sqlite_keeper, code, make(Note))
    assert {item.code for item in added.inputs} == {
        "SOO-001-3",
        "LMC-001-F",
        "LMC-002-D",
        "NS-001-J",
    }
    assert noted.inputs == ()
    assert noted.formula is not None
    assert (noted.formula.code, noted.is_withdrawn) == ("orange-essence", False)


def test_the_strength_is_reckoned_for_a_release_alone(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    code = make_orange(sqlite_keeper, tmp_path)
    sqlite_keeper.do(
        "withdraw", code="orange-essence", version="1", because="the yield was never reached"
    )
    released = held_to(sqlite_keeper, code, make(Judge))
    assert released.is_withdrawn
    assert held_to(sqlite_keeper, code, make(Add)).strength_mpct is None


def test_a_vessel_that_was_not_cleaned_is_told_with_what_it_held(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    code = make_orange(sqlite_keeper, tmp_path)
    found = held_to(sqlite_keeper, code, make(Rest, vessel="Jar 2")).last_held
    assert found is not None
    assert (found.vessel, found.lot, found.product) == ("jar 2", code, "Orange essence")
