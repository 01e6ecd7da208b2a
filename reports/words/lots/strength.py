"""What a lot contains, in the short words of a list, a record and a label.

Guarantees: the same figure reads the same everywhere; what is not whole is said to be at least.
Refuses: to show a strength of a lot of which nothing is known.
"""

from decimal import ROUND_HALF_UP, Decimal

from ledger.science.contents.composition import Contents
from ledger.science.ranges import significant
from ledger.service.glass.card import ServingCard
from reports.kit.figures import abv_words
from reports.kit.format import poured

LEAST_ON_LABEL = 0.05
"""Strength in % vol below which a label says none (the least of the markers that come with
pottle)."""


def strength_words(card: ServingCard) -> str:
    """Return the strength of a lot, with a word when a fact is missing."""
    words = f"{abv_words(card.made.contents.abv)} at 20 °C"
    return f"at least {words}, a fact is missing" if card.made.missing else words


def label_strength(card: ServingCard, told: str = "alc. {abv} % vol") -> str | None:
    """Return the strength for a label, with one decimal, or None when there is none to say.

    Args:
        card: What is in it.
        told: The words around it.

    References:
        Regulation (EU) No 1169/2011, Annex XII: at most one decimal, then "% vol" (from memory).
    """
    abv = card.made.contents.abv
    if abv < LEAST_ON_LABEL or card.made.missing:
        return None
    # By repr, the digits that are meant: the float itself lies a hair off them.
    tenth = Decimal(repr(abv)).quantize(Decimal("0.1"), ROUND_HALF_UP)
    return told.format(abv=max(tenth, Decimal("0.1")))


def content_facts(card: ServingCard) -> tuple[tuple[str, str], ...]:
    """Return what a lot contains and a glass delivers: label and value."""
    contents = card.made.contents
    first = card.pourings[0]
    sugar = f", {significant(first.glass.syrup.sucrose_mg / 1000)} g sugar"
    glass = f"{abv_words(first.glass.abv)}{'' if card.is_essence else sugar}"
    how = f" ({first.said})" if card.is_essence else f" ({poured(card.soda_parts)})"
    lines = [
        ("Strength", strength_words(card)),
        ("Sugar", _sugar(contents)),
        *(("Oil", words) for words in oil_words(card)),
        ("In a glass", f"{glass}, {card.glass_ul // 1000} mL{how}"),
    ]
    return tuple((label, value) for label, value in lines if value)


def _sugar(contents: Contents) -> str:
    if not contents.sucrose_mg:
        return ""
    percent = f"{contents.sugar_percent_mass:.1f} % by weight"
    return f"{significant(contents.sugar_g_per_l)} g/L, {percent}"


def oil_words(card: ServingCard) -> tuple[str, ...]:
    """Return each oil with its share of the lot, most first."""
    contents = card.made.contents
    names = {oil.material: oil.name for oil in card.pourings[0].oils}
    parts = sorted(contents.oils().items(), key=lambda item: -item[1].mass_mg)
    volume = contents.volume_ul or 1
    return tuple(
        f"{names.get(code, code)} {significant(1000 * part.mass_mg / volume)} g/L, "
        f"{significant(100 * part.volume_ul / volume)} % by volume"
        for code, part in parts
    )
