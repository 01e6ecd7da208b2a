"""Somebody forgotten, for machines."""

from ledger.service.recall.forget import Forgotten
from reports.json.kit.answer import Answer


class ForgetAnswer(Answer, frozen=True):
    """Somebody was forgotten."""

    entry: int
    """Number of the entry that says so."""
    is_new: bool
    """Whether it was recorded now; false where they were forgotten already."""
    who: str
    """Code of the party or initials of the person, which is all that is left."""
    is_party: bool
    """Whether it is a party."""
    erased: tuple[int, ...]
    """Entries whose details were erased."""
    kept: tuple[int, ...]
    """Entries whose text keeps the name, which is shown as the code from now on."""
    in_words: tuple[int, ...]
    """Entries whose text has the name, a number or an address in other words."""
    is_clean: bool
    """Whether nothing of it is left in the book's file."""


def forget_answer(done: Forgotten) -> ForgetAnswer:
    """Return what was forgotten."""
    was = done.was
    return ForgetAnswer(
        entry=done.done.seq,
        is_new=done.done.is_new,
        who=was.instead,
        is_party=was.is_party,
        erased=was.erased,
        kept=was.kept,
        in_words=was.in_words,
        is_clean=done.is_clean,
    )
