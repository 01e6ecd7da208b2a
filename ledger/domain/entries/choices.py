"""The closed lists of words that entries use, and the references between them.

Guarantees: one word per idea, the same in commands, tables and papers. Refuses: free text where
the book must be able to compare.
"""

from enum import StrEnum
from typing import Annotated

from ledger.domain.amounts.quantity import Quantity

LotRef = Annotated[str, "lot"]
"""The code of a lot that must be in the book."""
PersonRef = Annotated[str, "person"]
"""The initials of a person who must be in the book."""
MaterialRef = Annotated[str, "material"]
"""The code of a material that must be in the book."""
SeqRef = Annotated[int, "entry"]
"""The number of an entry that must be in the book."""
Signed = Annotated[int, "signed"]
"""A whole number that may be below zero."""
Beside = Annotated[str, "beside"]
"""Words that stand beside the hashed text of an entry that has a commitment to them."""
Given = Annotated[str, "given"]
"""Words that the book gives, and nobody types."""
GivenNumber = Annotated[int, "given"]
"""A number that the book gives, and nobody types."""
QuantityOrNothing = Annotated[Quantity, "or nothing"]
"""An amount that may be nothing."""


class Precision(StrEnum):
    """How exactly a time is known."""

    EXACT = "exact"
    ABOUT = "about"
    DAY = "day"


class Origin(StrEnum):
    """Where an entry came from."""

    BENCH = "bench"
    PAPER = "paper"
    INSTRUMENT = "instrument"
    MEMORY = "memory"


class MaterialKind(StrEnum):
    """What a material is to the trade."""

    OIL = "oil"
    ETHANOL = "ethanol"
    CLARIFIER = "clarifier"
    SUGAR = "sugar"
    WATER = "water"
    ACID = "acid"
    PRESERVATIVE = "preservative"
    GUM = "gum"
    COLOUR = "colour"
    BOTTLE = "bottle"
    CLOSURE = "closure"
    LABEL = "label"
    FILTER = "filter"
    OTHER = "other"


class HowObtained(StrEnum):
    """How a material, above all an oil, was obtained."""

    EXPRESSED = "expressed"
    DISTILLED = "distilled"
    FOLDED = "folded"
    TERPENELESS = "terpeneless"
    EXTRACTED = "extracted"
    SYNTHETIC = "synthetic"


class FoodGrade(StrEnum):
    """Whether a material is said by its papers to be fit for food."""

    YES = "yes"
    NO = "no"
    UNKNOWN = "unknown"


class ProductKind(StrEnum):
    """What a making run makes."""

    ESSENCE = "essence"
    WASHED_ESSENCE = "washed-essence"
    GUM_EMULSION = "gum-emulsion"
    BLEND = "blend"
    MACERATE = "macerate"
    BASE_SYRUP = "base-syrup"
    SYRUP = "syrup"
    REWORK = "rework"


class LotType(StrEnum):
    """How a lot came into the book."""

    RECEIVED = "received"
    MADE = "made"
    RINSE = "rinse"
    PACKED = "packed"


class Purpose(StrEnum):
    """What a batch is made for."""

    SALE = "sale"
    TRIAL = "trial"


class AddedAs(StrEnum):
    """Why a lot goes into another."""

    INGREDIENT = "ingredient"
    TOP_UP = "top-up"
    REWORK = "rework"
    RINSE_LIQUOR = "rinse-liquor"
    OLD_CAKE = "old-cake"


class RestFor(StrEnum):
    """What a rest is for."""

    MACERATE = "macerate"
    SETTLE = "settle"
    CHILL = "chill"
    WARM = "warm"


class Cake(StrEnum):
    """Which filter cake a pass ran through."""

    FRESH = "fresh"
    SAME = "same"


class Medium(StrEnum):
    """What a filter is made of, for passes entered now; older ones have any word."""

    PAPER = "paper"
    FRIT = "frit"
    MEMBRANE = "membrane"
    PAD = "pad"
    CLOTH = "cloth"
    COTTON = "cotton"
    SIEVE = "sieve"
    UNSAID = "unsaid"


class VacuumReference(StrEnum):
    """What a vacuum figure counts from."""

    BELOW_ATMOSPHERE = "below-atmosphere"
    ABSOLUTE = "absolute"


class RinseTo(StrEnum):
    """Where rinse liquor went."""

    BATCH = "batch"
    APART = "apart"
    WASTE = "waste"


class Grade(StrEnum):
    """How clear a liquid looked, best to worst."""

    BRIGHT = "bright"
    CLEAR = "clear"
    HAZY = "hazy"
    OPALESCENT = "opalescent"
    CLOUDY = "cloudy"
    MILKY = "milky"


class LookedAt(StrEnum):
    """What a look was taken of: clear in the bottle and clear in the glass differ."""

    NEAT = "neat"
    IN_SYRUP = "in-syrup"
    AS_POURED = "as-poured"


class Measured(StrEnum):
    """What an instrument read."""

    BRIX = "brix"
    ABV = "abv"
    DENSITY = "density"
    PH = "ph"
    TEMPERATURE = "temperature"
    WEIGHT = "weight"


class MoveAs(StrEnum):
    """Where goods went, or that they came back."""

    SALE = "sale"
    SAMPLE = "sample"
    TASTING = "tasting"
    ON_RETURN = "on-return"
    RETURNED = "returned"
    BREAKAGE = "breakage"
    RETAINED = "retained"
    DESTROYED = "destroyed"


class Verdict(StrEnum):
    """What was decided about a lot."""

    HOLD = "hold"
    RELEASE = "release"
    REJECT = "reject"
    REWORK = "rework"
    RECALL = "recall"


class Place(StrEnum):
    """The outside of the book: where material comes from or goes to when it is no lot."""

    SUPPLIER = "supplier"
    FILLING = "filling"
    WASTE = "waste"
    SALE = "sale"
    SAMPLE = "sample"
    TASTING = "tasting"
    ON_RETURN = "on-return"
    RETURNED = "returned"
    BREAKAGE = "breakage"
    RETAINED = "retained"
    DESTROYED = "destroyed"


class Across(StrEnum):
    """A word printed across a label that is not for a bottle that leaves."""

    HOLD = "HOLD"
    SPECIMEN = "SPECIMEN"


class LimitBasis(StrEnum):
    """What a limit or a marker counts in."""

    PER_DAY = "a-day"
    IN_DRINK = "as-served"
    IN_PRODUCT = "as-sold"


class LimitUnit(StrEnum):
    """The unit of a limit; a per cent is of volume for alcohol."""

    MG_PER_KG_BODY = "mg/kg body weight"
    MG_PER_KG = "mg/kg"
    MG_PER_L = "mg/L"
    PERCENT_VOL = "% vol"
    PERCENT_MASS = "% mass"
    G_PER_100ML = "g/100mL"


class Bound(StrEnum):
    """Which side of a limit is the matter."""

    AT_MOST = "at-most"
    LESS_THAN = "less-than"
    FROM = "from"
    ABOVE = "above"


class KnownBy(StrEnum):
    """Whether a figure was read in its source or recalled."""

    READ = "read"
    RECALLED = "recalled"


class Outcome(StrEnum):
    """What became of a complaint."""

    EXPLAINED = "explained"
    REPLACED = "replaced"
    HELD = "held"
    RECALLED = "recalled"
    NOT_OURS = "not-ours"


class Reached(StrEnum):
    """How a call to somebody who holds goods ended."""

    SPOKEN = "spoken"
    LEFT_WORD = "left-word"
    NO_ANSWER = "no-answer"
