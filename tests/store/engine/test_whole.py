"""SQLAlchemy asks within a transaction that is not its own, and does not end it."""

import sqlite3

from sqlalchemy import text

from ledger.store.engine.whole import whole


def test_it_sees_what_the_transaction_did_and_leaves_its_end_to_others() -> None:
    driver = sqlite3.connect(":memory:", isolation_level=None)
    driver.execute("CREATE TABLE jar (code TEXT)")
    driver.execute("BEGIN")
    driver.execute("INSERT INTO jar VALUES ('J-1')")
    with whole(driver) as connection:
        assert connection.execute(text("SELECT code FROM jar")).scalar_one() == "J-1"
        connection.execute(text("INSERT INTO jar VALUES ('J-2')"))
        connection.commit()
    assert driver.in_transaction
    driver.rollback()
    assert driver.execute("SELECT * FROM jar").fetchall() == []
    driver.close()
