"""The book as it was: every text up to a number, in force or not."""

import pytest

from ledger.service.desk.book import How
from ledger.service.masters.house import house
from ledger.store.read.past import house_names, texts, texts_about
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
