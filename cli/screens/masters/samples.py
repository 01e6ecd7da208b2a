"""Writing the sample formulas that come with pottle.

Guarantees: they are written whole, into a folder that is made if it is missing; what is there
stays unless asked.
"""

from importlib.resources import files
from pathlib import Path

from cli.kit.call import Call
from cli.kit.files import check_place, make_folder, write
from cli.kit.tables import print_json, print_lines
from reports.json.kit.answer import File

OTHER = "Give another folder, or --force to write over it."


def samples_folder() -> Path:
    """Return where the sample formulas are: in the program, or beside it where it is a tree."""
    program = Path(str(files("cli")))
    inside = program / "sample_data" / "formulas"
    return inside if inside.is_dir() else program.parent / "sample_data" / "formulas"


def write_samples(call: Call, folder: Path, *, force: bool) -> None:
    """Write the sample formulas into a folder."""
    samples = sorted(samples_folder().glob("*.toml"))
    make_folder(folder)
    places = [folder / sample.name for sample in samples]
    for place in places:
        check_place(place, force=force, instead=OTHER)
    for sample, place in zip(samples, places, strict=True):
        write(place, sample.read_bytes(), force=force, instead=OTHER)
    if call.json:
        print_json([File(str(place)) for place in places])
    else:
        first = "They are invented; read one, change it, and load it."
        print_lines([*(f"Written: {place}" for place in places), first])
        print_lines([f"Next: pottle formula load {places[0]}"])
