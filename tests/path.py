"""The ways through the book that many tests start from: setting up, one season, every table."""

from dataclasses import dataclass
from typing import TypedDict

from ledger.domain.amounts.quantity import parse_quantity
from ledger.domain.entries import Check, Clean, Equipment, Formula
from ledger.domain.entries.choices import ProductKind
from ledger.domain.entries.masters import FormulaLine, FormulaStep, Keeping
from tests.keeper import Keeper


class HouseWords(TypedDict):
    """The words of a house."""

    name: str
    currency: str
    time_zone: str


HOUSE: HouseWords = {
    "name": "Quayside Essences",
    "currency": "EUR",
    "time_zone": "Europe/Dublin",
}
"""An invented house."""
PERSON = {"initials": "AB", "name": "Anna Bell"}
MATERIALS: tuple[dict[str, str], ...] = (
    {
        "code": "orange-oil",
        "name": "Sweet orange oil",
        "kind": "oil",
        "obtained": "expressed",
        "density": "0.845",
        "constituents": "limonene 94%",
        "allergens": "none",
    },
    {
        "code": "spirit",
        "name": "Neutral spirit",
        "kind": "ethanol",
        "abv": "96",
        "allergens": "none",
    },
    {"code": "carb", "name": "Light magnesium carbonate", "kind": "clarifier"},
    {"code": "sugar", "name": "Sugar", "kind": "sugar", "allergens": "none"},
    {"code": "water", "kind": "water"},
    {"code": "b250", "kind": "bottle"},
)


@dataclass(frozen=True, slots=True)
class Lots:
    """Codes of the lots of the main path."""

    oil: str
    spirit: str
    carb: str
    sugar: str
    water: str
    bottles: str
    essence: str = ""
    syrup: str = ""
    packed: str = ""


def set_up(keeper: Keeper) -> None:
    """Enter the person and the materials of every test's book."""
    keeper.do("person", **PERSON)
    for material in MATERIALS:
        keeper.do("material", **material)


def receive_all(keeper: Keeper) -> Lots:
    """Receive one lot of every material."""

    def receive(material: str, amount: str, **words: str) -> str:
        return keeper.opens("receive", material=material, amount=amount, **words)

    return Lots(
        oil=receive(
            "orange-oil",
            "500mL",
            supplier="Harbour Oils",
            supplier_lot="C7731",
            cost="48.00",
            best_before="2027-06-30",
        ),
        spirit=receive("spirit", "5L"),
        carb=receive("carb", "500g"),
        sugar=receive("sugar", "25kg"),
        water=receive("water", "100L"),
        bottles=receive("b250", "100"),
    )


def make_essence(keeper: Keeper, lots: Lots) -> str:
    """Make 450 mL of essence with a rest and a filter, and release it."""
    code = keeper.opens("start", product="Orange essence", kind="essence", target="480mL")
    keeper.do("add", lot=code, source=lots.oil, amount="25g")
    keeper.do("add", lot=code, source=lots.carb, amount="15g")
    keeper.do("add", lot=code, source=lots.spirit, amount="420mL")
    keeper.do("rest", lot=code, purpose="macerate")
    keeper.clock.forward(days=2)
    keeper.do("rest", lot=code, ended="yes")
    keeper.do(
        "filter",
        lot=code,
        medium="paper",
        pore="20",
        volume_in="445mL",
        volume_out="430mL",
        vacuum="40kPa",
    )
    keeper.do("makeup", lot=code, volume="450mL", source=lots.spirit)
    keeper.do("look", lot=code, grade="hazy", ntu="9.4")
    keeper.do("finish", lot=code, volume="448mL")
    keeper.do("judge", lot=code, verdict="release")
    return code


def make_syrup(keeper: Keeper, lots: Lots, essence: str) -> str:
    """Make 3.8 L of syrup with the essence."""
    code = keeper.opens("start", product="Orange syrup", kind="syrup", target="4L")
    keeper.do("add", lot=code, source=lots.sugar, amount="2.4kg")
    keeper.do("add", lot=code, source=lots.water, amount="2.4L")
    keeper.do("add", lot=code, source=essence, amount="30mL")
    keeper.do("look", lot=code, grade="cloudy", of="neat")
    keeper.do("finish", lot=code, volume="3.8L")
    return code


def walk_main_path(keeper: Keeper) -> Lots:
    """Go from deliveries by an essence and a syrup to bottles sold, and a correction."""
    lots = receive_all(keeper)
    essence = make_essence(keeper, lots)
    syrup = make_syrup(keeper, lots, essence)
    packed = keeper.opens("bottle", source=syrup, pack="15 x 250mL", bottles=lots.bottles)
    keeper.do("judge", lot=packed, verdict="release")
    keeper.do("send", lot=packed, amount="6", party="Bridge Street Stall")
    keeper.do("complain", lot=packed, symptom="cloudy")
    first_addition = next(entry.seq for entry in keeper.entries() if entry.kind == "add")
    keeper.do("correct", entry=str(first_addition), changes="amount=26g", because="misread")
    return Lots(
        lots.oil, lots.spirit, lots.carb, lots.sugar, lots.water, lots.bottles,
        essence, syrup, packed,
    )  # fmt: skip


def _tell_beside(keeper: Keeper) -> None:
    """Tell a party and forget it, and name a material in German."""
    keeper.do("party", name="Quay Bar", phone="01 555 0155")
    keeper.do("forget", who="Quay Bar", because="he asked for it")
    keeper.do("material", code="sugar", change=True, names="de=Zucker")


def _put_in_cases(keeper: Keeper, packed: str) -> None:
    """Tell of cases before the house has numbers of GS1, and after."""
    keeper.do("cases", lot=packed, pack="1 x 2")
    keeper.do("house", gln="9521234000006", gtin="Orange syrup, 250 mL=9521234543213")
    keeper.do("house", company_prefix="9521234")
    keeper.do("cases", lot=packed, pack="2 x 2")


def fill_every_table(keeper: Keeper) -> Lots:
    """Walk the main path and then whatever puts a row into each table that has none yet."""
    lots = walk_main_path(keeper)
    trial = keeper.opens(
        "start", product="Trial", kind="essence", target="1L", trial="pores", factors="pore=5"
    )
    keeper.do("add", lot=trial, source=lots.spirit, amount="200mL")
    keeper.do(
        "rinse", lot=trial, source=lots.spirit, volume_in="20mL", volume_out="15mL", went_to="apart"
    )
    keeper.do("foretell", lot=lots.essence)
    keeper.do("plan", name="pores again", tries="pore=5/20")
    keeper.do("jars", trial="pores again")
    keeper.do("decant", lot=trial, drawn="180mL", heel="10mL")
    keeper.do("measure", lot=trial, what="abv", reading="95.5", temp="20")
    keeper.do("count", lot=lots.water, amount="96L", because="the tap dripped")
    labels = keeper.do("labels", lot=lots.packed, printed="20", used="15", spoiled="1")
    _put_in_cases(keeper, lots.packed)
    note = keeper.do("note", text="The still is out of order.")
    keeper.do("strike", entry=str(note.seq), because="the wrong book")
    keeper.do("add", lot=trial, source=lots.oil, amount="2L", because="the scale was reset")
    keeper.record(Check(about=labels.seq, words="Read again."), trial)
    keeper.record(Clean("Demijohn 2", "Hot water", "Orange essence"))
    keeper.record(Equipment("Scale", "Set to zero with the 200 g weight."))
    keeper.record(_formula())
    keeper.do("withdraw", code="orange-essence", version="1", because="the yield was never reached")
    keeper.do(
        "party",
        name="Bridge Street Stall",
        phone="01 555 0100",
        address="1 Bridge Street",
        gln="9521234000013",
    )
    _tell_beside(keeper)
    keeper.do("limit", code="us-safrole", citation="21 CFR 189.180, read again")
    keeper.do("recall", lot=lots.packed, because="came back cloudy")
    keeper.do("contact", lot=lots.packed, party="Bridge Street Stall", reached="spoken")
    complaint = next(entry.seq for entry in keeper.entries() if entry.kind == "complaint")
    keeper.do(
        "answer",
        complaint=str(complaint),
        outcome="replaced",
        told_by="AB",
        words="two fresh bottles",
    )
    keeper.do("close", lot=lots.packed, cause="the orange oil was old", because="9 kept to look at")
    return lots


def _formula() -> Formula:
    return Formula(
        code="orange-essence",
        version=1,
        product="Orange essence",
        product_kind=ProductKind.ESSENCE,
        basis=parse_quantity("1L"),
        prepared_by="AB",
        lines=(FormulaLine(parse_quantity("50g"), material="orange-oil", tolerance_mpct=2000),),
        steps=(FormulaStep("rest", minutes_min=2880), FormulaStep("filter", pore_max_nm=25000)),
        keeping=(Keeping("cool and dark", 540, opened_days=180),),
    )
