"""Formulas in words: shown, compared, and with their amounts for a volume.

Guarantees: every limit of a formula is told, in the same words on screen and sheet.
"""

from collections.abc import Iterator
from difflib import SequenceMatcher

from ledger.domain.amounts.quantity import show_exactly
from ledger.domain.entries import Formula
from ledger.domain.entries.masters import FormulaStep, Keeping
from ledger.domain.masters.formulas import Called, Wanted, called_for, version_of, wanted
from ledger.domain.masters.weighing import asked, limits_asked
from reports.kit.card import Card, CardPart, rows_of
from reports.kit.format import celsius, duration, plural, poured, scaled, tidy
from reports.kit.frame import Frame, Heading
from reports.words.entries.bench import looked_at_words, pores

Row = tuple[str, ...]


def percent_of(mpct: int | None) -> str:
    """Return a share in per cent, or nothing.

    >>> percent_of(2500), percent_of(None)
    ('2.5 %', '')
    """
    return "" if mpct is None else scaled(mpct, 1000, "%")


def span(low: str, high: str) -> str:
    """Return the words for two ends of which either may be missing.

    >>> span("24 h", "7 d"), span("24 h", ""), span("", "7 d")
    ('24 h to 7 d', 'at least 24 h', 'at most 7 d')
    """
    if low and high:
        return f"{low} to {high}"
    return f"at least {low}" if low else f"at most {high}" if high else ""


def limits(step: FormulaStep) -> str:
    """Return the limits of a step in words."""
    low, high = step.minutes_min, step.minutes_max
    cold, warm = step.temp_min_mdegc, step.temp_max_mdegc
    parts = (
        f"for {step.rest_for}" if step.rest_for else "",
        looked_at_words(step.looked_at) if step.looked_at else "",
        step.dilution or "",
        span(
            duration(low) if low is not None else "",
            duration(high) if high is not None else "",
        ),
        span(celsius(cold) if cold is not None else "", celsius(warm) if warm is not None else ""),
        f"at most {pores(None, step.pore_max_nm)}" if step.pore_max_nm is not None else "",
        f"{plural(step.passes_min, 'pass', 'passes')} or more" if step.passes_min else "",
        f"precoat at least {tidy(step.precoat_min.written)}" if step.precoat_min else "",
        f"{step.worst} or better" if step.worst else "",
        f"{duration(step.age_minutes)} after finishing" if step.age_minutes is not None else "",
    )
    return ", ".join(part for part in parts if part)


def keeps(row: Keeping) -> str:
    """Return how long a product keeps, in words."""
    opened = f", {plural(row.opened_days, 'day')} once opened" if row.opened_days else ""
    brix = row.brix_min_mpct
    base = f" if its base syrup reads {scaled(brix, 1000, '°Bx')} or more" if brix else ""
    return f"{plural(row.days, 'day')} {row.storage}{opened}{base}"


def facts_of(formula: Formula) -> tuple[tuple[str, str], ...]:
    """Return what is told of a formula besides its lines and steps, label and value."""
    low, high = formula.yield_min_mpct, formula.yield_max_mpct
    weak, strong = formula.abv_min_mpct, formula.abv_max_mpct
    rows = (
        ("product", formula.product),
        ("kind", str(formula.product_kind)),
        ("basis", tidy(formula.basis.written)),
        ("wanted clarity", str(formula.wanted_clarity or "")),
        ("pour", poured(formula.pour_parts) if formula.pour_parts else ""),
        (
            "best before",
            f"{plural(formula.best_before_days, 'day')} from finishing"
            if formula.best_before_days
            else "",
        ),
        *(("keeps", keeps(row)) for row in formula.keeping),
        ("yield", span(percent_of(low), percent_of(high))),
        ("strength", span(percent_of(weak), percent_of(strong))),
        ("claim", formula.claim or ""),
        ("packaging", formula.packaging or ""),
        ("label", formula.label_text or ""),
        ("caution", formula.caution or ""),
        ("prepared by", formula.prepared_by or "nobody named"),
        ("checked by", checker(formula)),
        ("valid from", str(formula.valid_from or "")),
    )
    return tuple((label, value) for label, value in rows if value)


LINE, SHORT = "_" * 30, "_" * 16
"""Lines to sign and to date on."""
SIGNED = (f"Prepared by {LINE} Date {SHORT}", f"Checked by {LINE} Date {SHORT}")
"""Who signs a version."""


def formula_paper(formula: Formula, frame: Frame, *, is_withdrawn: bool) -> Card:
    """Return a version of a formula as a paper shows it, to be signed by who prepared it."""
    return Card(
        frame,
        Heading(
            "Master formula",
            version_of(formula),
            formula.product,
            "withdrawn" if is_withdrawn else "",
        ),
        (
            CardPart("What it says", heads=("formula", "says"), rows=facts_of(formula)),
            CardPart(
                f"What goes in for {tidy(formula.basis.written)}",
                heads=("what", "amount", "overage", "tolerance", "within"),
                rows=rows_of(line_rows(formula, formula.basis.amount)),
            ),
            CardPart(
                "What is done",
                heads=("step", "act", "what to do", "limits"),
                rows=rows_of(step_rows(formula)),
            ),
            CardPart("Signed", above=SIGNED),
        ),
    )


def checker(formula: Formula) -> str:
    """Return who checked a formula; by the same person or by nobody is said so."""
    if formula.checked_by is None:
        return "nobody yet"
    same = formula.checked_by == formula.prepared_by
    return f"{formula.checked_by}, who prepared it too" if same else formula.checked_by


def line_rows(formula: Formula, target_ul: int) -> list[Row]:
    """Return what goes in for a volume: code, amount, overage, tolerance, from, to."""
    return [_line_row(line) for line in wanted(formula, target_ul)]


def _line_row(line: Wanted) -> Row:
    return (
        line.called.code,
        show_exactly(asked(line), line.measure),
        percent_of(line.line.overage_mpct),
        percent_of(line.line.tolerance_mpct),
        within(line),
    )


def within(line: Wanted) -> str:
    """Return the limits of a line in words, or nothing."""
    limits = limits_asked(line)
    return " to ".join(show_exactly(limit, line.measure) for limit in limits) if limits else ""


def step_rows(formula: Formula) -> list[Row]:
    """Return the steps: number, verb, what to do, limits."""
    return [
        (str(number), step.verb, step.words or "", limits(step))
        for number, step in enumerate(formula.steps, 1)
    ]


def differences(old: Formula, new: Formula) -> list[Row]:
    """Return what differs between two versions: what, in the old one, in the new one."""
    return [*_facts_differ(old, new), *_lines_differ(old, new), *_steps_differ(old, new)]


def _facts_differ(old: Formula, new: Formula) -> Iterator[Row]:
    before, after = _gathered(old), _gathered(new)
    for label in dict.fromkeys([*before, *after]):
        if before.get(label) != after.get(label):
            yield label, before.get(label, "–"), after.get(label, "–")


def _gathered(formula: Formula) -> dict[str, str]:
    gathered: dict[str, str] = {}
    for label, value in facts_of(formula):
        gathered[label] = f"{gathered[label]}; {value}" if label in gathered else value
    return gathered


def _lines_differ(old: Formula, new: Formula) -> Iterator[Row]:
    before, after = (
        {called_for(line): _line_words(formula, called_for(line)) for line in formula.lines}
        for formula in (old, new)
    )
    for called in dict.fromkeys([*before, *after]):
        if before.get(called) != after.get(called):
            yield called.code, before.get(called, "–"), after.get(called, "–")


def _line_words(formula: Formula, called: Called) -> str:
    lines = (line for line in formula.lines if called_for(line) == called)
    return "; ".join(
        ", ".join(
            part
            for part in (
                tidy(line.amount.written),
                f"overage {percent_of(line.overage_mpct)}" if line.overage_mpct else "",
                f"± {percent_of(line.tolerance_mpct)}" if line.tolerance_mpct else "",
            )
            if part
        )
        for line in lines
    )


def _steps_differ(old: Formula, new: Formula) -> Iterator[Row]:
    before, after = ([_step_words(step) for step in formula.steps] for formula in (old, new))
    # Else what comes often in a long list is left out of the comparison.
    matcher = SequenceMatcher(None, before, after, autojunk=False)
    for tag, first, last, begin, end in matcher.get_opcodes():
        if tag == "equal":
            continue
        # What was exchanged may be longer in either version.
        for place in range(max(last - first, end - begin)):
            was_there, is_there = first + place < last, begin + place < end
            was = before[first + place] if was_there else "–"
            now = after[begin + place] if is_there else "–"
            yield f"step {(first if was_there else begin) + place + 1}", was, now


def _step_words(step: FormulaStep) -> str:
    told = "; ".join(part for part in ((step.words or "").removesuffix("."), limits(step)) if part)
    return f"{step.verb}: {told}" if told else step.verb
