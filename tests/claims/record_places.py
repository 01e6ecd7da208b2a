"""Where in this book each thing stands that published rules ask of a batch record.

Guarantees: one place for each row of the checklist of 21 CFR 111, 211 and 117, in its order.
That a row is here says where a thing is written down, not that a house complies with any law.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Held:
    """Fields that hold what a row asks for, and the words with which a paper shows it."""

    fields: tuple[str, ...]
    """Class and field of each."""
    shown: tuple[tuple[str, str], ...]
    """Name of a paper and the words on it."""


PLACES: dict[tuple[str, str], Held] = {
    ("master", "product name and strength/concentration per batch size"): Held(
        ("Formula.product", "Formula.basis", "Formula.abv_min_mpct", "Formula.abv_max_mpct"),
        (("formula", "product Orange essence"), ("formula", "strength 70 % to 95 %")),
    ),
    ("master", "complete component list"): Held(
        ("Formula.lines", "FormulaLine.material"),
        (
            ("formula", "what amount overage"),
            ("sheet", "What goes in and what is done, in this order"),
        ),
    ),
    ("master", "weight or measure of each component (same measure system)"): Held(
        ("FormulaLine.amount", "FormulaLine.tolerance_mpct"),
        (("formula", "carb 8 g"), ("sheet", "29.7 mL to 30.9 mL")),
    ),
    ("master", "ingredients declared on label"): Held(
        ("Formula.label_text",),
        (
            ("formula", "label Ingredients: ethanol, orange oil."),
            ("labels", "Ingredients: alcohol, natural flavouring, water."),
        ),
    ),
    ("master", "intentional overage / calculated excess"): Held(
        ("FormulaLine.overage_mpct",), (("formula", "orange-oil 15.15 mL 1 %"),)
    ),
    (
        "master",
        "theoretical yield per stage and final with max/min % triggering investigation",
    ): Held(
        ("Formula.yield_min_mpct", "Formula.yield_max_mpct"),
        (("formula", "yield 85 % to 102 %"), ("sheet", "Yield 85 % to 102 %")),
    ),
    ("master", "packaging description and representative label"): Held(
        ("Formula.packaging", "FormulaStep.words", "Formula.label_text", "Labels.across"),
        (
            ("formula", "packaging Brown glass of 50 mL, black cap with a cone"),
            ("formula", "bottle Fill brown bottles of 250 mL."),
            ("packed record", "Specimen label"),
            ("packed record", "SPECIMEN"),
            (
                "labels",
                "Keep cool and dark. Once opened use within 180 days, and by the best-before date.",
            ),
        ),
    ),
    (
        "master",
        "written instructions: specs, sampling, tests, actions, special notes, corrective plans",
    ): Held(
        (
            "Formula.steps",
            "FormulaStep.verb",
            "FormulaStep.words",
            "FormulaStep.worst",
            "FormulaStep.age_minutes",
            "Formula.caution",
        ),
        (
            ("formula", "step act what to do limits"),
            ("formula", "look neat, clear or better"),
            ("formula", "look neat, 7 d after finishing"),
            ("sheet", "S1 rest Macerate in the dark"),
        ),
    ),
    (
        "master",
        "one per unique formulation and batch size; versioned; prepared dated signed and "
        "independently checked",
    ): Held(
        (
            "Formula.code",
            "Formula.version",
            "Formula.basis",
            "Formula.prepared_by",
            "Formula.checked_by",
            "Formula.valid_from",
        ),
        (
            ("formula", "orange-essence version 1"),
            ("formula", "prepared by AB"),
            ("formula", "checked by CD"),
            ("formula", "valid from 2026-03-01"),
        ),
    ),
    ("batch", "record for every batch and follows the master version"): Held(
        ("Start.formula", "Start.formula_version"),
        (("record", "Formula orange-essence version 1"),),
    ),
    (
        "batch",
        "batch/lot number of finished batch and of each packaged lot and each lot sent for "
        "packaging",
    ): Held(
        ("Opened.code", "Bottle.source"),
        (
            ("record", "Batch record {essence}"),
            ("packed record", "Batch record {packed}"),
            ("packed record", "from {essence}"),
            ("labels", "Lot {packed}"),
        ),
    ),
    ("batch", "dates (and times) of each significant step"): Held(
        ("Draft.happened", "When.at", "Rest.started_at", "Rest.ended_at"),
        (("record", "Entry When What As recorded Asked By"), ("record", "2026-03-02 10:40 added")),
    ),
    ("batch", "equipment and lines used"): Held(
        ("Start.vessel", "Rest.vessel", "Filter.medium", "Measurement.instrument"),
        (
            ("record", "in Demijohn 2"),
            ("record", "through paper"),
            ("record", "on Hydrometer 1"),
            ("record", "Vessel Demijohn 2: cleaned"),
            ("record", "Instrument Scale 1: last seen to"),
            ("record", "on Scale 1"),
            ("journal", "equipment: Scale 1"),
        ),
    ),
    (
        "batch",
        "cleaning/sanitizing/maintenance date-time or cross-reference to log",
    ): Held(
        ("Clean.vessel", "Clean.how", "Clean.last_held", "Equipment.words"),
        (
            ("record", "Demijohn 2: cleaned after Lemon essence 2026-03-02"),
            ("record", "by AB (entry {cleaned}), Hot water"),
            ("record", "Set to zero with the 200 g weight"),
            ("journal", "cleaned: Demijohn 2"),
            ("journal", "Set to zero with the 200 g weight."),
        ),
    ),
    ("batch", "unique identifier of each component/packaging/label lot used"): Held(
        ("Add.source", "Bottle.bottles", "Bottle.caps", "Filter.paper", "Labels.stock"),
        (
            ("record", "Entry Lot What Target Limits Put in Off By, checked"),
            ("record", "{oil} Sweet orange oil"),
            ("packed record", "bottles {bottles}"),
            ("record", "{paper} Filter paper, 20 µm 1"),
            ("packed record", "{blank} Blank labels 8"),
        ),
    ),
    ("batch", "identity and weight/measure of each component used"): Held(
        ("Add.amount", "MakeUp.used"),
        (("record", "{carb} Light magnesium carbonate 16 g 16 g 0 g"),),
    ),
    ("batch", "actual yield and % of theoretical at phases"): Held(
        ("Finish.volume", "Filter.volume_out", "Decant.drawn"),
        (
            ("record", "Yield What Amount Of what went in"),
            ("record", "Came out 440 mL"),
            ("record", "Share of the target of 480 mL, by the formula 85 % to 102 % 91.7 %"),
            ("record", "Kept by the filter, pass 1 25 mL 5.3 %"),
        ),
    ),
    ("batch", "actual monitoring results (values not pass/fail)"): Held(
        (
            *("Add.temp_mdegc", "Rest.temp_mdegc", "Filter.vacuum_pa", "Look.ntu_milli"),
            *("Add.triturated_minutes", "Filter.first_runnings", "Filter.wetted_with"),
        ),
        (
            ("record", "triturated 10 min"),
            ("record", "to warm, ended after 5 min, at 30 °C"),
            ("record", "first 20 mL returned"),
            ("record", "wetted with {spirit}"),
            ("record", "0.9 NTU"),
            ("record", "465 mL in, 440 mL out"),
            ("sheet", "kPa"),
        ),
    ),
    ("batch", "test/examination results or cross-reference"): Held(
        ("Measurement.reading_micro", "Measurement.unit", "Look.grade", "Receipt.certificate"),
        (
            ("record", "Looks Entry When Age Looked at Grade NTU What was seen By"),
            ("record", "measured abv 88 %"),
        ),
    ),
    ("batch", "finished product meets specification"): Held(
        ("Judge.verdict", "FormulaStep.worst", "Formula.abv_min_mpct"),
        (
            ("record", "Released by CD on"),
            ("record", "Looked clear or better last look: bright"),
        ),
    ),
    (
        "batch",
        "at performance: date, initials of who weighed/measured, verified weight, added, "
        "verified addition",
    ): Held(
        ("Draft.by", "Person.name", "Check.about", "Check.words"),
        (
            ("record", "Reason: the cylinder ran over."),
            ("record", "Checked by CD, 2026-03-02 10:45 (entry 31): read the cylinder."),
            ("record", "+0.7 mL, outside AB, CD"),
            ("record", "AB Anna Bell"),
            ("record", "CD Cleo Dunn"),
            ("sheet", "lot amount day, time weighed checked"),
        ),
    ),
    (
        "batch",
        "packaging/labelling: unique ids of packaging and labels, quantity, label "
        "reconciliation, dates, initials, specimen label",
    ): Held(
        ("Bottle.count", "Bottle.size", "Labels.printed", "Labels.used", "Labels.spoiled"),
        (
            ("packed record", "bottled 6 x 50 mL"),
            ("packed record", "labels 8 printed, on {blank}, 6 used, 2 spoiled AB"),
            ("packed record", "Specimen label"),
            ("labels", "Lot {packed}"),
        ),
    ),
    ("batch", "sampling performed"): Held(
        ("Move.moved_as", "Move.amount"), (("packed record", "moved 1 kept back as samples"),)
    ),
    (
        "batch",
        "QC review: records reviewed; reprocessing/repackaging approved/rejected; batch and "
        "packaged lot released or rejected; signed",
    ): Held(
        ("Check.words", "Judge.verdict"),
        (
            ("record", "the whole record was read CD"),
            ("record", "judged released CD"),
            ("packed record", "judged released AB"),
            ("record", "Made by Date Checked by Date Reviewed by Date Released by Date"),
            ("sheet", "Made by Date Checked by Date"),
        ),
    ),
    ("batch", "material review and disposition decision"): Held(
        ("Deviation.rule", "Deviation.text", "Draft.reason", "Judge.verdict", "Move.witness"),
        (
            ("record", "Deviation 30: With this 31 mL of orange-oil are in {essence}"),
            ("record", "Deviations have their reason 1 deviation, 1 with a reason"),
            ("record", "Reason: the cylinder ran over."),
            ("barred lot", "judged: rejected. Reason: smells of solvent."),
            ("packed record", "1 destroyed, witness Edda Fell"),
            ("packed record", "complaint cloudy, from Bridge Street Stall"),
        ),
    ),
    ("batch", "reprocessing documented"): Held(
        ("Start.product_kind", "Add.added_as"),
        (
            ("rework record", "Kind rework"),
            ("rework record", "80 mL of {essence}, as rework Reason: hazy after all."),
        ),
    ),
    (
        "component",
        "per receipt: identity, quantity, supplier, supplier lot, receiving code, date; tests; "
        "per-lot use reconciliation; label exam; disposition of rejects",
    ): Held(
        (
            "Receipt.material",
            "Receipt.amount",
            "Receipt.supplier",
            "Receipt.supplier_lot",
            "Receipt.certificate",
            "Count.amount",
        ),
        (
            ("delivery record", "Supplier Harbour Oils lot C7731"),
            ("delivery record", "received 500 mL of orange-oil"),
            ("delivery record", "On hand 469 mL"),
            ("delivery record", "{essence} Orange essence 2026-03-02 31 mL"),
            (
                "delivery record",
                "Received 500 mL 100.0 % \N{MINUS SIGN} Used here 31 mL 6.2 % = Here 469 mL",
            ),
            ("barred lot", "rejected."),
        ),
    ),
    ("component", "quarantine release approved before use"): Held(
        ("Judge.verdict",),
        (("barred lot", "judged: put on hold. Reason: no papers yet."),),
    ),
    ("distribution", "product, lot, consignee name/address, date, quantity"): Held(
        ("Move.party", "Move.amount", "Move.document", "Party.address"),
        (
            ("packed record", "Bridge Street Stall sold, DN-1 2026-03-04 3 1 Bridge Street"),
            ("packed record", "3 sold to Bridge Street Stall, DN-1"),
            ("parties", "1 Bridge Street"),
        ),
    ),
    (
        "record",
        "original/true copy/electronic; actual values; accurate, indelible, legible; "
        "concurrent; detailed; plant id + date/time + signature + product/lot",
    ): Held(
        (
            "House.name",
            "House.address",
            "Draft.by",
            "Draft.origin",
            "Draft.corrects",
            "Entry.recorded_at",
        ),
        (
            ("record", "Quayside Essences 3 Pretend Lane Batch record {essence}"),
            ("record", "House Quayside Essences Entries 52 Root "),
            ("record", "Page 1 of 4"),
        ),
    ),
    ("record", "retention"): Held(
        ("House.keep_months", "Entry.recorded_at"),
        (
            ("record", "Record kept until 2029-02-27 at least, 24 months beyond 2027-02-27"),
            ("record", "the book drops nothing"),
        ),
    ),
}
