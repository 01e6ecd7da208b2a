"""What stands beside an entry is salted, and can be erased to the last byte."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sqlalchemy import select

from ledger.domain.entries import Party
from ledger.domain.evidence.commitments import SALT_SIZE, commitment, details_of
from ledger.errors import StorageError
from ledger.service.evidence.verify import verify
from ledger.store.engine import patience
from ledger.store.form.tables import DETAILS
from ledger.store.write import details
from ledger.store.write.details import detail_cells, erase, new_salt, next_party_code, scrub
from tests.keeper import Keeper

WORDS = st.text(st.characters(codec="utf-8"), min_size=1, max_size=9)


def test_every_salt_is_another(monkeypatch: pytest.MonkeyPatch) -> None:
    from secrets import token_bytes

    monkeypatch.setattr(details, "token_bytes", token_bytes)
    salts = {new_salt() for _ in range(100)}
    assert len(salts) == 100
    assert {len(salt) for salt in salts} == {SALT_SIZE} == {32}


@given(WORDS, st.none() | WORDS, st.binary(min_size=SALT_SIZE, max_size=SALT_SIZE))
def test_the_row_has_all_that_the_commitment_is_to(
    name: str, phone: str | None, salt: bytes
) -> None:
    party = Party(name, phone, code="P1")
    seq, kept, *cells = detail_cells(7, party, salt)
    told = dict(zip(DETAILS.columns.keys()[2:], cells, strict=True))
    there = {field: words for field, words in told.items() if words is not None}
    assert (seq, commitment(bytes.fromhex(kept), there)) == (7, commitment(salt, details_of(party)))


def test_a_new_code_is_no_word_of_the_book(sqlite_keeper: Keeper) -> None:
    sqlite_keeper.do("receive", material="sugar", amount="1kg", supplier="P1")
    with sqlite_keeper.reading() as connection:
        assert next_party_code(connection) == "P2"
    sqlite_keeper.do("party", name="Quay Bar", phone="01 555 0155")
    assert '"code":"P2"' in sqlite_keeper.bodies()[-1][1]


def test_nothing_is_erased_that_no_entry_names(sqlite_keeper: Keeper) -> None:
    with pytest.raises(StorageError), sqlite_keeper.book.writing() as connection:
        erase(connection, [2])
    with sqlite_keeper.reading() as connection:
        assert [row.seq for row in connection.execute(select(DETAILS))] == [2]
    assert verify(sqlite_keeper.book).faults == ()


def test_a_file_in_which_another_reads_is_not_clean_yet(
    sqlite_keeper: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(patience, "BUSY_MS", 100)
    sqlite_keeper.book.close()
    with sqlite_keeper.reading() as connection:
        connection.exec_driver_sql("SELECT * FROM details").all()
        sqlite_keeper.do("note", text="Written meanwhile.")
        assert not scrub(sqlite_keeper.book.engine)
    assert scrub(sqlite_keeper.book.engine)
    assert not Path(sqlite_keeper.book.where + "-wal").stat().st_size
