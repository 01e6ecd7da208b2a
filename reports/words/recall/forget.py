"""Forgetting somebody, in words: what is erased, what stays, and what no program can erase.

Guarantees: what keeps the name is told before anything is erased, with the numbers of the entries.
Refuses: to say what a law has a maker keep.
"""

from collections.abc import Sequence

from ledger.service.recall.forget import Forgettable, Forgotten
from reports.kit.format import closed
from reports.words.entries.sentence import sentence

MOST = 12
"""So many numbers of entries are told; `--json` has all."""
COPIES = (
    "Backups, exports, papers and whatever was sent before have it still; finding them is for you."
)
LAW = (
    "What a law has you keep, such as whom you delivered to, and how long, is for you to know: "
    "afterwards the book cannot tell."
)


def before_lines(was: Forgettable) -> list[str]:
    """Return what would become of the book."""
    who = f"{was.name} is {was.instead} in the book." if was.erased else ""
    kept, in_words = _numbers(was.kept), _numbers(was.in_words)
    lines = [
        who,
        f"Erased for good: all that stands beside {_numbers(was.erased)} of who that is."
        if was.erased
        else "Nothing can be erased: no entry has who that is beside its text.",
        f"Kept for good, but shown as {was.instead} from then on: the name in the text of {kept}."
        if was.kept
        else "",
        f"Kept for good and shown as it is, among other words: {in_words}." if in_words else "",
        COPIES,
        LAW,
    ]
    return [line for line in lines if line]


def after_lines(done: Forgotten, where: str) -> list[str]:
    """Return what was done."""
    entry, was = done.done.entry, done.was
    if not done.done.is_new:
        first = f"{was.instead} was forgotten by entry {entry.seq}."
    else:
        first = closed(f"Recorded {entry.seq}, forgotten: {sentence(entry)}")
    return [first, _left(done, where), "Next: pottle verify"]


def _left(done: Forgotten, where: str) -> str:
    if done.done.is_new and not done.was.erased:
        return "No byte was erased: what is hashed stays as it is."
    if done.is_clean:
        return "What was erased is nowhere in the book's file any more."
    if "://" in where:
        return (
            "A server keeps erased rows until it cleans up (VACUUM), and in its logs and copies: "
            "ask its keeper."
        )
    return (
        "Somebody else works in the book, so its file was not cleaned of what was erased. When "
        f"nobody does, run: pottle forget {done.was.instead}"
    )


def _numbers(entries: Sequence[int]) -> str:
    if not entries:
        return ""
    told = [f"{seq}" for seq in entries[:MOST]]
    if more := len(entries) - MOST:
        told[MOST:] = [f"{more} more"] if more > 0 else []
    *first, last = told
    return f"entries {', '.join(first)} and {last}" if first else f"entry {last}"
