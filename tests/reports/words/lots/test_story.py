"""The story of a batch: true order, deviations and checks inside the act, corrections struck."""

import dataclasses

import pytest

from ledger.service.lots.dossier import dossier
from reports.views.lots import StepRow
from reports.words.lots import story as module
from reports.words.lots.story import story_of
from tests.keeper import Keeper
from tests.kept.said import check_said
from tests.path import Lots, receive_all


def test_what_was_made_ends_with_its_finish_and_the_rest_happened_since(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, _, essence = made
    until, since = story_of(dossier(keeper.book, essence))
    assert until[0].what == "started"
    assert until[-1].what == "finished"
    assert all(row.what != "finished" for row in since)
    whens = [row.when for row in until]
    assert whens == sorted(whens)


@pytest.fixture
def hurried(sqlite_keeper: Keeper) -> list[StepRow]:
    keeper = sqlite_keeper
    keeper.do("person", initials="CD", name="Cleo Dunn")
    lots = receive_all(keeper)
    code = keeper.opens("start", product="Orange essence", kind="essence", target="480mL")
    added = keeper.do("add", lot=code, source=lots.spirit, amount="480mL")
    dataclasses.replace(keeper, by="CD").do("check", entry=str(added.seq))
    keeper.do("judge", lot=lots.oil, verdict="hold", because="smells off")
    keeper.do("add", lot=code, source=lots.oil, amount="30mL", because="the market is tomorrow")
    until, _ = story_of(dossier(keeper.book, code))
    return list(until)


def test_a_deviation_stands_inside_its_act_and_a_check_beside_who_did_it(
    hurried: list[StepRow],
) -> None:
    started, spirit, oil = hurried
    assert (started.what, spirit.by) == ("started", "AB, checked CD")
    (departure,) = oil.departures
    assert departure.startswith("Deviation ")
    assert departure.endswith(" (AB)")
    assert oil.notes == ("Reason: the market is tomorrow.",)


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_a_check_that_was_struck_stands_beside_nobody(sqlite_keeper: Keeper) -> None:
    keeper = sqlite_keeper
    keeper.do("person", initials="CD", name="Cleo Dunn")
    lots = receive_all(keeper)
    code = keeper.opens("start", product="Orange essence", kind="essence", target="480mL")
    added = keeper.do("add", lot=code, source=lots.spirit, amount="480mL")
    check = dataclasses.replace(keeper, by="CD").do("check", entry=str(added.seq))
    keeper.do("strike", entry=str(check.seq), because="it was another batch")
    until, _ = story_of(dossier(keeper.book, code))
    assert {row.what: row.by for row in until[:2]} == {"started": "AB", "added": "AB"}
