"""Columns named as the options of the commands are, and the words of the verbs that they mean.

Guarantees: a verb's own word means itself; an option is read with its dashes or without. Refuses:
to guess; a name that is neither means nothing here.
"""

from collections.abc import Collection, Mapping

OPTIONS: Mapping[str, Mapping[str, str]] = {
    "add": {"took": "minutes", "triturate": "triturated"},
    "answer": {"told": "told_on"},
    "clean": {"how": "method", "held": "last_held"},
    "complain": {"from": "party"},
    "filter": {"in": "volume_in", "out": "volume_out", "took": "minutes", "wet": "wetted_with"},
    "makeup": {"with": "source"},
    "receive": {"from": "supplier", "their-lot": "supplier_lot"},
    "rest": {"for": "purpose"},
    "rinse": {"with": "source", "in": "volume_in", "out": "volume_out", "to": "went_to"},
    "send": {"to": "party", "from": "party"},
}
"""For each verb the options that are called otherwise than its words, and those words."""


def word_of(verb: str, column: str, words: Collection[str]) -> str | None:
    """Return the word of a verb that a column is named after, or None.

    Args:
        verb: The verb.
        column: The name of the column.
        words: The words that the verb takes.

    >>> word_of("filter", "--out", {"volume_out"}), word_of("start", "best-before", {"best_before"})
    ('volume_out', 'best_before')
    """
    if column in words:
        return column
    option = column.strip().casefold().removeprefix("--")
    word = OPTIONS.get(verb, {}).get(option, option.replace("-", "_").replace(" ", "_"))
    return word if word in words else None
