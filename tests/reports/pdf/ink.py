"""How a paper is inked: every mark with its place, and how thick, how grey and in which face it is.

Guarantees: a mark says all that makes it look as it does, so that a thinner rule, a box that is
filled or not, another face or grey each show as another line.
"""

import ctypes
from collections.abc import Callable

import pypdfium2 as pdfium  # type: ignore[import-untyped]
from pypdfium2 import raw

from tests.answers.drawn import marks

NAME_ROOM = 64
CORNERED = range(6, 13)
"""Strokes of a shape whose corners are told; of others the box around them tells enough."""


def ink_of(pdf: bytes) -> str:
    """Return what a paper says of itself, its chapters, and every mark in the order of drawing."""
    with pdfium.PdfDocument(pdf) as document:
        chapters = [f"{'  ' * item.level}{item.get_title()}" for item in document.get_toc()]
        about = [
            f"{name}: {text}"
            for name, text in document.get_metadata_dict().items()
            if text and not name.endswith("Date")
        ]
    inked = [f"{line}{'' if mark is None else _style(mark)}" for line, mark in marks(pdf)]
    return "".join(f"{line}\n" for line in (*about, *chapters, *inked))


def _style(mark: "pdfium.PdfObject") -> str:
    if mark.type == raw.FPDF_PAGEOBJ_TEXT:
        return f"  | {_face(mark)}{_turned(mark)} {_colour(mark, raw.FPDFPageObj_GetFillColor)}"
    if mark.type == raw.FPDF_PAGEOBJ_PATH:
        return f"  | {_path(mark)}"
    return f"  | of kind {mark.type}"


def _face(mark: "pdfium.PdfObject") -> str:
    """Name the face; ReportLab puts letters of its own before a name of which it embeds a part."""
    held = ctypes.create_string_buffer(NAME_ROOM)
    raw.FPDFFont_GetBaseFontName(raw.FPDFTextObj_GetFont(mark), held, NAME_ROOM)
    return held.value.decode().rpartition("+")[2]


def _turned(mark: "pdfium.PdfObject") -> str:
    across, up, *_ = mark.get_matrix().get()
    return "" if (across, up) == (1, 0) else f" turned {across:.2f} {up:.2f}"


def _path(mark: "pdfium.PdfObject") -> str:
    fill, stroke, width = ctypes.c_int(), ctypes.c_int(), ctypes.c_float()
    raw.FPDFPath_GetDrawMode(mark, fill, stroke)
    raw.FPDFPageObj_GetStrokeWidth(mark, width)
    count = raw.FPDFPath_CountSegments(mark)
    told = [f"{count} strokes{_corners(mark, count) if count in CORNERED else ''}"]
    if fill.value:
        told.append(f"filled {_colour(mark, raw.FPDFPageObj_GetFillColor)}")
    if stroke.value:
        told.append(f"{width.value:.2f} thick {_colour(mark, raw.FPDFPageObj_GetStrokeColor)}")
    return ", ".join(told)


def _corners(mark: "pdfium.PdfObject", count: int) -> str:
    told, across, up = [], ctypes.c_float(), ctypes.c_float()
    for number in range(count):
        raw.FPDFPathSegment_GetPoint(raw.FPDFPath_GetPathSegment(mark, number), across, up)
        told.append(f"{across.value:.2f} {up.value:.2f}")
    return f" ({', '.join(told)})"


def _colour(mark: "pdfium.PdfObject", of: Callable[..., int]) -> str:
    told = [ctypes.c_uint() for _ in range(4)]
    of(mark, *told)
    return "#" + "".join(f"{part.value:02x}" for part in told[:3])
