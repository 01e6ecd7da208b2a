"""What a release asks, ticked where it is so."""

import dataclasses

from ledger.service.lots.dossier import dossier
from reports.words.lots.gate import gate_rows
from reports.words.lots.put_in import input_rows
from tests.keeper import Keeper
from tests.path import Lots, receive_all


def gate(keeper: Keeper, code: str) -> dict[str, tuple[bool | None, str]]:
    found = dossier(keeper.book, code)
    return {row.asked: (row.is_met, row.words) for row in gate_rows(found, input_rows(found))}


def test_a_batch_by_no_formula_that_nobody_checked_says_so(made: tuple[Keeper, Lots, str]) -> None:
    keeper, _, essence = made
    told = gate(keeper, essence)
    assert told["By a formula"] == (None, "it follows none")
    assert told["Checked by a second person"] == (False, "by nobody else")
    assert told["No input held, rejected or recalled"] == (True, "none is held")
    keeper.do("person", initials="CD", name="Cleo Dunn")
    dataclasses.replace(keeper, by="CD").do("check", lot=essence)
    assert gate(keeper, essence)["Checked by a second person"] == (True, "by CD")


def test_a_batch_by_a_formula_is_held_to_it(orange: tuple[Keeper, str]) -> None:
    told = gate(*orange)
    assert "Every step has its entry" in told
    assert told["Released"] == (False, "not yet")


def test_a_delivery_has_no_gate(sqlite_keeper: Keeper) -> None:
    lots = receive_all(sqlite_keeper)
    assert gate(sqlite_keeper, lots.oil) == {}
