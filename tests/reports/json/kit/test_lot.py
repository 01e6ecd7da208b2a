"""A lot in brief, for machines."""

from ledger.domain.entries.choices import Grade, LotType
from ledger.domain.lots.lot import Status
from ledger.service.lots.dossier import brief_of
from reports.json.kit.answer import Amount
from reports.json.kit.lot import LotBrief, lot_brief
from tests.keeper import Keeper
from tests.path import Lots
from tests.reports.json.kept import check


def test_a_packed_lot_has_a_product_and_no_material(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    assert lot_brief(brief_of(keeper.book, lots.packed)) == LotBrief(
        code="BOS-001-S",
        lot_type=LotType.PACKED,
        material=None,
        product="Orange syrup",
        name="Orange syrup, 250 mL",
        status=Status.RELEASED,
        on_hand=Amount("9", "each"),
        is_reckoned=False,
        best_before=None,
        look=Grade.CLOUDY,
    )


def test_a_delivery_has_a_material_and_no_product(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    told = lot_brief(brief_of(keeper.book, lots.oil))
    assert (told.material, told.product) == ("orange-oil", None)
    assert told.on_hand == Amount("469.231", "mL")


def test_every_field_of_a_delivery_is_the_kept_one(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    check("brief", *(lot_brief(brief_of(keeper.book, code)) for code in (lots.oil, lots.essence)))
