"""Writing what happened to goods for a trading partner's programs.

Guarantees: how lots are named, and what of the times is rough, is said beside the file.
"""

from pathlib import Path

from cli.kit.answer import say
from cli.kit.call import Call
from cli.kit.files import check_place, write
from ledger.service.lots.sales import read_period
from ledger.service.recall.story import story_of
from reports.epcis.document import export_of
from reports.json.recall.epcis import epcis_answer
from reports.words.recall.epcis import epcis_lines

OTHER = "Give another name with --epcis, or --force to write over it."


def write_epcis(
    call: Call,
    out: Path,
    days: tuple[str | None, str | None],
    *,
    force: bool,
) -> None:
    """Write what happened to goods in a period as a document of EPCIS."""
    period = read_period(*days)
    check_place(out, force=force, instead=OTHER)
    book = call.book()
    made = export_of(story_of(book), period, book.clock())
    write(out, made.content, force=force, instead=OTHER)
    say(call, lambda: epcis_answer(made, str(out)), *epcis_lines(made, str(out)))
