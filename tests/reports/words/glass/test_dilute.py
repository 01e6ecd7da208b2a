"""A dilution in words: volumes, weights, what shrinks and what is measured when."""

from ledger.domain.amounts.quantity import parse_quantity
from ledger.science.liquids.dilution import dilute
from reports.words.glass.dilute import BASIS, CAUTION, dilution_lines, proof_words, thousandth


def test_the_first_line_has_the_volumes_and_the_last_the_caution() -> None:
    """831 mL of spirit of 96 % make a litre of 80 %: the pharmacopoeia's figure, within 1 mL."""
    lines = dilution_lines(dilute(96.3, 80, parse_quantity("1L")))
    assert lines[0] == (
        "830.7 mL of spirit of 96.3 % vol and 189.9 mL of water make 1000 mL of 80 % vol."
    )
    assert lines[1] == BASIS
    assert lines[-1] == f"Caution: {CAUTION[0].lower()}{CAUTION[1:]}"


def test_weak_spirit_is_said_to_grow() -> None:
    told = " ".join(dilution_lines(dilute(30, 10, parse_quantity("500g"))))
    assert "(contraction)" not in told
    assert "grow" in told


def test_a_thousandth_has_a_plain_minus_and_proof_a_tenth() -> None:
    assert [thousandth(830_700), thousandth(-500)] == ["830.7", "-0.5"]
    assert proof_words(80) == "159.9"
