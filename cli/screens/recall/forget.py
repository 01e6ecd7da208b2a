"""Forgetting somebody: what will be erased and what stays is told first, and asked about.

Guarantees: nothing is erased without a reason and without somebody having said yes.
"""

from cli.kit.answer import say
from cli.kit.ask import ask, can_ask
from cli.kit.call import Call
from cli.kit.tables import print_lines
from ledger.errors import RefusedError
from ledger.service.recall.forget import Forgettable, forgettable, forgotten
from reports.json.recall.forget import forget_answer
from reports.words.recall.forget import after_lines, before_lines


def forget_who(call: Call, who: str, *, yes: bool) -> None:
    """Forget a party or a person."""
    book, how = call.book(), call.how()
    was = forgettable(book, who)
    if not (was.by or call.json):
        print_lines(before_lines(was))
    if how.because and not (was.by or yes):
        _ask(was)
    done = forgotten(book, how, who=who)
    say(call, lambda: forget_answer(done), *after_lines(done, book.shown))


def _ask(was: Forgettable) -> None:
    if not can_ask():
        raise RefusedError(
            f"Nobody can be asked here whether {was.name} is to be forgotten for good.",
            "Say so with --yes. Nothing was erased.",
        )
    if ask(f"Write {was.instead} to erase it for good").upper() != was.instead:
        raise RefusedError(
            f"That was not {was.instead}, so {was.name} was not forgotten.", "Nothing was erased."
        )
