"""The pack of a recall: what is said on the telephone, and whom to call."""

from ledger.service.recall.standing import recall_of
from reports.words.recall.pack import recall_view
from tests.keeper import Keeper
from tests.path import Lots


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
