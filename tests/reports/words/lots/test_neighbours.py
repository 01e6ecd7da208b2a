"""One step back and forward: days and addresses where the book knows them."""

from ledger.service.lots.around import around
from ledger.service.lots.dossier import dossier
from reports.words.lots import neighbours as module
from reports.words.lots.neighbours import back_rows, forward_rows
from tests.keeper import Keeper
from tests.kept.said import check_said
from tests.path import Lots
from tests.reports.words.bottles import pack


def test_each_neighbour_has_its_day_and_its_address(made: tuple[Keeper, Lots, str]) -> None:
    keeper, lots, essence = made
    packed = pack(keeper, lots, essence)
    keeper.do("judge", lot=packed, verdict="release")
    keeper.do("send", lot=packed, amount="6", party="Bridge Street Stall", document="DN-7")
    keeper.do("send", lot=packed, amount="1", moved_as="destroyed")
    keeper.do("party", name="Bridge Street Stall", address="1 Bridge Street")
    keeper.do("party", name="Harbour Oils", address="2 Orchard")
    found = dossier(keeper.book, packed)
    parties = {party.name: party for party in around(keeper.book, found.state).parties}
    sent, given = forward_rows(found, parties)
    assert (sent.who, sent.what, sent.amount, sent.where) == (
        "Bridge Street Stall",
        "sold, DN-7",
        "6",
        "1 Bridge Street",
    )
    assert (given.who, given.what, given.amount, given.where) == ("–", "destroyed", "1", "")
    assert lots.bottles in [row.who for row in back_rows(found, parties)]
    (came,) = back_rows(dossier(keeper.book, lots.oil), parties)
    assert (came.who, came.what, came.amount, came.where) == (
        "Harbour Oils",
        "Sweet orange oil, their lot C7731",
        "500 mL",
        "2 Orchard",
    )
    told = {"material": "orange-oil", "amount": "50mL", "supplier": "Harbour Oils"}
    unnamed = dossier(keeper.book, keeper.opens("receive", **told))
    assert [row.what for row in back_rows(unnamed, parties)] == ["Sweet orange oil"]


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)
