"""What a complaint points to, for machines."""

from ledger.domain.entries import Complaint, is_of
from ledger.service.goods.triage import triage
from reports.json.goods.complain import complain_answer
from tests.keeper import Keeper
from tests.path import Lots


def test_a_complaint_has_its_open_questions_and_the_last_look(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    done = keeper.do("complain", lot=lots.packed, symptom="ring", opened="Monday")
    assert is_of(done.entry, Complaint)
    told = complain_answer(done, None, None, triage(keeper.book, done.entry)).triage
    assert told.still_open == ("stored", "mixed", "photo")
    assert told.look is not None
    assert (told.look.grade, told.look.of_the_lot, told.kept_back) == ("cloudy", False, False)
    assert [(other.entry, other.says) for other in told.others] == [
        (35, "cloudy, to be answered in 7 d")
    ]
    assert told.shared == ()
