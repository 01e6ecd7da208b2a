"""The specimen of its label on the record of a packed lot.

Guarantees: it says what the labels of the lot say, at their size, with the word across. Refuses:
a label whose words do not fit.
"""

from reportlab.lib.units import mm

from reports.pdf.goods.label_fit import USUAL_PLATE, fit_label
from reports.pdf.kit.marks import Rule, shifted
from reports.pdf.kit.page import SIDE
from reports.pdf.kit.rows import title_strip
from reports.pdf.kit.strips import Section, Strip, stacked
from reports.pdf.kit.styles import RULE
from reports.views.goods import LabelView


def specimen(label: LabelView) -> Section:
    """Lay out a specimen of a label in its frame."""
    across, down = USUAL_PLATE.width, USUAL_PLATE.height
    frame = (
        Rule(0, 0, across, 0, RULE),
        Rule(0, down, across, down, RULE),
        Rule(0, 0, 0, down, RULE),
        Rule(across, 0, across, down, RULE),
    )
    drawn = Strip(down + 2 * mm, shifted((*fit_label(label).marks, *frame), SIDE))
    return Section(stacked([title_strip("Specimen label"), drawn]), Strip(0))
