"""A proof, for machines."""

from ledger.service.evidence.prove import prove
from reports.json.evidence.prove import proof_plain
from tests.keeper import Keeper
from tests.path import Lots


def test_a_proof_has_the_numbers_of_its_entries_and_what_does_not_fit(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    proof = prove(keeper.book, lots.packed)
    sound, bad = proof_plain(proof), proof_plain(proof, ("It does not fit.",))
    assert (sound["ok"], sound["lot"], sound["entries"]) == (True, lots.packed, [32, 33, 34, 35])
    assert sound["seal"] == list(proof.seal.lines)
    assert (bad["ok"], bad["findings"]) == (False, ["It does not fit."])
