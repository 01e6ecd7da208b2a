"""Writing the packet of a lot or a period.

Guarantees: it is drawn whole before its file is made; a file that is there stays unless asked.
"""

from pathlib import Path

from cli.kit.answer import say
from cli.kit.call import Call
from cli.kit.files import check_place, draw
from cli.screens.lots.record import view_of
from ledger.domain.entries import Person
from ledger.errors import InputError
from ledger.service.desk.clock import house_of, written_at
from ledger.service.evidence.seal import seal
from ledger.service.glass.spirit import spirit_account
from ledger.service.lots.journal import entries_of_kind
from ledger.service.lots.packet import packet_of_lot, packet_of_period
from reports.json.lots.packet import PacketAnswer
from reports.kit.format import plural
from reports.kit.frame import frame_of
from reports.pdf.lots.packet import packet_paper
from reports.words.lots.packet import packet_view


def write_packet(
    call: Call, lot: str | None, first: str | None, last: str | None, out: Path, *, force: bool
) -> None:
    """Gather and write a packet.

    Raises:
        InputError: Neither a lot nor a period is named, or both are.
    """
    if (lot is None) == (first is None and last is None):
        raise InputError(
            "A packet is of one lot or of a period.",
            "Name a lot, or its days with --from DAY --to DAY.",
        )
    check_place(out, force=force)
    book = call.book()
    if lot is not None:
        packet = packet_of_lot(book, lot, call.writer)
        of_lot: str | None = packet.dossiers[0].state.code
    else:
        period = spirit_account(book, first, last)
        packet, of_lot = packet_of_period(book, period.first, period.last), None
    records = [view_of(book, found) for found in packet.dossiers]
    frame = frame_of(house_of(book), seal(book), written_at(book))
    writers = [entry.facts for entry in entries_of_kind(book, Person)]
    spirit = spirit_account(book, packet.first.isoformat(), packet.last.isoformat())
    view = packet_view(packet, spirit, records, writers, frame, of_lot)
    draw(out, lambda paper: packet_paper(view, paper), force=force)
    codes = tuple(found.state.code for found in packet.dossiers)
    say(
        call,
        lambda: PacketAnswer(view.code, codes, len(view.entries), str(out)),
        f"The packet of {view.code} is in {out}: {plural(len(codes), 'record')}, "
        f"{plural(len(view.entries), 'entry', 'entries')}.",
        "Next: pottle verify",
    )
