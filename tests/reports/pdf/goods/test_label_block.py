"""The sizes of a label's words, held against what the law asks for."""

from fractions import Fraction

import pytest
from msgspec.structs import replace
from reportlab.lib.units import inch, mm

from reports.pdf.goods import label_block as module
from reports.pdf.goods.label_block import (
    LEAST,
    LEAST_CANADA,
    LEAST_SMALL,
    LEAST_US,
    X_HEIGHT,
    least_name,
    leasts_of,
    maker_blocks,
    shorter,
    upper_blocks,
    volume_face,
)
from reports.pdf.goods.label_fit import USUAL_PLATE
from reports.pdf.goods.layouts import Plate
from reports.pdf.kit.fonts import BOLD, REGULAR, register
from reports.pdf.kit.text import CAP_HEIGHT, Face, widest_word
from reports.views.goods import Declared, Panel
from tests.kept.golden import check_golden
from tests.kept.said import check_constants
from tests.reports.pdf.examples import LABEL
from tests.science.published import rows


@pytest.mark.parametrize(
    ("size", "least_mm"), [(LEAST, 1.2), (LEAST_SMALL, 0.9), (LEAST_US, 25.4 / 16)]
)
def test_the_least_size_has_the_x_height_the_law_asks_for(size: float, least_mm: float) -> None:
    """EU No 1169/2011, Article 13(2) and (3); 21 CFR 101.2(c) (label_law.csv); by its outline."""
    face = register()[REGULAR]
    offset = face.get_table_pos("glyf")[0] + face.glyphPos[face.charToGlyph[ord("x")]]
    face.seek(offset + 8)
    height = face.read_short() / face.unitsPerEm
    assert height * size / mm >= least_mm
    assert pytest.approx(X_HEIGHT, abs=0.001) == height


@pytest.mark.parametrize("least_mm", [2.0, 3.0, 4.0, 6.0])
def test_the_figures_of_the_volume_are_as_high_as_the_law_asks_for(least_mm: float) -> None:
    """Directive 76/211/EEC, Annex I, 3.1 (label_law.csv)."""
    size = volume_face(replace(LABEL, figures_mm=least_mm), USUAL_PLATE).size
    assert least_mm <= size * CAP_HEIGHT / mm < least_mm + 0.1


def test_net_contents_in_the_united_states_are_by_the_panel_and_the_name_half_as_large() -> None:
    """21 CFR 101.7(i), by the letter o, and 101.3(d) (label_law.csv); a volume of 30 mL."""
    label = replace(LABEL, is_us=True, figures_mm=2.0)
    panels = [row for row in rows("label_law.csv") if row["quantity"] == "US net contents type"]
    assert [row["value"] for row in panels] == ["1/16", "1/8", "3/16", "1/4", "1/2"]
    for row, area in zip(panels, (5, 25, 100, 400, 401), strict=True):
        plate = Plate(area * inch, inch)
        face = volume_face(label, plate)
        least = float(Fraction(row["value"])) * inch
        assert least <= X_HEIGHT * face.size < least + 0.1
        assert least_name(label, plate) >= face.size / 2
        small = Plate(2 * inch, inch)
        assert volume_face(replace(label, panel_sq_in=area), small).size == face.size
    assert volume_face(replace(label, is_us=False), Plate(9 * inch, 9 * inch)).size < 9


def test_the_letters_of_a_label_of_canada_are_as_high_as_its_law_asks_for() -> None:
    """Safe Food for Canadians Regulations, section 210(2) (label_law.csv)."""
    (row,) = [row for row in rows("label_law.csv") if row["quantity"] == "CA information height"]
    assert leasts_of(replace(LABEL, is_canadian=True, is_small=True)) == (LEAST_CANADA,)
    assert X_HEIGHT * LEAST_CANADA / mm >= float(row["value"])


def test_dates_break_between_each_other_and_never_within() -> None:
    told = replace(LABEL, best_before="Best before Mar 1, 2027", made_on="made 1 Mar 2026")
    (dates,) = [block.text for block in upper_blocks(told) if block.name == "dates"]
    assert dates.replace("\N{NO-BREAK SPACE}", "_") == ("Best_before_Mar_1, 2027, made_1_Mar_2026")


def test_what_a_label_declares_is_cut_from_its_end_to_its_least() -> None:
    list_, facts = Declared("the list", "Sugar, milk.", "Contains: MILK."), Declared("facts", "kJ")
    label = replace(LABEL, declared=(list_, facts))
    told = [([item.text for item in each.declared], cut) for each, cut in shorter(label)]
    assert told == [
        (["Sugar, milk.", "kJ"], ()),
        (["Sugar, milk.", ""], ("facts",)),
        (["Contains: MILK.", ""], ("the list", "facts")),
    ]
    assert [cut for _, cut in shorter(LABEL)] == [()]
    whole = replace(list_, least=list_.text)
    assert [cut for _, cut in shorter(replace(label, declared=(whole, facts)))] == [(), ("facts",)]


def test_a_statement_stands_right_after_the_list_and_before_the_nutrition() -> None:
    """Regulation (EU) No 1169/2011, Annex III, 3.1 (label_law.csv); without a list first of all."""
    listed, facts = Declared("the list", "Sugar.", is_list=True), Declared("facts", "kJ")
    label = replace(LABEL, statements=("Contains liquorice.",), declared=(listed, facts))
    told = [block.text for block in upper_blocks(label)]
    assert told[-3:] == ["Sugar.", "Contains liquorice.", "kJ"]
    told = [block.text for block in upper_blocks(replace(label, declared=(facts,)))]
    assert told[-2:] == ["Contains liquorice.", "kJ"]


def test_a_label_of_the_united_states_has_their_least_size() -> None:
    here = replace(LABEL, is_us=True)
    assert leasts_of(here) == (LEAST_US,)
    assert leasts_of(replace(here, is_small=True)) == (LEAST_US, LEAST_SMALL)


def test_a_name_shrinks_to_16_points_first_and_below_only_when_all_else_is_at_its_least() -> None:
    name, lot, *_ = upper_blocks(LABEL)
    sizes = [(name.face(step, 500).size, lot.face(step, 500).size) for step in (0, 1, 2, 3)]
    assert sizes == [(24.0, 10.0), (16.0, 10.0), (16.0, LEAST), (9.0, LEAST)]


def test_a_name_stands_on_one_line_where_it_can_at_16_points() -> None:
    name = upper_blocks(LABEL)[0]
    room = widest_word(name.text.replace(" ", "\N{NO-BREAK SPACE}"), Face(BOLD, 16.0))
    assert 16.0 <= name.largest_within(room + 0.1) < 16.1
    assert name.largest_within(room - 0.1) > 16.1


def test_every_block_of_a_label_has_its_words_face_and_sizes_as_kept() -> None:
    """Of labels of each panel and law, with all their words and with as few as may be."""
    declared = (Declared("the list", "Sugar, milk.", "MILK."), Declared("facts", " "))
    whole = replace(LABEL, strength="2.6 % vol", statements=("Quinine.", "Sulphites."))
    whole = replace(whole, declared=declared, lot_word="Batch")
    bare = replace(
        LABEL, house_address=None, best_before=None, dilution=None, text=None, cautions=()
    )
    told = []
    for name, label in (
        ("whole", whole),
        ("bare", replace(bare, made_on="")),
        ("front", replace(whole, panel=Panel.FRONT)),
        ("back", replace(whole, panel=Panel.BACK)),
        ("of the United States", replace(whole, is_us=True, is_small=True)),
        ("of Canada", replace(whole, is_canadian=True)),
    ):
        plate = Plate(100 * mm, 50 * mm)
        face = volume_face(label, plate)
        told.append(f"{name}: {leasts_of(label)}, {least_name(label, plate):.2f}, {face}")
        for least in leasts_of(label):
            blocks = upper_blocks(label, least, least_name(label, plate))
            for block in (*blocks, *maker_blocks(label, least)):
                sizes = [block.face(step / 4, 120).size for step in range(14)]
                within = [block.largest_within(width) for width in (20, 80, 300)]
                told += [
                    str(block),
                    *(" ".join(f"{s:.2f}" for s in each) for each in (sizes, within)),
                ]
        told += [str(block) for block in (*upper_blocks(label), *maker_blocks(label))]
    check_golden("laid/label_block.txt", "\n".join(told) + "\n")


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
