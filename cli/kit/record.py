"""One verb of the book, called and answered.

Guarantees: the same path for every command that records. Refuses: to load the book before a
command runs.
"""

from cli.kit.call import Call


def record(call: Call, verb: str, **words: str | bool | None) -> None:
    """Record with a verb of the book, named as in its list of verbs, and print the answer."""
    from cli.kit.answer import recorded
    from ledger.service.copies.season_verbs import VERBS

    book = call.book()
    recorded(call, book, VERBS[verb](book, call.how(), **words))
