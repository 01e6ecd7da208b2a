"""What is said of a file of events beside it: how many, how things are named, what is rough."""

from reports.epcis.document import Exported
from reports.kit.format import plural


def epcis_lines(made: Exported, path: str) -> tuple[str, ...]:
    """Return what is said of a document that was written."""
    return (
        f"{plural(made.objects + made.transformations + made.cases, 'event')} of EPCIS 2.0 in "
        f"{path}: {made.objects} of goods, {made.transformations} of what was made or filled of "
        f"what{f', {made.cases} of cases' if made.cases else ''}.",
        *_mistaken(made),
        *_rough(made),
        *_named(made),
        "What your batches were made of is in it, and the names of those you deal with.",
    )


def _mistaken(made: Exported) -> tuple[str, ...]:
    if not made.mistaken:
        return ()
    return (f"Told wrongly at first, and declared so in it: {plural(made.mistaken, 'event')}.",)


def _rough(made: Exported) -> tuple[str, ...]:
    if not made.rough:
        return ()
    about = plural(made.rough, "event")
    return (f"Not timed to the minute, and marked so in it: {about}; a day alone stands as noon.",)


def _named(made: Exported) -> tuple[str, ...]:
    rest = f"by addresses below {made.web}"
    if not made.articles:
        return (
            f"All lots are named {rest}; none by the number of an article.",
            'Where GS1 gave you such numbers: pottle house --gtin "WHAT=NUMBER"',
        )
    return (
        f"Named by article and lot (GS1 Digital Link): {'; '.join(made.articles)}.",
        f"All other lots are named {rest}.",
    )
