"""Writing a card that a command shows as a paper.

Guarantees: it is drawn whole before its file is made; a file that is there stays unless asked.
"""

from collections.abc import Callable
from pathlib import Path

from cli.kit.answer import say
from cli.kit.call import Call
from cli.kit.files import draw
from ledger.service.desk.book import Book
from ledger.service.desk.clock import house_of, written_at
from ledger.service.evidence.seal import seal
from reports.json.kit.answer import File
from reports.kit.card import Card
from reports.kit.frame import Frame, frame_of
from reports.pdf.kit.card import card_paper


def put_card(
    call: Call, book: Book, card_of: Callable[[Frame], Card], out: Path, *, force: bool
) -> None:
    """Write a card, and say where it is."""
    card = card_of(frame_of(house_of(book), seal(book), written_at(book)))
    draw(out, lambda paper: card_paper(card, paper), force=force)
    kind = card.heading.kind.lower()
    say(call, lambda: File(str(out)), f"The {kind} of {card.heading.code} is in {out}.")
