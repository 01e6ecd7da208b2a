"""The number of the next case, whatever became of those before it."""

from ledger.store.read.cases import next_case
from tests.keeper import Keeper


def test_no_case_gets_a_number_that_another_had(sqlite_walked: Keeper) -> None:
    def upcoming() -> int:
        with sqlite_walked.reading() as connection:
            return next_case(connection)

    assert upcoming() == 4
    done = sqlite_walked.do("cases", lot="BOS-001-S", pack="2 x 1")
    assert upcoming() == 6
    sqlite_walked.do("correct", entry=str(done.seq), changes="count=1", because="one was not full")
    assert upcoming() == 6
    sqlite_walked.do("strike", entry=str(done.seq + 1), because="nor was the other")
    assert upcoming() == 6
