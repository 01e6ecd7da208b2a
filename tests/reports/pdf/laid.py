"""How parts of a paper are laid out: every mark of every strip with all its figures.

Guarantees: whatever a mark or a strip holds is told, so that another place, width, face or grey,
and a mark that is left out, each show as another line. Nothing is drawn for it.
"""

from collections.abc import Iterable, Iterator

from msgspec.structs import asdict

from reports.pdf.kit.marks import Mark
from reports.pdf.kit.strips import Section, Strip
from reports.pdf.kit.text import Face

NARROW = "i" * 700
"""One word of the narrowest letter: its lines fill what room they have to within a letter."""


def laid(*sections: Section) -> str:
    """Return sections as text: what is kept together, and each strip with its marks."""
    return "".join(f"{line}\n" for section in sections for line in _section(section))


def marked(marks: Iterable[Mark]) -> str:
    """Return marks as text, a line each."""
    return "".join(f"{_told(mark)}\n" for mark in marks)


def _section(section: Section) -> Iterator[str]:
    kept = [name for name in ("whole", "tied") if getattr(section, name)]
    yield " ".join(["section", *kept])
    for name, strips in (
        ("head", (section.head,)),
        ("again", (section.again,)),
        ("row", section.rows),
        ("within", section.within),
    ):
        for strip in strips:
            yield from _strip(name, strip)


def _strip(name: str, strip: Strip) -> Iterator[str]:
    yield f" {name} {strip.height:.2f} high {strip.title}".rstrip()
    for mark in strip.marks:
        yield f"  {_told(mark)}"


def _told(mark: Mark) -> str:
    return " ".join([type(mark).__name__, *(_value(value) for value in asdict(mark).values())])


def _value(value: object) -> str:
    if isinstance(value, Face):
        return f"{value.font} {value.size:g} by {value.spacing:.3f}"
    if isinstance(value, float | int) and not isinstance(value, bool):
        return f"{value:.2f}"
    if isinstance(value, tuple):
        return f"({', '.join(map(_value, value))})"
    return repr(value)
