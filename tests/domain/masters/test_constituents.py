"""Constituents: read as a certificate lists them, never guessed where two readings exist."""

import pytest

from ledger.domain.entries.masters import Constituent
from ledger.domain.masters.constituents import HOW, read_constituents
from ledger.errors import InputError, LedgerError
from ledger.service.account.shipped import substances


def told(text: str) -> dict[str, float]:
    found = read_constituents(text, substances())
    return {item.substance: item.fraction_ppm / 10_000 for item in found}


def problems(text: str) -> tuple[tuple[str, str], ...]:
    with pytest.raises(InputError) as raised:
        read_constituents(text, substances())
    return raised.value.problems


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("coumarin 3%, cinnamaldehyde 85%", {"coumarin": 3, "cinnamaldehyde": 85}),
        ("coumarin 3%; cinnamaldehyde 85%", {"coumarin": 3, "cinnamaldehyde": 85}),
        ("coumarin 3 %\ncinnamaldehyde 85 %\n", {"coumarin": 3, "cinnamaldehyde": 85}),
        ("coumarin 3,5%", {"coumarin": 3.5}),
        ("coumarin 3,5, cinnamaldehyde 85", {"coumarin": 3.5, "cinnamaldehyde": 85}),
        ("coumarin 3,5,cinnamaldehyde 85,25", {"coumarin": 3.5, "cinnamaldehyde": 85.25}),
        ("coumarin 3, cinnamaldehyde 85,", {"coumarin": 3, "cinnamaldehyde": 85}),
        ("coumarin: 3%", {"coumarin": 3}),
        ("factor X: 3%", {"factor X": 3}),
        ("1,8-cineole 70%", {"1,8-cineole": 70}),
        ("coumarin 3%, 1,8-cineole 70%", {"coumarin": 3, "1,8-cineole": 70}),
        ("coumarin 3%,1,8-cineole 70%", {"coumarin": 3, "1,8-cineole": 70}),
        ("5-allyl-1,3-benzodioxole 2%", {"safrole": 2}),
        ("coumarin 0%", {"coumarin": 0}),
        (" ; ", {}),
    ],
)
def test_constituents_are_read_with_semicolons_commas_and_new_lines(
    text: str, found: dict[str, float]
) -> None:
    assert told(text) == found


def test_what_can_be_read_in_two_ways_is_refused_with_both() -> None:
    assert problems("coumarin 3,1,8-cineole 5%") == (
        (
            '"coumarin 3,1,8-cineole 5%" can be read as coumarin 3 % and 1,8-cineole 5 %, or as '
            "coumarin 3.1 % and 8-cineole 5 %.",
            "Write ; between the constituents, and a point in their shares.",
        ),
    )


@pytest.mark.parametrize(
    ("text", "quoted"),
    [
        ("eugenol", "eugenol"),
        ("98%", "98%"),
        ("coumarin 3, 5%", "5%"),
        ("coumarin 3,5%, eugenol", "eugenol"),
        ("1,8-cineole 70%,, eugenol, coumarin 3%", "eugenol"),
        ("coumarin 3 cinnamaldehyde 85%", "coumarin 3 cinnamaldehyde 85%"),
        ("limonene, eugenol 3%", "limonene"),
        ("coumarin <3%", "coumarin <3%"),
        ("coumarin 3-5%", "coumarin 3-5%"),
        ("coumarin 3 - 5%", "coumarin 3 - 5%"),
        ("coumarin about 3% or so", "coumarin about 3% or so"),
    ],
)
def test_what_is_no_constituent_with_its_share_is_quoted(text: str, quoted: str) -> None:
    assert problems(text) == ((f'"{quoted}" is not a constituent with its share.', HOW),)


def test_a_name_has_six_commas_at_most() -> None:
    """Places in a name are parted by commas (IUPAC, from memory); no listed name has more."""
    assert told("1,2,3,4,5,6,7-heptol 5%") == {"1,2,3,4,5,6,7-heptol": 5}
    assert problems("1,2,3,4,5,6,7,8-octol 5%") == (
        ('"1" is not a constituent with its share.', HOW),
    )


def test_all_that_is_wrong_is_told_at_once() -> None:
    assert [what for what, _ in problems("eugenol; coumarin 3, 5%; limonene 1,23456%")] == [
        '"eugenol" is not a constituent with its share.',
        '"5%" is not a constituent with its share.',
        '"1,23456" is a finer share than the book keeps.',
    ]
    assert problems(f"{'x' * 2001} 3%") == (
        (
            "The name of the constituent has 2001 characters; at most 2000 are kept.",
            "Say it in fewer words, or in several notes.",
        ),
    )


@pytest.mark.parametrize(
    ("written", "name"),
    [
        ("methyl eugenol", "methyleugenol"),
        ("Methyl-Eugenol", "methyleugenol"),
        ("93-15-2", "methyleugenol"),
        ("methyl chavicol", "estragole"),
        ("Methyl-salicylate", "methyl salicylate"),
        ("prussic acid", "hydrocyanic acid"),
        ("β-asarone", "beta-asarone"),
        ("α,β-thujone", "thujone"),
        ("α- and β-thujone", "thujone"),
        ("Teucrin A", "teucrin a"),
        ("E211", "sodium benzoate"),
        ("(+)-pulegone", "pulegone"),
    ],
)
def test_a_substance_is_recorded_by_the_name_that_limits_give_it(written: str, name: str) -> None:
    assert told(f"{written} 3%") == {name: 3}


def test_kinds_of_a_substance_that_are_listed_apart_stay_apart_and_count_as_it() -> None:
    assert told("α-thujone 30%, β-thujone 5%") == {"α-thujone": 30, "β-thujone": 5}
    assert {substances().counted_as(name) for name in ("α-thujone", "Beta-Thujone")} == {"thujone"}


@pytest.mark.parametrize(
    ("text", "what"),
    [
        (
            "methyl chavicol 3%; estragole 4%",
            "estragole is told more than once: methyl chavicol 3 % and estragole 4 %.",
        ),
        ("foo 3%; Foo 3%", "foo is told more than once: foo 3 % and Foo 3 %."),
        (
            "thujone 40%; alpha-thujone 30%",
            "thujone is told more than once: thujone 40 % and alpha-thujone 30 %.",
        ),
    ],
)
def test_a_substance_that_is_told_twice_is_refused(text: str, what: str) -> None:
    assert problems(text) == ((what, "Write it once with all of it, or each of its kinds once."),)


def test_a_name_with_characters_nobody_can_see_is_refused() -> None:
    with pytest.raises(LedgerError):
        read_constituents("cou\u200bmarin 3%", substances())


def test_a_constituent_is_kept_in_parts_per_million() -> None:
    assert read_constituents("safrole 0,0001%", substances()) == (Constituent("safrole", 1),)
