"""What a command that records answers, for machines."""

from typing import TYPE_CHECKING

from ledger.domain.lots.lot import Status
from ledger.service.desk.book import Recorded
from reports.json.kit.answer import Amount, Answer, Code, Told, amount_of, told
from reports.words.desk.answer import not_known
from reports.words.entries.named import sentence_naming

if TYPE_CHECKING:
    from ledger.service.lots.dossier import Dossier


class RecordedAnswer(Answer, frozen=True):
    """What was recorded, and what is in its lot now."""

    entry: int
    """Number of the entry."""
    kind: str
    """Kind of the entry."""
    code: Code | None
    """Code of the lot that it opened or is about; null where it is about none."""
    name: str | None
    """What that lot is, for people."""
    on_hand: Amount | None
    """What is in it now."""
    is_reckoned: bool | None
    """Whether that is the volume reckoned for a mixture, which nobody has measured."""
    status: Status | None
    """Where it stands now."""
    says: str
    """What the entry says, in words."""
    not_known: tuple[str, ...]
    """Facts of a delivery that the book does not know yet."""
    remarks: tuple[Told, ...]
    """What is merely unusual."""
    deviations: tuple[int, ...]
    """Numbers of the deviations recorded with it."""
    next: str | None
    """The command that usually comes next."""


def recorded_answer(
    recorded: Recorded, dossier: "Dossier | None", step: str | None
) -> RecordedAnswer:
    """Return the answer to a recording; see `reports.words.desk.answer`."""
    entry, lot = recorded.entry, dossier.lot if dossier else None
    return RecordedAnswer(
        entry=entry.seq,
        kind=entry.kind,
        code=lot.code if lot else None,
        name=lot.name if lot else None,
        on_hand=amount_of(lot.on_hand, lot.measure) if lot else None,
        is_reckoned=lot.is_reckoned if lot else None,
        status=lot.status if lot else None,
        says=sentence_naming(entry, recorded.draws_on),
        not_known=not_known(entry, dossier),
        remarks=told(recorded.remarks),
        deviations=tuple(item.seq for item in recorded.deviations),
        next=step,
    )
