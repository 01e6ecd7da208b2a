"""Showing a trial compared, on a screen or on paper.

Guarantees: plain letters in a pipe; a paper is drawn whole before its file is made.
"""

from pathlib import Path

from cli.kit.call import Call
from cli.kit.files import check_place, draw
from cli.kit.sheets import check_sheet, put_sheet
from cli.kit.tables import is_screen, print_json, print_lines, print_table
from ledger.service.causes.compare import compare
from ledger.service.desk.clock import written_at
from reports.views.causes import ComparisonView, FactorView
from reports.words.causes.compare import comparison_view, trial_table
from reports.words.causes.plots import plot_lines


def show_comparison(
    call: Call, group: str, out: Path | None, csv: Path | None, *, force: bool
) -> None:
    """Show a trial compared, print it as JSON, or write it as PDF or for a spreadsheet."""
    check_sheet(csv, force=force)
    if out is not None:
        check_place(out, force=force)
    book = call.book()
    found = compare(book, group)
    view = comparison_view(found, written_at(book))
    if out is not None:
        _write_paper(view, out, force=force)
    if csv is not None:
        put_sheet(call, trial_table(view), csv, force=force)
    if call.json:
        from reports.json.causes.compare import compare_answer

        print_json(compare_answer(found, view, str(out) if out else None))
    elif out is not None:
        print_lines([f"The comparison of {found.group} is in {out}."])
    elif csv is None:
        _print(view)


def _write_paper(view: ComparisonView, out: Path, *, force: bool) -> None:
    from reports.pdf.causes.compare import comparison_paper

    draw(out, lambda paper: comparison_paper(view, paper), force=force)


def _print(view: ComparisonView) -> None:
    print_lines(view.lines)
    if view.outcome:
        print_lines(["", *view.outcome])
    for factor in view.factors:
        _print_factor(factor, view)
    for plot in view.plots:
        print_lines(["", *plot_lines(plot, is_plain=not is_screen())])
    print_lines(["", view.front, ""])
    heads = ("batch", "settings", "last look", "NTU", "yield %", "")
    rows = [
        (
            row.lot,
            row.settings,
            row.look,
            row.ntu,
            row.yield_pct,
            "not beaten" if row.is_front else "",
        )
        for row in view.batches
    ]
    print_table(heads, rows, right="NTU,yield %")
    best = next((row.lot for row in view.batches if row.is_front), view.batches[0].lot)
    print_lines(["", f"Next: pottle lot {best}"])


def _print_factor(factor: FactorView, view: ComparisonView) -> None:
    print_lines(["", factor.words])
    if factor.rows:
        heads = (factor.name, "n", *view.ages, "NTU", "yield %")
        rows = [(row.level, row.n, *row.looks, row.ntu, row.yield_pct) for row in factor.rows]
        print_table(heads, rows, right="n,NTU,yield %")
