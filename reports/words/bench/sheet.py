"""The view of a batch sheet: what a batch is made from at the bench, on paper.

Guarantees: a row for everything that the formula calls for, with blanks for what must be logged
and for nothing else; its number is the lot's code, so that the same batch has one sheet. Refuses:
lots that are not batches.
"""

from ledger.domain.amounts.quantity import show_exactly
from ledger.domain.entries import Formula, Material, Start
from ledger.domain.entries.masters import FormulaStep
from ledger.domain.lots.state import latest, name, opener
from ledger.domain.masters.formulas import version_of
from ledger.domain.masters.weighing import asked
from ledger.errors import RefusedError
from ledger.service.bench.draws import Proposed
from ledger.service.lots.dossier import Dossier
from reports.kit.format import clock, initials, tidy
from reports.kit.frame import frame_of
from reports.views.bench import BatchSheetView, SheetRow
from reports.words.glass.cautions import own_caution
from reports.words.lots.record import cautions
from reports.words.masters.formula import limits, percent_of, span, within

SIGNED = ("by",)
"""What an act is signed with that tells its times itself."""
DONE = ("day, time", *SIGNED)
"""What every act is signed with."""
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
    steps = formula.steps if formula else WITHOUT_FORMULA
    names = {item.code: item for item in materials}
    used = [names[code] for item in proposed if (code := item.wanted.called.material) in names]
    told = dict.fromkeys((*own_caution(formula), *cautions(dossier), *_cautions_of(used)))
    return BatchSheetView(
        frame=frame_of(dossier.house, dossier.seal, dossier.written_at),
        number=state.code,
        title=name(state),
        facts=_facts(dossier, start, formula),
        additions=_additions(proposed) if formula else _free(),
        steps=tuple(_steps(steps)),
        cautions=tuple(told),
        how_to_type=f"Typed in afterwards with --sheet {state.code}/CODE --at WHEN --by INITIALS.",
    )


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
        parts = (show_exactly(asked(line), line.measure), within(line), lots, short)
        words = "; ".join(part for part in parts if part)
        rows.append(SheetRow(f"A{number}", item.name, words, ("lot", "amount", *DONE)))
    return tuple(rows)


def _free() -> tuple[SheetRow, ...]:
    blanks = ("what", "lot", "amount", *DONE)
    return tuple(SheetRow(f"A{number}", "", "", blanks) for number in range(1, FREE_ADDITIONS + 1))


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
