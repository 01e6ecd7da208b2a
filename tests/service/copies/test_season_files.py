"""A season's files are read whole or not at all."""

from pathlib import Path

import pytest

from ledger.service.copies import season_files
from ledger.service.copies.season import read_season
from ledger.service.copies.season_files import ORDER, words_of
from ledger.service.copies.season_verbs import VERBS
from tests.service.copies.season_folder import GOOD, folder_with, problems_of

TIME = "Write it as 2026-02-03 10:15, or a day as 2026-02-03."


@pytest.mark.parametrize(
    ("changed", "what", "todo"),
    [
        pytest.param(
            {"note_csv": "at,by,lot,colour,text\n2026-07-02 08:00,NM,oil,pale,Fine.\n"},
            'note.csv line 1 has an unknown column "colour".',
            "Its columns are: at, recorded, by, as, because, origin, sheet, lot, text.",
            id="unknown column",
        ),
        pytest.param(
            {"note_csv": "by,lot,text\nNM,oil,Fine.\n"},
            "note.csv line 1 has no column at.",
            "Add it, with when each entry happened.",
            id="no times",
        ),
        pytest.param(
            {"note_csv": "at,by,text,by\n2026-07-02 08:00,NM,Fine.,NM\n"},
            'note.csv line 1 has the column "by" more than once.',
            "Keep one of them.",
            id="a column twice",
        ),
        pytest.param(
            {"note_csv": "at,by,lot,text\n2026-07-02 08:00,NM,oyl,Fine.\n"},
            'note.csv line 2 has "oyl" in the column lot, which no earlier row gives as its '
            "nickname.",
            "Put right the nickname or the times.",
            id="unknown nickname",
        ),
        pytest.param(
            {"note_csv": "at,by,lot,text\n2026-07-01 09:09,NM,oil,Too early.\n"},
            'note.csv line 2 has "oil" in the column lot, which no earlier row gives as its '
            "nickname.",
            "Put right the nickname or the times.",
            id="a nickname before its row",
        ),
        pytest.param(
            {"note_csv": "at,by,as,text\n2026-07-02 08:00,NM,oil,Fine.\n"},
            'note.csv line 2 gives the nickname "oil", which receive.csv line 2 has given already.',
            "Choose another.",
            id="a nickname twice",
        ),
        pytest.param(
            {"stir_csv": "at,by\n"},
            "stir.csv is named after no verb of the book.",
            f"Name it after one of: {', '.join(sorted(VERBS))}.",
            id="unknown verb",
        ),
        pytest.param(
            {"note_csv": "at,by,lot,text\n2026-07-02 08:00,NM,oil,\n"},
            "note.csv line 2 has nothing in the column text.",
            "Write it there; no entry of this kind is without it.",
            id="a word that is needed left out",
        ),
        pytest.param(
            {"note_csv": "at,by,text\n0001-01-01 00:00,NM,Fine.\n"},
            'note.csv line 2 has "0001-01-01 00:00", which is no time, in the column at.',
            TIME,
            id="a year of another age",
        ),
        pytest.param(
            {"note_csv": 'at,by,text\n2026-07-02 08:00,NM,"never closed\n'},
            "note.csv cannot be read as CSV: unexpected end of data.",
            "Save it again as CSV in UTF-8.",
            id="bad CSV",
        ),
        pytest.param(
            {"note_csv": "at,by,text\n2026-07-02 08:00,NM,One, two.\n"},
            "note.csv line 2 has 4 cells, but the heading has 3.",
            "Put text that holds a comma in double quotes.",
            id="a comma too many",
        ),
        pytest.param(
            {"note_csv": "at,by,text\n2026-07-02 25:00,NM,Fine.\n"},
            'note.csv line 2 has "2026-07-02 25:00", which is no time, in the column at.',
            TIME,
            id="no such hour",
        ),
        pytest.param(
            {"note_csv": "at,by,text\n,NM,Fine.\n"},
            "note.csv line 2 has nothing in the column at.",
            TIME,
            id="time left out",
        ),
        pytest.param(
            {"note_csv": "at,recorded,by,text\n2026-07-02 08:00,2026-07-02 07:59,NM,Fine.\n"},
            "note.csv line 2 was recorded on 2026-07-02 07:59, before it happened.",
            "Put right whichever time is wrong.",
            id="typed before it happened",
        ),
        pytest.param(
            {"house_toml": GOOD["house.toml"].replace('currency = "EUR"', "")},
            "house.toml does not say the currency.",
            'Write it as: currency = "..."',
            id="no currency",
        ),
        pytest.param(
            {"house_toml": GOOD["house.toml"].replace("currency", "money") + 'currency = "EUR"'},
            'house.toml has "money", which a season does not know.',
            "Here it knows: name, currency, address, country, time_zone, fluid_ounce, phone.",
            id="unknown word of the house",
        ),
        pytest.param(
            {"house_toml": GOOD["house.toml"].replace('"Madeup Works"', "7")},
            "house.toml has no text for name.",
            'Write it as: name = "..."',
            id="a number for a name",
        ),
        pytest.param(
            {"house_toml": GOOD["house.toml"].replace("Dublin", "Nowhere")},
            'house.toml has "Europe/Nowhere", which is no time zone.',
            "Write one such as Europe/Dublin.",
            id="no such zone",
        ),
        pytest.param(
            {"house_toml": GOOD["house.toml"].replace('"oil"', '"lemon"')},
            'house.toml has "lemon" as culprit, which no row gives as its nickname.',
            "Put right the nickname.",
            id="a story of no lot",
        ),
    ],
)
def test_what_is_wrong_is_told_with_its_place(
    tmp_path: Path, changed: dict[str, str], what: str, todo: str
) -> None:
    assert (what, todo) in problems_of(folder_with(tmp_path, **changed))


def test_all_that_is_wrong_in_all_files_is_told_at_once(tmp_path: Path) -> None:
    folder = folder_with(
        tmp_path,
        stir_csv="at,by\n",
        note_csv="at,by,lot,hue,text\n2026-07-02 08:00,NM,oyl,pale,Fine.\n",
        house_toml=GOOD["house.toml"].replace("Dublin", "Nowhere"),
    )
    assert [what for what, _ in problems_of(folder)] == [
        'house.toml has "Europe/Nowhere", which is no time zone.',
        'note.csv line 1 has an unknown column "hue".',
        "stir.csv is named after no verb of the book.",
        'note.csv line 2 has "oyl" in the column lot, which no earlier row gives as its nickname.',
    ]


def test_a_lost_row_is_not_told_again_as_lost_nicknames(tmp_path: Path) -> None:
    folder = folder_with(tmp_path, receive_csv=GOOD["receive.csv"].replace("09:10", "9.10"))
    told = [what for what, _ in problems_of(folder)]
    assert 'receive.csv line 2 has "2026-07-01 9.10", which is no time, in the column at.' in told
    assert not [what for what in told if "no earlier row" in what]


@pytest.mark.parametrize("name", ["note.csv", "house.toml"])
def test_files_that_are_too_large_are_told_and_not_read(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = folder_with(tmp_path)
    for module in ("season_files", "season_house"):
        monkeypatch.setattr(f"ledger.service.copies.{module}.MOST_BYTES", 1000)
    (folder / name).write_bytes(b"#" * 1001)
    assert problems_of(folder)[-1] == (
        f"The file {folder / name} is larger than 1000 bytes.",
        "Name the right file.",
    )


def test_a_mark_of_byte_order_before_a_heading_is_no_part_of_it(tmp_path: Path) -> None:
    folder = folder_with(tmp_path)
    (folder / "note.csv").write_bytes(b"\xef\xbb\xbf" + (folder / "note.csv").read_bytes())
    assert read_season(folder).rows[-1].verb == "note"


def test_rows_come_by_when_they_were_typed_then_by_verb_then_by_line(tmp_path: Path) -> None:
    rows = read_season(folder_with(tmp_path)).rows
    assert [(row.file, row.line) for row in rows] == [
        ("person.csv", 2),
        ("material.csv", 2),
        ("receive.csv", 2),
        ("start.csv", 2),
        ("add.csv", 2),
        ("add.csv", 3),
        ("correct.csv", 2),
        ("strike.csv", 2),
        ("note.csv", 2),
    ]


def test_every_verb_has_its_turn() -> None:
    assert sorted(ORDER) == sorted(VERBS)


@pytest.mark.parametrize(
    ("at", "recorded", "told"),
    [
        ("2026-07-02 08:00", "2026-07-02 08:00", None),
        ("2026-07-02 08:00", "2026-07-02 08:01", None),
        ("2026-07-02", "2026-07-02 08:00", None),
        ("2026-07-02 08:00", "2026-07-02", None),
        ("2026-07-02 08:00", "2026-07-02 07:59", "2026-07-02 07:59"),
        ("2026-07-02", "2026-07-01 08:00", "2026-07-01 08:00"),
        ("2026-07-02", "2026-07-01", "2026-07-01 23:59"),
    ],
)
def test_a_row_is_typed_when_it_happened_or_later(at: str, recorded: str, told: str | None) -> None:
    """A day alone counts as its last minute, and what was typed earlier on it is not before it."""
    problems: list[tuple[str, str]] = []
    assert season_files._typed("Row 2", {"at": at, "recorded": recorded}, problems)
    what = f"Row 2 was recorded on {told}, before it happened."
    assert problems == ([(what, "Put right whichever time is wrong.")] if told else [])
    assert season_files._typed("Row 2", {"at": at}, problems)


def test_columns_that_name_something_are_words_of_verbs_and_verbs_in_order_are_verbs() -> None:
    words = {word for verb in VERBS for word in words_of(VERBS[verb])}
    named = season_files.REFERENCES | season_files.MAY_NAME | season_files.FILES
    assert named <= words
    assert sorted(ORDER) == sorted(VERBS)
