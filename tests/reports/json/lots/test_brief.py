"""A lot in brief, for machines."""

from ledger.service.lots.dossier import brief_of
from reports.json.lots.brief import brief_plain
from tests.keeper import Keeper
from tests.path import Lots


def test_a_packed_lot_has_a_product_and_no_material(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    assert brief_plain(brief_of(keeper.book, lots.packed)) == {
        "code": "BOS-001-S",
        "kind": "packed",
        "product": "Orange syrup",
        "name": "Orange syrup, 250 mL",
        "status": "released",
        "on_hand": "9000000",
        "unit": "ueach",
        "best_before": None,
        "look": "cloudy",
    }


def test_a_delivery_has_a_material_and_no_product(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    told = brief_plain(brief_of(keeper.book, lots.oil))
    assert (told["material"], "product" in told, told["on_hand"]) == ("orange-oil", False, "469231")
