"""The specimen of its label on the record of a packed lot.

Guarantees: it says all that the labels of the lot say, with the word across, at the usual size or
as much higher as its words need. Refuses: a label with a word that is too wide.
"""

from msgspec.structs import replace
from reportlab.lib.units import mm

from reports.pdf.goods.label_fit import USUAL_PLATE, fit_label, holds
from reports.pdf.goods.layouts import Plate
from reports.pdf.kit.marks import Rule, shifted
from reports.pdf.kit.page import SIDE
from reports.pdf.kit.rows import title_strip
from reports.pdf.kit.strips import Section, Strip, stacked
from reports.pdf.kit.styles import RULE
from reports.views.goods import LabelView

STEP, MOST_STEPS = 10 * mm, 15
"""By how much a specimen is made higher, and how often at most: a page holds the highest."""


def specimen(label: LabelView) -> Section:
    """Lay out a specimen of a label in its frame."""
    plate = _plate_for(label)
    across, down = plate.width, plate.height
    frame = (
        Rule(0, 0, across, 0, RULE),
        Rule(0, down, across, down, RULE),
        Rule(0, 0, 0, down, RULE),
        Rule(across, 0, across, down, RULE),
    )
    marks = shifted((*fit_label(label, plate).marks, *frame), SIDE)
    drawn = Strip(down + 2 * mm, marks)
    return Section(stacked([title_strip("Specimen label"), drawn]), Strip(0))


def _plate_for(label: LabelView) -> Plate:
    """Return the usual plate, or one as much higher as the label needs."""
    higher = [replace(USUAL_PLATE, height=USUAL_PLATE.height + n * STEP) for n in range(MOST_STEPS)]
    return next((plate for plate in higher if holds(plate, label)), higher[-1])
