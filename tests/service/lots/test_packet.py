"""The packet of a lot has all in it that was made here; that of a period what was opened in it."""

from datetime import date

from ledger.service.lots.packet import packet_of_lot, packet_of_period
from tests.keeper import Keeper
from tests.path import Lots


def test_the_packet_of_bottles_has_the_batches_that_are_in_them(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    found = packet_of_lot(keeper.book, lots.packed, "AB")
    codes = [dossier.state.code for dossier in found.dossiers]
    assert codes == [lots.packed, lots.syrup, lots.essence]
    assert lots.oil not in codes
    numbers = [said.entry.seq for said in found.said]
    assert numbers == sorted(set(numbers))


def test_the_packet_of_a_period_has_what_was_opened_in_it(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    found = packet_of_period(keeper.book, date(2026, 3, 1), date(2026, 3, 31))
    codes = [dossier.state.code for dossier in found.dossiers]
    assert {lots.oil, lots.essence} <= set(codes)
    assert packet_of_period(keeper.book, date(2025, 1, 1), date(2025, 12, 31)).dossiers == ()
