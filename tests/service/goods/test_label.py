"""What became of labels: what is recorded, and what is refused in which words."""

import pytest

from ledger.domain.entries import Labels
from ledger.domain.entries.choices import Across
from ledger.errors import InputError, RefusedError
from ledger.service.desk.book import How
from ledger.service.goods.label import labels_together
from tests.keeper import Keeper
from tests.service.cases import Refused, Said, check_recorded, check_refused
from tests.service.wrong_words import check_wrong_words

RECORDED: dict[str, Said] = {
    "labels": (
        "labels",
        {"lot": "BPS-001-X", "printed": "10", "used": "3", "spoiled": "1"},
        None,
        {"printed": 10, "used": 3, "spoiled": 1},
    ),
    "labels of which nothing else is told": (
        "labels",
        {"lot": "bps-001-x", "printed": "10"},
        None,
        {"printed": 10},
    ),
    "a specimen": (
        "labels",
        {"lot": "BPS-001-X", "printed": "1", "specimen": "yes"},
        None,
        {"printed": 1, "across": "SPECIMEN"},
    ),
    "a sheet of which nothing was printed": (
        "labels",
        {"lot": "BPS-001-X", "printed": "0", "specimen": "yes"},
        None,
        {"printed": 0},
    ),
}

REFUSED: dict[str, Refused] = {
    "labels without a number": (
        "labels",
        {"lot": "BPS-001-X", "printed": "ten"},
        InputError,
        (('"ten" is not a number of labels.', "Write a number."),),
    ),
}


@pytest.mark.parametrize("said", RECORDED.values(), ids=list(RECORDED))
def test_a_verb_records_what_was_said(said: Said, bench: Keeper) -> None:
    check_recorded(said, bench)


@pytest.mark.parametrize("refused", REFUSED.values(), ids=list(REFUSED))
def test_a_verb_refuses_in_whole_sentences(refused: Refused, bench: Keeper) -> None:
    check_refused(refused, bench)


def test_each_of_its_words_that_is_wrong_is_named(shelf: Keeper) -> None:
    check_wrong_words(shelf, "labels")


def test_labels_of_several_lots_on_one_sheet_are_all_recorded_or_none(bench: Keeper) -> None:
    bench.do("judge", lot="PS-001-T", verdict="hold", because="to see")
    how = How("AB", because="to keep")
    both = labels_together(bench.book, how, printed={"BPS-001-X": 4, "PS-001-T": 2})
    told = [(done.entry.draft.lot, done.entry.facts) for done in both]
    assert told == [
        ("BPS-001-X", Labels(4)),
        ("PS-001-T", Labels(2, across=Across.HOLD)),
    ]
    before = bench.bodies()
    with pytest.raises(RefusedError):
        labels_together(bench.book, how, printed={"BPS-001-X": 4, "NONE-1": 2})
    assert bench.bodies() == before
