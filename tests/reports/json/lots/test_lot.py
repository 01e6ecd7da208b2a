"""One lot, for machines."""

from ledger.service.lots.dossier import dossier
from reports.json.lots.lot import dossier_plain
from tests.keeper import Keeper
from tests.path import Lots


def test_a_lot_has_what_went_in_and_out_and_the_date_that_is_reckoned(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    told = dossier_plain(dossier(keeper.book, lots.essence))
    assert (told["code"], told["best_before"]) == (lots.essence, "2027-06-30")
    assert {(edge["from"], edge["to"], edge["amount"], edge["unit"]) for edge in told["edges"]} == {
        (lots.oil, lots.essence, "30769", "uL"),
        (lots.carb, lots.essence, "15000", "mg"),
        (lots.spirit, lots.essence, "440000", "uL"),
        (lots.essence, lots.syrup, "30000", "uL"),
    }
    assert [entry["entry"] for entry in told["entries"]] == [15, 16, 36, *range(17, 26)]
    assert [line.split()[0] for line in told["seal"]] == ["House", "Entries", "Root"]
