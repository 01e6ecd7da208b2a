"""The clarity of a lot over its days: readings in force on a logarithmic scale."""

import pytest
from msgspec.structs import replace

from ledger.domain.entries import Look
from ledger.service.lots.dossier import dossier
from reports.words.lots import clarity as module
from reports.words.lots.clarity import CLEAR_MILLI, _days, _row, clarity_strip, look_rows
from tests.domain.builders import entry, make
from tests.keeper import Keeper
from tests.kept.said import check_constants, check_said
from tests.path import Lots


def test_clear_is_what_the_pharmacopoeia_calls_so() -> None:
    """Ph. Eur. 2.2.1, reference suspension I: 5.0 mL of 60 NTU made up to 100 mL (read)."""
    assert CLEAR_MILLI == 60_000 * 5 // 100


def test_readings_stand_by_their_decade_and_their_age(made: tuple[Keeper, Lots, str]) -> None:
    keeper, _, essence = made
    before = look_rows(dossier(keeper.book, essence))
    keeper.do("look", lot=essence, grade="clear", ntu="1", of="neat")
    keeper.do("look", lot=essence, grade="hazy", ntu="10", of="neat")
    found = dossier(keeper.book, essence)
    strip = clarity_strip(found)
    assert strip is not None
    one, ten = strip.points[-2:]
    assert (one.words, ten.words) == ("1", "10")
    assert one.up + 1 / (len(strip.scale) - 1) == pytest.approx(ten.up)
    assert len(look_rows(found)) == len(before) + 2


@pytest.mark.parametrize(
    ("longest", "days"),
    [(0.3, []), (1.0, ["1 d"]), (2.6, ["1 d", "2 d"]), (8.0, ["2 d", "4 d", "6 d", "8 d"])],
)
def test_whole_days_of_the_time_are_told_each_once(longest: float, days: list[str]) -> None:
    (start, finished), *told = _days(longest)
    assert (start, finished, [words for _, words in told]) == (0.0, "finished", days)
    assert all(at == int(words[:-2]) / longest for at, words in told)


@pytest.mark.parametrize(
    ("minutes", "age"),
    [
        (None, ""),
        (0, ""),
        (90, "1 h 30 min"),
        (24 * 60 - 1, "23 h 59 min"),
        (24 * 60 + 59, "1 d"),
        (25 * 60 + 61, "1 d 2 h"),
    ],
)
def test_from_a_day_on_the_age_of_a_look_is_told_in_hours(minutes: int | None, age: str) -> None:
    look = make(Look, age_minutes=minutes)
    assert _row(entry(look), look, None, is_struck=False).age == age


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)


def test_a_look_that_was_struck_stands_in_its_row_struck(made: tuple[Keeper, Lots, str]) -> None:
    keeper, _, essence = made
    before = {row.entry for row in look_rows(dossier(keeper.book, essence)) if row.struck}
    done = keeper.do("look", lot=essence, grade="clear", ntu="1", of="neat")
    keeper.do("strike", entry=str(done.seq), because="it was another jar")
    struck = {row.entry for row in look_rows(dossier(keeper.book, essence)) if row.struck}
    assert struck - before == {str(done.seq)}


@pytest.mark.parametrize(("count", "is_drawn"), [(1, False), (2, True)])
def test_one_reading_alone_is_no_course_and_two_are(
    made: tuple[Keeper, Lots, str], count: int, is_drawn: bool
) -> None:
    keeper, _, essence = made
    keeper.do("look", lot=essence, grade="clear", ntu="1", of="neat")
    keeper.do("look", lot=essence, grade="hazy", ntu="10", of="neat")
    found = dossier(keeper.book, essence)
    looks = [entry for entry in found.state.entries if entry.kind == "look"]
    others = [entry for entry in found.state.entries if entry.kind != "look"]
    state = replace(found.state, entries=(*others, *looks[-count:]))
    assert (clarity_strip(replace(found, state=state)) is not None) is is_drawn
