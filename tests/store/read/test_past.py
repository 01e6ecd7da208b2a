"""The book as it was: every text up to a number, in force or not."""

import pytest

from ledger.service.desk.book import How
from ledger.service.masters.house import house
from ledger.store.read.past import house_names, texts, texts_about, texts_that_may_have
from tests.keeper import Keeper
from tests.store.read.numbers import Walked, number


def test_texts_come_by_number_corrected_ones_too(walked: Walked) -> None:
    keeper, lots = walked
    with keeper.reading() as connection:
        assert list(texts(connection)) == keeper.bodies()
        assert [seq for seq, _ in texts(connection, after=33)] == [34, 35, 36]
        packed = number(connection, lots.packed)
        assert [seq for seq, _ in texts_about(connection, packed, 34)] == [32, 33, 34]


def test_chunks_of_texts_follow_on_each_other(
    walked: Walked, monkeypatch: pytest.MonkeyPatch
) -> None:
    keeper, _ = walked
    monkeypatch.setattr("ledger.store.read.past.CHUNK", 9)
    with keeper.reading() as connection:
        assert list(texts(connection)) == keeper.bodies()


def test_the_names_of_the_house_come_the_latest_first(walked: Walked) -> None:
    keeper, _ = walked
    done = house(keeper.book, How("AB"), name="Wren & Co")
    with keeper.reading() as connection:
        assert house_names(connection, done.seq) == ("Wren & Co", "Quayside Essences")
        assert house_names(connection, done.seq - 1) == ("Quayside Essences",)


def test_a_server_sends_the_texts_in_which_a_word_may_be_and_a_file_all(
    sqlite_walked: Keeper, postgres_walked: Keeper
) -> None:
    """Whatever its capitals; what holds a letter beyond ASCII is sent too."""
    told = []
    for keeper in (sqlite_walked, postgres_walked):
        keeper.do("note", text="HARBOUR of old")
        keeper.do("note", text="Crème")
        with keeper.reading() as connection:
            told.append(list(texts_that_may_have(connection, ["harbour", "öl"])))
    may_have = [
        (seq, body)
        for seq, body in postgres_walked.bodies()
        if "harbour" in body.lower() or not body.isascii()
    ]
    assert told == [sqlite_walked.bodies(), may_have]
    assert 2 < len(may_have) < len(postgres_walked.bodies())
