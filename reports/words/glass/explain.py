"""Where the figures of a serving card come from: every step, every fact, every sum.

Guarantees: each line names the entry or the fact it stands on, so that a reader can reckon it
again. Refuses: to explain what was not reckoned.
"""

from ledger.domain.lots.steps import Act
from ledger.science.contents.composition import Contents
from ledger.science.contents.replay import Happening
from ledger.science.contents.salts import salts_of
from ledger.science.liquids.alcohol import ETHANOL_KG_PER_M3
from ledger.science.ranges import significant
from ledger.service.glass.card import Pouring, ServingCard
from reports.kit.figures import abv_words, mg_words


def explained(card: ServingCard) -> list[str]:
    """Return how a card's figures were reckoned, a line each."""
    contents = card.made.contents
    return [
        *(
            f"{card.code}, {line}"
            for happening in card.made.happenings
            for line in _step(happening)
        ),
        *card.made.assumed,
        _strength(card.code, contents),
        *(
            f"{key.material}: {mg_words(part.mass_mg)} in {_ml(contents.volume_ul)} of "
            f"{card.code}, {significant(1e6 * part.mass_mg / (contents.volume_ul or 1))} mg/L, "
            f"{significant(100 * part.volume_ul / (contents.volume_ul or 1))} % by volume."
            for key, part in sorted(contents.parts.items())
            if part.mass_mg
        ),
        *(line for way in card.pourings for line in _glass(way)),
        "An input made here is explained by pottle serving with its own code.",
    ]


def _step(happening: Happening) -> list[str]:
    step, after = happening.step, happening.after
    at = f"entry {step.entry}, {step.kind}:"
    there = f"{_ml(happening.before_ul)} before, {_ml(after.volume_ul)} after"
    if step.act is Act.INTO:
        if (
            not happening.moved.mass_mg
            and not happening.moved.unknown_ul
            and not happening.moved.notes
        ):
            return []
        return [
            f"{at} {_masses(happening.moved)} from {step.source or 'outside'}; {there}, reckoned."
        ]
    if step.act is Act.LEVEL:
        lost = f"{_masses(happening.moved)} lost" if happening.moved.mass_mg else "no mass lost"
        return [f"{at} measured; {lost}; {there}, as measured."]
    return []


def _masses(contents: Contents) -> str:
    named = (
        (contents.ethanol_mg, "ethanol"),
        (contents.water_mg, "water"),
        (contents.sucrose_mg, "sugar"),
        *((part.mass_mg, key.material) for key, part in sorted(contents.parts.items())),
        *((0.0, f"unknown liquid of {lot}") for lot in sorted(contents.unknown_ul)),
    )
    told = [
        f"{mg_words(mass)} {what}" if mass else what
        for mass, what in named
        if mass or what.startswith("unknown")
    ]
    return ", ".join(told) or "nothing that stays"


def _strength(code: str, contents: Contents) -> str:
    litre = ETHANOL_KG_PER_M3 / 1000
    return (
        f"Strength of {code}: {mg_words(contents.ethanol_mg)} of ethanol at {litre:.5f} g/mL fill "
        f"{_ml(contents.ethanol_mg / litre)} of {_ml(contents.volume_ul)}: "
        f"{abv_words(contents.abv)}."
    )


def _glass(way: Pouring) -> list[str]:
    litre = ETHANOL_KG_PER_M3 / 1000
    pure = way.glass.syrup.ethanol_mg / litre
    return [
        f"Glass ({way.said}): {_ml(way.glass.syrup_ul)} of syrup of {abv_words(way.syrup_abv)} "
        f"bring {_ml(pure)} of pure ethanol into {_ml(way.glass.volume_ul)}: "
        f"{abv_words(way.glass.abv)}.",
        *(
            f"Glass ({way.said}): {oil.name} {mg_words(oil.mg_per_glass)} in "
            f"{_ml(way.glass.volume_ul)} are {significant(oil.mg_per_litre)} mg/L."
            for oil in way.oils
        ),
        *(
            f"Glass ({way.said}): {mg_words(mass)} of {salt.name} count as "
            f"{mg_words(mass * salt.factor)} of {salt.acid}: {salt.acid_g_per_mol:.2f} g of it in "
            f"{salt.g_per_mol:.2f} g, a factor of {salt.factor:.4f} (molar masses by IUPAC's "
            "atomic weights, from memory)."
            for served in way.concerns
            for salt, mass in salts_of(served.concern.substance, way.masses_mg)
        ),
    ]


def _ml(volume_ul: float) -> str:
    return f"{significant(volume_ul / 1000, 4)} mL"
