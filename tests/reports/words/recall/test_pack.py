"""The pack of a recall: what is said on the telephone, and whom to call."""

from msgspec.structs import replace

from ledger.service.recall.standing import recall_of
from reports.words.recall import pack as module
from reports.words.recall.pack import recall_view
from tests.keeper import Keeper
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said
from tests.kept.told import told
from tests.path import Lots
from tests.reports.words.recall.story import recalled


def test_a_drill_is_headed_so_and_the_script_names_the_bottles(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    found = recall_of(keeper.book, lots.oil)
    view = recall_view(found, ("A row is lost.",), None, drill=True)
    assert (view.kind, view.headline) == ("Recall drill", "Recall drill: nothing was held")
    assert (view.lot, view.missing) == (lots.oil, ("A row is lost.",))
    assert f"Please look for: {lots.packed}." in view.script[1]
    (call,) = view.calls
    assert (call.place, call.name) == ("1", "Bridge Street Stall")
    assert call.sent == (f"{lots.packed}: 6 sold, 2026-03-04",)
    assert view.frame.seal == found.seal.lines


def test_the_pack_of_a_recall_in_which_all_happens_is_the_kept_one(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    found = recalled(keeper, lots)
    frameless = replace(recall_view(found, (), None, drill=False), frame="its frame")
    check_golden("recall_pack.txt", "\n".join((*told("pack", frameless), "")))
    silent = recall_view(replace(found, house=None), (), None, drill=False)
    assert silent.script[0] == "“This is __________ of . We are taking back some of our bottles."
    assert silent.script[-1].endswith("Leave the number to ring back: ____________”")


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
