"""The beginning of a batch, for machines: what was recorded and what to draw for it."""

from typing import TYPE_CHECKING

from msgspec.structs import asdict

from ledger.domain.masters.weighing import asked
from ledger.service.desk.book import Recorded
from reports.json.desk.recorded import RecordedAnswer, recorded_answer
from reports.json.kit.answer import Amount, Answer, Code, amount_of

if TYPE_CHECKING:
    from ledger.service.bench.draws import Proposed
    from ledger.service.lots.dossier import Dossier


class LotDrawn(Answer, frozen=True):
    """What to take of one lot."""

    code: Code
    """Its code."""
    amount: Amount
    """How much."""


class LineProposed(Answer, frozen=True):
    """What to take for one line of a formula."""

    material: str | None
    """Code of the material, of what is bought."""
    formula: str | None
    """Code of the formula, of what is made here."""
    amount: Amount
    """What the line calls for, exactly."""
    asked: Amount
    """The same, rounded to what can be weighed or measured."""
    short: Amount
    """How much of it no lot has."""
    lots: tuple[LotDrawn, ...]
    """What to take of which lots, in order."""


class StartAnswer(RecordedAnswer, frozen=True):
    """A batch that was begun."""

    proposed: tuple[LineProposed, ...]
    """What to take for each line of its formula; empty without one."""
    path: str | None
    """Where its sheet is; null when none was written."""


def start_answer(
    recorded: Recorded,
    dossier: "Dossier",
    step: str | None,
    proposed: tuple["Proposed", ...],
    path: str | None,
) -> StartAnswer:
    """Return the answer to the beginning of a batch."""
    plain = asdict(recorded_answer(recorded, dossier, step))
    return StartAnswer(**plain, proposed=tuple(map(_line, proposed)), path=path)


def _line(item: "Proposed") -> LineProposed:
    wanted = item.wanted
    return LineProposed(
        material=wanted.called.material,
        formula=wanted.called.formula,
        amount=amount_of(wanted.amount, wanted.measure),
        asked=amount_of(asked(wanted), wanted.measure),
        short=amount_of(item.short, wanted.measure),
        lots=tuple(
            LotDrawn(drawn.lot, amount_of(drawn.amount, wanted.measure)) for drawn in item.drawn
        ),
    )
