"""A forecast on a screen or as JSON.

Guarantees: of a lot it is recorded before it is shown; what is shown is what was recorded.
"""

from cli.kit.call import Call
from cli.kit.tables import print_json, print_lines, print_table
from ledger.errors import InputError
from ledger.service.glass.foretell import foretell_formula, record_lot
from ledger.service.glass.haze import Haze
from ledger.service.glass.scores import scores
from reports.words.glass import foretell as words

HEADS = ("looked at", "NTU", "looks")


def show_forecast(call: Call, what: str | None, pour: str | None, temp: str | None = None) -> None:
    """Foretell a formula, or else a lot, which is recorded; print it."""
    if what is None:
        raise InputError(
            "Nothing is named.",
            "Name a formula or a lot, or give --score to see how often it held.",
        )
    book = call.book()
    haze, number = foretell_formula(book, what, pour, temp), None
    if haze is None:
        haze, number = record_lot(book, call.how(), what, pour, temp)
    if call.json:
        from reports.json.glass.foretell import foretell_answer

        print_json(foretell_answer(haze, number))
        return
    print_lines(words.head(haze))
    if any(haze.shown):
        print_lines([""])
        print_table(HEADS, words.bands(haze), right="NTU")
    print_lines([*words.notes(haze), "", *words.rests(haze)])
    print_lines(_end(haze, number))


def _end(haze: Haze, number: int | None) -> list[str]:
    if number is None:
        return ["Nothing was recorded.", "Next: pottle start FORMULA VOLUME"]
    return [
        f"Recorded {number}, before the look.",
        f"Next: pottle look {haze.code} GRADE --ntu NTU",
    ]


def show_score(call: Call) -> None:
    """Print how often forecasts were right."""
    found = scores(call.book())
    if call.json:
        from reports.json.glass.foretell import score_answer

        print_json(score_answer(found))
    else:
        print_lines(words.score_words(found))
