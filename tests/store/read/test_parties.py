"""Names of parties: each once, and no more than is in force known."""

from ledger.store.engine.turn import turn_of
from ledger.store.read import parties
from tests.heard import heard
from tests.store.read.numbers import Walked


def test_names_come_from_deliveries_receipts_and_what_is_told_of_them(walked: Walked) -> None:
    keeper, lots = walked
    keeper.do("party", name="Quay Bar", phone="01 555 0101")
    for party in ("Bridge Street Stall", "Inn"):
        keeper.do("send", lot=lots.packed, amount="1", party=party)
    with keeper.reading() as connection:
        found = parties.names(connection)
        assert found == {"Harbour Oils", "Bridge Street Stall", "Quay Bar", "Inn"}
        assert all(parties.is_known(connection, name) for name in found)
        assert not parties.is_known(connection, "Inns")


def test_a_name_that_was_corrected_is_not_known_any_more(walked: Walked) -> None:
    keeper, lots = walked
    sent = keeper.do("send", lot=lots.packed, amount="1", party="Quay Brr")
    keeper.do("correct", entry=str(sent.seq), changes="party=Quay Bar", because="a slip")
    with keeper.reading() as connection:
        assert "Quay Brr" in parties.names(connection)
        assert not parties.is_known(connection, "Quay Brr")
        assert parties.is_known(connection, "Quay Bar")


def test_a_party_is_known_by_its_code_and_by_a_name_that_was_forgotten_no_more(
    walked: Walked,
) -> None:
    keeper, _ = walked
    keeper.do("party", name="Quay Bar", phone="01 555 0101")
    with keeper.reading() as connection:
        assert [parties.is_known(connection, name) for name in ("Quay Bar", "P1", "P2")] == [
            *(True, True, False),
        ]
    keeper.do("forget", who="Quay Bar", because="asked for it")
    with keeper.reading() as connection:
        assert not parties.is_known(connection, "Quay Bar")


def test_an_act_that_brings_many_names_reads_those_of_the_book_once(walked: Walked) -> None:
    """A name that it asked about is near to the next, though it is not in the book yet."""
    keeper, lots = walked
    keeper.do("send", lot=lots.packed, amount="1", party="Quay Bar")
    with heard(keeper.book) as told, keeper.book.writing() as connection:
        assert turn_of(connection)
        near = [parties.near(connection, name) for name in ("Quai Bar", "Quaj Bar", "Inn")]
        asked = len(told)
        assert parties.near(connection, "Bridge Street Stal") == ("Bridge Street Stall",)
        assert len(told) == asked
    assert near == [("Quay Bar",), ("Quai Bar", "Quay Bar"), ()]
