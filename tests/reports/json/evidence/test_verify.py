"""What a verification found, for machines."""

from ledger.service.evidence.seal import seal
from ledger.service.evidence.verify import verify
from reports.json.evidence.verify import audit_plain
from tests.keeper import Keeper
from tests.path import Lots


def test_a_sound_book_has_no_findings_and_a_seal_only_where_one_was_given(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, _ = walked
    older, found = seal(keeper.book), verify(keeper.book)
    told = audit_plain(found)
    assert (told["ok"], told["entries"], told["findings"]) == (True, 36, [])
    assert told["root"] == older.root
    assert "seal" not in told
    assert audit_plain(found, older)["seal"] == list(older.lines)
