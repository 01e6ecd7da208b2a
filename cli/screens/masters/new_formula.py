"""The file of a formula to begin with.

Guarantees: it names materials of the book where there are any that fit, so that it can be loaded
as it stands; a file that is there is not written over unless that is asked.
"""

from collections.abc import Sequence
from pathlib import Path

from cli.kit.call import Call
from cli.kit.files import check_place, write
from cli.kit.tables import print_json, print_lines
from ledger.domain.entries import Material
from ledger.domain.entries.choices import MaterialKind
from ledger.service.masters.material import materials
from ledger.service.masters.short_names import read_code
from reports.json.masters.new_formula import NewFormulaAnswer
from reports.words.masters.starter import starter_formula


def write_starter(
    call: Call, code: str, product: str | None, oil: str | None, out: Path | None, *, force: bool
) -> None:
    """Write the file, and say what comes next."""
    name = read_code(code, "formula", "lemon-essence")
    place = out or Path(f"{name}.toml")
    check_place(place, force=force)
    known = materials(call.book())
    spirit = _of_kind(known, MaterialKind.ETHANOL)
    clarifier = _of_kind(known, MaterialKind.CLARIFIER)
    text = starter_formula(
        name,
        product or name.replace("-", " ").capitalize(),
        oil or _oil(known, name),
        spirit or "spirit",
        clarifier,
    )
    write(place, text.encode(), force=force)
    if call.json:
        print_json(NewFormulaAnswer(name, str(place)))
    else:
        print_lines([f"A formula to begin with is in {place}: change it to what you do."])
        print_lines([f"Next: pottle formula load {place}"])


def _of_kind(known: Sequence[Material], kind: MaterialKind) -> str | None:
    return next((item.code for item in known if item.sort is kind), None)


def _oil(known: Sequence[Material], name: str) -> str:
    """Return the oil that shares a word with a formula's short name, else the first."""
    oils = [item.code for item in known if item.sort is MaterialKind.OIL]
    words = set(name.split("-"))
    near = [code for code in oils if words & set(code.split("-"))]
    return (near or oils or ["oil"])[0]
