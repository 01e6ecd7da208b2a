"""All of one lot: its dossier, its brief, and the words by which it is found."""

from datetime import date

import pytest

from ledger.domain.amounts.quantity import Measure
from ledger.domain.entries import Add
from ledger.domain.entries.choices import MaterialKind
from ledger.domain.lots.codes import check_code
from ledger.domain.lots.lot import Status
from ledger.errors import LedgerError, RefusedError
from ledger.service.evidence.seal import seal
from ledger.service.lots.dossier import brief_of, dossier, find_lot
from ledger.service.lots.stock import stock
from tests.keeper import Keeper
from tests.path import Lots

Walked = tuple[Keeper, Lots]


def problems_of(keeper: Keeper, name: str, by: str | None = None) -> tuple[tuple[str, str], ...]:
    with pytest.raises(LedgerError) as raised:
        find_lot(keeper.book, name, by)
    return raised.value.problems


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
    assert isinstance(old.entry.draft.facts, Add)
    assert isinstance(new.entry.draft.facts, Add)
    assert (old.entry.draft.facts.amount.written, new.entry.draft.facts.amount.written) == (
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


def test_a_lot_is_named_by_its_code_or_an_ending_in_any_case(walked: Walked) -> None:
    keeper, lots = walked
    assert find_lot(keeper.book, lots.essence) == lots.essence
    assert find_lot(keeper.book, f" {lots.essence.lower()} ") == lots.essence
    assert find_lot(keeper.book, lots.essence[-5:]) == lots.essence


def test_a_dot_without_initials_asks_for_them(walked: Walked) -> None:
    keeper, _ = walked
    assert problems_of(keeper, ".", "") == (
        (
            "A dot stands for the lot that somebody has in hand, and no initials are given.",
            "Give --by INITIALS, set POTTLE_BY, or name the lot by its code.",
        ),
    )


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
            f"{check_code(slip)} Near to it: {lots.essence}, BOS-001-S, LOT-001-X.",
            "pottle stock lists the lots that are.",
        ),
    )


def test_what_is_not_in_the_book_is_refused(sqlite_keeper: Keeper) -> None:
    for look in (brief_of, dossier):
        with pytest.raises(RefusedError):
            look(sqlite_keeper.book, "NONE-1")
