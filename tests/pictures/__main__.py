"""Draw every paper of the demonstration and compare it with the picture that was looked at.

``python -m tests.pictures`` names each page that differs; ``--renew`` keeps the new ones, to be
looked at before they are committed, and makes the contact sheet and the pictures of the README.
"""

import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from PIL import Image

from tests.pictures.compare import TOLERANCE, differs_by
from tests.pictures.papers import ROOT, pages, papers
from tests.pictures.sheet import contact_sheet

REVIEWED = Path(__file__).parent / "reviewed"
"""Pictures that were looked at and found good."""
SHOWN = ROOT / "sample_data" / "pictures"
"""Pictures that the README shows."""


def main(is_renewal: bool) -> int:
    """Draw and compare, or renew; return how many pages differ."""
    with TemporaryDirectory() as folder:
        printed = papers(Path(folder) / "demo")
        drawn = {
            f"{name.replace(' ', '-')}-{number}": page
            for name, paper in printed.items()
            for number, page in enumerate(pages(paper), 1)
        }
        if is_renewal:
            _renew(drawn)
            _show(printed)
            return 0
    return sum(map(_is_other, drawn, drawn.values()))


def _is_other(name: str, page: Image.Image) -> bool:
    kept = REVIEWED / f"{name}.png"
    if not kept.is_file():
        print(f"{name}: nobody has looked at it yet")
        return True
    with Image.open(kept) as reviewed:
        part = differs_by(page, reviewed.convert("L"))
    if part > TOLERANCE:
        print(f"{name}: {part:.2%} of the page differ")
    return part > TOLERANCE


def _renew(drawn: dict[str, Image.Image]) -> None:
    REVIEWED.mkdir(exist_ok=True)
    for old in REVIEWED.glob("*.png"):
        old.unlink()
    for name, page in drawn.items():
        page.quantize(16).save(REVIEWED / f"{name}.png", optimize=True)


def _show(printed: dict[str, Path]) -> None:
    """Make the contact sheet, and the pictures of the README."""
    firsts = {name: pages(paper, 100)[0] for name, paper in printed.items()}
    contact_sheet(firsts).quantize(16).save(SHOWN / "papers.png", optimize=True)
    record = pages(printed["record"], 130)[0]
    record.quantize(16).save(SHOWN / "record.png", optimize=True)
    labels = pages(printed["labels"], 150)[0]
    # Two labels of the first row.
    labels.crop((0, 0, labels.width, 320)).quantize(16).save(SHOWN / "label.png", optimize=True)


if __name__ == "__main__":
    sys.exit(min(main("--renew" in sys.argv[1:]), 1))
