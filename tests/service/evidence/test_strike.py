"""Striking an entry: it stays readable, and what is refused in which words."""

import pytest

from ledger.domain.entries import Add, Strike
from ledger.errors import InputError
from ledger.service.lots.journal import entries_of_kind, history, journal
from ledger.service.lots.shares import traced
from tests.keeper import Keeper
from tests.service.cases import Refused, check_refused
from tests.service.wrong_words import check_wrong_words

REFUSED: dict[str, Refused] = {
    "a strike of what is no number": (
        "strike",
        {"entry": "the last", "because": "wrong"},
        InputError,
        (
            (
                '"the last" is not the number of an entry.',
                "pottle journal lists the entries with their numbers.",
            ),
        ),
    ),
}


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def test_a_strike_keeps_what_it_strikes_readable(bench: Keeper) -> None:
    old = bench.entry(19)
    made = bench.do("strike", entry="19", because="another batch")
    assert (made.entry.kind, made.entry.draft.corrects) == ("strike", 19)
    assert bench.entry(19) == old


def test_a_struck_entry_is_counted_once_wherever_it_is_counted(bench: Keeper) -> None:
    """A draw is corrected twice and struck: it came back once, and each entry stands once."""
    before = bench.on_hand("SOO-001-3")
    drawn = bench.do("add", lot="OE-001-5", source="SOO-001-3", amount="30mL").seq
    mended = bench.do("correct", entry=str(drawn), changes="amount=40mL", because="misread").seq
    again = bench.do("correct", entry=str(mended), changes="amount=50mL", because="misread").seq
    assert bench.on_hand("SOO-001-3") == before - 50_000
    struck = bench.do("strike", entry=str(again), because="another batch").seq
    assert bench.on_hand("SOO-001-3") == bench.held("SOO-001-3") == before
    chain = [(drawn, mended), (mended, again), (again, struck), (struck, None)]
    for lot in (None, "OE-001-5"):
        told = [(said.entry.seq, said.corrected_by) for said in journal(bench.book, lot=lot).said]
        assert told[-4:] == chain
        assert len(told) == len(set(told))
    assert [(said.entry.seq, said.corrected_by) for said in history(bench.book, again)] == chain
    assert not {drawn, mended, again} & {
        entry.seq for kind in (Add, Strike) for entry in entries_of_kind(bench.book, kind)
    }
    assert traced(bench.book, "SOO-001-3").ahead == {}


def test_a_strike_is_no_earlier_than_what_it_strikes_where_no_time_is_told(bench: Keeper) -> None:
    """Two people write by clocks a minute apart."""
    note = bench.do("note", text="The wrong book.")
    bench.clock.forward(minutes=-6)
    struck = bench.do("strike", entry=str(note.seq), because="the wrong book")
    assert struck.entry.draft.happened.at == note.entry.draft.happened.at
    later = bench.do("note", text="Another.", at="2026-03-08 10:00")
    struck = bench.do("strike", entry=str(later.seq), because="the wrong book")
    assert struck.entry.draft.happened.at == bench.clock.now
    third = bench.do("note", text="A third.", at="2026-03-08 10:00")
    struck = bench.do("strike", entry=str(third.seq), at="2026-03-08 11:00", because="wrong")
    assert f"{struck.entry.draft.happened.at:%F %H:%M}" == "2026-03-08 11:00"


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "strike")
