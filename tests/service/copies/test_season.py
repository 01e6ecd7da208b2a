"""A season is played as it was written, and the demo season tells what it should."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest
from msgspec.structs import asdict

from ledger.domain.entries import Add, Entry, Look
from ledger.errors import InputError, LedgerError, RefusedError
from ledger.service.causes.layout import planned
from ledger.service.copies.season import Played, SeasonClock, moved, play, read_season, start_time
from ledger.service.desk.book import Book
from ledger.service.masters.house import init
from ledger.store.read import queries
from tests.service.copies.season_folder import folder_with

DEMO = Path(__file__).parents[3] / "sample_data" / "season"


@contextmanager
def played_in(folder: Path, where: Path) -> Iterator[tuple[Book, Played]]:
    season = read_season(folder)
    clock = SeasonClock(start_time(season))
    with init(str(where), **asdict(season.house), clock=clock) as book:
        yield book, play(season, book, clock)


def entry_of(book: Book, number: int) -> Entry:
    with book.reading() as connection:
        entry = queries.entry(connection, number)
    assert entry is not None
    return entry


def test_nicknames_stand_for_codes_and_entry_numbers(tmp_path: Path) -> None:
    with played_in(folder_with(tmp_path), tmp_path / "book.db") as (book, played):
        poured = entry_of(book, played.entries["poured"])
        assert poured.draft.lot == played.codes["essence"]
        assert isinstance(poured.facts, Add)
        assert poured.facts.source == played.codes["oil"]
        assert entry_of(book, played.entries["mended"]).stands_for == poured.seq


def test_entries_are_recorded_a_minute_after_they_were_typed(tmp_path: Path) -> None:
    with played_in(folder_with(tmp_path), tmp_path / "book.db") as (book, played):
        poured = entry_of(book, played.entries["poured"])
        assert poured.draft.happened.at == datetime(2026, 7, 1, 9, 5, tzinfo=UTC)
        assert poured.recorded_at == datetime(2026, 7, 1, 9, 6, tzinfo=UTC)
        late = entry_of(book, max(played.entries.values()) + 2)
        assert late.is_late
        assert late.recorded_at == datetime(2026, 7, 3, 16, 1, tzinfo=UTC)


def test_a_correction_leaves_the_time_of_what_it_corrects(tmp_path: Path) -> None:
    with played_in(folder_with(tmp_path), tmp_path / "book.db") as (book, played):
        mended = entry_of(book, played.entries["mended"])
        assert mended.draft.happened == entry_of(book, played.entries["poured"]).draft.happened
        assert mended.recorded_at == datetime(2026, 7, 2, 7, 1, tzinfo=UTC)


TRIAL = {
    "plan_csv": "at,by,name,tries,evening\n2026-07-01 10:20,NM,cold,rest=warm/cold,12\n",
    "jars_csv": "at,by,as,trial\n2026-07-01 10:30,NM,jars,cold\n",
}


def test_what_a_row_says_of_a_jar_follows_its_level_however_it_was_drawn(tmp_path: Path) -> None:
    rows = "".join(
        f"2026-07-01 10:{40 + n},NM,jars/{n},warm: clear // cold: hazy,neat\n" for n in range(1, 13)
    )
    folder = folder_with(tmp_path, **TRIAL, look_csv="at,by,lot,grade,of\n" + rows)
    with played_in(folder, tmp_path / "book.db") as (book, played):
        found = planned(book, "cold")
        with book.reading() as connection:
            looks = {
                entry.draft.lot: entry.facts.grade
                for entry in queries.entries_of_kind(connection, Look)
                if isinstance(entry.facts, Look)
            }
        told = {
            jar.code: "hazy" if jar.levels == (("rest", "cold"),) else "clear" for jar in found.jars
        }
        assert looks == told
        assert [played.codes[f"jars/{n}"] for n in range(1, 13)] == [j.code for j in found.jars]


def test_a_row_that_says_nothing_for_the_level_of_its_jar_is_told(tmp_path: Path) -> None:
    row = "2026-07-01 10:40,NM,jars/1,new: hazy // old: clear,neat\n"
    folder = folder_with(tmp_path, **TRIAL, look_csv="at,by,lot,grade,of\n" + row)
    with pytest.raises(InputError) as caught, played_in(folder, tmp_path / "book.db"):
        pass
    ((what, todo),) = caught.value.problems
    assert what in {
        'look.csv line 2: "new: hazy // old: clear" says nothing for the levels of that jar: '
        f"{level}."
        for level in ("warm", "cold")
    }
    assert todo == "Name one of them before each //, with what it comes to: LEVEL: WORDS"


def test_a_season_is_moved_by_whole_weeks_so_that_it_ends_by_a_day(tmp_path: Path) -> None:
    season = read_season(folder_with(tmp_path))
    assert moved(season, date(2026, 7, 9)) == season
    later = moved(season, date(2027, 7, 3))
    gone = later.rows[0].typed - season.rows[0].typed
    assert gone == timedelta(weeks=52)
    assert later.rows[-1].typed.date() == date(2027, 7, 2)
    note = next(row for row in later.rows if row.verb == "note")
    assert (note.cells["at"], note.cells["recorded"]) == ("2027-06-30", "2027-07-02 17:00")
    before = moved(season, date(2026, 7, 2))
    assert before.rows[-1].typed.date() <= date(2026, 7, 2)
    assert moved(read_season(DEMO), date(2028, 3, 1)).rows[-1].typed.date() == date(2028, 2, 29)


def test_the_way_to_a_file_is_not_moved(tmp_path: Path) -> None:
    folder = tmp_path / "2026-07-01"
    folder.mkdir()
    (folder / "f.toml").write_text("", encoding="utf-8")
    formula = "at,by,file\n2026-07-01 09:01,NM,f.toml\n"
    later = moved(read_season(folder_with(folder, formula_csv=formula)), date(2026, 9, 1))
    row = next(row for row in later.rows if row.verb == "formula")
    assert row.cells["file"] == str(folder / "f.toml")
    assert row.cells["at"] > "2026-08"


def test_the_player_tells_how_far_it_is(tmp_path: Path) -> None:
    season = read_season(folder_with(tmp_path))
    clock = SeasonClock(start_time(season))
    told: list[tuple[int, int]] = []
    with init(str(tmp_path / "book.db"), **asdict(season.house), clock=clock) as book:
        play(season, book, clock, lambda done, total: told.append((done, total)))
    assert told == [(done, 9) for done in range(1, 10)]


@pytest.mark.parametrize(
    ("changed", "error", "told"),
    [
        pytest.param(
            {"note_csv": "at,by,lot,text\n2026-07-02 09:00,NM,poured,Fine.\n"},
            InputError,
            (
                'note.csv line 2: The column lot has "poured", which is the nickname of a row that '
                "opens no lot.",
                "Name a lot there.",
            ),
            id="an entry for a lot",
        ),
        pytest.param(
            {"note_csv": "at,by,lot,text\n2026-07-02 09:00,XX,oil,Fine.\n"},
            RefusedError,
            (
                "note.csv line 2: The initials XX are not in the book; it knows NM.",
                'Add the person with: pottle person add XX "FULL NAME"',
            ),
            id="refused by the book",
        ),
    ],
)
def test_what_the_book_does_not_take_is_told_with_its_place(
    tmp_path: Path, changed: dict[str, str], error: type[LedgerError], told: tuple[str, str]
) -> None:
    spoilt = folder_with(tmp_path, **changed)
    with pytest.raises(error) as caught, played_in(spoilt, tmp_path / "book.db"):
        pass
    assert caught.value.problems == (told,)


def ancestors(parents: dict[str, set[str]], lot: str) -> set[str]:
    return {lot}.union(*(ancestors(parents, parent) for parent in parents.get(lot, ())))


def test_only_the_culprit_is_in_all_cloudy_bottles_and_in_no_clear_one() -> None:
    season = read_season(DEMO)
    parents: dict[str, set[str]] = {}
    for row in season.rows:
        into = row.nickname if row.verb in ("bottle", "rinse") and row.nickname else None
        into = into or row.cells.get("lot", "")
        columns = ("source", "bottles", "caps", "cake_of", *(("lot",) if row.nickname else ()))
        if row.verb in ("add", "makeup", "rinse", "filter", "bottle"):
            used = {row.cells[name] for name in columns if name in row.cells}
            parents.setdefault(into, set()).update(used - {into})
    cloudy = {row.cells["lot"] for row in season.rows if row.verb == "complain"}
    packed = {str(row.nickname) for row in season.rows if row.verb == "bottle"}
    shared = set.intersection(*(ancestors(parents, lot) for lot in cloudy))
    clear = set().union(*(ancestors(parents, lot) for lot in packed - cloudy))
    assert len(cloudy) == 5
    assert season.story.cloudy in cloudy
    assert len(shared) > 1
    assert shared - clear == {season.story.culprit}
