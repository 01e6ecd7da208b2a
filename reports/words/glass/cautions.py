"""Cautions that follow from what is in a lot, in the usual words of the trade.

Guarantees: a caution names what it stands on; all defer to local law and licensed practice.
Refuses: to advise on health; it says when to ask somebody who may.
"""

import re
from collections.abc import Iterable

from ledger.domain.amounts.scaled import with_article
from ledger.domain.entries import Formula, Material
from ledger.science.contents.against import Daily
from ledger.science.doubt.conformity import Verdict
from ledger.science.liquids.flammable import DEFER as CARRIER_DECIDES
from ledger.science.liquids.flash import OVER_C
from ledger.science.ranges import figure
from ledger.service.glass.card import ServingCard
from reports.kit.figures import abv_words, mg_words

FLAMMABLE_ABV = 24.0
"""Strength in % vol from which ethanol and water are told to be highly flammable, though what is
weaker may have a class by its flash point: carriage begins above it (ADR, special provision 144).
"""
HANDLE_WITH_CARE = (
    "Flavouring in strong alcohol: highly flammable, keep from flames and from children, "
    "dilute before use."
)
"""The usual caution on an essence (usual practice of the trade; local law decides)."""
DEFER = "Local law and licensed practice decide; these figures help to ask the right question."
"""What stands under every card."""


def cautions_of(card: ServingCard) -> tuple[str, ...]:
    """Return the cautions that go with a card, the gravest first."""
    told = [*_poison(card), *_over_ceiling(card), *_benzene(card), *_flammable(card)]
    told += [*flammable_lines(card), *_alcohol(card)]
    return (*told, DEFER)


def record_cautions(card: ServingCard, materials: Iterable[Material]) -> tuple[str, ...]:
    """Return the cautions for a batch record: those of the lot, then of its materials neat."""
    *of_lot, defer = cautions_of(card)
    neat = [neat_caution(material) for material in materials if material.caution]
    return (*of_lot, *dict.fromkeys(neat), defer)


def own_caution(formula: Formula | None) -> tuple[str, ...]:
    """Return the caution that a formula has its papers say, in the maker's own words."""
    return (formula.caution,) if formula and formula.caution else ()


def neat_caution(material: Material) -> str:
    """Return the caution of a material, said to be of the material neat."""
    # What is true of an oil is false of a syrup that holds a drop of it.
    return f"Made with {material.name}. Caution for it neat: {material.caution}"


def label_cautions(card: ServingCard, materials: Iterable[Material]) -> tuple[str, ...]:
    """Return the cautions for a label: those of the lot as it was made, short.

    What is said of a material neat stands on a label only where nothing better is known: when the
    constituents of concern of the material are not recorded.
    """
    told = [HANDLE_WITH_CARE] if card.made.contents.abv >= FLAMMABLE_ABV else []
    told += [*_poison(card), *_over_ceiling(card)]
    told += [
        neat_caution(material)
        for material in materials
        if material.caution and not material.constituents
    ]
    return tuple(dict.fromkeys(told))


def _poison(card: ServingCard) -> list[str]:
    mg = card.swig_mg.get("methyl salicylate", 0.0)
    served = any(
        each.concern.substance == "methyl salicylate" for each in card.pourings[0].concerns
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
    passed: dict[tuple[str, str, str], list[str]] = {}
    for way in card.pourings:
        for served in way.concerns:
            for ceiling in served.daily:
                if word := _passes(ceiling):
                    whom = f"{with_article(ceiling.who)} of {ceiling.body_kg} kg"
                    passed.setdefault((word, served.concern.substance, whom), []).append(way.said)
    return [
        f"One glass {word} the daily ceiling of {substance} for {whom}"
        f"{_said(ways) if card.is_essence else ''}."
        for (word, substance, whom), ways in passed.items()
    ]


def _benzene(card: ServingCard) -> list[str]:
    """Return what is said of a benzoate beside ascorbic acid, or nothing.

    References:
        FDA/CFSAN, Data on benzene in soft drinks, 19 May 2006, updated 2007 (read, see limits.csv).
    """
    names = [item.name for item in card.declaration.listed.ingredients]
    names += [each.concern.substance for each in card.pourings[0].concerns]
    if not all(any(sort.search(name) for name in names) for sort in BENZENE_OF):
        return []
    return [
        "Holds a benzoate and ascorbic acid, which may form benzene in the bottle, the more "
        "in heat and light. Leave one of them out, or ask a laboratory; for soft drinks the "
        "United States hold 5 µg/L of drinking water as a yardstick, and the European Union 1 µg/L."
    ]


BENZENE_OF = (
    re.compile(r"benzo(ic|ate)|\bE 21[0-3]\b", re.IGNORECASE),
    re.compile(r"ascorb(ic|ate|yl)|vitamin c\b|\bE 3(0[0-4]|1[56])\b", re.IGNORECASE),
)
"""How a list or a certificate names a benzoate, and ascorbic or erythorbic acid."""


def _passes(ceiling: Daily) -> str | None:
    """Return how a glass stands to a daily ceiling in a word; None where it is surely below."""
    if ceiling.verdict is Verdict.UNDECIDED:
        return "may pass"
    return "passes" if ceiling.is_passed else None


def _said(ways: list[str]) -> str:
    return f" ({', '.join(ways)})"


def _flammable(card: ServingCard) -> list[str]:
    if card.made.contents.abv < FLAMMABLE_ABV:
        return []
    return [
        f"At {abv_words(card.made.contents.abv)} it is highly flammable, and its vapour catches "
        "fire from a flame or spark some way off: air the room, keep from flames and children.",
    ]


def flammable_lines(card: ServingCard) -> list[str]:
    """Return what an essence is as a flammable liquid, and whose word counts."""
    found = card.flammable
    if found is None:
        return []
    lines = [
        f"Flash point about {figure(found.flash_c, 0)} °C, reckoned for ethanol and water, closed "
        f"cup; it may lie {figure(OVER_C, 1)} °C lower: {found.statement} ({found.signal}, "
        f"category {found.category} of GHS and CLP), from which food for the eater may be exempt."
    ]
    if found.is_carried:
        lines.append(
            f"Its carriage is that of {found.un_number}, class 3, packing group "
            f"{found.packing_group}; as limited quantity in bottles up to "
            f"{figure(found.limited_inner_l)} L by ADR and {figure(found.limited_us_l)} L in the "
            f"United States. {CARRIER_DECIDES}"
        )
    return lines


def _alcohol(card: ServingCard) -> list[str]:
    strongest = max(way.glass.abv for way in card.pourings)
    if strongest < 0.05:
        return []
    return [
        f"A glass holds alcohol ({abv_words(strongest)} at most): say so where somebody must or "
        "would avoid it."
    ]
