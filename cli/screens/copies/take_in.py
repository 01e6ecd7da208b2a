"""Taking tables in, proposing a map for them, and the forms that come without one.

Guarantees: what is found is the answer, with exit code 1; a map is written only where there is no
file, or over one that it is asked to.
"""

from pathlib import Path

import typer

from cli.kit.call import Call
from cli.kit.files import check_place, write
from cli.kit.progress import progress
from cli.kit.tables import print_json, print_lines
from ledger.domain.tables.days import DayOrder
from ledger.domain.tables.numerals import SIGNS
from ledger.errors import InputError
from ledger.service.copies.intake.column_map import ColumnMap, read_map
from ledger.service.copies.intake.map_proposal import proposed_map
from ledger.service.copies.intake.table_files import read_tables
from ledger.service.copies.intake.table_maps import FORMS, shipped_map
from ledger.service.copies.intake.take_in import Asked, take_in
from ledger.text_files import text_of
from reports.json.copies.taken_in import taken_in_answer
from reports.json.kit.answer import File
from reports.kit.tables import Sheet, csv_text
from reports.words.copies.taken_in import taken_in_lines

MOST_BYTES_OF_A_MAP = 1_000_000
"""How large a map may be."""


def take_tables(
    call: Call,
    path: Path,
    map_: str | None,
    dates: str | None,
    decimal: str | None,
    *,
    is_rehearsal: bool,
) -> None:
    """Take tables in and say what became of them."""
    asked = Asked(_map(map_), _order(dates), _sign(decimal), is_rehearsal)
    book = call.book()
    with progress("Importing", quiet=call.json) as tick:
        told = take_in(book, call.how(), path, asked, tick)
    if call.json:
        print_json(taken_in_answer(told))
    else:
        print_lines(taken_in_lines(told))
    if told.found:
        raise typer.Exit(1)


def propose(call: Call, path: Path, out: Path, *, force: bool) -> None:
    """Write a map that the headings of tables propose, to be read and changed."""
    check_place(out, force=force, instead=_INSTEAD)
    tables, found = read_tables(path)
    if not tables:
        raise InputError.of([(f"{each.place}: {each.what}", each.todo) for each in found])
    write(out, proposed_map(tables).encode(), force=force, instead=_INSTEAD)
    if call.json:
        print_json(File(str(out)))
    else:
        print_lines(
            [
                f"A map for {path} is proposed in {out}: read it, and put right what is not so.",
                f"Next: pottle import {path} --map {out} --dry-run",
            ]
        )


def blank_form(call: Call, form: str, out: Path, *, force: bool) -> None:
    """Write the columns of a form that is taken in without a map, and no row."""
    name = f"{form}-sheet"
    if name not in FORMS:
        words = " or ".join(each.removesuffix("-sheet") for each in FORMS)
        raise InputError(f'"{form}" is no form of a sheet.', f"Give --form with {words}.")
    (part,) = shipped_map(name).tables
    # The mark tells a spreadsheet that the letters are UTF-8.
    content = csv_text(Sheet(part.columns, ())).encode("utf-8-sig")
    write(out, content, force=force, instead="Give another name, or --force to write over it.")
    if call.json:
        print_json(File(str(out)))
    else:
        told = f"The {len(part.columns)} columns of a {form}'s sheet are in {out}."
        print_lines([told, f"Fill in a row each, then: pottle import {out} --dry-run"])


_INSTEAD = "Give another name with --like, or --force to write over it."


def _map(told: str | None) -> ColumnMap | None:
    if told is None:
        return None
    file = Path(told)
    if file.suffix or file.exists():
        return read_map(told, text_of(file, MOST_BYTES_OF_A_MAP))
    return shipped_map(told)


def _order(told: str | None) -> DayOrder | None:
    if told is not None and told not in list(DayOrder):
        raise InputError(
            f'"{told}" is no order of days.', f"Give --dates with one of: {', '.join(DayOrder)}."
        )
    return DayOrder(told) if told else None


def _sign(told: str | None) -> str | None:
    if told is not None and told not in SIGNS:
        raise InputError(
            f'"{told}" is no sign that parts decimals.', "Give --decimal , or --decimal ."
        )
    return told
