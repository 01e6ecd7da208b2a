"""What is known beforehand: materials, formulas and limits.

Guarantees: the latest entry of a material's or a limit's code counts; a formula's version never
changes.
"""

from datetime import date
from typing import ClassVar

from msgspec import Struct

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries.choices import (
    Bound,
    FoodGrade,
    Grade,
    HowObtained,
    KnownBy,
    LimitBasis,
    LimitUnit,
    LookedAt,
    MaterialKind,
    MaterialRef,
    PersonRef,
    ProductKind,
    RestFor,
    Signed,
)
from ledger.domain.entries.spine import Facts


class Constituent(Struct, frozen=True):
    """A constituent of concern in a material."""

    substance: str
    """Its common name, such as methyl salicylate."""
    fraction_ppm: int
    """Mass fraction in parts per million."""


class NameIn(Struct, frozen=True):
    """What a material is called in a language."""

    language: str
    """ISO 639-1 code of the language, two letters."""
    name: str
    """Its name for an ingredient list in that language."""


class Material(Facts, frozen=True):
    """A thing that is bought and used."""

    KIND: ClassVar[str] = "material"

    code: str
    """Short name at the prompt, lower case."""
    name: str
    """Name for people."""
    sort: MaterialKind
    """What it is to the trade."""
    how_obtained: HowObtained | None = None
    """How it was obtained."""
    density_mg_per_l: int | None = None
    """Density in mg/L (0.845 g/mL is 845000)."""
    density_temp_mdegc: Signed | None = None
    """Temperature of that density in thousandths of a degree Celsius."""
    abv_mpct: int | None = None
    """Strength in thousandths of a per cent by volume at 20 °C."""
    food_grade: FoodGrade = FoodGrade.UNKNOWN
    """What its papers say in general."""
    allergens: str | None = None
    """Allergens it carries."""
    ingredient_name: str | None = None
    """Its name for an ingredient list."""
    caution: str | None = None
    """What to be careful of, printed where it is used."""
    constituents: tuple[Constituent, ...] = ()
    """Constituents of concern."""
    additive: str | None = None
    """Its class and its number or name as an additive, such as preservative E 211."""
    nutrition: str | None = None
    """What 100 g of it hold, in g, in the order of `ledger.domain.masters.nutrients`."""
    names: tuple[NameIn, ...] = ()
    """Its names for ingredient lists in other languages, by language."""


class FormulaLine(Struct, frozen=True):
    """What a formula calls for, bought or made here, for its basis volume."""

    amount: Quantity
    """How much for the basis."""
    material: MaterialRef | None = None
    """Code of the material, of what is bought."""
    tolerance_mpct: int | None = None
    """How far off it may be, in thousandths of a per cent either way."""
    overage_mpct: int | None = None
    """What is added on purpose beyond the amount, in thousandths of a per cent."""
    formula: str | None = None
    """Code of the formula, of what is made here; a line has either this or a material."""


class FormulaStep(Struct, frozen=True):
    """One step of a formula with its limits."""

    verb: str
    """The bench act: add, rest, filter, look and so on."""
    words: str | None = None
    """What to do, for people."""
    minutes_min: int | None = None
    """Shortest time in minutes."""
    minutes_max: int | None = None
    """Longest time in minutes."""
    temp_min_mdegc: Signed | None = None
    """Lowest temperature in thousandths of a degree Celsius."""
    temp_max_mdegc: Signed | None = None
    """Highest temperature in thousandths of a degree Celsius."""
    pore_max_nm: int | None = None
    """Coarsest medium in nanometres."""
    passes_min: int | None = None
    """Fewest passes."""
    rest_for: RestFor | None = None
    """What a rest is for."""
    precoat_min: Quantity | None = None
    """Least precoat laid on the medium, by mass."""
    looked_at: LookedAt | None = None
    """What is to be looked at."""
    dilution: str | None = None
    """The dilution to look at, such as 1:7."""
    worst: Grade | None = None
    """The worst grade that passes."""
    age_minutes: int | None = None
    """Age of the sample to be looked at, in minutes since the batch was finished."""


class Keeping(Struct, frozen=True):
    """How long a product keeps, by how it is stored and how strong its base syrup is."""

    storage: str
    """Where it is kept, in words: cool and dark, refrigerated."""
    days: int
    """Days from finishing to best before, unopened."""
    opened_days: int | None = None
    """Days within which to use it once opened."""
    brix_min_mpct: int | None = None
    """The least reading of the base syrup for which this holds, in thousandths of a °Brix."""


class Formula(Facts, frozen=True):
    """A version of a master formula."""

    KIND: ClassVar[str] = "formula"

    code: str
    """Short name at the prompt, lower case."""
    version: int
    """1 for the first."""
    product: str
    """Name of what it makes."""
    product_kind: ProductKind
    """What kind of thing it makes."""
    basis: Quantity
    """The volume its amounts are for."""
    wanted_clarity: Grade | None = None
    """How it should look; a gum emulsion is meant to be cloudy."""
    pour_parts: int | None = None
    """Parts of soda water to one part, for a syrup."""
    best_before_days: int | None = None
    """Days from finishing to best before."""
    yield_min_mpct: int | None = None
    """Yield below which to investigate, in thousandths of a per cent of the basis."""
    yield_max_mpct: int | None = None
    """Yield above which to investigate."""
    label_text: str | None = None
    """What the label says besides."""
    caution: str | None = None
    """What the label warns of."""
    prepared_by: PersonRef | None = None
    """Who prepared the version."""
    checked_by: PersonRef | None = None
    """Who checked it."""
    valid_from: date | None = None
    """First day it may be used."""
    lines: tuple[FormulaLine, ...] = ()
    """Its materials."""
    steps: tuple[FormulaStep, ...] = ()
    """Its steps, in order."""
    abv_min_mpct: int | None = None
    """Least strength it is sold at, in thousandths of a per cent by volume."""
    abv_max_mpct: int | None = None
    """Greatest strength it is sold at."""
    claim: str | None = None
    """What its label claims of its strength, such as alcohol-free."""
    keeping: tuple[Keeping, ...] = ()
    """How long it keeps; the first row whose syrup reading is reached counts."""
    dose: Quantity | None = None
    """How much of an essence flavours a syrup."""
    dose_into: Quantity | None = None
    """How much simple syrup that dose goes into."""
    packaging: str | None = None
    """What it is filled into: bottle, closure and label, in words."""


class Withdrawal(Facts, frozen=True):
    """A version of a formula is no longer to be followed."""

    KIND: ClassVar[str] = "withdrawal"

    code: str
    """Code of the formula."""
    version: int
    """The version withdrawn."""


class Limit(Facts, frozen=True):
    """A limit or a marker of some place, with its source; the latest entry of a code counts."""

    KIND: ClassVar[str] = "limit"

    code: str
    """Short name at the prompt, lower case."""
    substance: str
    """What is limited: a substance by its common name, or alcohol, sugar."""
    bound: Bound
    """Which side of the value is the matter."""
    value_micro: int
    """The value in millionths of its unit."""
    unit: LimitUnit
    """Its unit."""
    basis: LimitBasis
    """What it counts in."""
    place: str
    """Where it holds: a country's code, EU, or everywhere."""
    citation: str
    """Where it is written."""
    known_by: KnownBy
    """Whether the value was read there or recalled."""
    says: str | None = None
    """What it means in words: the drink is sold as alcoholic, the strength must be stated."""
    since: date | None = None
    """From which day it holds."""
    until: date | None = None
    """The last day it holds."""
