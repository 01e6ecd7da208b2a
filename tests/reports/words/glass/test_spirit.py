"""The spirit account in rows, and what to know besides."""

from msgspec.structs import replace

from ledger.service.glass.spirit import spirit_account
from reports.words.glass.spirit import lot_rows, notes, rows
from tests.keeper import Keeper
from tests.path import Lots


def test_the_account_goes_from_what_was_there_to_what_is(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    report = spirit_account(keeper.book, "2026-01-01", "2026-12-31")
    told = rows(report)
    assert told[:3] == [
        ["on hand before 2026-01-01", "0.000"],
        ["received", "4.800"],
        ["  sold", "0.010"],
    ]
    assert ["on hand after 2026-12-31", "4.768"] in told
    assert lot_rows(report) == [[lots.spirit, "Neutral spirit", "4.800", "0.422", "4.378"]]


def test_a_spirit_whose_strength_is_not_known_is_named(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    report = spirit_account(keeper.book, "2026-01-01", "2026-12-31")
    assert notes(report) == [
        "For the officer's own form; local law says what must be kept, and how long."
    ]
    assert any(lots.spirit in line for line in notes(replace(report, unknown=(lots.spirit,))))
