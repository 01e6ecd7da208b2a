"""Printing labels.

Guarantees: a sheet is drawn whole before its file is made; labels are recorded once their sheet
has been drawn; a file that is there stays unless asked.
"""

from collections.abc import Iterable, Iterator, Sequence
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from msgspec.structs import replace

from cli.kit.files import once_recorded, paper_at
from ledger.domain.entries import Labels
from ledger.domain.entries.choices import Across
from ledger.domain.lots.labels import across
from ledger.errors import RefusedError
from ledger.service.desk.book import Book, How, Recorded
from ledger.service.glass.card import ServingCard
from ledger.service.glass.serving import card
from ledger.service.goods.label import labels, labels_together
from ledger.service.lots.dossier import Dossier, dossier
from reports.kit.frame import frame_of
from reports.views.goods import LabelSheetView
from reports.words.glass.serving import gap_lines
from reports.words.goods.label import (
    across_each,
    label_sheet_view,
    lacking_lines,
)
from reports.words.goods.list_words import typed_lines, unnamed_lines
from reports.words.goods.typed_list import typed_list_lines

if TYPE_CHECKING:
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

    done: tuple[Recorded[Labels], ...]
    """The entry of each lot on it."""
    path: Path
    """Where the sheet is."""
    left_out: tuple[str, ...]
    """What the label declares in full only where there is more room."""
    missing: tuple[str, ...]
    """What the book lacks of what a label declares, each with what to do."""
    lacking: tuple[str, ...]
    """The same in a line; nothing where it lacks nothing."""
    panels: int = 1
    """Panels of each label."""


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


class _Made(NamedTuple):
    """The labels of one lot, and what they were made of."""

    found: Dossier
    served: ServingCard | None
    sheet: LabelSheetView


def print_labels(
    book: Book,
    how: How,
    lots: Sequence[str],
    out: Path,
    count: int | None,
    *,
    fate: Fate = NO_FATE,
    asked: Asked = AS_USUAL,
    force: bool,
) -> Sheet:
    """Draw a sheet of labels, record it, and write it with the seal that includes the record.

    Args:
        book: The book.
        how: Who prints them, and why.
        lots: Lots whose labels stand on it, one after the other.
        out: Where the sheet goes.
        count: How many of each; None: one a bottle, or one specimen.
        fate: What became of them; of one lot only.
        asked: What was asked for besides.
        force: Whether it may take the place of a file.
    """
    made = [_made(book, lot, count, asked, how) for lot in lots]
    _check_lots([each.found.state.code for each in made])
    _check_count(sum(each.sheet.count for each in made))
    sheets = [each.sheet for each in made]
    with paper_at(out, force=force) as paper:
        # Put whole before anything is recorded: a full disk or a name that cannot be drawn is told
        # while nothing is, and this sheet stands, under the older seal, should the next one fail.
        paper.put(_drawn(sheets, asked))
        done = _recorded(book, how, sheets, fate, asked)
        with once_recorded(_what_is_recorded(done), _how_to_print_again(done)):
            # The labels as they were drawn, under the seal as it is now.
            now = dossier(book, sheets[0].label.lot)
            frame = frame_of(now.house, now.seal, now.written_at)
            again = (
                across_each(replace(sheet, frame=frame), each.entry.facts.across)
                for sheet, each in zip(sheets, done, strict=True)
            )
            paper.put(_drawn(list(again), asked))
    return Sheet(
        done,
        out,
        _once(name for sheet in sheets for name in _left_out(sheet, asked)),
        _once(line for each in made for line in _missing(each, asked)),
        _once(line for each in made for line in _lacking(each, asked)),
        asked.layout.panels if asked.layout else 1,
    )


def _made(book: Book, lot: str, count: int | None, asked: Asked, how: How) -> _Made:
    if count is not None:
        _check_count(count)
    found = dossier(book, lot, how.by)
    served = card(book, found.state.code)
    word = Across.SPECIMEN if asked.specimen else across(found.state, book.clock().date())
    view = label_sheet_view(
        found,
        count or (1 if asked.specimen else None),
        served,
        with_nutrition=asked.nutrition,
        language=asked.language,
        link=asked.link,
        gtin=asked.gtin,
    )
    return _Made(found, served, across_each(view, word))


def _check_count(count: int) -> None:
    if not 1 <= count <= MOST:
        raise RefusedError(
            f"{count} labels cannot be printed at once.", f"Ask for 1 to {MOST} labels."
        )


MOST = 10_000
"""The most labels that are printed at once."""


def _check_lots(codes: Sequence[str]) -> None:
    twice = _once(code for code in codes if codes.count(code) > 1)
    if twice:
        raise RefusedError(
            f"{', '.join(twice)} is named more than once for one sheet.",
            "Name each lot once, and say how many labels of each with --count.",
        )


def _recorded(
    book: Book, how: How, sheets: Sequence[LabelSheetView], fate: Fate, asked: Asked
) -> tuple[Recorded[Labels], ...]:
    specimen = "yes" if asked.specimen else None
    if len(sheets) > 1:
        printed = {sheet.label.lot: sheet.count for sheet in sheets}
        return labels_together(book, how, printed=printed, stock=fate.stock, specimen=specimen)
    (sheet,) = sheets
    one = labels(
        book,
        how,
        lot=sheet.label.lot,
        printed=str(sheet.count),
        used=fate.used,
        spoiled=fate.spoiled,
        stock=fate.stock,
        specimen=specimen,
    )
    return (one,)


def _what_is_recorded(done: Sequence[Recorded[Labels]]) -> str:
    return " ".join(
        f"Entry {each.seq} is recorded: {each.entry.facts.printed} labels of "
        f"{each.entry.draft.lot} printed."
        for each in done
    )


def _how_to_print_again(done: Sequence[Recorded[Labels]]) -> str:
    strikes = " and ".join(f"pottle strike {each.seq}" for each in done)
    return f"Strike {'it' if len(done) == 1 else 'them'}, and print again: {strikes}"


def _once(texts: Iterable[str]) -> tuple[str, ...]:
    """Return texts, each once."""
    return tuple(dict.fromkeys(texts))


def _missing(made: _Made, asked: Asked) -> Iterator[str]:
    """Yield what the book lacks of what a label declares, each with what to do."""
    if made.served:
        yield from gap_lines(made.served.declaration)
    yield from typed_list_lines(made.found, made.served)
    yield from unnamed_lines(made.served, made.found.materials, asked.language)


def _lacking(made: _Made, asked: Asked) -> Iterator[str]:
    """Yield the same in a line."""
    if made.served:
        yield from lacking_lines(made.served, with_nutrition=asked.nutrition)
    yield from typed_list_lines(made.found, made.served)
    yield from unnamed_lines(made.served, made.found.materials, asked.language)
    yield from typed_lines(asked.language)


def _left_out(sheet: LabelSheetView, asked: Asked) -> tuple[str, ...]:
    from reports.pdf.goods.label_panels import fit_panels
    from reports.pdf.goods.layouts import USUAL, shipped_layouts

    layout = asked.layout or shipped_layouts()[USUAL]
    return _once(name for panel in fit_panels(sheet.label, layout) for name in panel.left_out)


def _drawn(views: Sequence[LabelSheetView], asked: Asked) -> bytes:
    from reports.pdf.goods.label import label_sheets

    sheet = BytesIO()
    label_sheets(views, sheet, asked.layout, asked.start_at)
    return sheet.getvalue()
