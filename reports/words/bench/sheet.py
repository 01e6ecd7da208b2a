"""The view of a batch sheet: what a batch is made from at the bench, on paper.

Guarantees: a row for everything that the formula calls for, in the order of the work, with blanks
for what must be logged and for nothing else; its number is the lot's code, so that the same batch
has one sheet. Refuses: lots that are not batches.
"""

from msgspec.structs import replace

from ledger.domain.amounts.quantity import Quantity, show_exactly
from ledger.domain.entries import Formula, Material, Start
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.lots.state import latest, name, opener
from ledger.domain.masters.formulas import version_of
from ledger.domain.masters.weighing import asked
from ledger.errors import RefusedError
from ledger.service.bench.draws import Proposed
from ledger.service.lots.dossier import Dossier
from reports.kit.format import clock, initials, tidy
from reports.kit.frame import Frame, frame_of
from reports.views.bench import BatchSheetView, SheetRow
from reports.words.glass.cautions import own_caution
from reports.words.lots.record import cautions
from reports.words.masters.formula import checker, limits, percent_of, span, within

SIGNED = ("by", "checked")
"""What an act is signed with that tells its times itself."""
DONE = ("day, time", *SIGNED)
"""What every act is signed with."""
WEIGHED = ("lot", "amount", "day, time", "weighed", "checked")
"""What is written down of what goes in."""
FREE = ("what", "lot", "amount", "day, time", "by", "checked")
"""What is written down in a row to spare."""
SPARE = 3
"""Rows to spare at the end of a sheet."""
COPY = "COPY"
"""Stands across a sheet of a batch of which more is in the book than that it was begun."""
BLANKS: dict[str, tuple[str, ...]] = {
    "add": ("lot", "amount", "°C"),
    "rest": ("begun", "ended", "°C", "shaken"),
    "filter": ("µm", "in mL", "out mL", "first mL", "°C", "kPa"),
    "rinse": ("lot", "in mL", "out mL", "to"),
    "decant": ("drawn mL", "heel mL"),
    "measure": ("what", "reading", "°C"),
    "makeup": ("to mL", "lot", "used mL", "°C"),
    "look": ("grade", "NTU", "°C", "age"),
    "finish": ("out mL", "waste mL", "°C", "work min"),
    "bottle": ("count x size", "bottles lot", "caps lot", "fill g"),
    "labels": ("printed", "used", "spoiled"),
    "check": ("what",),
    "note": ("words",),
}
"""What is logged of each act."""
WITHOUT_FORMULA = (
    FormulaStep("rest"),
    FormulaStep("rest"),
    FormulaStep("filter"),
    FormulaStep("filter"),
    FormulaStep("look"),
    FormulaStep("finish"),
    FormulaStep("look"),
    FormulaStep("note"),
)
"""Rows of a sheet for a batch that follows no formula."""
FREE_ADDITIONS = 6
"""Blank additions of such a sheet."""


def batch_sheet_view(
    dossier: Dossier, proposed: tuple[Proposed, ...], materials: tuple[Material, ...]
) -> BatchSheetView:
    """Return the sheet of a batch.

    Raises:
        RefusedError: The lot was not begun as a batch.
    """
    state = dossier.state
    start = latest(state, Start)
    if start is None:
        raise RefusedError(
            f"{state.code} is no batch, so there is no sheet to make it from.",
            "Name a lot that was begun with: pottle start ...",
        )
    formula = dossier.formula
    names = {item.code: item for item in materials}
    used = [names[code] for item in proposed if (code := item.wanted.called.material) in names]
    told = dict.fromkeys((*own_caution(formula), *cautions(dossier), *_cautions_of(used)))
    steps = _steps(formula.steps if formula else WITHOUT_FORMULA)
    return BatchSheetView(
        frame=frame_of(dossier.house, dossier.seal, dossier.written_at),
        number=state.code,
        title=name(state),
        facts=_facts(dossier, start, formula),
        rows=(*_in_order(_additions(proposed) if formula else _free(), steps), *_spare()),
        cautions=tuple(told),
        how_to_type=f"Typed in afterwards with --sheet {state.code}/CODE --at WHEN --by INITIALS.",
        across=COPY if len(state.entries) > 1 else "",
    )


def formula_sheet_view(
    formula: Formula,
    target: Quantity,
    proposed: tuple[Proposed, ...],
    materials: tuple[Material, ...],
    frame: Frame,
) -> BatchSheetView:
    """Return the sheet of a batch that is not begun, by a formula."""
    names = {item.code: item for item in materials}
    used = [names[code] for item in proposed if (code := item.wanted.called.material) in names]
    low, high = formula.yield_min_mpct, formula.yield_max_mpct
    facts = (
        ("Formula", version_of(formula)),
        ("Target", tidy(target.written)),
        ("Yield", span(percent_of(low), percent_of(high))),
        ("Clarity", str(formula.wanted_clarity or "")),
        ("Prepared by", formula.prepared_by or "nobody named"),
        ("Checked by", checker(formula)),
    )
    begin = SheetRow("B", "begin", "the lot that the book gives", ("lot", "vessel", *DONE))
    return BatchSheetView(
        frame=frame,
        number=version_of(formula),
        title=formula.product,
        facts=tuple((label, value) for label, value in facts if value),
        rows=(begin, *_in_order(_additions(proposed), _steps(formula.steps)), *_spare()),
        cautions=tuple(dict.fromkeys((*own_caution(formula), *_cautions_of(used)))),
        how_to_type=f"Begun with pottle start {formula.code} {tidy(target.written)}, then typed in "
        "with --sheet LOT/CODE --at WHEN --by INITIALS.",
    )


def _in_order(additions: tuple[SheetRow, ...], steps: list[SheetRow]) -> tuple[SheetRow, ...]:
    """Put what goes in and what is done into the order of the work.

    What is made here goes in once the base of it was read, since its strength would tell on the
    reading (common practice, no source); the steps before any other are then those readings.
    """
    made = tuple(row for row in additions if row.code.endswith(MADE))
    bought = tuple(row for row in additions if row not in made)
    read = 0
    while made and bought and read < len(steps) and steps[read].act == "measure":
        read += 1
    later = tuple(replace(row, code=row.code.removesuffix(MADE)) for row in made)
    return (*bought, *steps[:read], *later, *steps[read:])


MADE = "*"
"""Marks, until rows are in order, what was made here."""


def _spare() -> tuple[SheetRow, ...]:
    return tuple(SheetRow(f"X{number}", "", "", FREE) for number in range(1, SPARE + 1))


def _cautions_of(materials: list[Material]) -> tuple[str, ...]:
    return tuple(f"{item.name}: {item.caution}" for item in materials if item.caution)


def _facts(dossier: Dossier, start: Start, formula: Formula | None) -> tuple[tuple[str, str], ...]:
    first = opener(dossier.state)
    low, high = (formula.yield_min_mpct, formula.yield_max_mpct) if formula else (None, None)
    which = version_of(formula) if formula else "none"
    rows = (
        ("Formula", which),
        ("Target", tidy(start.target.written)),
        ("Yield", span(percent_of(low), percent_of(high))),
        ("Begun", clock(first.draft.happened) if first else ""),
        ("By", initials(first) if first else ""),
        ("Vessel", start.vessel or ""),
        ("Clarity", f"{formula.wanted_clarity}" if formula and formula.wanted_clarity else ""),
        ("Trial", start.trial_group or ""),
    )
    return tuple((label, value) for label, value in rows if value)


def _additions(proposed: tuple[Proposed, ...]) -> tuple[SheetRow, ...]:
    rows = []
    for number, item in enumerate(proposed, 1):
        line = item.wanted
        lots = ", ".join(
            f"{drawn.lot} {show_exactly(drawn.amount, line.measure)}" for drawn in item.drawn
        )
        short = f"short {show_exactly(item.short, line.measure)}" if item.short > 0 else ""
        words = "; ".join(part for part in (within(line), lots, short) if part)
        mark = MADE if line.called.formula else ""
        target = show_exactly(asked(line), line.measure)
        rows.append(SheetRow(f"A{number}{mark}", item.name, words, WEIGHED, target))
    return tuple(rows)


def _free() -> tuple[SheetRow, ...]:
    return tuple(SheetRow(f"A{number}", "", "", FREE) for number in range(1, FREE_ADDITIONS + 1))


def _steps(steps: tuple[FormulaStep, ...]) -> list[SheetRow]:
    rows = []
    for number, step in enumerate(steps, 1):
        words = "; ".join(
            part for part in ((step.words or "").removesuffix("."), limits(step)) if part
        )
        # A rest has blanks of its own for when it was.
        signed = SIGNED if step.verb == "rest" else DONE
        precoat = ("precoat g",) if step.precoat_min else ()
        blanks = (*precoat, *BLANKS.get(step.verb, ("words",)), *signed)
        times = step.passes_min or 1
        for turn in range(times):
            code = f"S{number}" + ("abcdefgh"[turn : turn + 1] if times > 1 else "")
            again = f"pass {turn + 1}" if turn else words
            rows.append(SheetRow(code, step.verb, again, blanks))
    return rows
