"""The place of a file that is asked for is looked at before anything is read or recorded.

There is no book, so whatever was read first would be missed first.
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from tests.answers.said import in_folder
from tests.cli.shell import Shell

WRITING = """\
chart none --out
compare none --out
compare none --csv
complaints --csv
cost none --out
due --csv
due --ics
export --epcis
export --key-data
formula new oil --out
formula show none --out
import none --like
journal --csv
list sales --csv
packet none --out
prove none --out
seal --out
serving none --out
sheet none --out
sheet --formula none --out
sheet --blank-csv
start none 1L --out
stock --csv
stock --low none --csv
stock --spirit --csv
stock --spirit --out
trace none --csv
trace none --out
trial plan none --try rest=1h/2h --product none --kind essence --out
trial sheet none --out
"""
"""Commands up to the option of the file that they write; what they name is nowhere."""
FOLDERS = (
    ("recall none --because x --out", "balance.csv", "folder with --out, or --force"),
    ("recall none --drill --out", "recall.pdf", "folder with --out, or --force"),
    ("formula samples", "orange-syrup.toml", "folder, or --force"),
)
"""Commands up to the folder that they write into, a file that would stand there, what to do."""
OTHER_OPTION = {"sheet --blank-csv": "Give another name, or --force to write over it."}

MISSED = (
    "There is no book at none.db.",
    "The file none could not be read: No such file or directory.",
)
"""What is missed where the place is free, or may be written over."""


def check_places(name: str) -> None:
    """Fail unless a command tells of files that are in its way before it misses a book."""
    with TemporaryDirectory() as folder, in_folder(Path(folder)):
        Path("there.csv").touch()
        shell = Shell(Path("none.db"))
        for line in WRITING.splitlines():
            if line.split()[0] == name:
                _check_file(line, shell)
        for line, inside, other in FOLDERS:
            if line.split()[0] == name:
                _check_folder(line, inside, other, shell)


def _check_file(line: str, shell: Shell) -> None:
    option = line.split()[-1]
    todo = OTHER_OPTION.get(line, f"Give another name with {option}, or --force to write over it.")
    answer = shell.line(f"{line} there.csv")
    told = ["There is a file there.csv already; it was left as it is.", f"  {todo}"]
    assert (answer.exit_code, answer.out, answer.complaints) == (5, "", told), line
    if line not in OTHER_OPTION:
        over = shell.line(f"{line} there.csv --force")
        assert over.complaints[0] in MISSED, line
    assert Path("there.csv").read_bytes() == b""


def _check_folder(line: str, inside: str, other: str, shell: Shell) -> None:
    Path("pack").mkdir(exist_ok=True)
    Path("pack", inside).touch()
    answer = shell.line(f"{line} pack")
    assert (answer.exit_code, answer.out) == (5, ""), line
    assert [text.strip() for text in answer.complaints] == [
        f"There is a file pack/{inside} already; it was left as it is.",
        f"Give another {other} to write over {'it' if 'samples' in line else 'them'}.",
    ]
    assert [path.name for path in Path("pack").iterdir()] == [inside]
    Path("pack", inside).unlink()
