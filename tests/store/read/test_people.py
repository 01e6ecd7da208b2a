"""Whom entries name is told by what the book knows now, and stands in their texts as a code."""

import pytest

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Note, Party, Person, Receipt
from ledger.domain.entries.plain import read_entry
from ledger.domain.masters.parties import is_forgotten
from ledger.domain.rules.always.parties import party_of
from ledger.service.bench.receive import receive
from ledger.service.copies.intake.together import Within
from ledger.service.desk.book import How
from ledger.service.evidence.correct import correct
from ledger.service.evidence.strike import strike
from ledger.service.masters.party import party as tell_party
from ledger.service.recall.forget import forgotten
from ledger.store.engine.connections import Connection
from ledger.store.read import parties, people
from ledger.store.read.people import (
    code_by_name,
    coded,
    every_entry_of,
    named,
    party_codes,
    shown_names,
    spoken,
    told,
)
from tests.keeper import Keeper
from tests.path import receive_all


def test_a_party_that_was_told_stands_in_texts_by_its_code_alone(sqlite_keeper: Keeper) -> None:
    sqlite_keeper.do("party", name="Harbour Oils", phone="01 555 0100")
    receive_all(sqlite_keeper)
    bodies = sqlite_keeper.bodies()
    assert not any("Harbour" in body or "0100" in body for _, body in bodies)
    suppliers = {read_entry(body).facts.supplier for _, body in bodies if '"supplier":' in body}  # type: ignore[attr-defined]
    assert suppliers == {"P1"}
    with sqlite_keeper.reading() as connection:
        entries = [told(connection, body) for _, body in bodies]
        assert (shown_names(connection), code_by_name(connection)) == (
            {"P1": "Harbour Oils"},
            {"Harbour Oils": "P1"},
        )
        assert party_codes(connection) == {"P1"}
    named = {entry.facts.supplier for entry in entries if isinstance(entry.facts, Receipt)}
    assert named == {"Harbour Oils", None}


def test_a_code_is_taken_for_the_name_it_stands_for(sqlite_keeper: Keeper) -> None:
    sqlite_keeper.do("party", name="Harbour Oils", phone="01 555 0100")
    done = sqlite_keeper.do("receive", material="sugar", amount="1kg", supplier="P1")
    assert party_of(done.entry.draft) == "Harbour Oils"
    with sqlite_keeper.reading() as connection:
        found = parties.party(connection, "P1")
        assert found == parties.party(connection, "Harbour Oils")
        assert [party.phone for party in (found,) if party] == ["01 555 0100"]
        facts = Receipt("sugar", parse_quantity("1kg"), supplier="P1")
        assert spoken(connection, facts).supplier == "Harbour Oils"
        assert coded(connection, spoken(connection, facts)) == facts


def test_a_name_that_nobody_told_of_stays_in_words(sqlite_keeper: Keeper) -> None:
    done = sqlite_keeper.do("receive", material="sugar", amount="1kg", supplier="Quay Bar")
    assert '"supplier":"Quay Bar"' in dict(sqlite_keeper.bodies())[done.seq]


def test_who_was_forgotten_is_told_by_code_or_initials() -> None:
    assert is_forgotten(Party("P1", code="P1"))
    assert is_forgotten(Person("AB", "AB"))
    assert not is_forgotten(Party("Quay Bar", code="P1"))
    assert not is_forgotten(Person("AB", "Anna Bell"))
    assert not is_forgotten(Note("Quay Bar"))


def test_an_act_that_tells_of_parties_knows_them_without_reading_all_again(
    sqlite_keeper: Keeper,
) -> None:
    """What it knows is what the book then says; a code in words of the act is given to nobody."""
    book, how = sqlite_keeper.book, How(by="AB", because="they asked for it")
    with book.writing() as connection:
        act = Within(book.where, book.clock, connection=connection)
        tell_party(act, how, name="Quay Bar", phone="01 555 0155")
        receive(act, how, material="sugar", amount="1kg", supplier="P2")
        tell_party(act, how, name="Blue Kettle", phone="01 555 0156")
        tell_party(act, how, name="Quay Bar", words="ask for Mo")
        forgotten(act, how, who="Blue Kettle")
        known = (shown_names(connection), code_by_name(connection), party_codes(connection))
        assert known[0] == {"P1": "Quay Bar"}
        assert party_codes(connection) == {"P1", "P3"}
    with sqlite_keeper.reading() as connection:
        assert known == (
            shown_names(connection),
            code_by_name(connection),
            party_codes(connection),
        )


def test_an_act_that_corrects_or_strikes_who_a_party_is_reads_that_anew(
    sqlite_keeper: Keeper,
) -> None:
    book, how = sqlite_keeper.book, How(by="AB", because="a slip")
    with book.writing() as connection:
        act = Within(book.where, book.clock, connection=connection)
        told = [tell_party(act, how, name=name, words="ask for Mo") for name in ("Quai", "Inn")]
        assert shown_names(connection) == {"P1": "Quai", "P2": "Inn"}
        correct(act, how, entry=str(told[0].seq), changes="name=Quay Bar")
        assert code_by_name(connection) == {"Quay Bar": "P1", "Inn": "P2"}
        strike(act, how, entry=str(told[1].seq))
        known = shown_names(connection), code_by_name(connection), party_codes(connection)
    with sqlite_keeper.reading() as connection:
        assert known == (
            shown_names(connection),
            code_by_name(connection),
            party_codes(connection),
        )
    assert known[0] == {"P1": "Quay Bar"}


def test_somebody_who_was_forgotten_without_a_commitment_is_told_by_initials_and_others_are_not(
    sqlite_keeper: Keeper,
) -> None:
    """As texts of the older forms have people; a person of whom nothing was told stays so."""
    sqlite_keeper.do("person", initials="CD", name="Cy Dale", role="cellar")
    sqlite_keeper.do("forget", who="CD", because="they asked for it")
    with sqlite_keeper.reading() as connection:
        names = [
            named(connection, 0, Person(initials, "Cy Dale")).name for initials in ("CD", "AB")
        ]
        assert names == ["CD", "Cy Dale"]
        assert named(connection, 0, Note("Cy Dale")) == Note("Cy Dale")
        told = {facts.initials: facts.name for facts in people_of(connection)}
    assert told == {"AB": "Anna Bell", "CD": "CD"}


def people_of(connection: Connection) -> list[Person]:
    return [entry.facts for entry in every_entry_of(connection, Person)]


def test_only_a_party_told_before_names_were_kept_apart_is_told_by_a_code_for_its_name(
    sqlite_keeper: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(people, "shown_names", lambda _: {"Quay Bar": "P1"})
    forgotten, other = Party(name="Quay Bar", phone="01 555"), Party(name="Inn")
    person = Person("AB", "Quay Bar")
    with sqlite_keeper.reading() as connection:
        known = [people._known(connection, 9, facts) for facts in (forgotten, other, person)]
    assert known == [Party(name="P1", code="P1"), other, person]
