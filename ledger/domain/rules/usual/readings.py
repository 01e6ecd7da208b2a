"""What was measured beside what is reckoned, told as soon as it is entered.

Guarantees: a reading that lies within the doubt of both is not remarked on; one that does not
stands in the way of a release too, with or without a formula.
"""

from collections.abc import Iterator

from ledger.domain.entries import Draft, Look, Measurement
from ledger.domain.lots.readings import told_apart
from ledger.domain.lots.scene import Scene
from ledger.domain.rules.finding import Finding, Rule, remark
from ledger.domain.rules.release.barriers import stands_in_the_way, to_release


def reading_fits_the_book(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """A reading is what follows from what went in, or something else went in."""
    if not isinstance(draft.facts, Measurement):
        return
    for reading in scene.control.readings:
        if reading.beside.is_apart:
            yield remark(
                "measured and reckoned",
                told_apart(reading),
                "Read it again; if it stays so, something else or another amount went in: "
                f"pottle journal {reading.lot}",
            )


def last_readings_fit_the_book(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What is released is what the book says it is, as far as anybody measured."""
    if to_release(draft, scene) is None:
        return
    for reading in scene.control.readings:
        if reading.beside.is_apart:
            yield stands_in_the_way(
                told_apart(reading),
                "Correct what went in where the book is wrong, or measure it again",
                f"pottle measure {reading.lot} {reading.what} READING --temp TEMP",
            )


def a_clear_drink_can_hold_its_oil(draft: Draft, scene: Scene) -> Iterator[Finding]:
    """What water does not dissolve shows, unless something else was looked at."""
    found = scene.control.doubted
    if not isinstance(draft.facts, Look) or found is None:
        return
    share = 100 * found.held_mg_per_l / found.mg_per_l
    yield remark(
        "clear beyond what dissolves",
        f"{found.mg_per_l:.0f} mg/L of {found.oils} oil looked {draft.facts.grade} as poured, "
        f"where the drink dissolves {share:.0f} % of it at the best.",
        "Was it the syrup that was looked at, or has the oil risen as a ring? Look again in the "
        "glass; if the entry is wrong, correct it.",
    )


RULES: tuple[Rule, ...] = (
    reading_fits_the_book,
    last_readings_fit_the_book,
    a_clear_drink_can_hold_its_oil,
)
