"""How far a recall is: its lots are those that can hold some of it; it reads alike anywhere."""

import pytest
from hypothesis import HealthCheck, given, settings

from ledger.errors import RefusedError
from ledger.service.lots.shares import traced, traced_on
from ledger.service.recall.standing import recall_of, recall_on
from reports.json.lots.trace import trace_answer
from reports.json.recall.recall import recall_answer
from tests.keeper import LATER, Keeper
from tests.path import Lots
from tests.service.lots.genealogies import Player, Step, genealogies, reached, undone

SOME = settings(max_examples=25, suppress_health_check=[HealthCheck.too_slow])


STALL = "Bridge Street Stall"


@SOME
@given(steps=genealogies)
def test_a_recall_has_the_lot_and_all_that_can_hold_some_of_it_and_no_other(
    shelf: Keeper, steps: list[Step]
) -> None:
    with undone(shelf.book) as connection:
        player = Player(connection)
        player.play(steps)
        graph = player.graph_in_time()
        for lot in player.lots[:3]:
            found = recall_on(connection, lot)
            codes = {item.brief.code for item in found.lots}
            assert codes == {lot, *traced_on(connection, lot, back=False).ahead}
            assert codes <= {lot} | reached(graph, lot)
            assert set(found.not_held) == codes


def test_a_recall_is_closed_once_with_its_cause_and_may_begin_again(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    with pytest.raises(RefusedError) as raised:
        keeper.do("close", lot=lots.oil, cause="old oil")
    assert raised.value.problems == (
        (
            f"There is no open recall of {lots.oil} to close: it is not recalled.",
            f"pottle lot {lots.oil} shows what was done.",
        ),
    )
    keeper.do("recall", lot=lots.oil, because="throws haze")
    keeper.do("close", lot=lots.oil, cause="old oil", because="kept to look at")
    assert recall_of(keeper.book, lots.oil).closed is not None
    with pytest.raises(RefusedError) as raised:
        keeper.do("close", lot=lots.oil, cause="old oil")
    assert raised.value.problems == (
        (
            f"There is no open recall of {lots.oil} to close: its recall is closed already.",
            f"pottle lot {lots.oil} shows what was done.",
        ),
    )
    keeper.do("judge", lot=lots.oil, verdict="release", because="tested again")
    assert recall_of(keeper.book, lots.oil).begun is None
    keeper.do("recall", lot=lots.oil, because="haze again")
    again = recall_of(keeper.book, lots.oil)
    assert again.begun is not None
    assert (again.begun.draft.reason, again.closed) == ("haze again", None)


def test_a_lot_of_which_nothing_was_made_is_its_own_recall(walked: tuple[Keeper, Lots]) -> None:
    keeper, _ = walked
    code = keeper.opens("receive", material="water", amount="5L")
    found = recall_of(keeper.book, code)
    assert [item.brief.code for item in found.lots] == [code]
    assert (found.balance.made, found.balance.on_hand, found.to_call) == (5_000_000, 5_000_000, ())


@pytest.mark.parametrize("code", ["SOO-009-O", "soo-009-o"])
def test_a_recall_of_a_lot_that_is_unknown_is_refused_and_holds_nothing(
    code: str, walked: tuple[Keeper, Lots]
) -> None:
    keeper, _ = walked
    before = keeper.bodies()
    todo = "pottle stock lists the lots that are."
    with pytest.raises(RefusedError) as drill:
        recall_of(keeper.book, "SOO-009-O")
    assert drill.value.problems == (("The lot SOO-009-O is not in the book.", todo),)
    problems = (("There is no lot SOO-009-O in the book. Near to it: SOO-001-3.", todo),)
    for verb, words in (("recall", {}), ("close", {"cause": "old oil"})):
        with pytest.raises(RefusedError) as raised:
            keeper.do(verb, lot=code, because="throws haze", **words)
        assert raised.value.problems == problems
    assert keeper.bodies() == before


def test_a_struck_lot_is_no_part_of_a_recall(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    done = keeper.do("bottle", source=lots.syrup, pack="1 x 30mL")
    keeper.do("strike", entry=str(done.seq), because="another syrup")
    assert done.code not in {i.brief.code for i in recall_of(keeper.book, lots.syrup).lots}


def test_a_trace_and_a_recall_are_the_same_on_a_server(
    sqlite_walked: Keeper, postgres_walked: Keeper
) -> None:
    told = []
    for keeper in (sqlite_walked, postgres_walked):
        oil = keeper.lot_codes()[0]
        keeper.do("recall", lot=oil, because="throws haze")
        keeper.do("contact", lot=oil, party=STALL, reached="spoken", still_there="2")
        plain = recall_answer(recall_of(keeper.book, oil), drill=False, took_ms=0)
        told.append((plain, trace_answer(traced(keeper.book, oil), "")))
    assert told[0] == told[1]
    recalled, trace = told[0]
    assert recalled.accounted_percent == "100.0"
    assert len(trace.nodes) > 3
    assert LATER.date().isoformat() in str(recalled.begun)
