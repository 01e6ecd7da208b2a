"""A proof, for machines."""

from ledger.domain.evidence.proofs import Proof
from ledger.service.evidence.prove import prove
from reports.json.evidence import prove as module
from reports.json.evidence.prove import prove_answer
from reports.json.kit.finding import Finding
from tests.keeper import Keeper
from tests.kept.filled import bare, filled
from tests.kept.said import check_constants
from tests.path import Lots
from tests.reports.json.kept import check


def test_a_proof_has_the_numbers_of_its_entries_and_what_does_not_fit(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    proof = prove(keeper.book, lots.packed)
    sound, bad = prove_answer(proof), prove_answer(proof, ("It does not fit.",))
    assert (sound.ok, sound.code, sound.entry_numbers) == (True, lots.packed, (32, 33, 34, 35))
    assert sound.seal.lines == proof.seal.lines
    assert (bad.ok, bad.findings) == (False, (Finding(None, "It does not fit."),))


def test_every_part_of_a_proof_stands_under_its_own_key() -> None:
    full = prove_answer(filled(Proof), ("It does not fit.", "It is cut."), "proof.json")
    check("prove_filled", full, prove_answer(bare(Proof)))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
