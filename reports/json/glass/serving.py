"""The serving card, for machines: figures are decimal strings."""

from msgspec.structs import asdict

from ledger.domain.entries.choices import ProductKind
from ledger.domain.masters.allergens import Place
from ledger.science.contents.against import Compared, Daily
from ledger.science.contents.louche import Forecast, Outlook
from ledger.science.ranges import significant
from ledger.service.glass.card import ConcernServed, OilServed, Pouring, ServingCard
from reports.json.glass.declaration import (
    IngredientTold,
    NutritionTold,
    ingredients_told,
    nutrition_told,
)
from reports.json.glass.flammable import FlammableTold, flammable_told
from reports.json.glass.held import LimitHeld, limits_held
from reports.json.kit.answer import Answer, Code, Figure
from reports.json.masters.limits import LimitTold, limit_told
from reports.kit.amounts import decimal_amount
from reports.words.glass.cautions import cautions_of
from reports.words.glass.explain import explained
from reports.words.glass.serving import unrecorded


class CloudingTold(Answer, frozen=True):
    """Whether oils cloud a drink."""

    mg_per_litre: Figure
    """How much of them is in the drink."""
    clouds: Outlook
    """What is to be expected."""
    because: str
    """On what that stands."""


class OilTold(CloudingTold, frozen=True):
    """One oil in a glass, and whether it clouds the drink."""

    material: str
    """Code of the material."""
    name: str
    """Its name."""
    mg_per_glass: Figure
    """How much of it is in a glass."""


class CeilingTold(LimitTold, frozen=True):
    """A limit with the figure beside it."""

    figure: Figure | None
    """What it is, in the limit's unit; null for a daily ceiling."""
    who: str | None
    """For whom a daily ceiling is told: an adult, a child."""
    body_kg: int | None
    """Their body weight."""
    ceiling_mg: Figure | None
    """The most for them a day."""
    percent: Figure | None
    """How much of that a glass takes; null where nothing at all is allowed."""
    passed: bool
    """Whether the figure is on the side of the limit that is the matter."""


class ConcernTold(Answer, frozen=True):
    """A substance of concern in a glass."""

    substance: str
    """Its common name."""
    mg_per_glass: Figure
    """How much of it is in a glass."""
    mg_per_kg_drink: Figure
    """Its share of the drink."""
    ceilings: tuple[CeilingTold, ...]
    """Its limits, those a day first."""


class PouringTold(Answer, frozen=True):
    """One way to pour a lot, and what a glass of it delivers."""

    pour: str
    """How, in words."""
    syrup_ml: Figure
    """Syrup in the glass."""
    soda_ml: Figure
    """Soda water in the glass."""
    abv_syrup: Figure
    """Strength of the syrup, in % vol at 20 °C."""
    abv_glass: Figure
    """Strength of the drink, in % vol at 20 °C."""
    sugar_g: Figure | None
    """Sugar in the glass; null for an essence, where it is the syrup's."""
    oils: tuple[OilTold, ...]
    """The oils in it, most first."""
    oils_together: CloudingTold | None
    """All of them together; null where there are not two."""
    concerns: tuple[ConcernTold, ...]
    """The substances of concern in it."""
    markers: tuple[CeilingTold, ...]
    """Limits and markers of alcohol and sugar."""


class FactMissing(Answer, frozen=True):
    """A fact that is not in the book, so that nothing is reckoned of it."""

    what: str
    """What is missing."""
    what_to_do: str
    """How to record it."""
    usually: tuple[str, ...]
    """What such a material usually carries."""


class ServingAnswer(PouringTold, frozen=True):
    """What a glass of a lot delivers, poured the first way; and the other ways."""

    code: Code
    """Code of the lot."""
    name: str
    """What it is."""
    product_kind: ProductKind | None
    """What kind of thing it is."""
    abv_lot: Figure
    """Its strength in % vol at 20 °C."""
    sugar_g_per_l: Figure
    """Sugar in a litre of it."""
    glass_ml: Figure
    """Size of the glass."""
    pour_parts: int
    """Parts of soda water to one."""
    glasses_per_bottle: int | None
    """Glasses in a bottle, for a packed lot."""
    glasses_on_hand: int
    """Glasses in what is on hand."""
    pourings: tuple[PouringTold, ...]
    """Ways to pour it: one for a syrup, by the litre and the gallon for an essence."""
    place: Place
    """Whose rules the list of ingredients and the nutrition follow."""
    is_place_known: bool
    """Whether rules are kept for the house's country; else they are set as for the EU."""
    ingredients: tuple[IngredientTold, ...]
    """The list of ingredients, most first."""
    allergens: tuple[str, ...]
    """All allergens, in the order of the list."""
    processing_aids: tuple[str, ...]
    """Codes of materials that were filtered off again, and stand on no list."""
    nutrition: NutritionTold
    """Nutrition as sold and as drunk."""
    statements: tuple[str, ...]
    """Statements that the contents call for on a label, a sentence each."""
    limits: tuple[LimitHeld, ...]
    """Every figure that stands beside a limit, in all ways to pour, with doubt and verdict."""
    flammable: FlammableTold | None
    """What an essence is as a flammable liquid; null for a syrup, and where it has no class."""
    cautions: tuple[str, ...]
    """What to mind, the gravest first, a sentence each."""
    assumed: tuple[str, ...]
    """What was assumed, a sentence each."""
    missing: tuple[FactMissing, ...]
    """What is missing."""
    explained: tuple[str, ...] | None
    """Where every figure comes from, a line each; null unless that was asked for."""


def serving_answer(card: ServingCard, *, explain: bool = False) -> ServingAnswer:
    """Return a serving card; its own figures are those of the first way to pour."""
    ways = tuple(_pouring(way, card) for way in card.pourings)
    contents, declared = card.made.contents, card.declaration
    return ServingAnswer(
        **asdict(ways[0]),
        code=card.code,
        name=card.name,
        product_kind=card.product_kind,
        abv_lot=f"{contents.abv:.3f}",
        sugar_g_per_l=significant(contents.sugar_g_per_l, 4),
        glass_ml=decimal_amount(card.glass_ul),
        pour_parts=card.soda_parts,
        glasses_per_bottle=card.glasses_a_bottle,
        glasses_on_hand=card.glasses_there,
        pourings=ways,
        place=declared.listed.place,
        is_place_known=declared.is_place_known,
        ingredients=ingredients_told(declared),
        allergens=declared.listed.allergens,
        processing_aids=declared.listed.left_out,
        nutrition=nutrition_told(declared),
        statements=declared.statements,
        limits=tuple(item for way in card.pourings for item in limits_held(way)),
        flammable=flammable_told(card),
        cautions=cautions_of(card),
        assumed=card.made.assumed,
        missing=_missing(card),
        explained=tuple(explained(card)) if explain else None,
    )


def _missing(card: ServingCard) -> tuple[FactMissing, ...]:
    return (
        *(FactMissing(what, todo, ()) for what, todo in card.made.missing),
        *(FactMissing(*unrecorded(code), usual) for code, usual in card.unrecorded),
        *(
            FactMissing(
                gap.what, f"Record it: pottle material change {gap.material} {gap.option}", ()
            )
            for gap in card.declaration.gaps
        ),
    )


def _pouring(way: Pouring, card: ServingCard) -> PouringTold:
    sugar = None if card.is_essence else significant(way.glass.syrup.sucrose_mg / 1000, 4)
    together = way.together
    return PouringTold(
        pour=way.said,
        syrup_ml=significant(way.glass.syrup_ul / 1000, 5),
        soda_ml=significant(way.glass.soda_ul / 1000, 5),
        abv_syrup=f"{way.syrup_abv:.3f}",
        abv_glass=f"{way.glass.abv:.3f}",
        sugar_g=sugar,
        oils=tuple(map(_oil, way.oils)),
        oils_together=_clouding(sum(oil.mg_per_litre for oil in way.oils), together)
        if together
        else None,
        concerns=tuple(map(_concern, way.concerns)),
        markers=tuple(map(_compared, way.markers)),
    )


def _clouding(mg_per_litre: float, found: Forecast) -> CloudingTold:
    return CloudingTold(significant(mg_per_litre, 4), found.outlook, found.because)


def _oil(oil: OilServed) -> OilTold:
    return OilTold(
        **asdict(_clouding(oil.mg_per_litre, oil.forecast)),
        material=oil.material,
        name=oil.name,
        mg_per_glass=significant(oil.mg_per_glass, 4),
    )


def _concern(served: ConcernServed) -> ConcernTold:
    concern = served.concern
    return ConcernTold(
        substance=concern.substance,
        mg_per_glass=significant(concern.mg_per_glass, 4),
        mg_per_kg_drink=significant(concern.mg_per_kg_drink, 4),
        ceilings=(*map(_daily, served.daily), *map(_compared, served.limits)),
    )


def _daily(item: Daily) -> CeilingTold:
    return CeilingTold(
        **asdict(limit_told(item.limit)),
        figure=None,
        who=item.who,
        body_kg=item.body_kg,
        ceiling_mg=significant(item.ceiling_mg, 4),
        percent=None if item.percent is None else f"{item.percent:.1f}",
        passed=item.is_passed,
    )


def _compared(item: Compared) -> CeilingTold:
    return CeilingTold(
        **asdict(limit_told(item.limit)),
        figure=significant(item.figure, 4),
        who=None,
        body_kg=None,
        ceiling_mg=None,
        percent=None,
        passed=item.is_passed,
    )
