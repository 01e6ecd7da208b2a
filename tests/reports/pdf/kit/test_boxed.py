"""Sentences in a ruled box, closed on every side; none, no box."""

from reports.pdf.kit import boxed as module
from reports.pdf.kit.boxed import boxed
from reports.pdf.kit.fonts import register
from reports.pdf.kit.marks import Rule, Words
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.laid import laid


def test_sentences_stand_in_a_box_and_without_any_there_is_none() -> None:
    register()
    section = boxed("Cautions", ["Highly flammable."])
    strips = (section.head, *section.rows)
    marks = [mark for strip in strips for mark in strip.marks]
    assert [mark.text for mark in marks if isinstance(mark, Words)] == [
        "Cautions",
        "Highly flammable.",
    ]
    assert sum(isinstance(mark, Rule) for mark in marks) == 6
    bare = boxed("Cautions", [])
    assert (bare.head.height, bare.rows) == (0, ())


def test_every_mark_of_a_box_stands_where_it_stood() -> None:
    """With one sentence, with several of many words, and with none."""
    register()
    long = "Highly flammable: keep away from flames and sparks. " * 3
    told = laid(
        *(boxed("One", ["Short."]), boxed("Two", [long, "b", long]), boxed("None", [])),
        boxed(
            "Narrow letters, which tell its width, and a last row of another height",
            [
                "i " * 300,
                "b",
                "Last.",
            ],
        ),
    )
    check_golden("laid/boxed.txt", told)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
