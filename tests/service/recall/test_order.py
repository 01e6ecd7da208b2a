"""A recall: all held in one act or nothing, everybody called, closed with its cause."""

import pytest
from hypothesis import HealthCheck, given, settings

from ledger.domain.entries import Judge
from ledger.domain.entries.choices import Verdict
from ledger.domain.lots.lot import Status
from ledger.errors import ReasonNeededError, RefusedError
from ledger.service.lots.dossier import brief_of
from ledger.service.lots.shares import traced, traced_on
from ledger.service.recall.standing import Recall, recall_of, recall_on
from reports.json.lots.trace import traced_plain
from reports.json.recall.standing import recall_plain
from tests.keeper import LATER, Keeper
from tests.path import Lots
from tests.service.lots.genealogies import Player, Step, genealogies, reached, undone

SOME = settings(max_examples=25, suppress_health_check=[HealthCheck.too_slow])
STALL = "Bridge Street Stall"


def names(found: Recall) -> list[str | None]:
    return [call.name for call in found.to_call]


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


def test_all_that_is_made_of_a_lot_is_held_in_one_act(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    before = len(keeper.entries())
    done = keeper.do("recall", lot=lots.oil, because="throws haze")
    assert done.entry.draft.lot == lots.oil
    told = keeper.entries()[before:]
    assert [entry.draft.lot for entry in told] == [lots.oil, lots.essence, lots.syrup, lots.packed]
    assert all(entry.facts == Judge(Verdict.RECALL) for entry in told)
    assert {entry.draft.reason for entry in told} == {"throws haze"}
    assert recall_of(keeper.book, lots.oil).not_held == ()
    assert brief_of(keeper.book, lots.spirit).status is Status.IN_STOCK


def test_without_a_reason_nothing_is_held(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    before = len(keeper.entries())
    with pytest.raises(ReasonNeededError) as raised:
        keeper.do("recall", lot=lots.oil)
    assert raised.value.problems == (
        (
            f"Recalling {lots.oil} holds 4 lots, and their holders are to be called.",
            "Say why with --because, or try it first with --drill.",
        ),
    )
    assert len(keeper.entries()) == before


def test_when_one_lot_cannot_be_held_none_is(walked: tuple[Keeper, Lots]) -> None:
    """A recall dated before its later lots were made cannot be true of them."""
    keeper, lots = walked
    before = len(keeper.entries())
    with pytest.raises(RefusedError) as raised:
        keeper.do("recall", lot=lots.oil, at="2026-03-02 10:30", because="throws haze")
    assert len(raised.value.problems) >= 2
    assert len(keeper.entries()) == before


def test_what_is_recalled_already_is_not_recalled_twice(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("recall", lot=lots.packed, because="cloudy")
    before = len(keeper.entries())
    keeper.do("recall", lot=lots.oil, because="throws haze")
    assert [e.draft.lot for e in keeper.entries()[before:]] == [lots.oil, lots.essence, lots.syrup]
    with pytest.raises(RefusedError) as raised:
        keeper.do("recall", lot=lots.oil, because="again")
    assert raised.value.problems == (
        (
            f"{lots.oil} and all that is made of it are recalled already, or struck out.",
            f"pottle recall {lots.oil} shows how far the recall is.",
        ),
    )


def test_one_lot_to_recall_is_told_as_one(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    with pytest.raises(ReasonNeededError) as raised:
        keeper.do("recall", lot=lots.packed)
    assert raised.value.what == (
        f"Recalling {lots.packed} holds 1 lot, and its holders are to be called."
    )


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
    keeper.do("close", lot=lots.oil, cause="old oil")
    assert recall_of(keeper.book, lots.oil).closed is not None
    with pytest.raises(RefusedError, match="its recall is closed already"):
        keeper.do("close", lot=lots.oil, cause="old oil")
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
        plain = recall_plain(recall_of(keeper.book, oil), drill=False)
        told.append({**plain, "trace": traced_plain(traced(keeper.book, oil))})
    assert told[0] == told[1]
    assert told[0]["accounted_percent"] == "100.0"
    assert len(told[0]["trace"]["nodes"]) > 3
    assert LATER.date().isoformat() in str(told[0]["begun"])
