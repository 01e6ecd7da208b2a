"""Printing labels for the shelf, the bench and the carton, and sheets to calibrate by.

Guarantees: a sheet is drawn whole before its file is made; nothing is recorded, since no such label
is on a bottle that leaves.
"""

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import NamedTuple

from cli.kit.answer import say
from cli.kit.call import Call
from cli.kit.files import check_place, draw
from ledger.errors import RefusedError
from ledger.service.desk.book import Book
from ledger.service.desk.clock import house_of, written_at
from ledger.service.evidence.seal import seal
from ledger.service.glass.serving import card
from ledger.service.lots.dossier import Dossier, dossier
from ledger.text_files import text_of
from reports.json.kit.answer import File
from reports.kit.frame import Frame, frame_of, size_in
from reports.pdf.goods.label import calibration, with_dpi, with_panels, write_labels
from reports.pdf.goods.layouts import (
    USUAL_ON,
    Layout,
    layout_called,
    read_layouts,
    shipped_layouts,
)
from reports.pdf.goods.tag import lay_tag
from reports.views.goods import TagView
from reports.words.goods.tags import case_views, tag_view


class Place(NamedTuple):
    """Where labels stand."""

    layout: Layout
    """On which layout."""
    start_at: int
    """From which label of its first sheet."""


MOST = 10_000
"""The most labels that are printed at once."""
MOST_BYTES = 1_000_000
"""The largest file of layouts that is read."""


def chosen_layout(
    book: Book, name: str | None, file: Path | None, dpi: int | None, panels: int | None = None
) -> Layout:
    """Return the layout that was asked for, of those that come with pottle and of a file.

    Where none was it is the usual one for the sheets that the house's country prints on.
    """
    known: Mapping[str, Layout] = shipped_layouts()
    if file is not None:
        own = read_layouts(text_of(file, MOST_BYTES), file.name)
        known = {**known, **own}
        name = name or next(iter(own))
    house = house_of(book)
    usual = USUAL_ON[size_in(house.country if house else None)]
    return with_panels(with_dpi(layout_called(name or usual, known), dpi), panels)


def print_tags(
    call: Call,
    lots: list[str],
    out: Path,
    kind: str,
    count: int | None,
    *,
    place: Place,
    gtin: str | None,
    cases: Sequence[int] = (),
    force: bool,
) -> None:
    """Print labels of a kind, some of each lot or each case, on one sheet."""
    if count is not None and not 1 <= count <= MOST:
        raise RefusedError(f"{count} labels cannot be printed at once.", f"Ask for 1 to {MOST}.")
    check_place(out, force=force)
    book = call.book()
    found = [dossier(book, lot, call.writer) for lot in lots]
    tags = [tag for each in found for tag in _tags(book, each, kind, gtin, cases)]
    if len(tags) * (count or 1) > MOST:
        raise RefusedError(
            f"{len(tags) * (count or 1)} labels cannot be printed at once.", f"Ask for 1 to {MOST}."
        )
    runs = [((lay_tag(tag, place.layout.plate),), count or 1) for tag in tags]
    first = found[0]
    frame = frame_of(first.house, first.seal, first.written_at)
    codes = ", ".join(dict.fromkeys(tag.lot for tag in tags))
    lead = f"Labels ({kind}) of {codes}"
    draw(
        out,
        lambda paper: write_labels(paper, frame, lead, lead, runs, *place),
        force=force,
    )
    say(call, lambda: File(str(out)), f"The labels are in {out}.")


def _tags(
    book: Book, found: Dossier, kind: str, gtin: str | None, cases: Sequence[int]
) -> Sequence[TagView]:
    """Return the labels of a kind for a lot: of cases that were told of one each."""
    # A case that is an article of its own, or of which nobody told, has a label without a number.
    numbered = case_views(found, cases) if kind == "case" and gtin is None else ()
    return numbered or [tag_view(kind, found, card(book, found.state.code), gtin)]


def print_calibration(call: Call, out: Path, layout: Layout, *, force: bool) -> None:
    """Print the frames of a layout, to hold against a sheet."""
    draw(out, lambda paper: calibration(_frame(call), layout, paper), force=force)
    say(
        call,
        lambda: File(str(out)),
        f"The frames of {layout.name} are in {out}. Print them at full size on plain paper, hold "
        "it against a sheet of labels, and measure the line.",
    )


def _frame(call: Call) -> Frame:
    book = call.book()
    return frame_of(house_of(book), seal(book), written_at(book))
