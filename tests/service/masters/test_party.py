"""Suppliers and customers: the latest entry of a name counts, and what is not given stays."""

import pytest
from msgspec.structs import replace

from ledger.domain.entries import Party
from ledger.errors import InputError, RefusedError
from ledger.service.masters.party import parties
from tests.keeper import Keeper
from tests.service.engines import ON_EACH_ENGINE
from tests.service.wrong_words import check_wrong_words


@ON_EACH_ENGINE
def test_what_is_not_said_anew_stays_as_it_was(keeper: Keeper) -> None:
    keeper.do("party", name="Quay Bar", phone="01 555 0142", words="ask for  Bo")
    keeper.do("party", name="Arcade Stall", address="1 Quay")
    keeper.do("party", name="Quay Bar", email="bar@example.com", phone="01 555 0143")
    keeper.do("party", name="Quay Bar", gln="9521234000013")
    found = tuple(replace(party, code=None, commitment=None) for party in parties(keeper.book))
    assert found == (
        Party("Arcade Stall", address="1 Quay"),
        Party(
            "Quay Bar", "01 555 0143", "bar@example.com", words="ask for Bo", gln="9521234000013"
        ),
    )


def test_a_party_without_a_name_is_refused(sqlite_keeper: Keeper) -> None:
    with pytest.raises(InputError) as raised:
        sqlite_keeper.do("party", name=" ", phone="01 555 0142")
    assert raised.value.problems == (("The name is missing.", "Give the name in words."),)


def test_a_party_is_told_of_by_its_code_too_and_nothing_of_one_that_was_forgotten(
    sqlite_keeper: Keeper,
) -> None:
    keeper = sqlite_keeper
    keeper.do("party", name="Quay Bar", phone="01 555 0142")
    keeper.do("party", name="P1", phone="01 555 0143")
    assert [(party.name, party.code, party.phone) for party in parties(keeper.book)] == [
        ("Quay Bar", "P1", "01 555 0143")
    ]
    keeper.do("forget", who="Quay Bar", because="asked for it")
    with pytest.raises(RefusedError) as raised:
        keeper.do("party", name="P1", phone="01 555 0144")
    assert raised.value.problems == (
        (
            "P1 was forgotten, so nothing is kept of it any more.",
            "Tell the party anew under its name.",
        ),
    )


def test_all_that_is_wrong_with_a_party_is_told_at_once(sqlite_keeper: Keeper) -> None:
    with pytest.raises(InputError) as raised:
        sqlite_keeper.do("party", name="Bar", gln="1", words="x" * 2001)
    assert [what for what, _ in raised.value.problems] == [
        *("The words have 2001 characters; at most 2000 are kept.", "1 is no number of a place."),
    ]


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "party")
