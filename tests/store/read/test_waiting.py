"""Lots that wait for something."""

from pathlib import Path

from ledger.store.read.waiting import Waiting, waiting_lots
from tests.keeper import Keeper
from tests.service.orange import start_orange
from tests.store.read.numbers import Walked, number


def test_a_rest_that_goes_on_waits_until_it_is_ended(walked: Walked) -> None:
    keeper, lots = walked
    keeper.do("rest", lot=lots.syrup, purpose="settle")
    keeper.do("send", lot=lots.packed, amount="1", moved_as="retained")
    with keeper.reading() as connection:
        syrup, packed = number(connection, lots.syrup), number(connection, lots.packed)
        told = waiting_lots(connection)
    assert told == Waiting(resting=[syrup], retained=[packed], by_formula=[])
    assert told.lots == {syrup, packed}
    keeper.do("rest", lot=lots.syrup, ended="yes")
    with keeper.reading() as connection:
        assert waiting_lots(connection).resting == []


def test_a_batch_by_a_formula_may_wait_for_a_look(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    code = start_orange(sqlite_keeper, tmp_path)
    with sqlite_keeper.reading() as connection:
        assert waiting_lots(connection).by_formula == [number(connection, code)]
