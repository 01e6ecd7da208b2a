"""The bar of a batch's time: every rest where it was, begun and ended once."""

import dataclasses

from ledger.service.lots.dossier import dossier
from reports.words.lots.hours import time_bar
from tests.keeper import Keeper
from tests.path import Lots, receive_all


def test_a_rest_told_by_its_begin_and_end_is_one_span(made: tuple[Keeper, Lots, str]) -> None:
    keeper, _, essence = made
    bar = time_bar(dossier(keeper.book, essence).state)
    assert bar is not None
    sorts = [span.sort for span in bar.spans]
    assert sorts.count("macerate") == 1
    assert all(0 <= span.start <= span.end <= 1 for span in bar.spans)
    assert (bar.ticks[0][0], bar.ticks[-1][0]) == (0.0, 1.0)


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
