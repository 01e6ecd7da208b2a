"""Cautions that follow from what is in a lot, in the usual words of the trade.

Guarantees: a caution names what it stands on; all defer to local law and licensed practice.
Refuses: to advise on health; it says when to ask somebody who may.
"""

from ledger.service.serving import ServingCard
from reports.build.figures import abv_words, mg_words

FLAMMABLE_ABV = 24.0
"""Strength in % vol from which ethanol and water count as a flammable liquid: flash point about
60 °C or below (GHS, chapter 2.6, from memory; closed-cup table of safety_limits, 20 % vol: 36 °C).
"""
DEFER = "Local law and licensed practice decide; these figures help to ask the right question."
"""What stands under every card."""


def cautions_of(card: ServingCard) -> tuple[str, ...]:
    """Return the cautions that go with a card, the gravest first."""
    told = [*_poison(card), *_over_ceiling(card), *_flammable(card), *_alcohol(card)]
    return (*dict.fromkeys(told), DEFER)


def _poison(card: ServingCard) -> list[str]:
    mg = card.swig_mg.get("methyl salicylate", 0.0)
    served = any(
        item.concern.substance == "methyl salicylate" for item in card.pourings[0].concerns
    )
    if not served:
        return []
    told = [
        "Holds methyl salicylate: not for people allergic to aspirin or taking blood thinners, nor "
        "for children without advice."
    ]
    if mg:
        told.insert(
            0,
            f"A teaspoon (5 mL) of this essence holds {mg_words(mg)} of methyl salicylate. Keep it "
            "locked away from children; if somebody drank it, call a poison centre at once.",
        )
    return told


def _over_ceiling(card: ServingCard) -> list[str]:
    passed: dict[tuple[str, str], list[str]] = {}
    for way in card.pourings:
        for served in way.concerns:
            for item in served.daily:
                if item.is_passed:
                    whom = f"{item.who} of {item.body_kg} kg"
                    passed.setdefault((served.concern.substance, whom), []).append(way.said)
    return [
        f"One glass passes the daily ceiling of {substance} for the {whom} ({', '.join(ways)})."
        for (substance, whom), ways in passed.items()
    ]


def _flammable(card: ServingCard) -> list[str]:
    if card.made.contents.abv < FLAMMABLE_ABV:
        return []
    return [
        f"At {abv_words(card.made.contents.abv)} it is highly flammable, and its vapour catches "
        "fire from a flame or spark some way off: air the room, keep from flames and children."
    ]


def _alcohol(card: ServingCard) -> list[str]:
    strongest = max(way.glass.abv for way in card.pourings)
    if strongest < 0.05:
        return []
    return [
        f"A glass holds alcohol ({abv_words(strongest)} at most): say so where somebody must or "
        "would avoid it."
    ]
