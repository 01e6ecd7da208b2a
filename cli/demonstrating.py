"""The demonstration: an invented maker's season played into a new book.

Guarantees: everything goes through the same verbs as the commands; the book and papers are real.
Refuses: to write over what is in the folder.
"""

from collections.abc import Sequence
from io import BytesIO
from pathlib import Path

from cli.call import BOOK_NAME, Call
from cli.files import check_place, write
from cli.printing import print_record
from cli.progress import progress
from cli.tables import print_json, print_lines
from cli.tracing import print_trace
from ledger.errors import StorageError
from ledger.science.suspects import Sort
from ledger.service.book import Book
from ledger.service.carrying import traced
from ledger.service.looking import dossier
from ledger.service.season import Season, SeasonClock, play, read_season, start_time
from ledger.service.serving import card
from ledger.service.setting_up import init
from ledger.service.suspecting import Suspicion, suspects
from ledger.service.verifying import verify
from reports.build.papers import label_sheet_view
from reports.build.plain import audit_plain, traced_plain
from reports.build.story import told
from reports.pdf.labels import label_sheet

SHEET_LABELS = 12
"""How many labels the demonstration prints: one sheet."""
OTHER_FOLDER = "Give another folder: pottle demo FOLDER"


def season_folder() -> Path:
    """Return the folder of the season that comes with the program."""
    inside = Path(__file__).parent / "sample_data" / "season"
    return inside if inside.is_dir() else Path(__file__).parents[1] / "sample_data" / "season"


def demonstrate(call: Call, folder: Path) -> None:
    """Play the season into `folder`, print its papers, trace its cloudy bottle."""
    season = read_season(season_folder())
    make_folder(folder)
    where, labels, record = (folder / name for name in (BOOK_NAME, "labels.pdf", "record.pdf"))
    for paper in (labels, record):
        check_place(paper, force=False, instead=OTHER_FOLDER)
    book, codes = play_into(season, where, quiet=call.json)
    story = season.story
    print_record(book, codes[story.record], record, by=None, force=False)
    _print_labels(book, codes[story.labels], labels)
    cloudy = codes[story.cloudy]
    causes = suspects(book, complaints=True)
    named = _named_lots(causes)
    back = traced(book, cloudy, forward=False)
    with progress("Verifying", quiet=call.json) as tick:
        audit = verify(book, tick)
    if call.json:
        print_json(
            {
                "ledger": str(where),
                "labels": str(labels),
                "record": str(record),
                "cloudy": cloudy,
                "common": named,
                "trace": traced_plain(back),
                "verify": audit_plain(audit),
            }
        )
        return
    print_lines(told(season.house.name, audit.entries, cloudy, causes))
    print_trace(back, back=True, forward=False)
    _show_sisters(book, named)
    print_lines(
        [
            "",
            f"The book is at {where} ({audit.entries} entries, verified).",
            f"A sheet of labels is at {labels}, a batch record at {record}.",
            f"To see how sure it is: pottle --ledger {where} suspects --complaints --explain",
            f"Next: pottle --ledger {where} stock",
        ]
    )


def _print_labels(book: Book, code: str, out: Path) -> None:
    sheet = BytesIO()
    label_sheet(label_sheet_view(dossier(book, code), SHEET_LABELS, card(book, code)), sheet)
    write(out, sheet.getvalue())


def _named_lots(causes: Suspicion) -> list[str]:
    found = (suspect.cause for suspect in causes.judgement.named)
    return [cause.name for cause in found if cause.sort is Sort.LOT]


def make_folder(folder: Path) -> None:
    """Make the folder of the demonstration.

    Raises:
        StorageError: It cannot be made.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise StorageError(
            f"The folder {folder} could not be made: {error.strerror}.",
            OTHER_FOLDER,
        ) from error


def play_into(season: Season, where: Path, *, quiet: bool) -> tuple[Book, dict[str, str]]:
    """Play a season into a new book; return the book and its codes by nickname."""
    house, clock = season.house, SeasonClock(start_time(season))
    book = init(
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
    with progress("Playing the season", quiet=quiet) as tick:
        played = play(season, book, clock, tick)
    return book, played.codes


def _show_sisters(book: Book, named: Sequence[str]) -> None:
    for code in named:
        ahead = traced(book, code, back=False)
        print_lines(["", f"Everyone who holds something made of {code}:"])
        print_trace(ahead, back=False, forward=True)
