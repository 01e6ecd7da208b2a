"""A slip is one's own last act, while it is fresh."""

import pytest

from ledger.errors import RefusedError
from ledger.service.bench.slip import last_slip
from tests.keeper import Keeper

NOTHING = "There is nothing of the last 10 minutes by AB to undo."


def test_the_last_act_of_a_person_can_be_undone_and_then_the_one_before(bench: Keeper) -> None:
    bench.minutes_apart = 1
    first = bench.do("note", lot="OE-001-5", text="First.")
    second = bench.do("note", lot="OE-001-5", text="Second.")
    assert last_slip(bench.book, "ab").seq == second.seq
    bench.do("strike", entry=str(second.seq), because="a slip")
    assert last_slip(bench.book, "AB").seq == first.seq


def test_an_act_is_no_slip_any_more_after_ten_minutes(bench: Keeper) -> None:
    bench.do("note", lot="OE-001-5", text="First.")
    bench.clock.forward(minutes=10)
    last_slip(bench.book, "AB")
    bench.clock.forward(minutes=1)
    with pytest.raises(RefusedError) as refused:
        last_slip(bench.book, "AB")
    assert refused.value.problems == (
        (
            NOTHING,
            "Strike an older entry by its number: pottle strike NUMBER --because REASON",
        ),
    )


def test_nobody_undoes_what_somebody_else_wrote(bench: Keeper) -> None:
    bench.do("person", initials="CD", name="Cleo Dunn")
    bench.clock.forward(minutes=11)
    bench.by = "CD"
    mine = bench.do("note", lot="OE-001-5", text="By another.")
    with pytest.raises(RefusedError, match=NOTHING):
        last_slip(bench.book, "AB")
    assert last_slip(bench.book, "CD").seq == mine.seq
    with pytest.raises(RefusedError, match="by nobody to undo"):
        last_slip(bench.book, None)
