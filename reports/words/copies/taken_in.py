"""What became of tables that were handed in, in words.

Guarantees: what is wrong is told with file, line and column, all of it; the same remark on many
rows is told once, and all names that nobody told of in one. Refuses: to say that anything was
recorded while anything is wrong.
"""

import re
from collections.abc import Iterator, Sequence

from ledger.domain.rules.always.parties import STAYS
from ledger.domain.tables.grid import Found
from ledger.service.copies.intake.take_in import Read, TakenIn
from reports.kit.format import plural

MOST_LINES = 8
"""So many lines of one remark are named."""
MOST_NAMES = 3
"""So many names that nobody told of are named."""
_STAYS = re.compile(f"“(.+)” {re.escape(STAYS)}")
NOTHING = "nothing was recorded"


def taken_in_lines(told: TakenIn) -> list[str]:
    """Return what became of tables that were handed in."""
    return [
        *(read_line(table) for table in told.tables),
        *(f"{found.place}: {found.what} {found.todo}" for found in told.found),
        *_remarks(told.remarks if not told.found else ()),
        *_outcome(told),
    ]


def read_line(table: Read) -> str:
    """Return how a table was read.

    >>> read_line(Read("may.csv", 1, ("parted by semicolons", "UTF-8")))
    'may.csv: 1 row; parted by semicolons, UTF-8.'
    """
    return f"{table.file}: {plural(table.rows, 'row')}; {', '.join(table.said)}."


def _outcome(told: TakenIn) -> Iterator[str]:
    kinds = ", ".join(f"{number} {kind}" for kind, number in told.kinds.items())
    entries = f"{plural(len(told.numbers), 'entry', 'entries')} ({kinds})"
    if told.found:
        if told.untried:
            acts = plural(told.untried, "act")
            yield f"{acts} could not be tried, since what comes before is among these."
        yield f"{plural(len(told.found), 'finding')}; {NOTHING}."
        if told.answerable:
            yield f'{_wanting(told)} only a reason: --because "WHY" gives it, if it is so.'
    elif not told.numbers and not told.known:
        yield f"There is no row to take; {NOTHING}."
    elif not told.numbers:
        yield f"Nothing is new: the book has {plural(told.known, 'row')} already; {NOTHING}."
    elif not told.is_recorded:
        yield f"{plural(told.rows, 'row')} would make {entries}; {NOTHING}."
        yield from _known(told)
        yield "Next: the same without --dry-run"
    else:
        first, last = told.numbers[0], told.numbers[-1]
        yield f"Recorded {first} to {last}: {plural(told.rows, 'row')}, {entries}."
        yield from _known(told)
        yield "Next: pottle stock"


def _wanting(told: TakenIn) -> str:
    """Return of which findings it is said that they want a reason."""
    if len(told.found) == 1:
        return "It wants"
    few = told.answerable < len(told.found)
    return (
        f"{told.answerable} of them {'wants' if told.answerable == 1 else 'want'}"
        if few
        else "They want"
    )


def _known(told: TakenIn) -> Iterator[str]:
    if told.known:
        yield f"{plural(told.known, 'row')} more of these files the book had already."


def _remarks(remarks: Sequence[Found]) -> Iterator[str]:
    """Yield what is remarked on, the same once; names that nobody told of come in one, last."""
    named = {found: told[1] for found in remarks if (told := _STAYS.fullmatch(found.what))}
    names = tuple(dict.fromkeys(named.values()))
    if len(names) < 2:
        yield from _each(remarks)
        return
    yield from _each([found for found in remarks if found not in named])
    listed, more = ", ".join(f"“{name}”" for name in names[:MOST_NAMES]), len(names) - MOST_NAMES
    yield (
        f"Note: {len(names)} names stand in the texts of these entries, where nothing can be "
        f"forgotten: {listed}{f' and {more} more' if more > 0 else ''}. So that entries have codes "
        'instead, tell of them before: pottle party add "NAME" --phone NUMBER'
    )


def _each(remarks: Sequence[Found]) -> Iterator[str]:
    places: dict[tuple[str, str], list[str]] = {}
    for remark in remarks:
        line = f"{remark.file} line {remark.line}"
        places.setdefault((remark.what, remark.todo), []).append(line)
    for (what, todo), lines in places.items():
        distinct = list(dict.fromkeys(lines))
        shown, more = ", ".join(distinct[:MOST_LINES]), len(distinct) - MOST_LINES
        more_words = f" and {more} more" if more > 0 else ""
        yield f"Note: {f'{what} {todo}'.strip()} ({shown}{more_words})"
