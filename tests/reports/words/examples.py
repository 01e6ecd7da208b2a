"""One example of every kind of entry with all of its fields filled in."""

from datetime import UTC, date, datetime, timedelta

from ledger.domain.amounts.quantity import parse_quantity as q
from ledger.domain.entries import Draft, Entry, Facts, When
from ledger.domain.entries.bench import (
    Add,
    Decant,
    Factor,
    Filter,
    Finish,
    Look,
    MakeUp,
    Measurement,
    Rest,
    Rinse,
    Start,
)
from ledger.domain.entries.choices import (
    Across,
    AddedAs,
    Cake,
    FoodGrade,
    Grade,
    LookedAt,
    Measured,
    MoveAs,
    Outcome,
    ProductKind,
    Purpose,
    Reached,
    RestFor,
    RinseTo,
    VacuumReference,
    Verdict,
)
from ledger.domain.entries.evidence import Forget, Named, Strike
from ledger.domain.entries.forecasts import Carried, Foretold
from ledger.domain.entries.goods import Answer, Bottle, Cases, Complaint, Labels, Move
from ledger.domain.entries.recall import Closing, Contact
from ledger.domain.entries.receipt import Receipt
from ledger.domain.entries.upkeep import Clean, Count, Equipment, Note
from ledger.domain.entries.verdicts import Check, Deviation, Judge
from tests.planned import PLAN
from tests.reports.words.examples_of_masters import MASTERS

NOON = datetime(2026, 3, 2, 12, 0, tzinfo=UTC)

EXAMPLES: tuple[tuple[Facts, str], ...] = (
    *MASTERS,
    (
        Receipt(
            material="orange-oil",
            amount=q("500mL"),
            supplier="Harbour Oils",
            supplier_lot="C7731",
            cost_minor=4800,
            best_before=date(2027, 6, 30),
            certificate="CoA 12",
            certificate_sha256="0123456789abcdef" * 4,
            density_mg_per_l=845_000,
            abv_mpct=96_000,
            food_grade=FoodGrade.YES,
            duty_minor=1200,
            document="DN 5",
        ),
        "500 mL of orange-oil, from Harbour Oils, their lot C7731, cost 48.00, best before "
        "2027-06-30, certificate CoA 12, its file 0123456789ab…, 96 % vol, 0.845 g/mL, food grade "
        "yes, of it duty 12.00, document DN 5",
    ),
    (
        Start(
            product="Orange essence",
            product_kind=ProductKind.ESSENCE,
            target=q("480mL"),
            formula="orange-essence",
            formula_version=2,
            purpose=Purpose.TRIAL,
            trial_group="pores",
            pour_parts=7,
            best_before=date(2027, 6, 30),
            vessel="demijohn 2",
            factors=(Factor("pore", "5"),),
            is_control=True,
            repeat=2,
            planned_by=12,
            jar=3,
        ),
        "Orange essence (essence), target 480 mL, formula orange-essence version 2, trial pores, "
        "jar 3, planned by entry 12, the control, repeat 2, not for sale, pore = 5, to be poured "
        "1:7, in demijohn 2, best before 2027-06-30",
    ),
    (
        Add("SOO-001-3", q("30mL"), AddedAs.TOP_UP, 20_000, 5, 10, "Scale 1"),
        "30 mL of SOO-001-3, as top-up, at 20 °C, over 5 min, triturated 10 min, on Scale 1",
    ),
    (
        Rest(RestFor.CHILL, NOON, NOON + timedelta(days=2), 7, -18_000, 3, "demijohn 2"),
        "to chill, ended after 2 d, at −18 °C, shaken 3 times, in demijohn 2",
    ),
    (
        Filter(
            pass_no=2,
            medium="paper",
            volume_in=q("445mL"),
            volume_out=q("430mL"),
            pore_low_nm=20_000,
            pore_high_nm=25_000,
            cake=Cake.SAME,
            cake_of="OE-002-3",
            precoat=q("4g"),
            vacuum_pa=40_000,
            vacuum_reference=VacuumReference.BELOW_ATMOSPHERE,
            temp_mdegc=4000,
            first_runnings=q("20mL"),
            minutes=20,
            in_cake=q("9mL"),
            paper="FP-001-R",
            wetted_with="NS-001-J",
        ),
        "pass 2 through paper, 20–25 µm, 445 mL in, 430 mL out, same cake, through the cake of "
        "OE-002-3, precoat 4 g, vacuum 40 kPa below atmosphere, liquid at 4 °C, first 20 mL "
        "returned, 20 min, 9 mL held in the cake, paper of FP-001-R, wetted with NS-001-J",
    ),
    (
        Rinse("NS-001-J", q("20mL"), q("15mL"), RinseTo.APART),
        "with 20 mL of NS-001-J, 15 mL ran through, kept apart",
    ),
    (Decant(q("400mL"), q("30mL")), "400 mL drawn off, 30 mL heel left"),
    (
        Look(
            grade=Grade.HAZY,
            looked_at=LookedAt.AS_POURED,
            dilution="1:7",
            ntu_milli=9400,
            instrument="meter 1",
            zeroed_on="water",
            age_minutes=1440,
            temp_mdegc=20_000,
            ring=True,
            louche=True,
            sediment=True,
            floc=True,
            crystals=True,
            words="pale",
        ),
        "hazy, as poured, 1:7, ring, louche, sediment, floc, crystals, 9.4 NTU, on meter 1, zeroed "
        "on water, aged 1 d, at 20 °C, pale",
    ),
    (
        Measurement(Measured.BRIX, 65_000_000, "°Bx", "65.0", 20_000, "refractometer"),
        "brix 65.0 °Bx, at 20 °C, on refractometer",
    ),
    (
        MakeUp(q("450mL"), "NS-001-J", q("20mL"), 20_000),
        "to 450 mL with 20 mL of NS-001-J, at 20 °C",
    ),
    (
        Finish(q("448mL"), 20_000, q("5mL"), 54),
        "448 mL came out, at 20 °C, 5 mL spilt or thrown away, 54 min of work",
    ),
    (
        Bottle(
            source="OS-001-O",
            count=15,
            size=q("250mL"),
            drawn=q("3.8L"),
            bottles="BM-001-I",
            caps="CAP-001-B",
            fill_check_mg=312_500,
            first_bottle=1,
            last_bottle=15,
            best_before=date(2026, 9, 30),
            labour_minutes=75,
        ),
        "15 x 250 mL from OS-001-O, 3.8 L drawn, bottles BM-001-I, caps CAP-001-B, numbered 1 to "
        "15, a fill weighed 312.5 g, best before 2026-09-30, 1 h 15 min of work",
    ),
    (
        Cases(4, 12, 7, "9521234"),
        "4 cases of 12, numbered 7 to 10, GS1 Company Prefix 9521234",
    ),
    (
        Labels(20, 15, 1, "BL-001-Y", Across.HOLD),
        "20 printed, with HOLD across, on BL-001-Y, 15 used, 1 spoiled",
    ),
    (
        Move(MoveAs.SALE, q("6", counted=True), "A stall", "DN-1", "Edda Fell"),
        "6 sold to A stall, DN-1, witness Edda Fell",
    ),
    (Judge(Verdict.REWORK), "to be reworked"),
    (Check(7, "Read again."), "entry 7, Read again."),
    (
        Complaint(
            "cloudy",
            "A stall",
            "on Monday",
            "in the sun",
            "1:7",
            "ab" * 32,
            "Sorry.",
            "cloud.jpg",
            7,
        ),
        "cloudy, from A stall, opened on Monday, stored in the sun, mixed 1:7, Sorry, photo "
        "cloud.jpg, its hash abababababab…, to be answered in 7 d",
    ),
    (Count(q("96L")), "96 L there"),
    (Note("The still is out of order."), "The still is out of order."),
    (Deviation("barred", "NS-001-J is on hold.", 7), "NS-001-J is on hold."),
    (
        Clean("Demijohn 2", "hot water", "Orange essence"),
        "Demijohn 2, hot water, held Orange essence",
    ),
    (Equipment("Scale", "set to zero"), "Scale, set to zero"),
    (Equipment("Jar 3", "new", q("2L")), "Jar 3, new, holds 2 L"),
    (Strike(), "an entry made by mistake"),
    (
        Forget("P3", "AB", tuple(Named(seq, is_kept=seq < 10) for seq in (9, 12, 40, 41))),
        "party P3, person AB, details erased of entries 12, 40 and 41, the name stays in the text "
        "of entry 9",
    ),
    (
        Contact("A stall", Reached.LEFT_WORD, q("3", counted=True), "calls back on Monday"),
        "A stall, word left, 3 still there, calls back on Monday",
    ),
    (
        Foretold(
            oils="orange",
            carried=Carried.EDGE,
            spirit_mpct=90_000,
            clear_low_mpct=74_400,
            clear_likely_mpct=84_800,
            clear_high_mpct=95_100,
            neat_low_milli=0,
            neat_high_milli=3000,
            syrup_low_milli=200,
            syrup_high_milli=200_000,
            glass_low_milli=5800,
            glass_high_milli=447_000,
            dose_ul=900,
            own_readings=12,
            own_least_micro=500_000,
            own_most_micro=2_000_000,
        ),
        "orange, clear by 74.4 to 95.1 % vol, most likely 84.8, carried: edge, spirit of 90.0 % "
        "vol, neat 0 to 3 NTU, in syrup 0.2 to 200 NTU, as poured 5.8 to 450 NTU, bright up to 0.9 "
        "mL a litre of syrup, narrowed by 12 readings, 0.5 to 2 of the middle",
    ),
    (Closing("the orange oil was old"), "the orange oil was old"),
    (
        Answer(7, Outcome.REPLACED, "AB", date(2026, 3, 4), True, "two fresh bottles"),
        "complaint 7, replaced, told by AB, told on 2026-03-04, closed, two fresh bottles",
    ),
    (
        PLAN,
        '"cloudy orange", Orange essence (essence), formula orange-essence, version 1, 8 and 4 '
        "jars of 50 mL, oil SOO-001-3 or SOO-002-1, judged by look at 7 d, worse than clear fails, "
        "an innocent named in at most 5 %, the cause in 91 %, where 90 % fail with it and 5 % "
        f"without, drawn from the root {'0a' * 32} of 11 entries",
    ),
)


def entry(facts: Facts, seq: int = 40, **draft: object) -> Entry:
    """Return an entry written when it happened."""
    how: dict[str, object] = {"lot": "OE-001-5", "happened": When(NOON, 0), "by": "AB", **draft}
    return Entry(seq, Draft(facts, **how), NOON, seq)  # type: ignore[arg-type]
