"""The upper part of a record: its facts in two halves, cautions in a box, lines to sign."""

import pytest
from msgspec.structs import replace
from reportlab.lib.units import mm

from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Words
from reports.pdf.kit.strips import Section
from reports.pdf.lots import record_head as module
from reports.pdf.lots.record_head import facts, signatures
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import RECORD
from tests.reports.pdf.laid import laid


@pytest.fixture(autouse=True)
def _fonts() -> None:
    register()


def words_of(section: Section) -> list[str]:
    strips = (section.head, *section.rows)
    return [mark.text for strip in strips for mark in strip.marks if isinstance(mark, Words)]


def test_facts_go_down_the_left_half_and_then_down_the_right_one() -> None:
    told = words_of(facts(replace(RECORD, facts=(("A", "1"), ("B", "2"), ("C", "3")))))
    assert [word for word in told if word] == ["A", "1", "C", "3", "B", "2"]


def test_four_sign_and_date() -> None:
    signed = words_of(signatures())
    assert signed[::2] == ["Made by", "Checked by", "Reviewed by", "Released by"]
    assert signed[1::2] == ["Date"] * 4
    assert signatures().head.height == pytest.approx(29 * mm)


def test_every_mark_of_facts_and_lines_to_sign_stands_where_it_stood() -> None:
    long = "A value with many words. " * 4
    odd = (("Kind", "essence"), ("Formula", long), ("Status", "on hold"))
    told = laid(
        facts(replace(RECORD, facts=odd)),
        facts(replace(RECORD, facts=odd[:2])),
        signatures(),
        signatures("Received by"),
    )
    check_golden("laid/record_head.txt", told)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
