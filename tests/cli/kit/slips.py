"""Slips in a command's call of its verb, each of which the type checker sees where it stands.

Guarantees: each line that is let pass here is wrong by one word, and the checker is told by which
error. It is strict, and refuses to be told so in vain: a slip that it no longer sees is an error
here.
"""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from cli.kit.call import Call
    from cli.kit.record import record
    from ledger.service.bench import ad as misspelt_module  # type: ignore[attr-defined]
    from ledger.service.bench.add import ad as misspelt_verb  # type: ignore[attr-defined]
    from ledger.service.bench.add import add

    def misspelt_word(call: Call) -> None:
        """Say a word that the verb has not got."""
        record(call, add, lot="X", sauce="Y", amount="1mL")  # type: ignore[call-arg]

    def left_out_word(call: Call) -> None:
        """Say nothing of a word that the verb must have."""
        record(call, add, lot="X", amount="1mL")  # type: ignore[call-arg]

    def right_words(call: Call) -> None:
        """Say what the verb takes."""
        record(call, add, lot="X", source="Y", amount="1mL")

    __all__ = ("left_out_word", "misspelt_module", "misspelt_verb", "misspelt_word", "right_words")
