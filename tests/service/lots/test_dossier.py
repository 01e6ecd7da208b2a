"""Looking things up in small books: stock, dossiers, journal, history, names, common inputs."""

from datetime import UTC, date, datetime

import pytest

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Add
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.lots.codes import check_code
from ledger.domain.lots.lot import Status
from ledger.errors import LedgerError, RefusedError
from ledger.service.desk.clock import house_of, today
from ledger.service.evidence.seal import seal
from ledger.service.lots.dossier import brief_of, dossier, find_lot
from ledger.service.lots.journal import entries_of_kind, history, journal
from ledger.service.lots.stock import stock
from ledger.service.masters.material import materials
from tests.keeper import Keeper
from tests.path import Lots
from tests.store.contract.changes import entry_of

Walked = tuple[Keeper, Lots]


def problems_of(keeper: Keeper, name: str, by: str | None = None) -> tuple[tuple[str, str], ...]:
    with pytest.raises(LedgerError) as raised:
        find_lot(keeper.book, name, by)
    return raised.value.problems


def test_the_stock_is_what_is_on_hand_in_the_order_it_came(walked: Walked) -> None:
    keeper, lots = walked
    found = stock(keeper.book)
    assert [brief.code for brief in found] == [
        lots.oil, lots.spirit, lots.carb, lots.sugar, lots.water, lots.bottles,
        lots.essence, lots.syrup, lots.packed,
    ]  # fmt: skip
    assert {brief.code: brief.on_hand for brief in found} == {
        code: keeper.on_hand(code) for code in keeper.lot_codes()
    }
    keeper.do("count", lot=lots.syrup, amount="1uL", because="poured away")
    keeper.do("send", lot=lots.packed, amount="9", party="Fair")
    assert lots.packed not in [brief.code for brief in stock(keeper.book)]
    assert lots.packed in [brief.code for brief in stock(keeper.book, everything=True)]


def test_an_empty_book_has_no_stock(sqlite_keeper: Keeper) -> None:
    assert stock(sqlite_keeper.book, everything=True) == ()


def test_a_lot_in_brief_says_what_it_is(walked: Walked) -> None:
    keeper, lots = walked
    oil, packed = brief_of(keeper.book, lots.oil), brief_of(keeper.book, lots.packed)
    assert (oil.name, oil.sort, oil.supplier, oil.supplier_lot, oil.best_before) == (
        "Sweet orange oil", MaterialKind.OIL, "Harbour Oils", "C7731", date(2027, 6, 30),
    )  # fmt: skip
    assert (oil.measure, oil.status) == (Measure.UL, Status.IN_STOCK)
    assert (packed.name, packed.product, packed.status) == (
        "Orange syrup, 250 mL", "Orange syrup", Status.RELEASED,
    )  # fmt: skip
    assert packed.grade == brief_of(keeper.book, lots.syrup).grade == "cloudy"
    assert brief_of(keeper.book, lots.essence).grade == "hazy"


def test_a_dossier_tells_all_of_a_lot(walked: Walked) -> None:
    keeper, lots = walked
    found = dossier(keeper.book, lots.essence)
    assert found.lot in stock(keeper.book, everything=True)
    assert found.lot.code == lots.essence
    assert found.state.on_hand == keeper.on_hand(lots.essence)
    assert found.house is not None
    assert found.house.name == "Quayside Essences"
    assert {edge.source: edge.amount for edge in found.inputs} == {
        lots.oil: 30_769, lots.carb: 15_000, lots.spirit: 440_000,
    }  # fmt: skip
    assert [(edge.target, edge.amount) for edge in found.outputs] == [(lots.syrup, 30_000)]
    assert [material.code for material in found.materials] == ["orange-oil", "spirit", "carb"]
    assert found.holders == ()
    assert found.seal == seal(keeper.book)


def test_a_dossier_tells_what_is_corrected_beside_what_corrects_it(walked: Walked) -> None:
    keeper, lots = walked
    said = dossier(keeper.book, lots.essence).said
    old = next(item for item in said if item.corrected_by is not None)
    new = next(item for item in said if item.entry.seq == old.corrected_by)
    assert isinstance(old.entry.facts, Add)
    assert isinstance(new.entry.facts, Add)
    assert (old.entry.facts.amount.written, new.entry.facts.amount.written) == (
        "25g", "26g",
    )  # fmt: skip
    assert [said.index(old) + 1] == [said.index(new)]


def test_a_dossier_tells_who_has_a_packed_lot_and_no_other(walked: Walked) -> None:
    keeper, lots = walked
    assert [(h.lot, h.party) for h in dossier(keeper.book, lots.packed).holders] == [
        (lots.packed, "Bridge Street Stall")
    ]
    assert dossier(keeper.book, lots.syrup).holders == ()


def test_a_dossier_goes_one_step_back_and_one_forward(walked: Walked) -> None:
    keeper, lots = walked
    found = dossier(keeper.book, lots.syrup)
    assert {node.brief.code for node in found.trace.nodes} == {
        lots.syrup, lots.sugar, lots.water, lots.essence, lots.packed,
    }  # fmt: skip


def test_the_journal_is_in_number_order_and_can_be_cut(walked: Walked) -> None:
    keeper, lots = walked
    numbers = [said.entry.seq for said in journal(keeper.book)]
    assert numbers == list(range(1, len(keeper.bodies()) + 1))
    assert [said.entry.seq for said in journal(keeper.book, last=3)] == numbers[-3:]
    of_lot = journal(keeper.book, lot=lots.packed)
    assert [said.entry.kind for said in of_lot] == ["bottle", "judge", "move", "complaint"]
    assert journal(keeper.book, lot=lots.packed, last=1) == of_lot[-1:]


def test_the_history_of_an_entry_is_its_chain_from_whichever_end(walked: Walked) -> None:
    keeper, lots = walked
    first = entry_of(keeper, "add", lots.essence).seq
    second = len(keeper.bodies())
    third = keeper.do(
        "correct", entry=str(second), changes="amount=27g", because="misread again"
    ).seq
    for number in (first, second, third):
        chain = history(keeper.book, number)
        assert [(said.entry.seq, said.corrected_by) for said in chain] == [
            (first, second), (second, third), (third, None),
        ]  # fmt: skip
    assert history(keeper.book, 999) == ()


def test_a_struck_entry_has_its_strike_in_its_history(walked: Walked) -> None:
    keeper, _ = walked
    note = keeper.do("note", text="Wrong.").seq
    strike = keeper.do("strike", entry=str(note), because="the wrong book").seq
    assert [(s.entry.kind, s.corrected_by) for s in history(keeper.book, note)] == [
        ("note", strike), ("strike", None),
    ]  # fmt: skip


def test_entries_of_a_kind_are_those_in_force(walked: Walked) -> None:
    keeper, lots = walked
    additions = entries_of_kind(keeper.book, Add)
    assert len(additions) == 6
    assert entry_of(keeper, "add", lots.essence).seq not in [entry.seq for entry in additions]


def test_house_materials_and_day_are_the_books(walked: Walked) -> None:
    keeper, _ = walked
    house = house_of(keeper.book)
    assert house is not None
    assert house.time_zone == "Europe/Dublin"
    assert [material.code for material in materials(keeper.book)] == [
        "b250", "carb", "orange-oil", "spirit", "sugar", "water",
    ]  # fmt: skip
    keeper.clock.now = datetime(2026, 7, 1, 23, 30, tzinfo=UTC)
    assert today(keeper.book) == date(2026, 7, 2)


def test_a_lot_is_named_by_its_code_or_an_ending_in_any_case(walked: Walked) -> None:
    keeper, lots = walked
    assert find_lot(keeper.book, lots.essence) == lots.essence
    assert find_lot(keeper.book, f" {lots.essence.lower()} ") == lots.essence
    assert find_lot(keeper.book, lots.essence[-5:]) == lots.essence


def test_a_dot_is_the_lot_one_wrote_about_last(walked: Walked) -> None:
    keeper, lots = walked
    keeper.do("look", lot=lots.syrup, grade="cloudy")
    assert find_lot(keeper.book, ".", "AB") == lots.syrup
    assert problems_of(keeper, ".", "ZZ") == (
        (
            "There is no lot in hand yet for a dot to stand for.",
            "Name the lot by its code.",
        ),
    )


def test_an_ending_of_several_lots_is_told_with_them(sqlite_keeper: Keeper) -> None:
    for code in ("A-SHELF", "B-SHELF"):
        sqlite_keeper.do("receive", material="water", amount="1L", code=code)
    assert problems_of(sqlite_keeper, "shelf") == (
        ("SHELF is the ending of 2 lots: A-SHELF, B-SHELF.", "Give more of the code."),
    )


def test_the_nearest_codes_to_an_unknown_one_are_told(walked: Walked) -> None:
    keeper, lots = walked
    keeper.do("receive", material="water", amount="1L", code="KITCHEN-TAP")
    ((what, todo),) = problems_of(keeper, "KITCHEN-TAB")
    assert what.startswith("There is no lot KITCHEN-TAB in the book. Near to it: KITCHEN-TAP")
    assert todo == "pottle stock lists the lots that are."
    assert lots.oil not in what


def test_a_slip_in_a_books_own_code_is_told_as_one(walked: Walked) -> None:
    keeper, lots = walked
    slip = lots.essence[:-1] + ("A" if lots.essence[-1] != "A" else "B")
    assert problems_of(keeper, slip) == (
        (
            f"{check_code(slip)} Near to it: {lots.essence}, OS-001-O, BOS-001-S.",
            "pottle stock lists the lots that are.",
        ),
    )


def test_what_is_not_in_the_book_is_refused(sqlite_keeper: Keeper) -> None:
    for look in (brief_of, dossier):
        with pytest.raises(RefusedError):
            look(sqlite_keeper.book, "NONE-1")
