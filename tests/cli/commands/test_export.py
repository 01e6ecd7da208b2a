"""`pottle export`: the lines of a book, which become a book elsewhere."""

import csv
import json
from pathlib import Path
from types import ModuleType

import pytest

from cli.screens.recall import epcis as cli_screens_recall_epcis
from cli.screens.recall import events as cli_screens_recall_events
from ledger.domain.entries.canonical import canonical_text
from tests.cli.asked import check_asked
from tests.cli.cases import Refused, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.said import check_constants


def test_an_export_becomes_a_book_elsewhere(shell: Shell) -> None:
    seal = shell.run("seal").lines
    assert shell.run("export", "book.jsonl").lines == [
        "The file book.jsonl holds 38 entries.",
        "Make a book of it with: pottle import --book book.jsonl --ledger PATH|URL",
        *seal,
    ]
    made = shell.run("import", "--book", "book.jsonl", "--ledger", "new.db")
    assert made.lines == [
        "The book new.db has 38 entries, as the export; it was verified.",
        *seal,
    ]
    assert shell.run("import", "--book", "book.jsonl").complaints == [
        f"There is a file at {shell.book} already; it was left as it is.",
        "  Open that book, or give another place with --ledger.",
    ]
    assert shell.entries() == 38


def table(file: Path) -> list[dict[str, str]]:
    with file.open(encoding="utf-8-sig", newline="") as text:
        return list(csv.DictReader(text))


def test_every_table_goes_out_and_the_round_trip_gives_the_same_entries(shell: Shell) -> None:
    shell.run("note", "-", "so;=1+1, | @SUM(A1) and = too")
    seal = shell.run("seal").lines
    said = shell.run("export", "--csv", "tables")
    assert said.lines[0].endswith("tables of 39 entries are in tables.")
    assert said.lines[2:] == seal
    assert Path("tables/seal.txt").read_text(encoding="utf-8").splitlines() == seal
    # A second reader: the texts of the entries and what is beside them make the same book again.
    bodies = [canonical_text(json.loads(row["body"])) for row in table(Path("tables/entry.csv"))]
    beside = [
        canonical_text(
            {
                "details": {name: row[name] for name in list(row)[2:] if row[name]},
                "entry": int(row["seq"]),
                "salt": row["salt"],
            }
        )
        for row in table(Path("tables/details.csv"))
    ]
    assert beside
    head = {"entries": 39, "format": "pottle book 2", "house": "Wren & Co", "root": seal[2][5:]}
    lines = [canonical_text(head), *bodies, *beside]
    Path("again.jsonl").write_text("".join(f"{line}\n" for line in lines), encoding="utf-8")
    made = shell.run("import", "--book", "again.jsonl", "--ledger", "again.db")
    assert (made.exit_code, made.lines[1:]) == (0, seal)
    Shell(Path("again.db")).run("export", "--csv", "second")
    names = sorted(path.name for path in Path("tables").iterdir())
    assert names == sorted(path.name for path in Path("second").iterdir())
    for name in names:
        assert (Path("tables") / name).read_bytes() == (Path("second") / name).read_bytes(), name


def test_every_column_is_explained_with_its_unit_and_its_words(shell: Shell) -> None:
    shell.run("export", "--csv", "tables")
    told = {(row["table"], row["column"]): row for row in table(Path("tables/columns.csv"))}
    for path in Path("tables").glob("*.csv"):
        if path.stem not in ("columns", "codes"):
            with path.open(encoding="utf-8-sig", newline="") as text:
                for column in next(csv.reader(text)):
                    assert told[path.stem, column]["meaning"].endswith("."), (path.stem, column)
    assert told["look", "ntu_milli"]["counted_in"] == "1/1000"
    assert told["rest", "temp_mdegc"]["counted_in"] == "1/1000 °C"
    codes = [row["code"] for row in table(Path("tables/codes.csv")) if row["column"] == "grade"]
    assert codes == ["bright", "clear", "hazy", "opalescent", "cloudy", "milky"]


def test_the_key_data_of_a_period_is_one_table_by_day(shell: Shell) -> None:
    said = shell.run("export", "--key-data", "events.csv")
    rows = table(Path("events.csv"))
    assert said.lines[0] == f"{len(rows)} rows of events in events.csv, by day."
    assert said.lines[-1].startswith("The columns are named after 21 CFR 1.1340, 1.1345 and 1.1350")
    assert [row["date_of_event"] for row in rows] == sorted(row["date_of_event"] for row in rows)
    sold = [row for row in rows if row["critical_tracking_event"] == "shipping"]
    assert [(row["traceability_lot_code"], row["quantity"]) for row in sold] == [("BOS-001-S", "6")]
    syrup, essence = shell.codes["syrup"], shell.codes["essence"]
    made = [row for row in rows if row["new_traceability_lot_code"] == syrup]
    assert {row["input_traceability_lot_code"] for row in made} >= {essence}
    oil = next(row for row in rows if row["lot_in_this_book"] == "SOO-001-3")
    assert oil["traceability_lot_code"] == "C7731"
    none = shell.run("export", "--key-data", "none.csv", "--to", "1999-12-31")
    assert none.lines[0] == "0 rows of events in none.csv, by day."


def test_events_for_a_partner_are_one_file_and_beside_it_how_things_are_named(
    shell: Shell,
) -> None:
    shell.run("house", "--web", "https://example.com/lots")
    shell.run("house", "--gtin", "Orange syrup, 250 mL=9521234543213")
    shell.line("case {packed} 2 x 3")
    said = shell.run("export", "--epcis", "events.jsonld")
    assert said.lines == [
        "15 events of EPCIS 2.0 in events.jsonld: 10 of goods, 3 of what was made or filled of "
        "what, 2 of cases.",
        "Named by article and lot (GS1 Digital Link): Orange syrup, 250 mL.",
        "All other lots are named by addresses below https://example.com/lots.",
        "What your batches were made of is in it, and the names of those you deal with.",
    ]
    read = json.loads(Path("events.jsonld").read_text(encoding="utf-8"))
    assert (read["type"], len(read["epcisBody"]["eventList"])) == ("EPCISDocument", 15)
    again = shell.run("export", "--epcis", "events.jsonld", "--force", "--json").json
    assert again == {
        "path": "events.jsonld",
        "object_events": 10,
        "transformation_events": 3,
        "aggregation_events": 2,
        "declared_in_error": 0,
        "roughly_timed": 0,
        "named_by_gtin": ["Orange syrup, 250 mL"],
        "named_below": "https://example.com/lots",
    }


@pytest.mark.parametrize(
    "case",
    [
        (
            "export",
            2,
            (
                "One thing is exported at a time.",
                "Give a FILE for the whole book, --csv DIR for its tables, --key-data FILE or "
                "--epcis FILE.",
            ),
        ),
        (
            "export --epcis events.jsonld",
            3,
            (
                "The house has no address on the web, below which its lots could be named for "
                "others.",
                "Say which with: pottle house --web URL",
            ),
        ),
        (
            "export --csv .",
            5,
            (
                "The folder . is not empty; it was left as it is.",
                "Give another folder with --csv, or --force to write over what is there.",
            ),
        ),
    ],
)
def test_what_is_no_one_export_is_refused(case: Refused, shell: Shell) -> None:
    check_refused(case, shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("export")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("export", still)


@pytest.mark.parametrize("module", [cli_screens_recall_epcis, cli_screens_recall_events])
def test_its_tables_figures_and_words_are_the_kept_ones(module: ModuleType) -> None:
    check_constants(module)


@pytest.mark.parametrize(
    "places",
    [
        *("book.jsonl --csv t", "book.jsonl --key-data k.csv", "book.jsonl --epcis e.json"),
        *("--csv t --key-data k.csv", "--csv t --epcis e.json", "--key-data k.csv --epcis e.json"),
    ],
)
def test_no_two_things_are_exported_at_once(places: str, shell: Shell) -> None:
    problem = (
        "One thing is exported at a time.",
        "Give a FILE for the whole book, --csv DIR for its tables, --key-data FILE or --epcis "
        "FILE.",
    )
    check_refused((f"export {places}", 2, problem), shell)
    assert not [name for name in ("book.jsonl", "t", "k.csv", "e.json") if Path(name).exists()]
