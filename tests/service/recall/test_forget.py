"""Somebody is forgotten: no byte of who they are is left, and no byte that is hashed changes."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ledger.domain.entries import Entry
from ledger.domain.entries.evidence import Forget, Named
from ledger.errors import ReasonNeededError, RefusedError
from ledger.service.copies.intake.together import Within, together
from ledger.service.copies.upgrade import upgrade
from ledger.service.desk.book import How
from ledger.service.evidence.verify import verify
from ledger.service.lots.sales import Period, sales
from ledger.service.masters.party import parties
from ledger.service.recall.forget import Forgettable, forgettable, forgotten
from ledger.store.read import queries
from reports.words.entries.sentence import sentence
from tests.conftest import opened
from tests.keeper import LATER, MORNING, Keeper, SetClock, copy_book, silent
from tests.old_books import OLD_BOOKS
from tests.path import Lots
from tests.service.wrong_words import check_wrong_words

STALL = "Bridge Street Stall"
BECAUSE = "asked for it"


@pytest.fixture(params=["sqlite_keeper", "postgres_keeper"])
def keeper(request: pytest.FixtureRequest) -> Keeper:
    book: Keeper = request.getfixturevalue(request.param)
    return book


def bytes_of(keeper: Keeper) -> bytes:
    """Return all bytes of a book's file and of what lies beside it."""
    where = Path(keeper.book.where)
    return b"".join(path.read_bytes() for path in where.parent.glob(f"{where.name}*"))


def test_what_is_forgotten_among_many_acts_is_out_of_the_file_when_they_are_through(
    sqlite_keeper: Keeper,
) -> None:
    sqlite_keeper.do("party", name="Zebra Bar", phone="01 555 7777")

    def acts(within: Within) -> list[Entry]:
        done = forgotten(within, How("AB", because=BECAUSE), who="Zebra Bar")
        assert not done.is_clean
        return [done.done.entry]

    together(sqlite_keeper.book, acts)
    assert b"Zebra" not in bytes_of(sqlite_keeper)


def test_name_number_and_address_are_erased_and_the_root_stays(sqlite_keeper: Keeper) -> None:
    sqlite_keeper.do("party", name="Zebra Bar", phone="01 555 7777", address="3 Zebra Lane")
    sqlite_keeper.do("party", name="Zebra Bar", phone="01 555 8888")
    sqlite_keeper.do("receive", material="sugar", amount="1kg", supplier="Zebra Bar")
    assert b"Zebra" in bytes_of(sqlite_keeper)
    before = sqlite_keeper.bodies()
    done = forgotten(sqlite_keeper.book, How("AB", because=BECAUSE), who="zebra bar")
    assert done.is_clean
    assert sqlite_keeper.bodies()[:-1] == before
    found = bytes_of(sqlite_keeper)
    assert not any(words in found for words in (b"Zebra", b"555 7777", b"555 8888"))
    audit = verify(sqlite_keeper.book)
    assert (audit.faults, audit.forgotten) == ((), 2)


def test_a_law_no_byte_of_any_name_is_left_and_every_text_stays(
    template: Path, tmp_path_factory: pytest.TempPathFactory
) -> None:
    words = st.text(st.characters(categories=["Lu", "Ll", "Lo"]), min_size=5, max_size=30)

    @settings(max_examples=8)
    @given(words, words.map(lambda told: f"{told} {told[::-1]} 7"))
    def law(name: str, address: str) -> None:
        where = copy_book(template, tmp_path_factory.mktemp("law") / "book.db")
        with opened(str(where), SetClock(MORNING)) as keeper:
            before = bytes_of(keeper)
            keeper.do("party", name=f"{name}-{name}", address=address)
            texts = keeper.bodies()
            keeper.do("forget", who=f"{name}-{name}", because="so it is")
            assert keeper.bodies()[:-1] == texts
            after = bytes_of(keeper)
            for told in (f"{name}-{name}", address):
                assert told.encode() in before or told.encode() not in after
            assert verify(keeper.book).faults == ()

    law()


def test_a_party_is_told_by_its_code_from_then_on(keeper: Keeper) -> None:
    keeper.do("party", name="Quay Bar", phone="01 555 0155")
    done = keeper.do("receive", material="sugar", amount="1kg", supplier="Quay Bar")
    keeper.do("forget", who="Quay Bar", because=BECAUSE)
    assert keeper.entry(done.seq).facts.supplier == "P1"  # type: ignore[attr-defined]
    assert parties(keeper.book) == ()
    with keeper.reading() as connection:
        assert [party.name for party in queries.parties(connection)] == ["P1"]
        views = connection.exec_driver_sql("SELECT supplier FROM v_receipts").scalars().all()
    assert views == ["P1"]
    assert verify(keeper.book).faults == ()
    again = keeper.do("forget", who="P1", because=BECAUSE)
    assert not again.is_new


def test_a_person_is_told_by_initials_from_then_on(keeper: Keeper) -> None:
    done = keeper.do("forget", who="ab", because="left the house")
    assert done.entry.facts == Forget(person="AB", entries=(Named(2, is_kept=False),))
    with keeper.reading() as connection:
        assert [(p.name, p.role) for p in queries.persons(connection)] == [("AB", None)]
    assert verify(keeper.book).forgotten == 1


def test_a_name_that_only_words_have_is_hidden_and_stays_in_the_text(
    walked: tuple[Keeper, Lots],
) -> None:
    keeper, lots = walked
    note = keeper.do("note", text=f"{STALL} was closed.")
    complaint = next(entry.seq for entry in keeper.entries() if entry.kind == "complaint")
    keeper.do("answer", complaint=str(complaint), outcome="explained", told_by="AB")
    sale = next(entry.seq for entry in keeper.entries() if entry.kind == "move")
    was = forgettable(keeper.book, STALL)
    assert (was.erased, was.kept, was.in_words) == ((), (sale,), (note.seq,))
    keeper.do("forget", who=STALL, because=BECAUSE)
    assert [sold.party for sold in sales(keeper.book, Period())] == ["P1"]
    again = keeper.do("send", lot=lots.packed, amount="1", party=STALL)
    assert '"party":"P1"' in keeper.bodies()[again.seq - 1][1]
    assert verify(keeper.book).faults == ()


def test_somebody_forgotten_can_be_told_anew_under_another_code(keeper: Keeper) -> None:
    keeper.do("party", name="Quay Bar", phone="01 555 0155")
    keeper.do("forget", who="Quay Bar", because=BECAUSE)
    keeper.do("party", name="Quay Bar", phone="01 555 0199")
    assert [(party.name, party.code) for party in parties(keeper.book)] == [("Quay Bar", "P2")]


def test_a_correction_and_a_strike_of_a_party_keep_their_details(keeper: Keeper) -> None:
    first = keeper.do("party", name="Quay Bar", phone="01 555 0155")
    keeper.do("correct", entry=str(first.seq), changes="phone=01 555 0199", because="misread")
    assert [party.phone for party in parties(keeper.book)] == ["01 555 0199"]
    keeper.do("strike", entry=str(first.seq + 1), because="not ours")
    assert parties(keeper.book) == ()
    was = forgettable(keeper.book, "P1")
    assert was.erased == (first.seq, first.seq + 1)
    assert verify(keeper.book).faults == ()


def refused(keeper: Keeper, who: str, because: str | None = BECAUSE) -> tuple[str, str]:
    before = len(keeper.bodies())
    with pytest.raises((RefusedError, ReasonNeededError)) as raised:
        keeper.do("forget", who=who, because=because)
    assert len(keeper.bodies()) == before
    ((what, todo),) = raised.value.problems
    return what, todo


def test_it_is_refused_without_a_reason_and_with_one_that_names_them(sqlite_keeper: Keeper) -> None:
    sqlite_keeper.do("party", name="Quay Bar", phone="01 555 0155")
    assert refused(sqlite_keeper, "Quay Bar", None) == (
        "Forgetting Quay Bar erases for good who that is.",
        "Say why with --because. What has to be kept, and how long, is for you to know.",
    )
    assert refused(sqlite_keeper, "Quay Bar", "quay bar asked") == (
        "The reason has the name Quay Bar in it, and would keep it for good.",
        "Say why without the name.",
    )
    assert refused(sqlite_keeper, "Nobody") == (
        "The book knows nobody by the name Nobody.",
        "Give the name or the code of a party, or the initials of a person: pottle party list, "
        "pottle person list.",
    )


def test_whom_a_complaint_or_a_recall_needs_is_not_forgotten(walked: tuple[Keeper, Lots]) -> None:
    keeper, lots = walked
    complaint = keeper.do("complain", lot=lots.packed, symptom="cloudy", party=STALL).seq
    assert refused(keeper, STALL) == (
        f"Complaint {complaint} of {STALL} is open, so they are still needed.",
        f"Answer it first: pottle answer {complaint} OUTCOME",
    )
    keeper.do("answer", complaint=str(complaint), outcome="explained", told_by="AB")
    keeper.do("recall", lot=lots.packed, because="cloudy")
    assert refused(keeper, STALL) == (
        f"The recall of {lots.packed} is open, and {STALL} holds some of it.",
        f"Close it first: pottle recall {lots.packed} --close CAUSE",
    )
    keeper.do("close", lot=lots.packed, cause="old oil", because="all drunk")
    assert sentence(keeper.do("forget", who=STALL, because=BECAUSE).entry).startswith("party P1")


def test_in_a_book_of_an_older_form_the_wish_is_kept_and_the_name_is_shown_no_more(
    tmp_path: Path,
) -> None:
    where = OLD_BOOKS[-2].put(tmp_path / "old.db")
    upgrade(where, tmp_path, silent)
    with opened(where, SetClock(LATER)) as keeper:
        before = keeper.bodies()
        was = forgettable(keeper.book, STALL)
        assert (was.instead, was.erased, len(was.kept)) == ("P1", (), 3)
        keeper.do("forget", who=STALL, because=BECAUSE)
        assert keeper.bodies()[: len(before)] == before
        assert {sold.party for sold in sales(keeper.book, Period())} == {"P1"}
        with keeper.reading() as connection:
            assert [party.name for party in queries.parties(connection)] == ["P1"]
            told = connection.exec_driver_sql("SELECT party FROM v_moves WHERE party IS NOT NULL")
            assert set(told.scalars()) == {"P1"}
        assert verify(keeper.book).faults == ()
        assert not keeper.do("forget", who="P1", because=BECAUSE).is_new


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "forget")


@pytest.mark.parametrize("is_party", [True, False])
def test_of_entries_that_keep_a_name_the_first_alone_is_recorded_beside_those_erased(
    is_party: bool,
) -> None:
    of = Forgettable("Ann", "P-1", is_party, erased=(4, 9), kept=(2, 3), in_words=(7,))
    named = (Named(4, is_kept=False), Named(9, is_kept=False), Named(2, is_kept=True))
    who, none = ("P-1", None) if is_party else (None, "P-1")
    assert of.facts == Forget(party=who, person=none, entries=named)
