"""The view of the packet of a lot or a period.

Guarantees: every entry stands in it as it was written, corrections with what they correct.
"""

from collections.abc import Iterable, Sequence

from ledger.domain.entries import Answer, Closing, Complaint, Contact, Entry, Judge, Person
from ledger.domain.entries.choices import Verdict
from ledger.service.glass.spirit import SpiritReport
from ledger.service.lots.journal import Said
from ledger.service.lots.packet import Packet
from reports.kit.format import clock, initials
from reports.kit.frame import Frame
from reports.views.evidence import EntryRow, PacketView
from reports.views.lots import RecordView
from reports.words.entries.sentence import notes, sentence, strikes, title
from reports.words.glass.spirit import spirit_view

ABOUT_COMPLAINTS = (Complaint, Answer, Contact, Closing)
"""Kinds of entry about complaints and recalls."""


def packet_view(
    packet: Packet,
    report: SpiritReport,
    records: Sequence[RecordView],
    people: Iterable[Person],
    frame: Frame,
    of_lot: str | None,
) -> PacketView:
    """Return the packet as a paper shows it.

    Args:
        packet: What was gathered.
        report: The spirit account of its days.
        records: The record of each of its lots.
        people: Everybody who writes in the book.
        frame: The paper's house, seal and date.
        of_lot: The lot it is of; None: of a period.
    """
    spirit = spirit_view(report, frame)
    struck = strikes(said.entry for said in packet.said)
    rows = [(said.entry, _row(said, struck, frame.currency)) for said in packet.said]
    return PacketView(
        frame=frame,
        code=of_lot or spirit.period,
        title=records[0].title if of_lot and records else f"{len(records)} lots opened",
        records=tuple(records),
        spirit=spirit,
        upkeep=tuple(_row(Said(entry, None), frozenset(), "") for entry in packet.upkeep),
        complaints=tuple(row for entry, row in rows if _is_about_complaints(entry)),
        entries=tuple(row for _, row in rows),
        people=tuple((person.initials, person.name, person.role or "") for person in people),
    )


def _is_about_complaints(entry: Entry) -> bool:
    facts = entry.facts
    is_recall = isinstance(facts, Judge) and facts.verdict is Verdict.RECALL
    return is_recall or isinstance(facts, ABOUT_COMPLAINTS)


def _row(said: Said, struck: frozenset[int], currency: str) -> EntryRow:
    entry = said.entry
    return EntryRow(
        entry=str(entry.seq),
        when=clock(entry.draft.happened, is_repeated=said.is_repeated),
        lot=entry.draft.lot or "",
        what=title(entry),
        words=sentence(entry, currency),
        by=initials(entry),
        notes=notes(entry, said.corrected_by, is_struck=entry.seq in struck),
        struck=said.corrected_by is not None,
    )
