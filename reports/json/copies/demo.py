"""The demonstration, for machines."""

from reports.json.evidence.verify import VerifyAnswer
from reports.json.kit.answer import Answer, Code
from reports.json.lots.trace import TraceAnswer


class DemoAnswer(Answer, frozen=True):
    """What the demonstration made, and what its book answers about the cloudy bottle."""

    ledger: str
    """Where the book is."""
    labels: str
    """Where the sheet of labels is."""
    record: str
    """Where the batch record is."""
    code: Code
    """Code of the cloudy bottles' lot."""
    common_codes: tuple[Code, ...]
    """Lots that the cloudy bottles share and that suspects found worth a trial, before it."""
    shown_codes: tuple[Code, ...]
    """Lots that the planned trial showed to be the cause."""
    trace: TraceAnswer
    """All that the bottle is made of."""
    verify: VerifyAnswer
    """Whether the book is whole."""
