"""Printing labels.

Guarantees: a sheet is drawn whole before its file is made; labels are recorded once their sheet
has been drawn; a file that is there stays unless asked.
"""

from collections.abc import Mapping
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from msgspec.structs import replace

from cli.kit.answer import dossier_of, say, step_after
from cli.kit.call import Call
from cli.kit.files import once_recorded, paper_at
from ledger.domain.entries import Labels
from ledger.domain.entries.choices import Across
from ledger.domain.lots.labels import across
from ledger.errors import InputError, RefusedError
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.glass.serving import card
from ledger.service.goods.label import labels
from ledger.service.lots.dossier import dossier
from reports.kit.frame import frame_of
from reports.views.goods import LabelSheetView
from reports.words.desk.answer import answer
from reports.words.glass.serving import gap_lines
from reports.words.goods.label import (
    across_each,
    label_sheet_view,
    lacking_lines,
    left_out_lines,
)
from reports.words.goods.list_words import typed_lines, unnamed_lines
from reports.words.goods.typed_list import typed_list_lines

if TYPE_CHECKING:
    from reports.json.goods.label import LabelAnswer
    from reports.pdf.goods.layouts import Layout


class Fate(NamedTuple):
    """What became of labels, and what they were printed on; all as a person writes it."""

    used: str | None = None
    """How many went on bottles."""
    spoiled: str | None = None
    """How many were spoiled and destroyed."""
    stock: str | None = None
    """The lot of blank labels."""


class Sheet(NamedTuple):
    """What was printed."""

    done: Recorded[Labels]
    """The entry of it."""
    path: Path
    """Where the sheet is."""
    left_out: tuple[str, ...]
    """What the label declares in full only where there is more room."""
    missing: tuple[str, ...]
    """What the book lacks of what a label declares, each with what to do."""
    lacking: tuple[str, ...]
    """The same in a line; nothing where it lacks nothing."""


class Asked(NamedTuple):
    """What labels were asked for."""

    specimen: bool = False
    """Whether they are for the record only."""
    nutrition: bool = False
    """Whether they declare the nutrition too."""
    language: str | None = None
    """The language of their fixed words."""
    link: str | None = None
    """The address that their symbol says."""
    gtin: str | None = None
    """The number of the article, whose Digital Link their symbol says."""
    layout: "Layout | None" = None
    """Where they stand; None: as usual."""
    start_at: int = 1
    """The first label that is free."""


NO_FATE = Fate()
"""Nothing was said of it."""
AS_USUAL = Asked()
"""Nothing was asked for besides."""


def print_labels(
    book: Book,
    how: How,
    text: str,
    out: Path,
    count: int | None,
    *,
    fate: Fate = NO_FATE,
    asked: Asked = AS_USUAL,
    force: bool,
) -> Sheet:
    """Draw a sheet of labels, record it, and write it with the seal that includes the record."""
    if count is not None and not 1 <= count <= 10_000:
        raise RefusedError(
            f"{count} labels cannot be printed at once.", "Ask for 1 to 10000 labels."
        )
    found, count = dossier(book, text, how.by), count or (1 if asked.specimen else None)
    served = card(book, found.state.code)
    word = Across.SPECIMEN if asked.specimen else across(found.state, book.clock().date())
    view = label_sheet_view(
        found,
        count,
        served,
        with_nutrition=asked.nutrition,
        language=asked.language,
        link=asked.link,
        gtin=asked.gtin,
    )
    sheet = across_each(view, word)
    with paper_at(out, force=force) as paper:
        # Put whole before anything is recorded: a full disk or a name that cannot be drawn is told
        # while nothing is, and this sheet stands, under the older seal, should the next one fail.
        paper.put(_drawn(sheet, asked))
        done = labels(
            book,
            how,
            lot=found.state.code,
            printed=str(sheet.count),
            used=fate.used,
            spoiled=fate.spoiled,
            stock=fate.stock,
            specimen="yes" if asked.specimen else None,
        )
        with once_recorded(
            f"Entry {done.seq} is recorded: {sheet.count} labels of {found.state.code} printed.",
            f"Strike it, and print again: pottle strike {done.seq}",
        ):
            # The label as it was drawn, under the seal as it is now.
            now = dossier(book, found.state.code)
            again = replace(sheet, frame=frame_of(now.house, now.seal, now.written_at))
            paper.put(_drawn(across_each(again, done.entry.facts.across), asked))
    gaps = gap_lines(served.declaration) if served else ()
    own_list = typed_list_lines(found, served)
    unnamed = unnamed_lines(served, found.materials, asked.language)
    lacking = (
        *(lacking_lines(served, with_nutrition=asked.nutrition) if served else ()),
        *own_list,
        *unnamed,
        *typed_lines(asked.language),
    )
    return Sheet(done, out, _left_out(sheet, asked), (*gaps, *own_list, *unnamed), lacking)


def _left_out(sheet: LabelSheetView, asked: Asked) -> tuple[str, ...]:
    from reports.pdf.goods.label_fit import USUAL_PLATE, fit_label

    plate = asked.layout.plate if asked.layout else USUAL_PLATE
    return fit_label(sheet.label, plate).left_out


def _drawn(view: LabelSheetView, asked: Asked) -> bytes:
    from reports.pdf.goods.label import label_sheet

    sheet = BytesIO()
    label_sheet(view, sheet, asked.layout, asked.start_at)
    return sheet.getvalue()


def say_labels(call: Call, book: Book, done: Recorded[Labels], sheet: Sheet | None = None) -> None:
    """Show what was recorded of labels, where their sheet is, and what it does not say."""
    found = dossier_of(book, done)
    step = step_after(book, done, found)
    said = answer(done, found, step)

    def plain() -> "LabelAnswer":
        from reports.json.goods.label import label_answer

        return label_answer(
            done,
            found,
            step,
            str(sheet.path) if sheet else None,
            left_out=sheet.left_out if sheet else (),
            missing=sheet.missing if sheet else (),
        )

    word = done.entry.facts.across
    on_each = f", each with {word} across" if word else ""
    paper = (
        (
            f"The labels are in {sheet.path}{on_each}.",
            *left_out_lines(sheet.left_out),
            *sheet.lacking,
        )
        if sheet
        else ()
    )
    say(call, plain, said.done, *paper, *said.found, *said.last)


def check_alone(given: Mapping[str, object], what: str) -> None:
    """Refuse options that go with bottle labels only.

    Raises:
        InputError: One of them was given.
    """
    if wrong := [name for name, value in given.items() if value]:
        raise InputError(
            f"{', '.join(wrong)} goes with the labels of bottles, not with --kind {what}.",
            "Leave it out.",
        )


def check_bottles(given: Mapping[str, object]) -> None:
    """Refuse options that go with other labels only.

    Raises:
        InputError: One of them was given.
    """
    if wrong := [name for name, value in given.items() if value]:
        raise InputError(
            f"{', '.join(wrong)} goes with other labels than those of bottles.",
            "Say which with --kind, or leave it out.",
        )
