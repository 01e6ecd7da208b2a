"""Limits on a screen or as JSON.

Guarantees: every limit is shown with its source.
"""

from cli.kit.call import Call
from cli.kit.tables import print_json, print_lines, print_table
from ledger.errors import RefusedError
from ledger.service.masters.limits import limits
from reports.json.masters.limits import limit_answer
from reports.words.entries.limits import card, listed_words


def list_limits(call: Call, substance: str | None, place: str | None) -> None:
    """List the limits, or those of one substance or place."""
    found = [
        item
        for item in limits(call.book())
        if _fits(item.limit.substance, substance) and _fits(item.limit.place, place)
    ]
    if call.json:
        print_json([limit_answer(item) for item in found])
    elif found:
        rows = [
            [item.code, words, item.place, str(item.known_by)]
            for listed in found
            for item, words in listed_words(listed)
        ]
        print_table(("limit", "what", "place", "value"), rows)
        print_lines(
            [
                "",
                "Copies of somebody's rules on some day: look at the source before relying on one.",
                "Next: pottle limits CODE shows one with its source.",
            ]
        )
    else:
        print_lines(["There is no such limit.", "Next: pottle limits lists them all."])


def _fits(value: str, wanted: str | None) -> bool:
    return wanted is None or wanted.strip().lower() == value.lower()


def show_limit(call: Call, code: str) -> None:
    """Show one limit with its source."""
    found = next(
        (item for item in limits(call.book()) if item.limit.code == code.strip().lower()), None
    )
    if found is None:
        raise RefusedError(
            f"There is no limit {code}.",
            "pottle limits lists them; to add one say its substance, value, unit, basis, place "
            "and citation.",
        )
    if call.json:
        print_json(limit_answer(found))
    else:
        print_lines(card(found))
