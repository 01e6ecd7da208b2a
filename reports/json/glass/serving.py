"""The serving card for machines.

Guarantees: the keys are documented and only ever added to; figures are decimal strings.
"""

from typing import Any

from ledger.domain.entries import Limit
from ledger.science.contents.serving import Compared
from ledger.science.ranges import significant
from ledger.service.glass.card import ConcernServed, OilServed, Pouring, ServingCard
from reports.kit.format import scaled
from reports.words.glass.cautions import cautions_of


def serving_plain(card: ServingCard) -> dict[str, Any]:
    """Return a serving card; its own figures are those of the first way to pour."""
    first = _pouring(card.pourings[0], card)
    contents = card.made.contents
    return {
        "lot": card.code,
        "name": card.name,
        "product_kind": str(card.product_kind) if card.product_kind else None,
        "abv_lot": f"{contents.abv:.3f}",
        "sugar_g_per_l": significant(contents.sugar_g_per_l, 4),
        "glass_ml": scaled(card.glass_ul, 1000),
        "pour_parts": card.soda_parts,
        "glasses_per_bottle": card.glasses_a_bottle,
        "glasses_on_hand": card.glasses_there,
        **first,
        "pourings": [_pouring(way, card) for way in card.pourings],
        "cautions": list(cautions_of(card)),
        "assumed": list(card.made.assumed),
        "missing": [
            *({"what": what, "do": todo} for what, todo in card.made.missing),
            *(
                {"what": f"constituents of {code}", "usually": list(usual)}
                for code, usual in card.unrecorded
            ),
        ],
    }


def _pouring(way: Pouring, card: ServingCard) -> dict[str, Any]:
    sugar = None if card.is_essence else significant(way.glass.syrup.sucrose_mg / 1000, 4)
    return {
        "pour": way.said,
        "syrup_ml": significant(way.glass.syrup_ul / 1000, 5),
        "soda_ml": significant(way.glass.soda_ul / 1000, 5),
        "abv_syrup": f"{way.syrup_abv:.3f}",
        "abv_glass": f"{way.glass.abv:.3f}",
        "sugar_g": sugar,
        "oils": [_oil(oil) for oil in way.oils],
        "oils_together": _together(way),
        "concerns": [_concern(item) for item in way.concerns],
        "markers": [_compared(item) for item in way.markers],
    }


def _oil(oil: OilServed) -> dict[str, Any]:
    return {
        "material": oil.material,
        "name": oil.name,
        "mg_per_glass": significant(oil.mg_per_glass, 4),
        "mg_per_litre": significant(oil.mg_per_litre, 4),
        "clouds": str(oil.forecast.outlook),
        "because": oil.forecast.because,
    }


def _together(way: Pouring) -> dict[str, Any] | None:
    if way.together is None:
        return None
    return {
        "mg_per_litre": significant(sum(oil.mg_per_litre for oil in way.oils), 4),
        "clouds": str(way.together.outlook),
        "because": way.together.because,
    }


def _concern(served: ConcernServed) -> dict[str, Any]:
    concern = served.concern
    by_body = [
        {
            **_limit(item.limit),
            "who": item.who,
            "body_kg": item.body_kg,
            "ceiling_mg": significant(item.ceiling_mg, 4),
            "percent": None if item.percent is None else f"{item.percent:.1f}",
            "passed": item.is_passed,
        }
        for item in served.daily
    ]
    others = [_compared(item) for item in served.limits]
    return {
        "substance": concern.substance,
        "mg_per_glass": significant(concern.mg_per_glass, 4),
        "mg_per_kg_drink": significant(concern.mg_per_kg_drink, 4),
        "ceilings": [*by_body, *others],
    }


def _compared(item: Compared) -> dict[str, Any]:
    return {
        **_limit(item.limit),
        "figure": significant(item.figure, 4),
        "passed": item.is_passed,
    }


def _limit(limit: Limit) -> dict[str, Any]:
    return {
        "limit": limit.code,
        "bound": str(limit.bound),
        "value": scaled(limit.value_micro, 1_000_000),
        "unit": str(limit.unit),
        "basis": str(limit.basis),
        "place": limit.place,
        "says": limit.says,
        "citation": limit.citation,
        "known_by": str(limit.known_by),
    }
