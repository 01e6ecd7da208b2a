"""What a verification found, for machines."""

from msgspec.structs import replace

from ledger.domain.evidence.seals import Seal
from ledger.service.evidence.seal import seal
from ledger.service.evidence.verify import Audit, verify
from ledger.store.audit.rows import Fault
from reports.json.evidence import verify as module
from reports.json.evidence.verify import verify_answer
from reports.json.kit.seal import seal_told
from tests.keeper import Keeper
from tests.kept.filled import bare, filled
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.kept.told import told as in_lines
from tests.path import Lots
from tests.reports.json.kept import check


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


def test_every_field_of_what_was_found_is_the_kept_one(walked: tuple[Keeper, Lots]) -> None:
    keeper, _ = walked
    found = verify(keeper.book)
    wrong = replace(found, faults=(Fault(7, "It says otherwise."), Fault(None, "It is cut.")))
    root = found.root.hex()
    answers = (verify_answer(found), verify_answer(replace(wrong, after=9), seal(keeper.book)))
    told = "\n".join(line for each in answers for line in in_lines("verification", each))
    check_golden("json/verify.txt", told.replace(root, "ROOT") + "\n")


def test_every_part_of_what_was_found_stands_under_its_own_key() -> None:
    full = verify_answer(filled(Audit), filled(Seal))
    check("verify_filled", full, verify_answer(bare(Audit)))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
