"""Names of a material in other languages are read as they are typed, and kept by language."""

import pytest

from ledger.domain.entries.masters import NameIn
from ledger.domain.masters.languages import read_names
from ledger.errors import InputError

ZUCKER, SUCRE = NameIn("de", "Zucker"), NameIn("fr", "sucre")


def test_names_stand_by_language_and_the_untold_stay() -> None:
    assert read_names(" FR = sucre ") == (SUCRE,)
    assert read_names("fr=sucre", (ZUCKER,)) == (ZUCKER, SUCRE)
    assert read_names("de=Rübenzucker", (ZUCKER,)) == (NameIn("de", "Rübenzucker"),)


def test_a_language_with_nothing_behind_it_loses_its_name() -> None:
    assert read_names("de=", (ZUCKER, SUCRE)) == (SUCRE,)


def test_all_that_is_no_name_is_told_at_once() -> None:
    with pytest.raises(InputError) as raised:
        read_names("german=Zucker; sugar; fr=sucre; fr=le sucre")
    how = 'Write each as LANGUAGE=NAME, as in "de=Orangenöl", with ; between them.'
    assert raised.value.problems == (
        ('"german=Zucker" is no name in a language.', how),
        ('"sugar" is no name in a language.', how),
        ("The name in fr is given twice.", "Give it once."),
    )
