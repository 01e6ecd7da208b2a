"""Every part of every answer stands under its own key, and what there is none of is null."""

from collections.abc import Callable, Iterable
from typing import Any

import pytest
from msgspec import Struct

from ledger.domain.entries import Clean, Entry, House, Labels, Material, Party, Person, Receipt
from ledger.domain.evidence.seals import Seal
from ledger.service.copies.copied import Copied
from ledger.service.copies.intake.take_in import TakenIn
from ledger.service.copies.rehearsal import Rehearsed
from ledger.service.copies.upgrade import Upgraded
from ledger.service.desk.book import Recorded
from ledger.service.glass.haze import Haze
from ledger.service.glass.scores import Score
from ledger.service.lots.complaints import Complained
from ledger.service.lots.sales import Sale
from ledger.service.recall.forget import Forgotten
from reports.epcis.document import Exported
from reports.json.bench.sheet import sheet_answer
from reports.json.copies.copied import copied_answer
from reports.json.copies.rehearsal import rehearsal_answer
from reports.json.copies.taken_in import taken_in_answer
from reports.json.copies.upgrade import upgrade_answer
from reports.json.evidence.seal import seal_answer
from reports.json.glass.foretell import foretell_answer, score_answer
from reports.json.goods.label import label_answer
from reports.json.lots.acts import cleaning_row, receipt_row, sale_row
from reports.json.lots.complaints import complaint_row
from reports.json.masters.house import house_answer
from reports.json.masters.init import init_answer
from reports.json.masters.material import material_row
from reports.json.masters.party import party_row
from reports.json.masters.person import person_row
from reports.json.recall.epcis import epcis_answer
from reports.json.recall.forget import forget_answer
from reports.views.bench import BatchSheetView
from tests.kept.filled import bare, filled
from tests.reports.json.kept import check

Each = Callable[..., Any]


def labels(of: Each) -> Recorded[Labels]:
    """Return labels that were recorded, of a lot that drew on none."""
    done: Recorded[Labels] = of(Recorded[Labels], draws_on=(), others=())
    return done


ANSWERS: dict[str, Callable[[Each], Iterable[Struct]]] = {
    "bench/sheet": lambda of: [
        sheet_answer(of(BatchSheetView, frame=None), "A-1", "sheet.pdf"),
    ],
    "copies/copied": lambda of: [copied_answer(of(Copied))],
    "copies/rehearsal": lambda of: [rehearsal_answer(of(Rehearsed))],
    "copies/taken_in": lambda of: [taken_in_answer(of(TakenIn))],
    "copies/upgrade": lambda of: [upgrade_answer(of(Upgraded))],
    "evidence/seal": lambda of: [seal_answer(of(Seal), "seal.txt")],
    "glass/foretell": lambda of: [foretell_answer(of(Haze), 7), *score_answer((of(Score),))],
    "goods/label": lambda of: [
        label_answer([(labels(of), None)] * 2, "next", "labels.pdf"),
        label_answer([(labels(of), None)], None, None, left_out=("A-1",), missing=("A-2",)),
    ],
    "lots/acts": lambda of: [
        sale_row(of(Sale)),
        receipt_row(of(Entry[Receipt]), "EUR"),
        cleaning_row(of(Entry[Clean])),
    ],
    "lots/complaints": lambda of: [complaint_row(of(Complained))],
    "masters/house": lambda of: [house_answer(of(House))],
    "masters/init": lambda _: [init_answer("pottle.db", "Europe/Dublin")],
    "masters/material": lambda of: [material_row(of(Material))],
    "masters/party": lambda of: [party_row(of(Party))],
    "masters/person": lambda of: [person_row(of(Person))],
    "recall/epcis": lambda of: [epcis_answer(of(Exported), "events.json")],
    "recall/forget": lambda of: [forget_answer(of(Forgotten, draws_on=(), others=()))],
}


@pytest.mark.parametrize("name", ANSWERS)
def test_every_part_of_an_answer_stands_under_its_own_key(name: str) -> None:
    answers = (answer for of in (filled, bare) for answer in ANSWERS[name](of))
    check(f"{name.replace('/', '_')}_filled", *answers)
