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


def test_cleanings_and_instruments_of_its_days_are_in_a_packet_by_when_they_happened(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    scale = keeper.do("equipment", name="Scale", words="set to zero", at="2026-03-06 10:00")
    jar = keeper.do("clean", vessel="Jar", method="hot water", at="2026-03-05 10:00")
    for at in ("2026-03-01 10:00", "2026-03-08 10:00"):
        keeper.do("clean", vessel="Jar", method="hot water", at=at)
    found = packet_of_period(keeper.book, date(2026, 3, 5), date(2026, 3, 6))
    assert [act.seq for act in found.upkeep] == [jar.seq, scale.seq]
    assert [said.entry.seq for said in found.said] == [scale.seq, jar.seq]
    assert (found.dossiers, found.first, found.last) == (
        (), date(2026, 3, 5), date(2026, 3, 6),
    )  # fmt: skip
    whole = packet_of_lot(keeper.book, lots.essence, None)
    assert (whole.first, whole.last) == (date(2026, 3, 2), date(2026, 3, 9))
    assert len(whole.upkeep) == 3
    backward = packet_of_period(keeper.book, date(2026, 3, 6), date(2026, 3, 5))
    assert (backward.first, backward.last, backward.said) == (
        date(2026, 3, 6), date(2026, 3, 6), (),
    )  # fmt: skip


def test_lots_of_a_period_stand_in_the_order_in_which_they_were_opened(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    late = keeper.opens("receive", material="water", amount="1L", at="2026-03-02 06:00")
    found = packet_of_period(keeper.book, date(2026, 3, 2), date(2026, 3, 2))
    codes = [dossier.state.code for dossier in found.dossiers]
    assert codes[:2] == [late, lots.oil]
    assert lots.packed not in codes
