"""Where all of a recalled lot is: every bottle found, a miscount told."""

from ledger.service.recall.standing import recall_of
from reports.words.recall.standing import accounted_line
from tests.keeper import Keeper
from tests.path import Lots

STALL = "Bridge Street Stall"


def test_every_bottle_is_found_and_a_miscount_is_unexplained(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    keeper.do("send", lot=lots.packed, amount="1", moved_as="sample", party="Quay Bar")
    keeper.do("send", lot=lots.packed, amount="1", moved_as="retained")
    keeper.do("send", lot=lots.packed, amount="2", moved_as="returned", party=STALL)
    keeper.do("send", lot=lots.packed, amount="1", moved_as="destroyed")
    found = recall_of(keeper.book, lots.oil).balance
    each = 1_000_000
    assert (found.made, found.on_hand, found.sent) == (15 * each, 8 * each, 4 * each)
    assert (found.samples, found.kept_back, found.destroyed) == (each, each, each)
    assert (found.returned, found.unexplained) == (2 * each, 0)
    assert str(found.accounted_percent) == "100.0"
    keeper.do("count", lot=lots.packed, amount="7", because="counted twice")
    found = recall_of(keeper.book, lots.oil).balance
    assert (found.on_hand, found.unexplained) == (7 * each, each)
    assert str(found.accounted_percent) == "93.3"


def test_samples_that_came_back_are_here_and_nobody_s_purchase(walked: tuple[Keeper, Lots]) -> None:
    """6 of 15 sold; 3 given to a bar as samples, 2 of which came back before they were counted."""
    keeper, lots = walked
    keeper.do("send", lot=lots.packed, amount="3", moved_as="sample", party="Quay Bar")
    keeper.do("send", lot=lots.packed, amount="2", moved_as="returned", party="Quay Bar")
    found = recall_of(keeper.book, lots.packed).balance
    each = 1_000_000
    assert (found.sent, found.samples, found.on_hand) == (6 * each, each, 8 * each)
    assert (found.returned, found.unexplained) == (2 * each, 0)


def test_a_sample_that_came_back_before_the_finish_is_made_once(
    walked: tuple[Keeper, Lots],
) -> None:
    """Of 480 mL 10 mL go out and 4 mL come back before 474 mL are measured."""
    keeper, lots = walked
    code = keeper.opens("start", product="Lime essence", kind="essence", target="480mL")
    keeper.do("add", lot=code, source=lots.spirit, amount="480mL")
    keeper.do("send", lot=code, amount="10mL", moved_as="sample", party="Quay Bar", because="asked")
    keeper.do("send", lot=code, amount="4mL", moved_as="returned", party="Quay Bar")
    keeper.do("finish", lot=code, volume="474mL")
    found = recall_of(keeper.book, code).balance
    assert (found.made, found.on_hand, found.samples) == (480_000, 474_000, 6_000)
    assert found.unexplained == 0


def test_bulk_is_balanced_too(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    found = {item.brief.code: item.balance for item in recall_of(keeper.book, lots.oil).lots}
    assert (found[lots.essence].made, found[lots.essence].used) == (448_000, 30_000)
    assert found[lots.essence].on_hand == 418_000
    assert {balance.unexplained for balance in found.values()} == {0}
    keeper.do("makeup", lot=lots.essence, volume="440mL", source=lots.spirit, used="20mL")
    keeper.do("count", lot=lots.essence, amount="435mL")
    found = {item.brief.code: item.balance for item in recall_of(keeper.book, lots.oil).lots}
    assert found[lots.essence].made == 468_000
    assert found[lots.essence].unexplained == 468_000 - 30_000 - 435_000
    assert accounted_line(recall_of(keeper.book, lots.oil)) == (
        f"Accounted for: 100.0 % of the bottles; besides, 3 mL missing of {lots.essence}."
    )


def test_a_batch_that_is_not_finished_made_what_is_there_and_what_went_out(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    batch = keeper.opens("start", product="Lime", kind="essence", target="90mL")
    keeper.do("add", lot=batch, source=lots.oil, amount="50mL")
    keeper.do("send", lot=batch, amount="10mL", moved_as="sample", party="Inn", because="to taste")
    (told,) = recall_of(keeper.book, batch).lots
    balance = told.balance
    assert (balance.made, balance.on_hand, balance.samples) == (50_000, 40_000, 10_000)
    assert balance.unexplained == 0
