"""A file of events for a trading partner, for machines: what `export --epcis` answers."""

from reports.epcis.document import Exported
from reports.json.kit.answer import Answer


class EpcisAnswer(Answer, frozen=True):
    """A document of EPCIS that was written."""

    path: str
    """Where it is."""
    object_events: int
    """How many events tell of goods that stayed what they were."""
    transformation_events: int
    """How many tell what was made or filled of what."""
    aggregation_events: int
    """How many events tell of bottles that were put into a case."""
    declared_in_error: int
    """How many of all were told wrongly, and say so."""
    roughly_timed: int
    """How many have a time that is not known to the minute, and say so."""
    named_by_gtin: list[str]
    """What is named by the number of its article and the lot, as a Digital Link."""
    named_below: str
    """The address below which all else is named."""


def epcis_answer(made: Exported, path: str) -> EpcisAnswer:
    """Return a document that was written."""
    return EpcisAnswer(
        path=path,
        object_events=made.objects,
        transformation_events=made.transformations,
        aggregation_events=made.cases,
        declared_in_error=made.mistaken,
        roughly_timed=made.rough,
        named_by_gtin=list(made.articles),
        named_below=made.web,
    )
