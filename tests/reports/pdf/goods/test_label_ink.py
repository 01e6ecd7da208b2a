"""Every mark of a bottle label and of its sheet, on every layout that comes with pottle."""

from io import BytesIO

import pytest
from msgspec.structs import replace

from ledger.errors import RefusedError
from reports.pdf.goods.label import calibration, label_sheet, with_panels
from reports.pdf.goods.layouts import Layout, shipped_layouts
from reports.views.goods import Declared
from tests.kept.golden import check_golden
from tests.reports.pdf.examples import FRAME, LABEL, SHEET
from tests.reports.pdf.ink import ink_of
from tests.reports.pdf.readback import printed


def test_every_mark_of_a_sheet_and_of_each_layout_stands_where_it_stood() -> None:
    told = [f"labels\n{ink_of(printed(label_sheet, replace(SHEET, count=2)))}"]
    for name, layout in shipped_layouts().items():
        out = BytesIO()
        calibration(FRAME, layout, out)
        told.append(f"{name}\n{ink_of(out.getvalue())}")
    check_golden("ink/labels.txt", "".join(told))


WHOLE = replace(
    LABEL,
    strength="alc. 2.6 % vol",
    statements=("Contains quinine.",),
    declared=(
        Declared("the list", "Ingredients: sugar, water, milk. " * 3, "Contains: MILK."),
        Declared("facts", "Energy 12 kJ in 100 mL"),
    ),
    across="SPECIMEN",
    lot_word="Batch",
)


@pytest.mark.parametrize("layout", shipped_layouts().values(), ids=lambda each: each.name)
def test_every_mark_of_a_label_stands_where_it_stood_on_every_layout(layout: Layout) -> None:
    """The whole one, for the United States and a small bottle, a plain, a bare one, two panels."""
    bare = replace(
        LABEL, house_address=None, best_before=None, dilution=None, text=None, cautions=()
    )
    labels = {
        "whole": WHOLE,
        "of the United States": replace(WHOLE, is_us=True),
        "of a small bottle": replace(WHOLE, is_small=True, figures_mm=2.0),
        "plain": LABEL,
        "bare": bare,
    }
    ways = {name: (label, layout, layout.per_page) for name, label in labels.items()}
    ways["front and back"] = (replace(LABEL, is_small=True), with_panels(layout, 2), 1)
    told = []
    for name, (label, where, start) in ways.items():
        out = BytesIO()
        try:
            label_sheet(replace(SHEET, label=label, count=1), out, where, start)
            told.append(f"{name}\n{ink_of(out.getvalue())}")
        except RefusedError as error:
            told.append(f"{name}\n{error}\n")
    check_golden(f"ink/label_{layout.name}.txt", "".join(told))
