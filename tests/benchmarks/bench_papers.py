"""How fast papers are printed: labels against bare ReportLab and segno, long records against short.

The bare sheet draws the same words, lines and symbol in the same places, compressed alike, each
label once for the paper and repeated as a form; it neither measures nor checks anything.
"""

import io
import subprocess
import sys
import time
from pathlib import Path

import segno
from msgspec.structs import replace
from reportlab.lib.pagesizes import A4
from reportlab.pdfgen.canvas import Canvas

from reports.pdf.goods.label import EDGE, OFF, TICK, label_sheet
from reports.pdf.goods.label_fit import lay_label
from reports.pdf.goods.layouts import USUAL, shipped_layouts
from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Mark, Rule, Symbol, Words
from reports.pdf.kit.page import FOOT_ROOM, foot
from reports.pdf.lots.record import batch_record
from tests.benchmarks.ratios import best_seconds, line
from tests.reports.pdf.examples import LABEL, SHEET, long_record

ROOT = Path(__file__).parents[2]
LAYOUT = shipped_layouts()[USUAL]
LABEL_WIDTH, LABEL_HEIGHT, PER_PAGE = LAYOUT.plate.width, LAYOUT.plate.height, LAYOUT.per_page
SHORT, LONG = 1_000, 20_000
PAGES = (1, 25)


def bare_symbol(canvas: Canvas, mark: Symbol, top: float) -> None:
    """Draw a symbol, a rectangle for each run of dark modules."""
    rows = segno.make_qr(mark.text, error="m").matrix
    module = mark.size / (len(rows) + 8)
    path = canvas.beginPath()
    for down, row in enumerate(rows, 5):
        column = 0
        while column < len(row):
            length = 0
            while column + length < len(row) and row[column + length]:
                length += 1
            if length:
                x = mark.x + (column + 4) * module
                path.rect(x, top - mark.y + mark.size - down * module, length * module, module)
            column += max(length, 1)
    canvas.drawPath(path, stroke=0, fill=1)


def bare_marks(canvas: Canvas, marks: tuple[Mark, ...], top: float) -> None:
    """Draw marks with nothing but the canvas."""
    for mark in marks:
        if isinstance(mark, Symbol):
            bare_symbol(canvas, mark, top)
        elif isinstance(mark, Rule):
            canvas.setLineWidth(mark.thickness)
            canvas.line(mark.x, top - mark.y, mark.to_x, top - mark.to_y)
        elif isinstance(mark, Words):
            canvas.setFont(mark.face.font, mark.face.size)
            draw = canvas.drawRightString if mark.align == "right" else canvas.drawString
            draw(mark.x, top - mark.y, mark.text)


def bare_sheet(count: int, label: tuple[Mark, ...], feet: list[tuple[Mark, ...]]) -> None:
    """Draw a sheet of labels whose marks are known."""
    canvas = Canvas(io.BytesIO(), pagesize=A4, pageCompression=1, invariant=1)
    canvas.beginForm("label", 0, 0, LABEL_WIDTH, LABEL_HEIGHT)
    bare_marks(canvas, label, LABEL_HEIGHT)
    canvas.endForm()
    for page, foot_marks in enumerate(feet):
        canvas.setLineWidth(0.5)
        for x, y in {LAYOUT.place(place) for place in range(PER_PAGE)}:
            canvas.line(x, y - OFF, x, y - OFF - TICK)
        for place in range(min(PER_PAGE, count - page * PER_PAGE)):
            canvas.saveState()
            canvas.translate(*LAYOUT.place(place))
            canvas.doForm("label")
            canvas.restoreState()
        bare_marks(canvas, foot_marks, EDGE + FOOT_ROOM)
        canvas.showPage()
    canvas.save()


def labels() -> None:
    """Print the ratios of sheets of labels."""
    for pages in PAGES:
        count = pages * PER_PAGE
        marks = lay_label(LABEL)
        feet = [foot("Labels", SHEET.frame.seal).marks for _ in range(pages)]

        def ours(count: int = count) -> None:
            label_sheet(replace(SHEET, count=count), io.BytesIO())

        def bare(
            count: int = count,
            marks: tuple[Mark, ...] = marks,
            feet: list[tuple[Mark, ...]] = feet,
        ) -> None:
            bare_sheet(count, marks, feet)

        taken, plain = best_seconds([ours, bare], 9, time.process_time)
        line(f"{count} labels / bare ReportLab and segno (rate)", plain / taken, "at least 0.8")


def records() -> None:
    """Print the ratio of a long record to a short one."""
    views = [long_record(SHORT), long_record(LONG)]
    pages = []
    for view in views:
        out = io.BytesIO()
        batch_record(view, out)
        pages.append(out.getvalue().count(b"/Type /Page\n"))
    short, long = best_seconds(
        [lambda view=view: batch_record(view, io.BytesIO()) for view in views],  # type: ignore[misc]
        3,
        time.process_time,
    )
    print(f"{pages[0]} pages at {pages[0] / short:.0f}/s, {pages[1]} at {pages[1] / long:.0f}/s")
    ratio = (pages[1] / long) / (pages[0] / short)
    line(f"a record of {LONG:,} lines / of {SHORT:,} (pages a second)", ratio, "at least 0.9")


def peak_mb(lines: int) -> float:
    """Return the most memory, in MB, of a process that prints a record of so many lines."""
    told = (
        "import io, resource; from reports.pdf.lots.record import batch_record; "
        "from tests.reports.pdf.examples import long_record; "
        f"batch_record(long_record({lines}), io.BytesIO()); "
        "print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss)"
    )
    done = subprocess.run(
        [sys.executable, "-c", told], check=True, capture_output=True, text=True, cwd=ROOT
    )
    return int(done.stdout) / 1024


def memory() -> None:
    """Print the memory that records of both lengths take."""
    short, long = peak_mb(SHORT), peak_mb(LONG)
    print(f"at most {short:.0f} MB for {SHORT:,} lines, {long:.0f} MB for {LONG:,}")
    line(f"memory of a record of {LONG:,} lines / of {SHORT:,}", long / short, "far below 20")


def main() -> None:
    """Print the ratios."""
    register()
    labels()
    records()
    memory()


if __name__ == "__main__":
    main()
