"""What is done at the bench to a batch, from its start to its finish.

Guarantees: facts only as they were seen or read; what follows from them is computed elsewhere.
"""

from datetime import date, datetime
from typing import ClassVar

from msgspec import Struct

from ledger.domain.amounts.quantity import Quantity
from ledger.domain.entries.choices import (
    AddedAs,
    Cake,
    Grade,
    LookedAt,
    LotRef,
    Measured,
    ProductKind,
    Purpose,
    RestFor,
    RinseTo,
    SeqRef,
    Signed,
    VacuumReference,
)
from ledger.domain.entries.spine import Facts


class Factor(Struct, frozen=True):
    """A factor that a trial batch sets on purpose."""

    name: str
    """Which setting, such as rest or pore."""
    planned: str
    """The level it is set to, as written."""


class Start(Facts, frozen=True):
    """A batch is begun; opens its lot."""

    KIND: ClassVar[str] = "start"

    product: str
    """Name of what is made."""
    product_kind: ProductKind
    """What kind of thing it is."""
    target: Quantity
    """The volume aimed at."""
    formula: str | None = None
    """Code of the formula it follows."""
    formula_version: int | None = None
    """Version of that formula."""
    purpose: Purpose = Purpose.SALE
    """For sale or a trial."""
    trial_group: str | None = None
    """Name of the trial it belongs to."""
    pour_parts: int | None = None
    """Parts of soda water to one part, for a syrup."""
    best_before: date | None = None
    """Best-before date decided for it."""
    vessel: str | None = None
    """What it is made in."""
    factors: tuple[Factor, ...] = ()
    """Factors set on purpose, for a trial."""
    is_control: bool | None = None
    """The control of its trial: the house method, unchanged."""
    repeat: int | None = None
    """Which repeat of the same factors it is, from 1."""
    planned_by: int | None = None
    """Number of the entry that planned its trial."""
    jar: int | None = None
    """Which jar of the plan it is, from 1 in the order they are made."""


class Add(Facts, frozen=True):
    """A lot goes into the batch."""

    KIND: ClassVar[str] = "add"

    source: LotRef
    """Code of the lot it was taken from."""
    amount: Quantity
    """How much, as measured."""
    added_as: AddedAs = AddedAs.INGREDIENT
    """Why it goes in."""
    temp_mdegc: Signed | None = None
    """Temperature of the batch, in thousandths of a degree Celsius."""
    minutes: int | None = None
    """How long the adding took."""
    triturated_minutes: int | None = None
    """How long it was rubbed down with what was there."""
    instrument: str | None = None
    """The balance or cylinder it was measured with."""


class Rest(Facts, frozen=True):
    """A rest is begun, ended, or told whole."""

    KIND: ClassVar[str] = "rest"

    purpose: RestFor
    """What it is for."""
    started_at: datetime
    """When it began, UTC."""
    ended_at: datetime | None = None
    """When it ended, UTC; None while it goes on."""
    began: SeqRef | None = None
    """Number of the entry that began it, when this one ends it."""
    temp_mdegc: Signed | None = None
    """Temperature in thousandths of a degree Celsius."""
    times_shaken: int | None = None
    """How often it was shaken."""
    vessel: str | None = None
    """In what it stands."""


class Filter(Facts, frozen=True):
    """One pass through a filter."""

    KIND: ClassVar[str] = "filter"

    pass_no: int
    """1 for the batch's first pass."""
    medium: str
    """What it ran through: paper, frit, membrane and so on."""
    volume_in: Quantity
    """Volume put on the filter."""
    volume_out: Quantity
    """Volume of filtrate."""
    pore_low_nm: int | None = None
    """Finer end of the stated pore size in nanometres."""
    pore_high_nm: int | None = None
    """Coarser end of the stated pore size in nanometres."""
    cake: Cake | None = None
    """Fresh cake or the same as the pass before."""
    cake_of: LotRef | None = None
    """Code of the lot whose old cake it ran through."""
    precoat: Quantity | None = None
    """Precoat laid on the medium beforehand, by mass."""
    vacuum_pa: int | None = None
    """Vacuum in pascals."""
    vacuum_reference: VacuumReference | None = None
    """What the vacuum counts from."""
    temp_mdegc: Signed | None = None
    """Temperature of the liquid in thousandths of a degree Celsius."""
    first_runnings: Quantity | None = None
    """First runnings returned to the filter."""
    minutes: int | None = None
    """How long it took."""
    in_cake: Quantity | None = None
    """Liquid held back in the cake, when it was weighed or measured."""
    paper: LotRef | None = None
    """Code of the lot that the paper or membrane was taken from."""
    wetted_with: LotRef | None = None
    """Code of the lot that it was wetted with beforehand."""


class Rinse(Facts, frozen=True):
    """The cake is rinsed."""

    KIND: ClassVar[str] = "rinse"

    source: LotRef
    """Code of the lot it was rinsed with."""
    volume_in: Quantity
    """Volume put on the cake."""
    volume_out: Quantity
    """Volume that ran through."""
    went_to: RinseTo
    """Into the batch, kept apart as a lot of its own, or waste."""


class Decant(Facts, frozen=True):
    """The clear liquid is drawn off its sediment."""

    KIND: ClassVar[str] = "decant"

    drawn: Quantity
    """Volume drawn off."""
    heel: Quantity | None = None
    """Volume left behind, when it was measured."""


class Look(Facts, frozen=True):
    """Clarity as seen."""

    KIND: ClassVar[str] = "look"

    grade: Grade
    """The word for it."""
    looked_at: LookedAt
    """What was looked at."""
    dilution: str | None = None
    """The dilution, when it was looked at as poured, such as 1:7."""
    ntu_milli: int | None = None
    """Turbidity in thousandths of an NTU."""
    instrument: str | None = None
    """The meter it was read on."""
    zeroed_on: str | None = None
    """What the meter was set to zero on."""
    age_minutes: int | None = None
    """Age of the sample in minutes."""
    temp_mdegc: Signed | None = None
    """Temperature of the sample in thousandths of a degree Celsius."""
    ring: bool = False
    """An oil ring at the neck."""
    louche: bool = False
    """Cloud on dilution."""
    sediment: bool = False
    """Something lies on the bottom."""
    floc: bool = False
    """Flakes float."""
    crystals: bool = False
    """Sugar or wax crystals."""
    words: str | None = None
    """Colour, nose, taste."""


class Measurement(Facts, frozen=True):
    """An instrument's reading, raw."""

    KIND: ClassVar[str] = "measure"

    what: Measured
    """What was read."""
    reading_micro: Signed
    """The reading in millionths of its unit."""
    unit: str
    """The unit of the reading."""
    written: str
    """The reading as it was written."""
    temp_mdegc: Signed | None = None
    """Temperature of the sample in thousandths of a degree Celsius."""
    instrument: str | None = None
    """The instrument."""


class MakeUp(Facts, frozen=True):
    """The batch is made up to a volume."""

    KIND: ClassVar[str] = "makeup"

    volume: Quantity
    """The volume it was made up to."""
    source: LotRef
    """Code of the lot it was made up with."""
    used: Quantity
    """How much of that lot it took."""
    temp_mdegc: Signed | None = None
    """Temperature of the liquid in thousandths of a degree Celsius."""


class Finish(Facts, frozen=True):
    """The making ends; what came out is measured."""

    KIND: ClassVar[str] = "finish"

    volume: Quantity
    """Volume that came out."""
    temp_mdegc: Signed | None = None
    """Temperature of the liquid in thousandths of a degree Celsius."""
    waste: Quantity | None = None
    """Volume spilt or thrown away."""
    labour_minutes: int | None = None
    """Minutes of work the batch took."""
