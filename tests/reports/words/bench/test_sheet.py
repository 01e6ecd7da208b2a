"""The sheet that a batch is made from: what goes in, what is done, what is written down."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from ledger.domain.entries.masters import FormulaStep
from ledger.domain.evidence.seals import Seal
from ledger.errors import RefusedError
from ledger.service.bench.draws import propose, propose_for
from ledger.service.lots.dossier import dossier
from ledger.service.masters.formula import version
from ledger.service.masters.material import materials
from reports.kit.frame import frame_of
from reports.views.bench import BatchSheetView
from reports.words.bench import sheet as module
from reports.words.bench.sheet import BLANKS, FREE_ADDITIONS, batch_sheet_view, formula_sheet_view
from tests.keeper import Keeper
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said
from tests.kept.told import told as in_lines
from tests.service.orange import start_orange


def sheet_of(keeper: Keeper, code: str) -> BatchSheetView:
    proposed = propose(keeper.book, code)
    return batch_sheet_view(dossier(keeper.book, code), proposed, materials(keeper.book))


def test_a_batch_by_a_formula_has_its_lines_and_steps(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    found = sheet_of(sqlite_keeper, start_orange(sqlite_keeper, tmp_path))
    assert dict(found.facts)["Formula"] == "orange-essence version 1"
    assert [row.code for row in found.rows] == [
        *("A1", "A2", "A3"),
        *("S1", "S2a", "S2b", "S3", "S4", "S5", "S6"),
        *("X1", "X2", "X3"),
    ]
    assert found.across == ""
    assert "Highly flammable." in found.cautions


def test_a_batch_without_one_leaves_rows_to_be_filled_in(sqlite_keeper: Keeper) -> None:
    code = sqlite_keeper.opens("start", product="Lime", kind="essence", target="1L")
    found = sheet_of(sqlite_keeper, code)
    assert len([row for row in found.rows if row.code[0] == "A"]) == FREE_ADDITIONS
    assert found.how_to_type == (
        f"Typed in afterwards with --sheet {code}/CODE --at WHEN --by INITIALS."
    )


def test_a_delivery_has_no_sheet(sqlite_keeper: Keeper) -> None:
    code = sqlite_keeper.opens("receive", material="spirit", amount="1L")
    with pytest.raises(RefusedError) as raised:
        sheet_of(sqlite_keeper, code)
    assert raised.value.problems == (
        (
            f"{code} is no batch, so there is no sheet to make it from.",
            "Name a lot that was begun with: pottle start ...",
        ),
    )


SYRUP = """\
code = "orange-syrup"
version = 1
product = "Orange syrup"
kind = "syrup"
basis = "4L"
prepared-by = "AB"

[[line]]
material = "sugar"
amount = "3.09kg"

[[line]]
formula = "orange-essence"
amount = "120mL"

[[step]]
verb = "measure"
words = "Read the base before the essence goes in."

[[step]]
verb = "finish"
"""


def test_the_base_is_read_before_the_essence_goes_in_and_a_batch_under_way_prints_a_copy(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    keeper = sqlite_keeper
    start_orange(keeper, tmp_path)
    keeper.do("receive", material="sugar", amount="5kg")
    file = tmp_path / "orange-syrup.toml"
    file.write_text(SYRUP, encoding="utf-8")
    keeper.do("formula", file=str(file))
    formula = version(keeper.book, "orange-syrup")
    drawn = propose_for(keeper.book, formula, formula.basis.amount)
    known, frame = materials(keeper.book), frame_of(None, Seal("", 0, ""))
    view = formula_sheet_view(formula, formula.basis, drawn, known, frame)
    order = ["B", "A1", "S1", "A2", "S2", "X1", "X2", "X3"]
    assert [row.code for row in view.rows] == order
    assert (view.number, view.rows[1].target) == ("orange-syrup version 1", "3.09 kg")
    code = keeper.opens("start", formula="orange-syrup", target="4L")
    keeper.do("note", lot=code, text="begun late")
    assert sheet_of(keeper, code).across == "COPY"


def test_every_act_has_the_blanks_that_are_logged_of_it(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    """A formula with a step of every verb, a batch by another, and one without any."""
    keeper = sqlite_keeper
    code = start_orange(keeper, tmp_path)
    every = version(keeper.book, "orange-essence")
    verbs = tuple(FormulaStep(verb, words="Do it.") for verb in (*BLANKS, "stir"))
    every = replace(every, steps=verbs, lines=())
    frame = frame_of(None, Seal("", 0, ""))
    free = keeper.opens("start", product="Lime", kind="essence", target="1L")
    views = (
        formula_sheet_view(every, every.basis, (), (), frame),
        sheet_of(keeper, code),
        sheet_of(keeper, free),
    )
    told = [line for view in views for line in in_lines("sheet", replace(view, frame=frame))]
    check_golden("bench_sheets.txt", "\n".join(told) + "\n")


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module, "formula_sheet_view")


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
