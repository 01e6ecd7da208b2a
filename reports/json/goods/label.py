"""What became of labels, for machines."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import asdict

from ledger.domain.entries import Labels
from ledger.domain.entries.choices import Across
from ledger.service.desk.book import Recorded
from reports.json.desk.recorded import RecordedAnswer, recorded_answer

if TYPE_CHECKING:
    from ledger.service.lots.dossier import Dossier


class LabelAnswer(RecordedAnswer, frozen=True):
    """What was recorded of labels, and where their sheet is."""

    path: str | None
    """Where their sheet is; null when none was written."""
    across: Across | None
    """The word across each; null for bottle labels."""
    left_out: tuple[str, ...]
    """What has no room on the label in full, by name: the list of ingredients, the nutrition."""
    missing: tuple[str, ...]
    """What the book lacks of what a label declares, or a list in a formula's text that was left
    off for it, a sentence each with what to do."""
    also: tuple[RecordedAnswer, ...]
    """What was recorded of further lots on the sheet."""


Lot = tuple[Recorded[Labels], "Dossier | None"]
"""What was recorded of a lot, and what is known of it."""


def label_answer(
    lots: Sequence[Lot],
    step: str | None,
    path: str | None,
    *,
    left_out: tuple[str, ...] = (),
    missing: tuple[str, ...] = (),
) -> LabelAnswer:
    """Return the answer to labels that were printed, used or spoiled, of one lot or of several."""
    (recorded, dossier), *others = lots
    common = asdict(recorded_answer(recorded, dossier, step))
    return LabelAnswer(
        **common,
        path=path,
        across=recorded.entry.facts.across,
        left_out=left_out,
        missing=missing,
        also=tuple(recorded_answer(*other, None) for other in others),
    )
