"""What a complaint points to, in words."""

from ledger.domain.entries import Complaint, is_of
from ledger.service.goods.triage import triage
from reports.words.goods.triage import triage_lines, triage_step
from tests.keeper import Keeper
from tests.path import Lots


def test_what_is_still_to_ask_is_told_first_and_a_second_complaint_asks_for_a_hold(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    done = keeper.do("complain", lot=lots.packed, symptom="ring", stored="cellar", mixed="1 to 7")
    assert is_of(done.entry, Complaint)
    found = triage(keeper.book, done.entry)
    lines = triage_lines(found)
    assert lines[0].startswith("Still to ask: when it was opened, a photo. ")
    assert lines[1].endswith(": cloudy, neat. No bottle was kept back.")
    assert "1 other complaint of BOS-001-S: 2026-03-04 cloudy, to be answered in 7 d." in lines
    assert triage_step(found) == f'pottle hold {lots.packed} --because "WHY"'
