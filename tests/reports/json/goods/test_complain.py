"""What a complaint points to, for machines."""

from ledger.domain.entries import Complaint, Note, is_of
from ledger.service.desk.book import Recorded
from ledger.service.goods.triage import Triage, triage
from ledger.service.lots.dossier import dossier
from reports.json.goods.complain import complain_answer
from tests.keeper import Keeper
from tests.kept.filled import bare, filled
from tests.path import Lots
from tests.reports.json.kept import check


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


def test_every_field_of_what_a_complaint_points_to_is_the_kept_one(
    walked: tuple[Keeper, Lots],
) -> None:
    """A ring and a second complaint of another lot of the same oil."""
    keeper, lots = walked
    keeper.do("complain", lot=lots.essence, symptom="haze")
    done = keeper.do("complain", lot=lots.packed, symptom="ring", opened="Monday")
    assert is_of(done.entry, Complaint)
    found = triage(keeper.book, done.entry)
    check("complain", complain_answer(done, dossier(keeper.book, lots.packed), "next", found))


def test_every_part_of_what_a_complaint_points_to_stands_under_its_own_key() -> None:
    done = filled(Recorded[Note], draws_on=(), others=())
    answers = (complain_answer(done, None, None, each(Triage)) for each in (filled, bare))
    check("complain_filled", *answers)
