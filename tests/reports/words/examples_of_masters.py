"""One example of every kind of entry about who and what there is, with all fields filled in."""

from datetime import date

from ledger.domain.amounts.quantity import parse_quantity as q
from ledger.domain.entries import Facts
from ledger.domain.entries.choices import (
    Bound,
    FoodGrade,
    HowObtained,
    KnownBy,
    LimitBasis,
    LimitUnit,
    MaterialKind,
    ProductKind,
)
from ledger.domain.entries.house import Article, House, Party, Person
from ledger.domain.entries.masters import (
    Constituent,
    Formula,
    FormulaLine,
    FormulaStep,
    Limit,
    Material,
    NameIn,
    Withdrawal,
)

MASTERS: tuple[tuple[Facts, str], ...] = (
    (
        House(
            "Wren & Co",
            "EUR",
            "1 Quay",
            "IE",
            "Europe/Dublin",
            "imperial",
            2000,
            "01 555 0100",
            doubts="scale=0.2",
            keep_months=24,
            web="https://example.com/l",
            gln="9521234000006",
            company_prefix="9521234",
            articles=(
                Article("Cola syrup", "09521234543213", q("250mL")),
                Article("Cola syrup", "00000095212341"),
            ),
        ),
        "Wren & Co, 1 Quay, IE, money in EUR, clock of Europe/Dublin, imperial fluid ounces, "
        "telephone 01 555 0100, records kept 24 months, an hour of work 20.00 EUR, instruments off "
        "by scale=0.2, pages at https://example.com/l, GLN 9521234000006, GS1 "
        "Company Prefix 9521234, Cola syrup, 250 mL, GTIN 09521234543213, Cola syrup, "
        "GTIN 00000095212341",
    ),
    (Person("AB", "Anna Bell", "maker"), "AB is Anna Bell, maker"),
    (
        Material(
            code="orange-oil",
            name="Sweet orange oil",
            sort=MaterialKind.OIL,
            how_obtained=HowObtained.EXPRESSED,
            density_mg_per_l=845_000,
            density_temp_mdegc=20_000,
            abv_mpct=0,
            food_grade=FoodGrade.YES,
            allergens="none",
            ingredient_name="orange oil",
            caution="Flammable",
            constituents=(Constituent("limonene", 940_000),),
            additive="flavouring",
            nutrition="none",
            names=(NameIn("de", "Orangenöl"), NameIn("fr", "huile d'orange")),
        ),
        "orange-oil is Sweet orange oil, oil, expressed, 0.845 g/mL, at 20 °C, 0 % vol, food grade "
        "yes, allergens none, on ingredient lists orange oil, in de Orangenöl, in fr huile "
        "d'orange, additive flavouring, 100 g hold none, limonene 94 %, caution Flammable",
    ),
    (
        Formula(
            code="orange-essence",
            version=2,
            product="Orange essence",
            product_kind=ProductKind.ESSENCE,
            basis=q("1L"),
            lines=(FormulaLine(q("50g"), material="orange-oil"),),
            steps=(FormulaStep("rest"), FormulaStep("filter")),
        ),
        "orange-essence version 2 for Orange essence, basis 1 L, 1 line and 2 steps",
    ),
    (
        Party(
            "A stall",
            "01 555 0100",
            "stall@example.com",
            "1 Bridge Street",
            "ask for Bo",
            "P3",
            gln="9521234000013",
        ),
        "P3 is A stall, 01 555 0100, stall@example.com, 1 Bridge Street, ask for Bo, "
        "GLN 9521234000013",
    ),
    (
        Limit(
            code="eu-state-strength",
            substance="alcohol",
            bound=Bound.ABOVE,
            value_micro=1_200_000,
            unit=LimitUnit.PERCENT_VOL,
            basis=LimitBasis.IN_PRODUCT,
            place="EU",
            citation="Regulation (EU) 1169/2011, Article 28",
            known_by=KnownBy.READ,
            says="the strength is to be stated",
            since=date(2014, 12, 13),
            until=date(2030, 1, 1),
        ),
        "eu-state-strength: alcohol above 1.2 % vol as sold, EU, the strength is to "
        "be stated, since 2014-12-13, until 2030-01-01, Regulation (EU) 1169/2011, Article 28, the "
        "value read",
    ),
    (Withdrawal("orange-essence", 1), "orange-essence version 1"),
)
