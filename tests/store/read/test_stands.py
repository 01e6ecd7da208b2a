"""How many lots stand at once, as each stands when it is folded from its own entries."""

from sqlalchemy import text

from ledger.domain.entries.choices import Grade, Verdict
from ledger.domain.lots.lot import Stand, Status
from ledger.domain.lots.state import status
from ledger.service.account.state import lot_state
from ledger.store.read.lots import lots_by_number
from ledger.store.read.stands import Standing, stands
from tests.keeper import Keeper
from tests.store.read.numbers import Walked, number


def told(keeper: Keeper, code: str) -> set[str]:
    """Return where a lot stands by its own fold, by that of many, and by the view."""
    query = text("SELECT status FROM lot_status WHERE code = :code")
    with keeper.reading() as connection:
        lot = number(connection, code)
        return {
            str(status(lot_state(connection, code))),
            str(lots_by_number(connection, [lot])[lot].status),
            str(connection.execute(query, {"code": code}).scalar_one()),
        }


def test_what_goes_into_a_released_lot_opens_it_again_however_it_is_asked(walked: Walked) -> None:
    keeper, lots = walked
    code = lots.essence
    assert told(keeper, code) == {Status.RELEASED}
    keeper.do("add", lot=code, source=lots.spirit, amount="5mL")
    assert told(keeper, code) == {Status.MAKING}
    keeper.do("finish", lot=code, volume="420mL")
    assert told(keeper, code) == {Status.FINISHED}
    keeper.do("judge", lot=code, verdict="hold", because="it smells of the jar")
    keeper.do("makeup", lot=code, volume="425mL", source=lots.spirit, used="5mL")
    assert told(keeper, code) == {Status.HELD}


def test_stands_are_those_of_the_entries_in_force_by_when_they_happened(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        essence = number(connection, lots.essence)
        spirit = number(connection, lots.spirit)
        found = stands(connection, [essence, spirit])
    assert found == {essence: Standing(Stand(Verdict.RELEASE, is_finished=True), Grade.HAZY)}
