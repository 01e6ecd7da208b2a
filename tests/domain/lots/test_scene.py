"""What the rules may look at: sources by code, and what came before a draft."""

from ledger.domain.entries import Add, Note
from tests.domain.builders import at, draft, entry, lot, make, oil, scene, when


def test_a_source_is_found_by_its_code() -> None:
    around = scene(lot(), oil("O-1"), oil("O-2"))
    found = around.source("O-2")
    assert found is not None
    assert found.code == "O-2"
    assert around.source("O-3") is None
    assert around.source(None) is None


def test_what_came_before_is_told_by_when_it_happened() -> None:
    state = lot("E-1", make(Add), make(Note))
    first, second, third = state.entries
    told = draft(make(Note), happened=when(second.draft.happened.at))
    assert scene(state).so_far(told) == (first, second)
    assert scene(state).so_far(draft(make(Note))) == (first, second, third)
    assert scene().so_far(told) == ()


def test_what_is_corrected_keeps_its_place_among_entries_of_the_same_second() -> None:
    same = at(9)
    state = lot("E-1", entry(make(Add), 2, same), entry(make(Note), 3, same))
    again = draft(make(Add), happened=when(same), corrects=2)
    around = scene(state, corrected=state.entries[1])
    assert [item.seq for item in around.so_far(again)] == [1]
