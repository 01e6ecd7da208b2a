"""The serving card in words: what a glass delivers, and what to mind.

Guarantees: every limit is told with its place and source, every caution defers to local law and
licensed practice; what is missing is told. Refuses: to say that anything is safe or complies.
"""

from msgspec import Struct

from ledger.domain.amounts.quantity import Measure, show
from ledger.science.contents.louche import Outlook
from ledger.science.contents.salts import salts_of
from ledger.science.ranges import significant
from ledger.service.glass.card import Declaration, Pouring, ServingCard
from reports.kit.figures import abv_words, mg_words, ml_words
from reports.kit.format import plural, poured
from reports.words.glass.cautions import cautions_of

LIKELY = {Outlook.CLEAR: "likely not", Outlook.MAY: "it may", Outlook.CLOUDS: "likely"}
"""Whether a drink clouds, in the words of a table."""


class Table(Struct, frozen=True):
    """A table, with the heads of the columns that are set to the right."""

    heads: tuple[str, ...]
    """Column heads."""
    rows: tuple[tuple[str, ...], ...]
    """Cells."""


def head(card: ServingCard) -> list[str]:
    """Return what a lot and a glass of it are, in lines for people."""
    glass = show(card.glass_ul, Measure.UL)
    lines = [f"{card.code}, {card.name}: {abv_words(card.made.contents.abv)}."]
    if card.is_essence:
        lines.append(
            f"Dosed into simple syrup, then a glass of {glass}: one part syrup to "
            f"{card.soda_parts} of soda water."
        )
    else:
        pouring = card.pourings[0].glass
        lines.append(
            f"A glass of {glass}: {ml_words(pouring.syrup_ul)} of it and "
            f"{ml_words(pouring.soda_ul)} of soda water ({poured(card.soda_parts)})."
        )
    if card.glasses_a_bottle is not None:
        lines.append(f"A bottle holds {plural(card.glasses_a_bottle, 'glass', 'glasses')}.")
    of = f" ({card.pourings[0].said})" if card.is_essence else ""
    lines.append(f"On hand: {plural(card.glasses_there, 'glass', 'glasses')}{of}.")
    return lines


def glass_table(card: ServingCard) -> Table:
    """Return what is in a glass, a column for each way to pour."""
    ways = card.pourings
    rows = [
        ("strength of the syrup", *(abv_words(way.syrup_abv) for way in ways)),
        ("strength of the glass", *(abv_words(way.glass.abv) for way in ways)),
        ("sugar", *(_sugar(card, way) for way in ways)),
    ]
    for oil in ways[0].oils:
        rows.append((oil.name, *(_oil(way, oil.material) for way in ways)))
        rows.append(("  in the drink", *(_in_drink(way, oil.material) for way in ways)))
        rows.append(("  will it cloud?", *(_clouds(way, oil.material) for way in ways)))
    if ways[0].together:
        rows.append(("all oils together", *(_all_oils(way) for way in ways)))
        rows.append(("  will they cloud it?", *(_cloud_it(way) for way in ways)))
    for served in ways[0].concerns:
        name = served.concern.substance
        words = f"{name}, with its salts" if salts_of(name, ways[0].masses_mg) else name
        rows.append((words, *(_concern(way, name) for way in ways)))
    return Table(("in a glass", *(way.said for way in ways)), tuple(rows))


def _sugar(card: ServingCard, way: Pouring) -> str:
    if card.is_essence:
        return "as the syrup has"
    return f"{significant(way.glass.syrup.sucrose_mg / 1000)} g"


def _oil(way: Pouring, material: str) -> str:
    return next(mg_words(oil.mg_per_glass) for oil in way.oils if oil.material == material)


def _in_drink(way: Pouring, material: str) -> str:
    mg_per_litre = next(oil.mg_per_litre for oil in way.oils if oil.material == material)
    return f"{significant(mg_per_litre)} mg/L"


def _clouds(way: Pouring, material: str) -> str:
    outlook = next(oil.forecast.outlook for oil in way.oils if oil.material == material)
    return LIKELY[outlook]


def _all_oils(way: Pouring) -> str:
    return f"{significant(sum(oil.mg_per_litre for oil in way.oils))} mg/L"


def _cloud_it(way: Pouring) -> str:
    return LIKELY[way.together.outlook] if way.together else ""


def _concern(way: Pouring, substance: str) -> str:
    return next(
        mg_words(served.concern.mg_per_glass)
        for served in way.concerns
        if served.concern.substance == substance
    )


def louche_lines(card: ServingCard) -> list[str]:
    """Return on what the guess whether a drink clouds stands, an oil a line, then all together."""
    way = card.pourings[0]
    lines = [f"{oil.name} ({way.said}): {oil.forecast.because}" for oil in way.oils]
    if way.together:
        lines.append(f"All oils together ({way.said}): {way.together.because}")
    return lines


def missing_lines(card: ServingCard) -> list[str]:
    """Return what is missing from the card, a line each, with how to record it."""
    lines = [f"Missing: {what} {todo}" for what, todo in card.made.missing]
    for code, usual in card.unrecorded:
        reminder = f" By its name it usually carries {' and '.join(usual)}." if usual else ""
        lines.append(
            f"Missing: what of concern {code} carries is not recorded, so none is reckoned."
            f'{reminder} Record it: pottle material change {code} --constituents "NAME SHARE%"'
        )
    return [*lines, *(f"Missing: {line}" for line in gap_lines(card.declaration))]


def gap_lines(of: Declaration) -> tuple[str, ...]:
    """Return the facts of materials that a declaration lacks, each with how to record it."""
    return tuple(
        f"{gap.what} Record it: pottle material change {gap.material} {gap.option}"
        for gap in of.gaps
    )


def unrecorded(code: str) -> tuple[str, str]:
    """Return that the constituents of a material are not recorded, and how to record them."""
    return (
        f"what of concern {code} carries is not recorded, so none is reckoned.",
        f'Record it: pottle material change {code} --constituents "NAME 1%"',
    )


def caution_lines(card: ServingCard) -> list[str]:
    """Return the cautions, a line each."""
    return [f"Caution: {caution}" for caution in cautions_of(card)]
