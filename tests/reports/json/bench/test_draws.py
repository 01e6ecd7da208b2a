"""What to draw for a batch, for machines."""

from pathlib import Path

from ledger.service.bench.draws import propose
from reports.json.bench.draws import plain
from tests.keeper import Keeper
from tests.service.orange import start_orange


def test_what_is_proposed_says_what_is_short(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    """15 g of the 20 g of carbonate are there, and the spirit by weight cannot be drawn on."""
    code = start_orange(sqlite_keeper, tmp_path)
    oil, carb, spirit = plain(propose(sqlite_keeper.book, code))
    assert oil == {
        "material": "orange-oil",
        "formula": None,
        "amount": "30000",
        "asked": "30000",
        "unit": "uL",
        "short": "0",
        "lots": [{"lot": "SOO-002-1", "amount": "20000"}, {"lot": "SOO-001-3", "amount": "10000"}],
    }
    assert (carb["short"], carb["lots"]) == ("5000", [{"lot": "LMC-001-F", "amount": "15000"}])
    assert (spirit["short"], spirit["lots"]) == ("450000", [])
