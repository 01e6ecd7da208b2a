"""Invented views to print: no real maker, product or person."""

from datetime import UTC, datetime

from msgspec.structs import replace

from reports.kit.frame import Frame
from reports.views.goods import LabelSheetView, LabelView
from reports.views.lots import (
    Band,
    ClarityPoint,
    ClarityStrip,
    GateRow,
    InputRow,
    LadderRow,
    LookRow,
    NeighbourRow,
    RecordView,
    StepRow,
    TimeBar,
    TimeSpan,
)

SEAL = (
    "House: Fennimore & Sloe, syrup makers (invented)",
    "Entries: 1 204",
    "Root: 5f8b1c0e9a7d3f4426b1a0c8e7d9f3b25a6c4d8e1f0b9a7c3d5e6f8091a2b3c4",
)

LABEL = LabelView(
    house_name="Fennimore & Sloe",
    house_address="2 Invented Lane, Nowhere-on-Sea, NW0 0XX",
    product="Lemon soda essence",
    lot="E26-014-7",
    volume="250 mL",
    made_on="made on 1 Mar 2026",
    best_before="Best before 1 Mar 2027",
    dilution="30 mL makes 1 L of syrup; 1 part syrup + 7 parts soda water",
    text="Ingredients: ethanol, water, lemon oil, magnesium carbonate. Keep cool and dark.",
    cautions=(
        "Flavouring: dilute, not for direct consumption.",
        "Highly flammable.",
        "Keep from children.",
    ),
    strength=None,
    statements=(),
    declared=(),
    is_us=False,
    is_canadian=False,
    is_small=False,
    figures_mm=4.0,
    panel_sq_in=0.0,
    lot_word="Lot",
)

FRAME = Frame(
    house_name="Fennimore & Sloe",
    house_address="2 Invented Lane, Nowhere-on-Sea, NW0 0XX",
    seal=SEAL,
    shown_at=datetime(2026, 3, 5, 9, 12, tzinfo=UTC),
    zone="Europe/London",
)

SHEET = LabelSheetView(label=LABEL, count=12, frame=FRAME)


def step(
    number: int, what: str, words: str, *notes: str, struck: bool = False, by: str = "AF"
) -> StepRow:
    when = f"2026-03-{1 + number // 20:02d} {9 + number % 9:02d}:30"
    return StepRow(f"{1180 + number}", when, what, words, by, notes, struck)


STEPS = (
    step(0, "start", "Lemon soda essence, formula LEM version 3, 1 L wanted"),
    step(1, "add", "30 mL of lemon oil LO-26-003-K, meant 30 mL"),
    step(2, "add", "451 mL of ethanol ET-26-001-4 at 20.0 °C", struck=True),
    step(
        3,
        "add",
        "541 mL of ethanol ET-26-001-4 at 20.0 °C",
        "Corrects 1182: digits swapped.",
        "Written 2 h after it was done.",
    ),
    step(4, "rest", "18 h at 4 °C, in flask 2, turned every 3 h while the carbonate settled"),
    step(5, "filter", "1st pass, paper 2.5 µm, precoat 4 g of magnesium carbonate, 15 min"),
    step(6, "finish", "1 005 mL, 96.2 % of what went in", by="MS"),
)

RECORD = RecordView(
    frame=FRAME,
    lot="E26-014-7",
    title="Lemon soda essence, 1:33",
    band=Band("RELEASED", "2026-03-04 10:00, MS", is_dark=False),
    facts=(
        ("Kind", "essence"),
        ("Formula", "LEM version 3, prepared by AF, checked by MS"),
        ("Begun", "2026-03-01 09:30"),
        ("Finished", "2026-03-02 15:30"),
        ("Status", "released by MS on 2026-03-04"),
        ("Made", "1 005 mL"),
        ("On hand", "255 mL"),
    ),
    inputs=(
        InputRow(
            "LO-26-003-K",
            "lemon oil, expressed; Grove Nine (invented), their lot 88-1",
            "30 mL",
            "2026-03-01 10:30",
            "AF",
            "1181",
            False,
        ),
        InputRow(
            "ET-26-001-4",
            "ethanol 96 % vol; Stillwater Spirits (invented), their lot 4711",
            "451 mL",
            "2026-03-01 11:30",
            "AF",
            "1182",
            True,
        ),
        InputRow(
            "ET-26-001-4",
            "ethanol 96 % vol; Stillwater Spirits (invented), their lot 4711",
            "541 mL",
            "2026-03-01 11:30",
            "AF",
            "1183",
            False,
        ),
        InputRow(
            "WA-26-009-2", "water, distilled", "474 mL", "2026-03-01 14:30", "MS", "1184", False
        ),
    ),
    made=STEPS,
    since=(step(12, "judged", "released", by="MS"),),
    looks=(
        LookRow("1190", "2026-03-01 10:30", "", "neat", "bright", "", "at 20 °C", "MS", False),
        LookRow("1191", "2026-03-01 11:30", "2 d", "neat", "bright", "0.48", "", "MS", False),
    ),
    ladder=(
        LadderRow("", "Liquids put in", "1 045 mL", "100.0 %"),
        LadderRow("\N{MINUS SIGN}", "Kept by the filter, pass 1", "35 mL", "3.3 %"),
        LadderRow("=", "Came out", "1 005 mL", "96.2 %", is_sum=True),
        LadderRow("", "Not accounted for", "5 mL", "0.5 %"),
    ),
    back=(NeighbourRow("LO-26-003-K", "lemon oil", "2026-02-01", "30 mL", "1 Grove (invented)"),),
    forward=(
        NeighbourRow("S26-031-2", "lemon syrup, 12 L", "2026-03-05", "360 mL", ""),
        NeighbourRow("Corner Fountain (invented)", "sold, DN-1", "2026-03-06", "3", "2 Corner"),
    ),
    bar=TimeBar(
        (TimeSpan("chill", 0.1, 0.7), TimeSpan("look", 0.9, 0.9)),
        ((0.0, "2026-03-01 09:30"), (1.0, "2026-03-02 15:30")),
    ),
    clarity=ClarityStrip(
        (ClarityPoint(0.0, 0.2, "1.6"), ClarityPoint(1.0, 0.6, "6.3")),
        ((0.0, "finished"), (1.0, "30 d")),
        ((0.0, "1"), (0.5, "4"), (1.0, "10")),
        0.4,
        "Shaded: wanted clear",
    ),
    gate=(
        GateRow(True, "By a checked formula", "LEM version 3"),
        GateRow(False, "Checked by a second person", "by nobody else"),
        GateRow(None, "By a formula", "it follows none"),
    ),
    people=(("AF", "Ada Fenn (invented)", "maker"),),
    around=(("Vessel", "flask 2: cleaned 2026-02-28"),),
    serving=(("Strength", "90 % vol at 20 °C"),),
    cautions=(
        "Highly flammable: keep away from flames and sparks.",
        "Contains lemon oil (limonene): may cause an allergic skin reaction.",
    ),
)


def long_record(lines: int) -> RecordView:
    """Make a record with many steps."""
    return replace(RECORD, made=tuple(step(n, "note", f"line {n} of many") for n in range(lines)))
