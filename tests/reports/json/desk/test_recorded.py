"""What a command that records answers, for machines."""

from ledger.domain.entries import Note
from ledger.domain.lots.lot import Status
from ledger.service.desk.book import Recorded
from ledger.service.lots.dossier import dossier
from reports.json.desk.recorded import recorded_answer
from reports.json.kit.answer import Amount
from tests.keeper import Keeper
from tests.kept.filled import bare, filled
from tests.reports.json.kept import check


def test_a_delivery_says_its_lot_and_what_is_not_known_of_it_yet(sqlite_keeper: Keeper) -> None:
    done = sqlite_keeper.do("receive", material="orange-oil", amount="500mL", supplier="Ficto Oils")
    found = dossier(sqlite_keeper.book, done.code or "")
    told = recorded_answer(done, found, "pottle stock")
    assert (told.kind, told.code, told.name) == ("receipt", "SOO-001-3", "Sweet orange oil")
    assert (told.on_hand, told.status) == (Amount("500", "mL"), Status.IN_STOCK)
    assert told.not_known == (
        "the supplier's lot",
        "the cost",
        "the best-before date",
        "the certificate",
    )
    assert told.next == "pottle stock"


def test_an_entry_about_no_lot_has_none(sqlite_keeper: Keeper) -> None:
    told = recorded_answer(sqlite_keeper.do("clean", vessel="Pan 2", method="steam"), None, None)
    assert (told.says, told.code, told.on_hand, told.next) == ("Pan 2, steam", None, None, None)


def test_every_field_of_what_was_recorded_is_the_kept_one(sqlite_keeper: Keeper) -> None:
    """A delivery with a remark, an addition with its deviation, and an entry about no lot."""
    keeper = sqlite_keeper
    came = keeper.do("receive", material="spirit", amount="1L", hold="yes", because="no papers")
    batch = keeper.opens("start", product="Free", kind="blend", target="1L")
    put = keeper.do("add", lot=batch, source=came.code, amount="250mL", because="tried")
    clean = keeper.do("clean", vessel="Pan 2", method="steam")
    found = [dossier(keeper.book, code) for code in (came.code or "", batch)]
    check(
        "recorded",
        recorded_answer(came, found[0], "pottle stock"),
        recorded_answer(put, found[1], None),
        recorded_answer(clean, None, None),
    )


def test_every_part_of_what_was_recorded_stands_under_its_own_key() -> None:
    done = (each(Recorded[Note], draws_on=(), others=()) for each in (filled, bare))
    check("recorded_filled", *(recorded_answer(each, None, "next") for each in done))
