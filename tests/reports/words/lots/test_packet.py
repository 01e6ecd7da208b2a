"""The packet in words: every entry as it was written, complaints and recalls apart."""

from ledger.service.glass.spirit import spirit_account
from ledger.service.lots.packet import packet_of_lot
from reports.kit.frame import frame_of
from reports.words.lots import packet as module
from reports.words.lots.packet import packet_view
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.path import Lots
from tests.reports.words.bottles import pack


def test_complaints_stand_apart_and_corrections_beside_what_they_correct(
    made: tuple[Keeper, Lots, str],
) -> None:
    keeper, lots, essence = made
    packed = pack(keeper, lots, essence)
    keeper.do("complain", lot=packed, symptom="cloudy", party="Bridge Street Stall")
    found = packet_of_lot(keeper.book, packed, None)
    seal = found.dossiers[0].seal
    spirit = spirit_account(keeper.book, "2026-01-01", "2026-12-31")
    view = packet_view(found, spirit, (), (), frame_of(None, seal), packed)
    (complaint,) = view.complaints
    assert (complaint.lot, complaint.what) == (packed, "complaint")
    struck = [row for row in view.entries if row.struck]
    assert all(row.notes for row in struck)
    assert {row.lot for row in view.entries} >= {packed, essence}


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
