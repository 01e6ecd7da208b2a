"""What a lot is held to: how its inputs are called by a formula."""

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries.choices import MaterialKind, ProductKind
from ledger.domain.lots.control import Control, Input
from ledger.domain.lots.lot import Status

OIL = Input("O-1", Measure.UL, Status.IN_STOCK, material="oil", sort=MaterialKind.OIL)
ESSENCE = Input(
    "E-1", Measure.UL, Status.RELEASED, formula="orange", product_kind=ProductKind.ESSENCE
)


def test_an_input_is_called_by_its_material_or_by_its_formula() -> None:
    control = Control(inputs=(OIL, ESSENCE))
    assert control.called("O-1") == ("oil", None)
    assert control.called("E-1") == (None, "orange")
    assert control.called("X-1") is None


def test_only_what_has_a_kind_of_product_was_made_here() -> None:
    control = Control(inputs=(OIL, ESSENCE))
    assert [control.is_made(code) for code in ("E-1", "O-1", "X-1")] == [True, False, False]
