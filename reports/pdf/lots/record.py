"""The record of one lot, for the shelf and for an inspector.

Guarantees: everything the view says, in its order, struck entries included and legible; column
heads on every page; each page says whose it is, which of how many, when it was printed and what
the book's seal was. Refuses: names too long for a page.
"""

from typing import BinaryIO

from reports.kit.frame import Heading
from reports.pdf.kit.head import paper_head
from reports.pdf.kit.page import write_paper
from reports.pdf.kit.strips import Section
from reports.pdf.lots import record_head, record_specimen, record_tables
from reports.views.lots import RecordView


def _sections(view: RecordView) -> list[Section]:
    """Lay out all the parts in order."""
    return [
        paper_head(view.frame, heading_of(view)),
        record_head.facts(view),
        record_head.cautions(view),
        *([] if view.inputs is None else [record_tables.inputs(view.inputs)]),
        record_tables.steps("Steps", view.steps),
        record_tables.steps("Looks and measurements", view.looks),
        *([] if view.balance is None else [record_tables.balance(view.balance)]),
        record_tables.went_to(view.went_to),
        record_tables.steps("Deviations", view.deviations),
        *([record_tables.around(view.around)] if view.around else []),
        *([record_specimen.specimen(view.specimen)] if view.specimen else []),
        record_head.signatures(),
    ]


def batch_record(view: RecordView, out: BinaryIO) -> None:
    """Write the record of a lot as PDF.

    Args:
        view: What it says.
        out: Where the bytes go; untouched if anything is refused.

    Raises:
        RefusedError: A name is too long for a page.
    """
    write_paper(out, view.frame, heading_of(view), _sections(view))


def heading_of(view: RecordView) -> Heading:
    """Return what the record is."""
    return Heading(view.paper, view.lot, view.title, view.status, symbol=view.lot)
