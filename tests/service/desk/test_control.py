"""What a lot is held to is gathered only where a rule asks for it."""

from pathlib import Path

from ledger.domain.entries import (
    Add,
    Draft,
    Facts,
    Formula,
    Judge,
    Look,
    Measurement,
    Note,
    Rest,
    Start,
    When,
)
from ledger.domain.entries.choices import Grade, LookedAt, Measured
from ledger.domain.lots.control import Control
from ledger.service.account.state import lot_state
from ledger.service.desk.control import control_of, formula_of, last_readings
from tests.domain.builders import at, entry, lot, make, packed
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


def test_of_readings_in_the_bottle_and_in_its_bulk_the_last_of_each_kind_counts() -> None:
    """Strength was read in the bulk first and then in a bottle; sugar the other way round."""
    abv, brix = (make(Measurement, what=what) for what in (Measured.ABV, Measured.BRIX))
    bulk = lot("S-1", entry(abv, 11, at(9, day=2)), entry(brix, 14, at(9, day=5)))
    bottles = packed("P-1", entry(brix, 12, at(9, day=3)), entry(abv, 13, at(9, day=4)), bulk=bulk)
    read = [(taken.lot, taken.facts.what, taken.number) for taken in last_readings(bottles)]
    assert sorted(read) == [("P-1", Measured.ABV, 13), ("S-1", Measured.BRIX, 14)]
    assert [taken.number for taken in last_readings(bulk)] == [11, 14]


def test_the_version_that_a_batch_follows_is_the_one_it_was_begun_by(
    sqlite_keeper: Keeper,
) -> None:
    for version in (1, 2):
        sqlite_keeper.record(make(Formula, code="lime", version=version))
    begun = ((None, None), ("lime", 1), ("lime", 2), ("lime", 3), ("none", 1))
    with sqlite_keeper.reading() as connection:
        told = [
            formula_of(connection, make(Start, formula=code, formula_version=version))
            for code, version in begun
        ]
    assert [formula and formula.version for formula in told] == [None, 1, 2, None, None]


def test_a_look_alone_is_told_with_what_makes_it_doubtful(sqlite_walked: Keeper) -> None:
    """A syrup with six times the essence, that looked clear as poured."""
    words = {"product": "Orange syrup", "kind": "syrup", "target": "1L", "pour": "1:7"}
    code = sqlite_walked.opens("start", **words)
    sqlite_walked.do("add", lot=code, source="SGR-002-J", amount="600g")
    sqlite_walked.do("add", lot=code, source="WTR-002-Y", amount="600mL")
    sqlite_walked.do("add", lot=code, source="OE-001-5", amount="40mL")
    clear = make(Look, grade=Grade.CLEAR, looked_at=LookedAt.AS_POURED, dilution="1:7")
    told = [
        held_to(sqlite_walked, code, facts).doubted is not None
        for facts in (clear, make(Look, grade=Grade.MILKY), make(Note))
    ]
    assert told == [True, False, False]
