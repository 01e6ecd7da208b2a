"""A dilution in words: volumes, weights, what shrinks and what is measured when."""

from ledger.domain.amounts.quantity import parse_quantity
from ledger.science.liquids.dilution import dilute
from reports.words.glass import dilute as module
from reports.words.glass.dilute import BASIS, CAUTION, dilution_lines, proof_words
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said


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


def test_dilutions_read_as_the_kept_ones() -> None:
    """Strong and weak spirit, in mL and by weight, warmed, and so little that nothing shrinks."""
    told = []
    for found in (
        dilute(96.3, 80, parse_quantity("1L")),
        dilute(30, 10, parse_quantity("500g")),
        dilute(96, 40, parse_quantity("250mL"), 25.0),
        dilute(10, 9.9, parse_quantity("5mL")),
    ):
        told += [*dilution_lines(found), ""]
    check_golden("dilutions.txt", "\n".join(told))


def test_proof_is_told_to_a_tenth() -> None:
    assert proof_words(80) == "159.9"


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


def test_proof_is_told_to_a_tenth_from_one_on_and_to_a_hundredth_below() -> None:
    """Proof of the US is a hair under twice the % vol."""
    assert [proof_words(abv) for abv in (0.78, 0.52, 0.117)] == ["1.6", "1", "0.23"]


def test_strengths_are_told_to_a_thousandth() -> None:
    first, *_ = dilution_lines(dilute(96.12347, 40.00068, parse_quantity("1L")))
    assert "spirit of 96.123 % vol and" in first
    assert first.endswith(" of 40.001 % vol.")
