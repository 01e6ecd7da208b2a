"""The seal on a screen or in a file.

Guarantees: the file has the lines of the screen. Refuses: to write over a file unless asked.
"""

from pathlib import Path

from cli.kit.call import Call
from cli.kit.files import check_place, write
from cli.kit.tables import print_json, print_lines
from ledger.service.evidence.seal import seal
from reports.json.evidence.seal import seal_answer


def print_seal(call: Call, out: Path | None, *, force: bool) -> None:
    """Print the seal of the book as it is now, and write it to a file if one is named."""
    if out:
        check_place(out, force=force)
    made = seal(call.book())
    if out:
        write(out, "".join(f"{line}\n" for line in made.lines).encode(), force=force)
    if call.json:
        print_json(seal_answer(made, str(out) if out else None))
    else:
        print_lines(made.lines)
