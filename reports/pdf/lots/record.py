"""The record of one lot, for the shelf and for an inspector.

Guarantees: everything the view says, in its order, struck entries included and legible; column
heads on every page; each page says whose it is, which of how many, when it was printed and what
the book's seal was. Refuses: names too long for a page.
"""

from typing import BinaryIO

from reports.kit.frame import Heading
from reports.pdf.kit.boxed import boxed
from reports.pdf.kit.head import paper_head
from reports.pdf.kit.page import write_paper
from reports.pdf.kit.strips import Section
from reports.pdf.lots import record_charts as charts
from reports.pdf.lots import record_head, record_specimen
from reports.pdf.lots import record_tables as tables
from reports.pdf.lots.record_band import band
from reports.views.lots import RecordView


def sections_of(view: RecordView) -> list[Section]:
    """Lay out all the parts in order: what it is, how it was made, what came of it, who signs."""
    is_delivery = view.inputs is None
    title = "Balance" if is_delivery else "Yield"
    return [
        paper_head(view.frame, heading_of(view)),
        band(view.band),
        record_head.facts(view),
        boxed("Cautions", view.cautions),
        *([] if view.inputs is None else [tables.inputs(view.inputs)]),
        *([charts.hours(view.bar)] if view.bar else []),
        tables.steps("What was done" if is_delivery else "How it was made", view.made),
        *([charts.clarity(view.clarity)] if view.clarity else []),
        *([tables.looks(view.looks)] if view.looks or not is_delivery else []),
        *([tables.ladder(title, view.ladder)] if view.ladder else []),
        *([tables.pairs("Labels and bottles", view.labels)] if view.labels else []),
        *([record_specimen.specimen(view.specimen)] if view.specimen else []),
        *([tables.steps("What happened since", view.since)] if view.since else []),
        tables.neighbours("One step back", view.back),
        tables.neighbours("One step forward", view.forward),
        *([tables.pairs("Vessels and instruments", view.around)] if view.around else []),
        *([tables.pairs("What is in it, and in a glass", view.serving)] if view.serving else []),
        *([tables.people(view.people)] if view.people else []),
        *([tables.gate(view.gate)] if view.gate else []),
        record_head.signatures(*(["Received by"] if is_delivery else [])),
    ]


def batch_record(view: RecordView, out: BinaryIO) -> None:
    """Write the record of a lot as PDF.

    Args:
        view: What it says.
        out: Where the bytes go; untouched if anything is refused.

    Raises:
        RefusedError: A name is too long for a page.
    """
    write_paper(out, view.frame, heading_of(view), sections_of(view))


def heading_of(view: RecordView) -> Heading:
    """Return what the record is."""
    return Heading(view.paper, view.lot, view.title, view.band.status.lower(), symbol=view.lot)
