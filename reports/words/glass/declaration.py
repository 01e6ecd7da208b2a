"""What a label declares in words: ingredients, allergens, nutrition, statements, exemptions.

Guarantees: allergens stand in capitals; figures are rounded as the place has it; an exemption is
shown with its source and never taken for granted. Refuses: to say that a label complies.
"""

from ledger.domain.masters.allergens import Place
from ledger.science.contents.declared import Line, eu_lines, us_lines
from ledger.science.contents.ingredients import Ingredient, Listed
from ledger.science.contents.nutrition import times
from ledger.science.ranges import significant
from ledger.service.glass.card import Declaration, ServingCard
from reports.words.glass.serving import Table

EXEMPTIONS = {
    Place.EU: (
        "a maker of small quantities who sells to the eater or to local shops "
        "(Regulation (EU) 1169/2011, Annex V, 19)",
        "a pack whose largest surface is below 25 cm² (Annex V, 18)",
        "a flavouring (Annex V, 10)",
    ),
    Place.US: (
        "a retailer with total sales up to $500,000 a year or food sales up to $50,000 "
        "(21 CFR 101.9(j)(1))",
        "fewer than 100 people and 100,000 units a year, with a notice (101.9(j)(18)(ii)); fewer "
        "than 10 people and 10,000 units, without (101.9(j)(18)(iv)); lost with any claim",
        "flavor extracts (101.9(j)(4))",
    ),
}
EXEMPTIONS[Place.UK] = EXEMPTIONS[Place.EU]
"""Who may leave the nutrition away, by place, each with its source; read, see label_law.csv."""


def ingredients_text(listed: Listed, head: str = "Ingredients") -> str:
    """Return a list of ingredients as a label prints it; allergens in capitals."""
    return f"{head}: " + ", ".join(_name(item) for item in listed.ingredients) + "."


def _name(item: Ingredient) -> str:
    named = _with_allergens(item)
    return named if item.percent is None else f"{named} ({significant(item.percent, 2)} %)"


def _with_allergens(item: Ingredient) -> str:
    plain = item.name.lower()
    if not item.allergens:
        return item.name
    if any(allergen in plain or plain in allergen for allergen in item.allergens):
        return item.name.upper()
    return f"{item.name} ({', '.join(name.upper() for name in item.allergens)})"


def contains_text(listed: Listed) -> str | None:
    """Return the line that the United States have a label say of its allergens, or None."""
    if listed.place is not Place.US or not listed.allergens:
        return None
    return f"Contains: {', '.join(name.capitalize() for name in listed.allergens)}."


def allergens_text(listed: Listed, head: str = "Contains") -> str:
    """Return the line that stands for a list of ingredients where it has no room.

    As the United States have it, elsewhere with the allergens in capitals; empty without any.
    """
    told = contains_text(listed)
    if told or not listed.allergens:
        return told or ""
    return f"{head}: {', '.join(name.upper() for name in listed.allergens)}."


def nutrition_text(card: ServingCard) -> str:
    """Return the nutrition in one line, as small packs may have it.

    References:
        Regulation (EU) No 1169/2011, Article 34(2); 21 CFR 101.9(j)(13) (both from memory).
    """
    head, lines = nutrition_columns(card)[0]
    return f"Nutrition, {head}: {'; '.join(f'{line.name} {line.amount}' for line in lines)}."


def label_lines(of: Declaration) -> tuple[str, ...]:
    """Return what a label says of ingredients and of what they call for."""
    contains = contains_text(of.listed)
    return (ingredients_text(of.listed), *([contains] if contains else []), *of.statements)


def declared_lines(card: ServingCard) -> list[str]:
    """Return what a label would declare, with what it stands on, in lines for people."""
    of = card.declaration
    lines = [*label_lines(of)]
    if of.listed.left_out:
        lines.append(
            f"Not listed, as processing aids that are filtered off: "
            f"{', '.join(of.listed.left_out)}."
        )
    if not of.is_place_known:
        where = f"for {of.country}" if of.country else "without the house's country"
        lines.append(
            f"No rules for lists are kept {where}: it is set as for the European Union. "
            "Say where the house is with: pottle house --country CODE"
        )
    return lines


def nutrition_table(card: ServingCard) -> Table:
    """Return the nutrition of a lot as it is declared."""
    of = card.declaration
    columns = nutrition_columns(card)
    names = [line.name for line in columns[0][1]]
    rows = [
        (name, *(lines[place].amount for _, lines in columns)) for place, name in enumerate(names)
    ]
    return Table((f"nutrition ({of.listed.place})", *(head for head, _ in columns)), tuple(rows))


def nutrition_columns(card: ServingCard) -> list[tuple[str, tuple[Line, ...]]]:
    """Return the columns of a declaration: each its head and its lines."""
    of = card.declaration
    if of.listed.place is Place.US:
        served = None if of.as_drunk is None else times(of.as_drunk, card.glass_ul / 100_000)
        told = [("in a glass", served), ("100 mL as sold", of.as_sold)]
        return [(head, us_lines(item)) for head, item in told if item]
    told = [("100 mL as sold", of.as_sold), ("100 mL as drunk", of.as_drunk)]
    return [(head, eu_lines(item)) for head, item in told if item]


def exemption_lines(place: Place) -> list[str]:
    """Return who may be exempt from declaring nutrition, a line each."""
    return [
        "Whether it must stand on the label local law decides. Exempt may be:",
        *(f"  {words};" for words in EXEMPTIONS[place][:-1]),
        f"  {EXEMPTIONS[place][-1]}.",
    ]
