"""The bar of a batch's time: every rest where it was, begun and ended once."""

import dataclasses
from datetime import timedelta

from msgspec.structs import replace

from ledger.domain.entries import Finish, Start
from ledger.domain.lots.state import LotState
from ledger.service.lots.dossier import dossier
from reports.words.lots import hours as module
from reports.words.lots.hours import time_bar
from tests.keeper import Keeper
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said
from tests.path import Lots, receive_all


def test_a_rest_told_by_its_begin_and_end_is_one_span(made: tuple[Keeper, Lots, str]) -> None:
    keeper, _, essence = made
    bar = time_bar(dossier(keeper.book, essence).state)
    assert bar is not None
    told = [
        *(f"{span.sort} {span.start:.4f} {span.end:.4f}" for span in bar.spans),
        *(f"{place:.4f} {words}" for place, words in bar.ticks),
    ]
    check_golden("hours_of_a_batch.txt", "\n".join(told) + "\n")


def test_what_is_not_finished_has_no_bar(sqlite_keeper: Keeper) -> None:
    code = sqlite_keeper.opens("start", product="Free", kind="blend", target="1L")
    assert time_bar(dossier(sqlite_keeper.book, code).state) is None


def test_what_was_begun_and_finished_at_once_has_no_bar(sqlite_keeper: Keeper) -> None:
    lots = receive_all(sqlite_keeper)
    keeper = dataclasses.replace(sqlite_keeper, minutes_apart=0)
    code = keeper.opens("start", product="Free", kind="blend", target="1L")
    keeper.do("add", lot=code, source=lots.spirit, amount="1L")
    keeper.do("finish", lot=code, volume="1L")
    assert time_bar(dossier(keeper.book, code).state) is None


def finished_after(state: LotState, **later: float) -> LotState:
    """Return a batch as if it had been finished so long after its begin."""
    first, *_, last = (e for e in state.entries if isinstance(e.facts, Start | Finish))
    moved = replace(first.draft.happened, at=first.draft.happened.at + timedelta(**later))
    ended = replace(last, draft=replace(last.draft, happened=moved))
    return replace(state, entries=(first, ended))


def test_from_an_hour_on_a_batch_has_a_bar_with_days_where_there_is_room(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, _, essence = made
    state = dossier(keeper.book, essence).state
    assert time_bar(finished_after(state, minutes=59)) is None
    told = []
    for days in (1 / 24, 1.5, 2, 7, 8, 14.5, 30):
        bar = time_bar(finished_after(state, days=days))
        assert bar is not None
        told.append(f"{days:.2f} d: {', '.join(f'{at:.3f} {words}' for at, words in bar.ticks)}")
    check_golden("hours.txt", "\n".join(told) + "\n")


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
