"""On a server an act is two journeys: all that it asks, and all that it writes."""

from collections.abc import Iterator

import pytest

from tests.benchmarks.slow_line import SlowLine, slow_line, through
from tests.conftest import Server, opened
from tests.keeper import LATER, Keeper, SetClock

DELAY_S = 0.04
LOT, SPIRIT = "OE-001-5", "NS-001-J"


@pytest.fixture
def far(server: Server, server_walked_template: str) -> Iterator[tuple[Keeper, SlowLine]]:
    """A book with a row in every table on a server far away, called already."""
    where = server.where(server.new_database(server_walked_template))
    with (
        slow_line(server, DELAY_S) as line,
        opened(through(line, where), SetClock(LATER)) as keeper,
    ):
        keeper.do("note", text="Here.")
        yield keeper, line


def test_what_bench_commands_ask_is_foretold(far: tuple[Keeper, SlowLine]) -> None:
    keeper, line = far
    acts = (
        ("note", {"text": "Quiet."}),
        ("add", {"lot": LOT, "source": SPIRIT, "amount": "3 mL"}),
        ("look", {"lot": ".", "grade": "bright"}),
        ("measure", {"lot": LOT, "what": "brix", "reading": "60"}),
        ("rest", {"lot": ".", "purpose": "settle"}),
    )
    told = {}
    for verb, words in acts:
        before = line.trips
        keeper.do(verb, **words)
        told[verb] = line.trips - before
    assert told == dict.fromkeys(told, 2)


def test_what_names_no_whole_code_is_asked_when_its_time_comes(
    far: tuple[Keeper, SlowLine],
) -> None:
    keeper, _ = far
    by_ending = keeper.do("add", lot="001-5", source="spirit", amount="4 mL").entry
    assert (by_ending.draft.lot, by_ending.facts.source) == (LOT, SPIRIT)
