"""The serving card of a lot: what is told of a glass of it.

Guarantees: figures as they were reckoned, not rounded, each way to pour beside the others.
"""

from collections.abc import Mapping

from msgspec import Struct

from ledger.domain.entries.choices import ProductKind
from ledger.domain.masters.gaps import Gap
from ledger.science.contents.against import Compared, Daily
from ledger.science.contents.ingredients import Listed
from ledger.science.contents.louche import Forecast
from ledger.science.contents.nutrition import Nutrition
from ledger.science.contents.serving import Concern, Glass
from ledger.science.liquids.flammable import Flammable
from ledger.service.account.contents import LotContents


class OilServed(Struct, frozen=True):
    """One oil in a glass."""

    material: str
    """Code of the material."""
    name: str
    """Its name."""
    mg_per_glass: float
    """How much of it is in a glass, in mg."""
    mg_per_litre: float
    """How much of it is in the drink, in mg/L."""
    forecast: Forecast
    """Whether it clouds the drink."""


class ConcernServed(Struct, frozen=True):
    """One substance of concern in a glass, with its ceilings."""

    concern: Concern
    """How much of it there is."""
    daily: tuple[Daily, ...]
    """Its daily ceilings by body weight."""
    limits: tuple[Compared, ...]
    """Its limits as served and as sold."""


class Pouring(Struct, frozen=True):
    """One way to pour a lot."""

    said: str
    """How, in words."""
    glass: Glass
    """The glass."""
    syrup_abv: float
    """Strength of the syrup, in % vol."""
    oils: tuple[OilServed, ...]
    """The oils in it, most first."""
    together: Forecast | None
    """Whether they cloud the drink together; None where there are not two."""
    concerns: tuple[ConcernServed, ...]
    """The substances of concern in it."""
    markers: tuple[Compared, ...]
    """Limits and markers of alcohol and sugar."""

    @property
    def masses_mg(self) -> dict[str, float]:
        """The mass in mg of each substance of concern in a glass."""
        return {served.concern.substance: served.concern.mg_per_glass for served in self.concerns}


class Declaration(Struct, frozen=True):
    """What a label declares of a lot."""

    is_place_known: bool
    """Whether rules are kept for the house's country; else it is set as for the European Union."""
    country: str | None
    """The house's country."""
    listed: Listed
    """The list of ingredients."""
    as_sold: Nutrition
    """Nutrition of 100 mL as it is sold."""
    as_drunk: Nutrition | None
    """Nutrition of 100 mL of the drink; None where the syrup is not known."""
    statements: tuple[str, ...]
    """Statements that the contents call for, a sentence each."""
    gaps: tuple[Gap, ...]
    """Facts of materials that are missing."""


class ServingCard(Struct, frozen=True):
    """What a glass of a lot delivers."""

    code: str
    """The lot's code."""
    name: str
    """What it is."""
    product_kind: ProductKind | None
    """What kind of thing it is."""
    made: LotContents
    """What it contains."""
    glass_ul: int
    """Size of the glass."""
    soda_parts: int
    """Parts of soda water to one."""
    pourings: tuple[Pouring, ...]
    """Ways to pour it: one for a syrup, by the litre and the gallon for an essence."""
    is_essence: bool
    """Whether it is dosed into a syrup first."""
    glasses_a_bottle: int | None
    """Glasses in a bottle, for a packed lot."""
    glasses_there: int
    """Glasses in what is on hand."""
    unrecorded: tuple[tuple[str, tuple[str, ...]], ...]
    """Oils and preservatives whose constituents are not recorded, with what such usually carry."""
    swig_mg: Mapping[str, float]
    """Substances of concern in a teaspoon of an essence, in mg."""
    bodies: tuple[tuple[str, int], ...]
    """Whom the daily ceilings are told for, with body weights in kg."""
    declaration: Declaration
    """What a label declares of it."""
    flammable: Flammable | None
    """What an essence is as a flammable liquid; None for what is poured as it is."""
    claim: str | None
    """What the label claims of the strength by the formula, such as the code of a limit."""
