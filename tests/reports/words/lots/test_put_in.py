"""What went in beside what the formula asks for, with the difference of each line together."""

from pathlib import Path
from unittest.mock import Mock

import pytest
from msgspec.structs import replace

from ledger.domain.amounts.quantity import Measure
from ledger.domain.lots.lot import Lot
from ledger.domain.masters.formulas import Called, Wanted
from ledger.service.lots.dossier import dossier
from ledger.service.lots.journal import Said
from reports.words.lots import put_in as module
from reports.words.lots.put_in import _row, _what, input_rows
from tests.formula_texts import line, orange, step
from tests.keeper import Keeper
from tests.kept.filled import bare, filled
from tests.kept.said import check_said
from tests.path import receive_all

FORMULA = orange(
    "240mL",
    line("orange-oil", "15mL", tolerance="2%"),
    line("spirit", "220mL"),
    step("finish"),
    prepared_by="AB",
)


def test_two_additions_of_one_line_are_compared_together_and_beyond_is_said(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    """30 mL of oil are asked for 480 mL, from 29.4 to 30.6 mL; 20 and 12 mL went in."""
    keeper = sqlite_keeper
    lots = receive_all(keeper)
    file = tmp_path / "orange-essence.toml"
    file.write_text(FORMULA, encoding="utf-8")
    keeper.do("formula", file=str(file))
    code = keeper.opens("start", formula="orange-essence", target="480mL")
    keeper.do("add", lot=code, source=lots.oil, amount="20mL")
    keeper.do("add", lot=code, source=lots.oil, amount="12mL", because="it smelled thin")
    keeper.do("add", lot=code, source=lots.spirit, amount="440mL")
    told = [(r.amount, r.target, r.limits, r.off) for r in input_rows(dossier(keeper.book, code))]
    assert told == [
        ("20 mL", "30 mL", "29.4 mL to 30.6 mL", ""),
        ("12 mL", "30 mL", "29.4 mL to 30.6 mL", "+2 mL, outside"),
        ("440 mL", "440 mL", "", "0 mL"),
    ]


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_an_addition_that_was_struck_counts_in_no_sum(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    keeper = sqlite_keeper
    lots = receive_all(keeper)
    file = tmp_path / "orange-essence.toml"
    file.write_text(FORMULA, encoding="utf-8")
    keeper.do("formula", file=str(file))
    code = keeper.opens("start", formula="orange-essence", target="480mL")
    keeper.do("add", lot=code, source=lots.oil, amount="20mL")
    second = keeper.do("add", lot=code, source=lots.oil, amount="12mL", because="thin")
    keeper.do("strike", entry=str(second.seq), because="it was another jar")
    told = [(row.amount, row.off, row.struck) for row in input_rows(dossier(keeper.book, code))]
    assert told == [("20 mL", "\N{MINUS SIGN}10 mL, outside", False), ("12 mL", "", True)]


def test_what_came_over_unmeasured_is_carried_and_of_a_lot_that_is_gone_too() -> None:
    told = [
        _row(filled(Said), "A-1", taken, lot, None, None, "").amount
        for taken, lot in (
            (0, filled(Lot, measure=Measure.UL)),
            (5, None),
            (5, replace(filled(Lot), measure=Measure.UL)),
        )
    ]
    assert told == ["carried", "carried", "0.005 mL"]


def test_a_delivery_is_named_with_the_lot_of_its_supplier_where_they_gave_one() -> None:
    assert [
        _what(lot) for lot in (filled(Lot, name="Oil", supplier="F", supplier_lot="7"), None)
    ] == [
        "Oil, F lot 7",
        "no longer counted as an input",
    ]
    assert _what(filled(Lot, name="Oil", supplier=None, supplier_lot="7")) == "Oil, supplier lot 7"
    assert _what(bare(Lot, name="Oil")) == "Oil"


def test_what_is_made_here_is_the_line_that_calls_its_formula_by_name_and_else_its_material(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    called = (Called(None, "lime-essence"), Called(None, "orange-essence"), Called("sugar", None))
    lines = tuple(filled(Wanted, called=each) for each in called)
    monkeypatch.setattr(module, "wanted", lambda *_: lines)
    monkeypatch.setattr(module, "latest", lambda *_: Mock())
    essence = filled(Lot, product="Orange Essence", material=None)
    sugar, salt = (filled(Lot, product=None, material=name) for name in ("sugar", "salt"))
    assert module._line(essence, Mock()) == lines[1]
    assert module._line(sugar, Mock()) == lines[2]
    assert module._line(salt, Mock()) is None
    assert module._line(None, Mock()) is None
