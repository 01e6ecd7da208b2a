"""One lot, for machines."""

from datetime import date

from msgspec.structs import replace

from ledger.service.glass.card import ServingCard
from ledger.service.lots.dossier import dossier
from reports.json.glass.serving import serving_answer
from reports.json.kit.answer import Amount
from reports.json.lots.lot import lot_answer
from tests.keeper import Keeper
from tests.kept.filled import filled
from tests.path import Lots
from tests.reports.json.kept import check


def test_a_lot_has_what_went_in_and_out_and_the_date_that_is_reckoned(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    told = lot_answer(dossier(keeper.book, lots.essence), None, None)
    assert (told.code, told.best_before) == (lots.essence, date(2027, 6, 30))
    assert {(edge.source, edge.target, edge.amount) for edge in told.edges} == {
        (lots.oil, lots.essence, Amount("30.769", "mL")),
        (lots.carb, lots.essence, Amount("15", "g")),
        (lots.spirit, lots.essence, Amount("440", "mL")),
        (lots.essence, lots.syrup, Amount("30", "mL")),
    }
    assert [row.entry for row in told.journal] == [15, 16, 36, *range(17, 26)]
    assert [line.split()[0] for line in told.seal.lines] == ["House", "Entries", "Root"]


def test_every_field_of_a_lot_is_the_kept_one(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    answers = (
        lot_answer(dossier(keeper.book, code), None, "pottle stock")
        for code in (lots.oil, lots.packed)
    )
    check("lot", *(replace(answer, seal=None) for answer in answers))


def test_a_lot_has_the_card_of_what_it_contains_or_null(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    card, found = filled(ServingCard), dossier(keeper.book, lots.packed)
    assert lot_answer(found, card, None).contains == serving_answer(card)
    assert lot_answer(found, None, None).contains is None
