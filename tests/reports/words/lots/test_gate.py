"""What a release asks, ticked where it is so."""

import dataclasses
from pathlib import Path

from msgspec.structs import replace

from ledger.service.lots.dossier import dossier
from reports.views.lots import GateRow, InputRow
from reports.words.lots import gate as module
from reports.words.lots.gate import gate_rows
from reports.words.lots.put_in import input_rows
from tests.formula_texts import line, step
from tests.formula_texts import orange as orange_text
from tests.keeper import Keeper
from tests.kept.filled import filled
from tests.kept.golden import check_golden
from tests.kept.said import check_constants, check_said
from tests.path import Lots, receive_all


def gate(keeper: Keeper, code: str) -> dict[str, tuple[bool | None, str]]:
    return {row.asked: (row.is_met, row.words) for row in rows_of(keeper, code)}


def rows_of(keeper: Keeper, code: str) -> tuple[GateRow, ...]:
    found = dossier(keeper.book, code)
    return gate_rows(found, input_rows(found))


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
    assert told["Released"] == (False, "not yet")
    keeper, code = orange
    rows = [f"{asked}: {is_met}, {words}\n" for asked, (is_met, words) in told.items()]
    keeper.do("judge", lot=code, verdict="release", because="a guest waits", anyway="yes")
    rows += [f"{row.asked}: {row.is_met}, {row.words}\n" for row in rows_of(keeper, code)]
    found = dossier(keeper.book, code)
    unseen = replace(
        found,
        state=replace(
            found.state, entries=tuple(e for e in found.state.entries if e.kind != "look")
        ),
    )
    rows += [
        f"{row.asked}: {row.is_met}, {row.words}\n"
        for row in gate_rows(unseen, ())
        if row.asked.startswith("Looked")
    ]
    check_golden("gate.txt", "".join(rows))


def test_a_delivery_has_no_gate(sqlite_keeper: Keeper) -> None:
    lots = receive_all(sqlite_keeper)
    assert gate(sqlite_keeper, lots.oil) == {}


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


def test_steps_without_an_entry_are_named_and_a_struck_amount_is_beyond_nothing(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    lots, file = receive_all(sqlite_keeper), tmp_path / "orange-essence.toml"
    steps = (step("rest", rest_for="macerate"), step("finish"))
    lines = (line("orange-oil", "15mL"), line("spirit", "220mL"))
    file.write_text(orange_text("240mL", *lines, *steps, prepared_by="AB"), encoding="utf-8")
    sqlite_keeper.do("formula", file=str(file))
    code = sqlite_keeper.opens("start", formula="orange-essence", target="480mL")
    sqlite_keeper.do("add", lot=code, source=lots.oil, amount="30mL")
    found = dossier(sqlite_keeper.book, code)
    for struck, words in ((True, "all within what the formula allows"), (False, "outside: Oil")):
        row = filled(InputRow, what="Oil", off="+2 mL, outside", struck=struck)
        told = {each.asked: (each.is_met, each.words) for each in gate_rows(found, (row,))}
        assert told["Amounts within limits"] == (struck, words)
        assert told["Every step has its entry"] == (False, "missing: 1 rest")
