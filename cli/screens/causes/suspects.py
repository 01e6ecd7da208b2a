"""Showing suspects.

Guarantees: plain language first, the table second, the method only when asked for.
"""

from collections.abc import Sequence

from cli.kit.call import Call
from cli.kit.tables import print_json, print_lines, print_table
from ledger.service.causes.suspects import suspects
from reports.words.causes.method import explained
from reports.words.causes.steps import next_step
from reports.words.causes.suspects import HEADS, suspicion_lines, suspicion_rows, table_note


def show_suspects(
    call: Call,
    lots: Sequence[str],
    *,
    complaints: bool,
    worse_than: str | None,
    since: str | None,
    explain: bool,
) -> None:
    """Show what failed lots share, or print it as JSON."""
    found = suspects(
        call.book(),
        lots,
        complaints=complaints,
        worse_than=worse_than,
        since=since,
        by=call.writer,
    )
    if call.json:
        from reports.json.causes.suspects import suspects_answer

        print_json(suspects_answer(found))
        return
    print_lines(suspicion_lines(found))
    rows = suspicion_rows(found, everything=explain)
    if rows:
        print_lines([""])
        print_table(HEADS, rows, right="in failed,in clear,p,adjusted")
        print_lines(table_note(found, everything=explain))
    if explain:
        print_lines(["", *explained(found)])
    print_lines(["", f"Next: {next_step(found)}"])
