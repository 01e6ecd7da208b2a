"""The spirit account on paper: every line and lot of it."""

from msgspec.structs import replace

from reports.pdf.glass import spirit as module
from reports.pdf.glass.spirit import spirit_paper, spirit_sections
from reports.pdf.kit.fonts import register
from reports.views.glass import SpiritView
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import FRAME
from tests.reports.pdf.ink import ink_of
from tests.reports.pdf.laid import laid
from tests.reports.pdf.readback import metadata_of, printed

VIEW = SpiritView(
    FRAME,
    "2026-01-01 to 2026-06-30",
    (
        ("", "on hand before 2026-01-01", "9.000"),
        ("\N{MINUS SIGN}", "  sold", "1.250"),
        ("=", "on hand after 2026-06-30", "7.750"),
    ),
    (("NS-001-J", "Neutral spirit", "4.800", "0.950", "3.850"),),
    ("For the officer's own form.",),
)


def test_every_line_and_lot_of_the_account_is_printed() -> None:
    pdf = printed(spirit_paper, VIEW)
    check_golden("ink/spirit.txt", ink_of(pdf))
    assert metadata_of(pdf)["Title"] == "Spirit account 2026-01-01 to 2026-06-30"


def test_every_mark_of_the_account_stands_where_it_stood() -> None:
    register()
    bare = replace(VIEW, rows=(), lots=(), notes=())
    told = laid(*spirit_sections(VIEW, "Account"), *spirit_sections(bare, "None"))
    check_golden("laid/spirit.txt", told)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
