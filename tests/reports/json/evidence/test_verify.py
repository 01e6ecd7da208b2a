"""What a verification found, for machines."""

from ledger.service.evidence.seal import seal
from ledger.service.evidence.verify import verify
from reports.json.evidence.verify import verify_answer
from reports.json.kit.seal import seal_told
from tests.keeper import Keeper
from tests.path import Lots


def test_a_sound_book_has_no_findings_and_a_seal_only_where_one_was_given(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, _ = walked
    older, found = seal(keeper.book), verify(keeper.book)
    told, against = verify_answer(found), verify_answer(found, older)
    assert (told.ok, told.entries, told.findings) == (True, 36, ())
    assert told.root == older.root
    assert (told.seal, told.read_after) == (None, None)
    assert (against.seal, against.read_after) == (seal_told(older), 0)
