"""Showing how batches turned out, on a screen or on paper.

Guarantees: plain letters in a pipe; a paper is drawn whole before its file is made.
"""

from pathlib import Path

from cli.kit.call import Call
from cli.kit.files import check_place, draw
from cli.kit.tables import is_screen, print_json, print_lines, print_table
from ledger.errors import InputError
from ledger.service.causes.chart import chart_of, chartable
from ledger.service.desk.clock import written_at
from reports.json.causes.chart import ChartableTold, chart_answer
from reports.views.causes import ChartView
from reports.words.causes.chart import LISTED, after_chart, chart_view
from reports.words.causes.plots import plot_lines


def show_chart(call: Call, asked: str, out: Path | None, *, force: bool) -> None:
    """Show how the batches of a product or a kind turned out; of nothing named, what there is.

    Raises:
        InputError: A paper is asked for of nothing.
    """
    if not asked and out is not None:
        raise InputError(
            "Nothing is named to chart.", "Name a product, or a kind such as essence or syrup."
        )
    if not asked:
        _list(call)
        return
    if out is not None:
        check_place(out, force=force)
    book = call.book()
    found = chart_of(book, asked)
    view = chart_view(found, written_at(book))
    if out is not None:
        _write_paper(view, out, force=force)
    if call.json:
        print_json(chart_answer(found, view, str(out) if out else None))
    elif out is not None:
        print_lines([f"The chart of {found.of} is in {out}."])
    else:
        _print(view, after_chart(found))


def _list(call: Call) -> None:
    rows = chartable(call.book())
    if call.json:
        print_json([ChartableTold(*row) for row in rows])
        return
    print_table(
        LISTED, [(product, kind, str(count)) for product, kind, count in rows], right="batches"
    )
    most = max(rows, key=lambda row: row[2])[0] if rows else ""
    print_lines([f'Next: pottle chart "{most}"' if most else "Next: pottle start FORMULA VOLUME"])


def _write_paper(view: ChartView, out: Path, *, force: bool) -> None:
    from reports.pdf.causes.chart import chart_paper

    draw(out, lambda paper: chart_paper(view, paper), force=force)


def _print(view: ChartView, step: str) -> None:
    print_lines(view.lines)
    for item in view.figures:
        head = plot_lines(item.plot, is_plain=not is_screen()) if item.plot else [item.title]
        print_lines(["", *head, *item.words])
    print_lines(["", f"Next: {step}"])
