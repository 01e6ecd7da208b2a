"""Every paper of the demonstration, by name, as PNG pictures of its first pages.

Guarantees: the same season gives the same pictures; what prints labels of bottles, which would
write in the book, is the sheet that the demonstration itself has printed.
"""

import json
import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pypdfium2 as pdfium  # type: ignore[import-untyped]
from PIL import Image

ROOT = Path(__file__).parents[2]
TODAY = "2026-10-06"
"""The day on which the season ends, so that every picture is of the same days."""
DPI = 50
"""Dots an inch: enough to see that a line moved, few enough to keep."""
MOST_PAGES = 4
"""Pages of a paper that are kept."""
COMMANDS = {
    "record of bottles": "record {cloudy} --out {out}",
    "record of a messy batch": "record LE-002-P --out {out}",
    "record of a delivery": "record SOO-001-3 --out {out}",
    "batch sheet": "sheet --formula orange-syrup --target 8L --out {out}",
    "batch sheet of a batch": "sheet LE-002-P --out {out}",
    "trace": "trace {cloudy} --out {out}",
    "packet": "packet {cloudy} --out {out}",
    "spirit account": "stock --spirit --from 2026-01-01 --to 2026-10-06 --out {out}",
    "trial": 'compare "cloudy orange" --out {out}',
    "control chart": "chart syrup --out {out}",
    "label received": "label SOO-001-3 --kind received --layout 100x50 --out {out}",
    "label hold": "label {cloudy} --kind hold --layout 100x50 --out {out}",
    "label flammable": "label OE-001-5 --kind flammable --layout 100x50 --out {out}",
    "label vessel": "label OE-001-5 --kind vessel --layout 100x50 --out {out}",
    "label case": "label {cloudy} --kind case --gtin 9521234543213 --layout 100x50 --out {out}",
    "layout": "label --calibrate --layout 3x7 --out {out}",
}
"""What prints each paper; none of it writes in the book."""


def pottle(*words: str) -> str:
    """Run a command and return what it says.

    Raises:
        RuntimeError: It failed.
    """
    env = {name: value for name, value in os.environ.items() if not name.startswith("POTTLE")}
    done = subprocess.run(
        [sys.executable, "-m", "cli.program", *words],
        cwd=ROOT,
        env={**env, "POTTLE_BY": "NM"},
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode:
        raise RuntimeError(f"{' '.join(words)}: {done.stderr}")
    return done.stdout


def papers(folder: Path) -> dict[str, Path]:
    """Play the demonstration into a folder and print all its papers; return them by name."""
    told = json.loads(pottle("demo", str(folder), "--today", TODAY, "--json"))
    printed = {"labels": folder / "labels.pdf", "record": folder / "record.pdf"}
    for name, command in COMMANDS.items():
        out = folder / f"{name.replace(' ', '-')}.pdf"
        words = [word.format(cloudy=told["code"], out=out) for word in _split(command)]
        pottle("--ledger", told["ledger"], *words)
        printed[name] = out
    pottle(
        "--ledger", told["ledger"], "recall", told["code"], "--drill", "--out", str(folder / "r")
    )
    return {**printed, "recall drill": folder / "r" / "recall.pdf"}


def _split(command: str) -> Iterator[str]:
    for number, part in enumerate(command.split('"')):
        yield from [part] if number % 2 else part.split()


def pages(paper: Path, dpi: int = DPI) -> list[Image.Image]:
    """Return the first pages of a paper in grey."""
    with pdfium.PdfDocument(paper) as document:
        kept = range(min(len(document), MOST_PAGES))
        return [document[n].render(scale=dpi / 72, grayscale=True).to_pil() for n in kept]
