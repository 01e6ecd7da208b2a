"""The sheet that a batch is made from: what goes in, what is done, what is written down."""

from pathlib import Path

import pytest

from ledger.errors import RefusedError
from ledger.service.bench.draws import propose
from ledger.service.lots.dossier import dossier
from ledger.service.masters.material import materials
from reports.views.bench import BatchSheetView
from reports.words.bench.sheet import FREE_ADDITIONS, batch_sheet_view
from tests.keeper import Keeper
from tests.service.orange import start_orange


def sheet_of(keeper: Keeper, code: str) -> BatchSheetView:
    proposed = propose(keeper.book, code)
    return batch_sheet_view(dossier(keeper.book, code), proposed, materials(keeper.book))


def test_a_batch_by_a_formula_has_its_lines_and_steps(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    found = sheet_of(sqlite_keeper, start_orange(sqlite_keeper, tmp_path))
    assert dict(found.facts)["Formula"] == "orange-essence version 1"
    assert [row.code for row in found.additions] == ["A1", "A2", "A3"]
    assert [row.code for row in found.steps] == ["S1", "S2a", "S2b", "S3", "S4", "S5", "S6"]
    assert "Highly flammable." in found.cautions


def test_a_batch_without_one_leaves_rows_to_be_filled_in(sqlite_keeper: Keeper) -> None:
    code = sqlite_keeper.opens("start", product="Lime", kind="essence", target="1L")
    found = sheet_of(sqlite_keeper, code)
    assert len(found.additions) == FREE_ADDITIONS
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
