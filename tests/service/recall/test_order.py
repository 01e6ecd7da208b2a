"""A recall is ordered: all is held in one act or nothing is, and never without a reason."""

import pytest

from ledger.domain.entries import Judge
from ledger.domain.entries.choices import Verdict
from ledger.domain.lots.lot import Status
from ledger.errors import ReasonNeededError, RefusedError
from ledger.service.lots.dossier import brief_of
from ledger.service.recall.standing import recall_of
from tests.keeper import Keeper
from tests.path import Lots
from tests.service.wrong_words import check_wrong_words


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
    assert raised.value.problems == (
        (
            f"Recalling {lots.packed} holds 1 lot, and its holders are to be called.",
            "Say why with --because, or try it first with --drill.",
        ),
    )


def test_each_lot_that_is_held_moves_the_count_on(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    seen: list[tuple[int, int]] = []
    keeper.do("recall", lot=lots.oil, because="haze", tick=lambda *told: seen.append(told))
    assert seen == [(1, 4), (2, 4), (3, 4), (4, 4)]


def test_a_recall_is_not_closed_without_a_reason_while_goods_stand_and_people_were_not_called(
    walked: tuple[Keeper, Lots],
) -> None:
    """What was released again is no part of it, and neither is what is gone."""
    keeper, lots = walked
    keeper.do("recall", lot=lots.essence, because="throws haze")
    keeper.do("judge", lot=lots.packed, verdict="release", because="looked at again, and clear")
    with pytest.raises(ReasonNeededError) as raised:
        keeper.do("close", lot=lots.essence, cause="the oil was old")
    assert raised.value.problems == (
        (
            f"Recalled goods still stand here: 418 mL of {lots.essence}, 50 mL of {lots.syrup}.",
            f"Write what becomes of them, such as: pottle send {lots.essence} AMOUNT --as "
            "destroyed; or close it all the same and say why with --because.",
        ),
        (
            "These may still have some and were not spoken to: Bridge Street Stall.",
            f'Call them: pottle contact {lots.essence} "WHO" --reached spoken --still COUNT; or '
            "say with --because why the recall is closed all the same.",
        ),
    )


def test_only_an_open_recall_is_closed_and_only_once(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("recall", lot=lots.essence, because="throws haze")
    keeper.do("close", lot=lots.essence, cause="the oil was old", because="nobody answers")
    for lot, why in (
        (lots.spirit, "it is not recalled"),
        (lots.essence, "its recall is closed already"),
    ):
        with pytest.raises(RefusedError) as raised:
            keeper.do("close", lot=lot, cause="the oil was old")
        assert raised.value.problems == (
            (
                f"There is no open recall of {lot} to close: {why}.",
                f"pottle lot {lot} shows what was done.",
            ),
        )


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "recall")


def test_each_of_its_words_that_is_wrong_is_named_of_close(shelf: Keeper) -> None:
    check_wrong_words(shelf, "close")
