"""The beginning of a batch, for machines: what to draw for it."""

from pathlib import Path

from ledger.service.bench.draws import propose
from ledger.service.desk.book import Recorded
from ledger.service.lots.dossier import dossier
from ledger.service.lots.journal import journal
from reports.json.bench.start import LineProposed, LotDrawn, start_answer
from reports.json.kit.answer import Amount
from tests.keeper import Keeper
from tests.service.orange import start_orange


def test_what_is_proposed_says_what_is_short(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    """15 g of the 20 g of carbonate are there, and the spirit by weight is drawn by volume."""
    code = start_orange(sqlite_keeper, tmp_path)
    book = sqlite_keeper.book
    done = Recorded(journal(book, last=1).said[0].entry, code)
    told = start_answer(done, dossier(book, code), None, propose(book, code), "sheet.pdf")
    oil, carb, spirit = told.proposed
    assert oil == LineProposed(
        material="orange-oil",
        formula=None,
        amount=Amount("30", "mL"),
        asked=Amount("30", "mL"),
        short=Amount("0", "mL"),
        lots=(
            LotDrawn("SOO-004-Y", Amount("20", "mL")),
            LotDrawn("SOO-001-3", Amount("10", "mL")),
        ),
    )
    assert (carb.short, carb.lots) == (
        Amount("5", "g"),
        (LotDrawn("LMC-001-F", Amount("15", "g")),),
    )
    assert (spirit.short, spirit.lots) == (
        Amount("0", "mL"),
        (LotDrawn("NS-002-H", Amount("450", "mL")),),
    )
    assert (told.code, told.path) == (code, "sheet.pdf")
