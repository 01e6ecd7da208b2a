"""The journal, the history of an entry, and the entries of a kind."""

from ledger.domain.entries import Add
from ledger.service.lots.journal import entries_of_kind, history, journal
from tests.keeper import Keeper
from tests.path import Lots
from tests.store.contract.changes import entry_of

Walked = tuple[Keeper, Lots]


def test_the_journal_is_in_number_order_and_can_be_cut(walked: Walked) -> None:
    keeper, lots = walked
    numbers = [said.entry.seq for said in journal(keeper.book).said]
    assert numbers == list(range(1, len(keeper.bodies()) + 1))
    assert [said.entry.seq for said in journal(keeper.book, last=3).said] == numbers[-3:]
    of_lot = journal(keeper.book, lot=lots.packed).said
    assert [said.entry.kind for said in of_lot] == ["bottle", "judge", "move", "complaint"]
    assert journal(keeper.book, lot=lots.packed, last=1).said == of_lot[-1:]


def test_the_history_of_an_entry_is_its_chain_from_whichever_end(walked: Walked) -> None:
    keeper, lots = walked
    first = entry_of(keeper, "add", lots.essence).seq
    second = len(keeper.bodies())
    third = keeper.do(
        "correct", entry=str(second), changes="amount=27g", because="misread again"
    ).seq
    for number in (first, second, third):
        chain = history(keeper.book, number)
        assert [(said.entry.seq, said.corrected_by) for said in chain] == [
            (first, second), (second, third), (third, None),
        ]  # fmt: skip
    assert history(keeper.book, 999) == ()


def test_a_struck_entry_has_its_strike_in_its_history(walked: Walked) -> None:
    keeper, _ = walked
    note = keeper.do("note", text="Wrong.").seq
    strike = keeper.do("strike", entry=str(note), because="the wrong book").seq
    assert [(s.entry.kind, s.corrected_by) for s in history(keeper.book, note)] == [
        ("note", strike), ("strike", None),
    ]  # fmt: skip


def test_entries_of_a_kind_are_those_in_force(walked: Walked) -> None:
    keeper, lots = walked
    additions = entries_of_kind(keeper.book, Add)
    assert len(additions) == 6
    assert entry_of(keeper, "add", lots.essence).seq not in [entry.seq for entry in additions]
