"""A bottle label in one panel or in two, front and back, and which layouts hold it.

Guarantees: the front carries name, strength, net volume and maker in one field of vision, with the
name at 16 points or more; the back carries all else, with name and lot, so that a back panel finds
its bottle; together they say every word of the label. Refuses: what does not fit, with the layouts
that hold it, in one panel and in two.

References:
    Regulation (EU) No 1169/2011, Article 13(5): name, net quantity and alcoholic strength in one
    field of vision (label_law.csv).
    21 CFR 101.3 and 101.7: identity and net contents on the principal display panel, the contents
    in its lowest 30 % (label_law.csv).
"""

from math import inf

from msgspec.structs import replace

from ledger.errors import RefusedError
from reports.pdf.goods.label_fit import Fitted, fit_label, holds
from reports.pdf.goods.layouts import Layout, shipped_layouts
from reports.views.goods import LabelView, Panel

FRONT_FIGURES_MM = 3.0
"""Height of the figures of the volume on a front, at least: beside a large name less looks lost."""
MOST_NAMED = 3
"""Layouts that are named to who has to choose one."""


def panels_of(label: LabelView, panels: int) -> tuple[LabelView, ...]:
    """Return a label whole, or its front and its back.

    Args:
        label: What it says.
        panels: 1 or 2.
    """
    if panels == 1:
        return (label,)
    front = replace(
        label,
        panel=Panel.FRONT,
        figures_mm=max(label.figures_mm, FRONT_FIGURES_MM),
        made_on="",
        best_before=None,
        dilution=None,
        text=None,
        cautions=(),
        statements=(),
        declared=(),
    )
    back = replace(
        label, panel=Panel.BACK, house_name="", house_address=None, volume="", strength=None
    )
    return front, back


def fit_panels(label: LabelView, layout: Layout) -> tuple[Fitted, ...]:
    """Set the panels that a label has on a layout.

    Raises:
        RefusedError: One of them does not fit; with the layouts that hold them.
    """
    try:
        return tuple(fit_label(panel, layout.plate) for panel in panels_of(label, layout.panels))
    except RefusedError as error:
        raise _with_layouts(label, layout, error) from error


def layouts_that_hold(label: LabelView, panels: int = 1) -> list[str]:
    """Return the layouts that come with pottle and hold a label, the smallest labels first."""
    by_size = sorted(shipped_layouts(), key=_area)
    return [name for name in by_size if _holds(shipped_layouts()[name], label, panels)]


def _area(name: str) -> float:
    layout = shipped_layouts()[name]
    return layout.width * layout.height


def _holds(layout: Layout, label: LabelView, panels: int) -> bool:
    return all(holds(layout.plate, panel) for panel in panels_of(label, panels))


def _with_layouts(label: LabelView, layout: Layout, why: RefusedError) -> RefusedError:
    """Return the error of a label that does not fit, with the layouts that would hold it."""
    one = layouts_that_hold(label)
    told = [_in_one(one, layout), _in_two(label, layout, one)]
    todo = " ".join(sentence for sentence in told if sentence) or (
        "No layout that comes with pottle holds it: give a larger one with --layouts FILE."
    )
    return RefusedError(why.what, f"{todo} {why.todo}")


def _in_one(one: list[str], layout: Layout) -> str:
    held = _others(one, layout)
    if not held:
        return ""
    whole = "with" if layout.panels == 1 else "in one panel with --panels 1 and"
    return f"It fits {whole} --layout {' or '.join(held[:MOST_NAMED])}."


def _in_two(label: LabelView, layout: Layout, one: list[str]) -> str:
    """Say which layouts hold it in two panels, of labels smaller than any that holds it in one."""
    if layout.panels == 1 and _holds(layout, label, 2):
        return "As front and back it fits this layout: --panels 2."
    two = _others(layouts_that_hold(label, 2), layout)
    least = _area(one[0]) if one else inf
    held = " or ".join([name for name in two if _area(name) < least][:MOST_NAMED])
    return f"As front and back it fits with --panels 2 and --layout {held}." if held else ""


def _others(held: list[str], layout: Layout) -> list[str]:
    """Leave out the layouts whose labels are of the same size."""
    return [name for name in held if shipped_layouts()[name].plate != layout.plate]
