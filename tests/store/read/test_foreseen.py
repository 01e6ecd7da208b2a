"""What an act asks of a lot and of what it draws on is foretold in the readers' own words."""

import pytest
from sqlalchemy import Connection

from ledger.store.engine import statements
from ledger.store.engine.turn import Question, turn_of
from tests.keeper import Keeper


@pytest.fixture
def asked_late(monkeypatch: pytest.MonkeyPatch) -> list[Question]:
    """Questions that were asked by themselves, since nobody foretold them."""
    found: list[Question] = []
    straight = statements._ask

    def heard(connection: Connection, asked: Question) -> list[object]:
        if turn_of(connection):
            found.append(asked)
        return straight(connection, asked)

    monkeypatch.setattr(statements, "_ask", heard)
    return found


@pytest.mark.parametrize("source", ["OE-001-5", "NS-001-J"])
def test_nothing_is_asked_late_for_what_was_made_here_or_came(
    source: str, postgres_walked: Keeper, asked_late: list[Question]
) -> None:
    lot = postgres_walked.opens("start", product="Cordial", kind="syrup", target="2L")
    postgres_walked.do("add", lot=lot, source="NS-001-J", amount="30 mL")
    asked_late.clear()
    postgres_walked.do("add", lot=lot, source=source, amount="20 mL", because="to see")
    assert [asked.statement for asked in asked_late] == []
