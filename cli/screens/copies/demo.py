"""The demonstration: an invented maker's season played into a new book.

Guarantees: everything goes through the same verbs as the commands; the book and papers are real;
what may be the cause is asked on the day the trial was planned, and the trial at the end.
Refuses: to write over what is in the folder.
"""

from collections.abc import Sequence
from datetime import date
from importlib.resources import files
from pathlib import Path
from typing import NamedTuple

from cli.kit.call import BOOK_NAME, Call
from cli.kit.files import check_place, draw, make_folder
from cli.kit.progress import progress
from cli.kit.tables import print_json, print_lines
from cli.screens.lots.record import print_record
from cli.screens.lots.trace import print_trace
from ledger.science.statistics.suspects import Sort
from ledger.service.causes.compare import Comparison, compare
from ledger.service.causes.suspects import Suspicion, suspects
from ledger.service.copies.season import (
    Played,
    Season,
    SeasonClock,
    moved,
    play,
    read_season,
    start_time,
)
from ledger.service.desk.book import Book, wall_clock
from ledger.service.desk.clock import now_at_home
from ledger.service.desk.times import read_day
from ledger.service.evidence.verify import Audit, verify
from ledger.service.glass.serving import card
from ledger.service.lots.dossier import dossier
from ledger.service.lots.shares import Traced, traced
from ledger.service.masters.house import init
from reports.json.copies.demo import DemoAnswer
from reports.json.evidence.verify import verify_answer
from reports.json.lots.trace import trace_answer
from reports.pdf.goods.label import label_sheet
from reports.words.causes.compare import comparison_view
from reports.words.causes.steps import next_step
from reports.words.copies.demo import book_line, lead_lines, shown_lines, told, trace_lines
from reports.words.goods.label import label_sheet_view
from reports.words.lots.next_in_lists import step_of_trace

SHEET_LABELS = 12
"""How many labels the demonstration prints: one sheet."""
OTHER_FOLDER = "Give another folder: pottle demo FOLDER"


def season_folder() -> Path:
    """Return the folder of the season that comes with the program."""
    # An installed program carries the season inside; in the source it stands beside the code.
    program = Path(str(files("cli")))
    inside = program / "sample_data" / "season"
    return inside if inside.is_dir() else program.parent / "sample_data" / "season"


class Places(NamedTuple):
    """Where the demonstration puts what it makes."""

    book: Path
    """The book."""
    labels: Path
    """The sheet of labels."""
    record: Path
    """The batch record."""


class Lead(NamedTuple):
    """What the book said of the cause before the trial."""

    day: date
    """When it was asked."""
    causes: Suspicion
    """What the cloudy bottles had in common."""


class Found(NamedTuple):
    """What the book answers about the cloudy bottle."""

    cloudy: str
    """Its code."""
    lead: Lead
    """What was suspected before the trial."""
    trial: Comparison
    """What the trial came to."""
    back: Traced
    """All that it is made of."""
    audit: Audit
    """Whether the book is whole."""


def demonstrate(call: Call, folder: Path, today: str | None) -> None:
    """Play the season into `folder`, print its papers, trace its cloudy bottle.

    Raises:
        InputError: `today` is no day.
    """
    season = moved(read_season(season_folder()), read_day(today) if today else wall_clock().date())
    make_folder(folder, parents=True, instead=OTHER_FOLDER)
    places = Places(*(folder / name for name in (BOOK_NAME, "labels.pdf", "record.pdf")))
    for paper in (places.labels, places.record):
        check_place(paper, force=False, instead=OTHER_FOLDER)
    book, played, lead = play_into(call, season, places.book)
    story, codes = season.story, played.codes
    print_record(book, codes[story.record], places.record, by=None, force=False)
    _print_labels(book, codes[story.labels], places.labels)
    found = _looked_into(book, codes[story.cloudy], lead, _trial_of(season), quiet=call.json)
    if call.json:
        print_json(_plain(places, found))
    else:
        _tell(book, season.house.name, places, found)


def _looked_into(book: Book, cloudy: str, lead: Lead, trial: str, *, quiet: bool) -> Found:
    back = traced(book, cloudy, forward=False)
    with progress("Verifying", quiet=quiet) as tick:
        return Found(cloudy, lead, compare(book, trial), back, verify(book, tick))


def _plain(places: Places, found: Found) -> DemoAnswer:
    return DemoAnswer(
        ledger=str(places.book),
        labels=str(places.labels),
        record=str(places.record),
        code=found.cloudy,
        common_codes=tuple(_common_lots(found.lead.causes)),
        shown_codes=_shown(found.trial),
        trace=trace_answer(found.back, step_of_trace(found.back.trace)),
        verify=verify_answer(found.audit),
    )


def _tell(book: Book, house_name: str, places: Places, found: Found) -> None:
    lead = found.lead
    print_lines(told(house_name, found.audit.entries))
    print_lines(lead_lines(lead.day, lead.causes, next_step(lead.causes)))
    print_lines(shown_lines(comparison_view(found.trial).outcome))
    print_lines(trace_lines(found.cloudy))
    print_trace(found.back, back=True, forward=False)
    _show_sisters(book, _shown(found.trial))
    print_lines(
        [
            "",
            book_line(str(places.book), found.audit),
            f"A sheet of labels is at {places.labels}, a batch record at {places.record}.",
            f"To see what made it a lead: pottle --ledger {places.book} suspects --complaints "
            "--explain",
            f"To see what the trial came to: pottle --ledger {places.book} compare "
            f"{found.trial.group}",
            f"To see how often it foretold right: pottle --ledger {places.book} foretell --score",
            f"Next: pottle --ledger {places.book} stock",
        ]
    )


def _print_labels(book: Book, code: str, out: Path) -> None:
    view = label_sheet_view(dossier(book, code), SHEET_LABELS, card(book, code))
    draw(out, lambda sheet: label_sheet(view, sheet), force=False, instead=OTHER_FOLDER)


def _common_lots(causes: Suspicion) -> list[str]:
    judgement = causes.judgement
    told = judgement.named or ((judgement.lead,) if judgement.lead else ())
    return [item.cause.name for item in told if item.cause.sort is Sort.LOT]


def play_into(call: Call, season: Season, where: Path) -> tuple[Book, Played, Lead]:
    """Play a season into a new book; return the book, its codes and what was suspected."""
    house, clock = season.house, SeasonClock(start_time(season))
    new = init(
        str(where),
        name=house.name,
        currency=house.currency,
        address=house.address,
        country=house.country,
        time_zone=house.time_zone,
        fluid_ounce=house.fluid_ounce,
        phone=house.phone,
        clock=clock,
    )
    book = call.at_end.enter_context(new)
    leads = list[Lead]()
    planned_after = _place_of_plan(season)

    with progress("Playing the season", quiet=call.json) as tick:

        def go_on(done: int, total: int) -> None:
            tick(done, total)
            if done == planned_after:
                leads.append(Lead(now_at_home(book).date(), suspects(book, complaints=True)))

        played = play(season, book, clock, go_on)
    return book, played, leads[0]


def _place_of_plan(season: Season) -> int:
    """Return how many rows come before the one that plans the trial."""
    return next(
        place for place, row in enumerate(season.rows) if row.nickname == season.story.trial
    )


def _trial_of(season: Season) -> str:
    return season.rows[_place_of_plan(season)].cells["name"]


def _shown(trial: Comparison) -> tuple[str, ...]:
    return trial.outcome.shown if trial.outcome else ()


def _show_sisters(book: Book, named: Sequence[str]) -> None:
    for code in named:
        ahead = traced(book, code, back=False)
        print_lines(["", f"Everyone who holds something made of {code}:"])
        print_trace(ahead, back=False, forward=True)
