"""What is said of printed labels, and which options do not go together.

Guarantees: every lot of a sheet is told, with the word across its labels. Refuses: options that are
of bottle labels beside other kinds, and options that are of one lot beside several.
"""

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from cli.kit.answer import dossier_of, say, step_after
from cli.kit.call import Call
from cli.screens.goods.label import Sheet
from ledger.domain.entries import Labels
from ledger.errors import InputError
from ledger.service.desk.book import Book, Recorded
from reports.words.desk.answer import answer
from reports.words.goods.label import left_out_lines, panels_line

if TYPE_CHECKING:
    from reports.json.goods.label import LabelAnswer


def say_labels(
    call: Call, book: Book, done: Sequence[Recorded[Labels]], sheet: Sheet | None = None
) -> None:
    """Show what was recorded of labels, where their sheet is, and what it does not say."""
    found = [dossier_of(book, each) for each in done]
    step = step_after(book, done[0], found[0])
    said = [answer(each, lot, step) for each, lot in zip(done, found, strict=True)]

    def plain() -> "LabelAnswer":
        from reports.json.goods.label import label_answer

        return label_answer(
            list(zip(done, found, strict=True)),
            step,
            str(sheet.path) if sheet else None,
            left_out=sheet.left_out if sheet else (),
            missing=sheet.missing if sheet else (),
        )

    paper = (
        (
            f"The labels are in {sheet.path}{_across_words(done)}.",
            *panels_line(sheet.panels, done[0].entry.facts.stock),
            *left_out_lines(sheet.left_out),
            *sheet.lacking,
        )
        if sheet
        else ()
    )
    lines = [line for each in said for line in each.found]
    say(call, plain, *(each.done for each in said), *paper, *lines, *said[0].last)


def _across_words(done: Sequence[Recorded[Labels]]) -> str:
    """Return which labels have a word across; nothing where none has."""
    words = {each.entry.draft.lot: each.entry.facts.across for each in done}
    if not any(words.values()):
        return ""
    if len(set(words.values())) == 1:
        return f", each with {done[0].entry.facts.across} across"
    told = (f"{lot} with {word} across" for lot, word in words.items() if word)
    return f", {', '.join(told)}"


def check_alone(given: Mapping[str, object], what: str) -> None:
    """Refuse options that go with bottle labels only.

    Raises:
        InputError: One of them was given.
    """
    if wrong := [name for name, value in given.items() if value]:
        raise InputError(
            f"{', '.join(wrong)} {'goes' if len(wrong) == 1 else 'go'} with the labels of bottles, "
            f"not with --kind {what}.",
            f"Leave {'it' if len(wrong) == 1 else 'them'} out.",
        )


def check_cases(numbers: Sequence[int] | None) -> None:
    """Refuse numbers of cases where no labels of numbered cases are to be printed.

    Raises:
        InputError: Some were given.
    """
    if numbers:
        raise InputError(
            "--case goes with the labels of cases that were told of.",
            "Give --kind case without --gtin, or leave --case out.",
        )


def check_together(given: Mapping[str, object]) -> None:
    """Refuse options that are of one lot where several stand on a sheet.

    Raises:
        InputError: One of them was given.
    """
    if wrong := [name for name, value in given.items() if value is not None]:
        raise InputError(
            f"{', '.join(wrong)} can be said of one lot only, and several are to stand on the "
            "sheet.",
            f"Leave {'it' if len(wrong) == 1 else 'them'} out, or --also.",
        )
