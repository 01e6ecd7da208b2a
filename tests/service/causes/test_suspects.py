"""Suspects from a book: what failed, what it is compared with, how it was made."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from ledger.errors import InputError, RefusedError
from ledger.science.statistics.exact import Table
from ledger.science.statistics.suspects import Cause, Conclusion, Sort
from ledger.service.causes.suspects import Suspicion, suspects
from tests.conftest import opened
from tests.heard import heard
from tests.keeper import Keeper, SetClock, copy_book
from tests.path import Lots, receive_all
from tests.service.bench.makings import essence, oil_lots


@pytest.fixture(scope="module")
def planted(template: Path, tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Lots, str]:
    """Five cloudy essences of one oil lot, five bright ones of another, rests turn about."""
    where = copy_book(template, tmp_path_factory.mktemp("planted") / "book.db")
    with opened(str(where), SetClock()) as keeper:
        lots = receive_all(keeper)
        good, bad = oil_lots(keeper, 2)
        for place in range(10):
            is_bad = place % 2 == 1
            grade = "cloudy" if is_bad else "bright"
            essence(keeper, lots, bad if is_bad else good, grade, rest_h=24 + 24 * (place // 5))
    return where, lots, bad


@pytest.fixture
def ten(planted: tuple[Path, Lots, str], tmp_path: Path) -> Iterator[Keeper]:
    clock = SetClock()
    clock.forward(days=200)
    with opened(str(copy_book(planted[0], tmp_path / "book.db")), clock) as keeper:
        yield keeper


def named(found: Suspicion) -> list[str]:
    return [cause.name for item in found.judgement.named for cause in item.causes]


def test_the_planted_oil_lot_is_named(ten: Keeper, planted: tuple[Path, Lots, str]) -> None:
    found = suspects(ten.book)
    assert found.judgement.verdict is Conclusion.CAUSE
    assert named(found) == [planted[2]]
    assert found.judgement.named[0].table == Table(5, 0, 0, 5)
    assert found.compared == "Orange essence"
    assert [item.why for item in found.failed] == ["looked cloudy"] * 5


def test_figures_of_every_suspect_add_up(ten: Keeper) -> None:
    found = suspects(ten.book)
    assert len(found.judgement.suspects) > 1
    for item in found.judgement.suspects:
        assert item.table.failed == len(found.failed) == 5
        assert item.table.clear == len(found.judgement.clear) == 5


def test_two_oils_that_went_in_together_are_not_separated(
    sqlite_keeper: Keeper,
) -> None:
    lots = receive_all(sqlite_keeper)
    one, other = oil_lots(sqlite_keeper, 2)
    for place in range(10):
        is_bad = place >= 5
        code = essence(sqlite_keeper, lots, one if is_bad else lots.oil)
        if is_bad:
            sqlite_keeper.do("add", lot=code, source=other, amount="1mL")
        sqlite_keeper.do("look", lot=code, grade="milky" if is_bad else "clear")
    found = suspects(sqlite_keeper.book)
    lead = found.judgement.lead
    assert lead is not None
    assert (found.judgement.verdict, named(found)) == (Conclusion.INSEPARABLE, [])
    assert {one, other} <= {cause.name for cause in lead.causes}
    assert Sort.TIME in {cause.sort for cause in lead.causes}


def test_named_lots_count_as_failed_whatever_they_looked_like(ten: Keeper) -> None:
    found = suspects(ten.book, ["OE-001-5", "OE-005-Y"])
    assert [item.code for item in found.failed] == ["OE-001-5", "OE-005-Y"]
    assert {item.why for item in found.failed} == {"named as failed"}
    assert len(found.sorted.otherwise_failed) == 5
    assert len(found.judgement.clear) == 3


def test_a_bottle_stands_for_the_run_it_was_filled_from(
    ten: Keeper, planted: tuple[Path, Lots, str]
) -> None:
    packed = ten.opens("bottle", source="OE-002-3", pack="1 x 50mL", bottles=planted[1].bottles)
    ten.do("complain", lot=packed, symptom="cloudy ring")
    found = suspects(ten.book, complaints=True)
    assert [(item.code, item.why) for item in found.failed] == [
        ("OE-002-3", 'complaint of "cloudy ring"; looked cloudy')
    ]
    assert [item.code for item in suspects(ten.book, [packed]).failed] == ["OE-002-3"]
    assert found.judgement.verdict is Conclusion.TOO_FEW


def test_only_looks_worse_than_asked_count(ten: Keeper) -> None:
    ten.do("look", lot="OE-001-5", grade="hazy")
    assert len(suspects(ten.book).failed) == 6
    found = suspects(ten.book, worse_than="hazy")
    assert len(found.failed) == 5
    assert len(found.judgement.clear) == 5


def test_a_look_before_the_making_ended_does_not_count(sqlite_keeper: Keeper) -> None:
    lots = receive_all(sqlite_keeper)
    code = sqlite_keeper.opens("start", product="Essence", kind="essence", target="90mL")
    sqlite_keeper.do("add", lot=code, source=lots.spirit, amount="90mL")
    sqlite_keeper.do("look", lot=code, grade="milky")
    sqlite_keeper.do("finish", lot=code, volume="90mL")
    sqlite_keeper.do("look", lot=code, grade="bright")
    assert suspects(sqlite_keeper.book).failed == ()


def test_since_leaves_out_what_was_begun_before(ten: Keeper) -> None:
    entries = [entry for entry in ten.entries() if entry.kind == "start"]
    day = f"{entries[5].draft.happened.local():%Y-%m-%d}"
    found = suspects(ten.book, since=day)
    later = [e.draft.lot for e in entries if f"{e.draft.happened.local():%Y-%m-%d}" >= day]
    assert sorted([*found.judgement.failed, *found.judgement.clear]) == sorted(map(str, later))


def test_a_lot_nobody_looked_at_is_not_clear(ten: Keeper, planted: tuple[Path, Lots, str]) -> None:
    essence(ten, planted[1], planted[1].oil)
    found = suspects(ten.book)
    assert found.sorted.not_seen == 1
    assert len(found.judgement.clear) == 5


def test_too_few_of_one_product_are_compared_with_the_kind(
    ten: Keeper, planted: tuple[Path, Lots, str]
) -> None:
    code = essence(ten, planted[1], planted[1].oil, "cloudy", product="Lime essence")
    found = suspects(ten.book, [code])
    assert found.sorted.is_by_kind
    assert found.compared == "any product (essence)"
    product = Cause(Sort.SETTING, "product", "Lime essence")
    (suspect,) = (item for item in found.judgement.suspects if product in item.causes)
    assert suspect.table == Table(1, 0, 0, 5)


@pytest.mark.parametrize(
    ("lots", "conclusion"),
    [((), Conclusion.TOO_FEW), (("{oe}",), Conclusion.TOO_FEW)],
    ids=["none", "one"],
)
def test_no_failed_lot_or_one_is_too_little(
    sqlite_keeper: Keeper, lots: tuple[str, ...], conclusion: Conclusion
) -> None:
    stock = receive_all(sqlite_keeper)
    codes = [essence(sqlite_keeper, stock, stock.oil, "bright") for _ in range(6)]
    found = suspects(sqlite_keeper.book, [text.format(oe=codes[0]) for text in lots])
    assert found.judgement.verdict is conclusion
    assert len(found.failed) == len(lots)


def test_all_failed_is_too_little(sqlite_keeper: Keeper) -> None:
    lots = receive_all(sqlite_keeper)
    for _ in range(5):
        essence(sqlite_keeper, lots, lots.oil, "milky")
    found = suspects(sqlite_keeper.book)
    assert (len(found.failed), found.judgement.clear) == (5, ())
    assert found.judgement.verdict is Conclusion.TOO_FEW


def test_an_empty_book_is_too_little(sqlite_keeper: Keeper) -> None:
    found = suspects(sqlite_keeper.book)
    assert (found.failed, found.judgement.verdict) == ((), Conclusion.TOO_FEW)


def test_all_that_cannot_be_read_is_told_at_once(ten: Keeper) -> None:
    with pytest.raises(RefusedError) as refused:
        suspects(ten.book, ["NS-001-J", "XX-9"], worse_than="foggy", since="last week")
    assert refused.value.problems == (
        (
            "NS-001-J was bought, and suspects compares lots that were made here.",
            "Name what was made with it: pottle trace NS-001-J --forward",
        ),
        ("There is no lot XX-9 in the book.", "pottle stock lists the lots that are."),
        (
            '"foggy" is not a clarity.',
            "Choose one of: bright, clear, hazy, opalescent, cloudy, milky.",
        ),
        ('"last week" is not a date.', "Write it as 2027-06-30."),
    )
    with pytest.raises(InputError):
        suspects(ten.book, worse_than="foggy")


def test_a_rinse_is_no_run(ten: Keeper) -> None:
    spirit = ten.opens("receive", material="spirit", amount="1L")
    batch = ten.opens("start", product="Waiting", kind="essence", target="1L")
    ten.do("add", lot=batch, source=spirit, amount="500mL")
    ten.do("filter", lot=batch, medium="paper", volume_in="500mL", volume_out="480mL")
    words = {"volume_in": "20mL", "volume_out": "15mL", "went_to": "apart"}
    rinse = ten.opens("rinse", lot=batch, source=spirit, **words)
    with pytest.raises(RefusedError) as refused:
        suspects(ten.book, [rinse])
    assert refused.value.problems == (
        (
            f"{rinse} is no making run, and suspects compares lots that were made here.",
            f"Name what was made with it: pottle trace {rinse} --forward",
        ),
    )


def test_more_lots_take_no_more_statements(ten: Keeper, planted: tuple[Path, Lots, str]) -> None:
    def statements() -> int:
        with heard(ten.book) as asked:
            suspects(ten.book)
        return len(asked)

    before = statements()
    for _ in range(4):
        essence(ten, planted[1], planted[1].oil, "bright")
    assert statements() == before > 5
