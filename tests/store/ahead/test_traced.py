"""What is asked of lots that are replayed is foretold in the readers' own words."""

from collections.abc import Callable, Sequence

import pytest
from sqlalchemy import Connection

from ledger.service.account.codes import known_lot
from ledger.service.account.lots import lots_by_number
from ledger.service.account.shares import shares_ahead
from ledger.store.ahead.traced import foresee_mixed, foresee_reach
from ledger.store.engine.acts import acting, foresee
from ledger.store.engine.foretold import Foreseen
from ledger.store.engine.turn import turn_of
from ledger.store.read.lots import foresee_lots
from tests.keeper import Keeper

ESSENCE, TRIAL, SPIRIT = "OE-001-5", "TRL-001-2", "NS-001-J"


def in_full(foreseen: Foreseen, numbers: Sequence[int]) -> None:
    foresee_lots(foreseen, numbers)
    foresee_mixed(foreseen, numbers)


def holds(connection: Connection, numbers: Sequence[int]) -> object:
    return lots_by_number(connection, numbers)


def reach(foreseen: Foreseen, numbers: Sequence[int]) -> None:
    foresee_reach(foreseen, numbers[0])


def reached(connection: Connection, _numbers: Sequence[int]) -> object:
    return shares_ahead(connection, known_lot(connection, SPIRIT)).shares


@pytest.mark.parametrize(
    ("foretell", "reads", "codes"),
    [
        (in_full, holds, (ESSENCE,)),
        (in_full, holds, (ESSENCE, TRIAL)),
        (in_full, holds, (ESSENCE, TRIAL, ".")),
        (reach, reached, (SPIRIT,)),
    ],
    ids=["no mixture", "one mixture", "two mixtures", "reach"],
)
def test_what_is_reckoned_of_lots_asks_nothing_that_was_not_foretold(
    foretell: Callable[[Foreseen, Sequence[int]], None],
    reads: Callable[[Connection, Sequence[int]], object],
    codes: tuple[str, ...],
    postgres_walked: Keeper,
) -> None:
    other = postgres_walked.opens("start", product="Cordial", kind="syrup", target="2L")
    postgres_walked.do("add", lot=other, source=SPIRIT, amount="30 mL")
    with acting(postgres_walked.book.engine) as connection:
        numbers = [known_lot(connection, code.replace(".", other)).seq for code in codes]
        foresee(connection, lambda foreseen: foretell(foreseen, numbers))
        turn = turn_of(connection)
        assert turn
        known = len(turn.asked) + len(turn.lasting)
        told = reads(connection, numbers)
        assert len(turn.asked) + len(turn.lasting) == known
    with postgres_walked.reading() as connection:
        assert told == reads(connection, numbers)
