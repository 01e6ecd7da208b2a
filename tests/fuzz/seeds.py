"""What fuzzing begins with: words as the README has them, and documents of a book made here."""

import json
from collections.abc import Callable, Iterable
from functools import cache
from pathlib import Path
from typing import Any
from unittest.mock import patch

from ledger.domain.evidence.proofs import proof_text
from ledger.service.copies.export import export
from ledger.service.copies.season_verbs import VERBS
from ledger.service.desk.book import How, Recorded, open_book
from ledger.service.evidence.prove import prove
from ledger.service.evidence.seal import seal
from ledger.store.copies.lines import DETAILS_BEGIN
from tests.conftest import new_keeper
from tests.fuzz.books import folder, silent, whole
from tests.path import fill_every_table
from tests.service.copies.season_folder import GOOD

SAMPLES = Path(__file__).parents[2] / "sample_data"
AMOUNTS = (
    *("30mL", "0.5 fl oz", "1 1/2 fl oz", "1½ US gal", "1 lb 4 oz", "15 g", "200", "0,5 L", "2 kg"),
    *("1 imp gal 2 pt", "12 each", "1,000 mL", "3 drops", "15 x 250mL", "6×0.75L", "-5 mL", "1e3L"),
)
TIMES = (
    *("now", "14:30", "yesterday 18:00", "-2h", "2026-03-02 14:30", "~14:30", "about 9:05", "48h"),
    *("2026-03-02", "2026-03-29 01:30", "2026-03-02T14:30:00+02:00", "1d 6h", "30min", "today"),
)
CODES = ("OIL-007-1", "soo-001-3", "OE-001-6", "BATCH 7", "Crème de vanille", "Œillet", "A-B")
NUMBERS = (
    *("20", "20-25 µm", "40kPa", "2.1", "−5 °C", "96.3%", "0,845", "0.845 g/mL", "54", "9" * 20),
    *("1:7", "7", "240mL", "orange-oil", "50 %", "+3"),
)
STRENGTHS = (
    *("96.3%\n80%\n1L", "190 proof\n40\n500mL\n25C", "3:2\nweight", "1:1\nvolume\n0.85", "65Bx"),
    *("850 g/L\n\n\n\n4C", "65 Bx\n\n\n28C\n4C", "1.33 SG", "94 % w/w\n50%\n2kg", "68F"),
)
ENDLESS = tuple(piece * 5000 for piece in ("9", "9 ", " ", ".", "0.", "1:", "-", "x"))
LOOKS = ("ring, floc", "clear", "hazy", "20", "20–25", "macerate", "after a night's rest", "oil")


def words(*lists: Iterable[str]) -> Callable[[], list[bytes]]:
    """Return a maker of seeds from lists of words, and from pieces said without end."""
    return lambda: [word.encode() for each in (*lists, ENDLESS) for word in each]


def formulas() -> list[bytes]:
    """Return the formulas that come with the book."""
    return [path.read_bytes() for path in sorted(SAMPLES.rglob("*.toml")) if path.stem != "house"]


def seasons() -> list[bytes]:
    """Return the files of the small season, and those of the sample that have its names."""
    sample = {name: SAMPLES / "season" / name for name in GOOD}
    texts = [(name, text.encode()) for name, text in GOOD.items()]
    texts += [(name, path.read_bytes()[:3000]) for name, path in sample.items() if path.exists()]
    return [name.encode() + b"\n" + text for name, text in texts]


@cache
def book_lines() -> bytes:
    """Return the book with a row in every table, in lines."""
    path = folder() / "seed.jsonl"
    with open_book(str(whole())) as book:
        export(book, path, silent)
    return path.read_bytes()


def books() -> list[bytes]:
    """Return the book in lines."""
    return [book_lines()]


def entries() -> list[bytes]:
    """Return the text of one entry of each kind, the first of it."""
    found = {json.loads(line)["kind"]: line for line in reversed(_texts())}
    return list(found.values())


def seals() -> list[bytes]:
    """Return the seal of the book, as it is printed and run together."""
    with open_book(str(whole())) as book:
        told = seal(book).lines
    return ["\n".join(told).encode(), " ".join(told).upper().encode(), b"House X\nEntries 1\nRoot "]


def proofs() -> list[bytes]:
    """Return proofs of a few lots of the book."""
    with open_book(str(whole())) as book:
        return [proof_text(prove(book, code)).encode() for code in _codes()]


def _texts() -> list[bytes]:
    _, *lines = book_lines().splitlines()
    return [line for line in lines if not line.startswith(DETAILS_BEGIN.encode())]


def _codes() -> list[str]:
    heard = [json.loads(line) for line in _texts()]
    return [entry["opens"]["code"] for entry in heard if "opens" in entry][:9]


@cache
def acts() -> list[bytes]:
    """Return every act by which the book was made, as it was said."""
    heard: list[bytes] = []

    def listening(verb: str) -> Callable[..., Recorded]:
        def act(book: Any, how: How, **told: str) -> Recorded:
            about = {"by": how.by, "at": how.at, "because": how.because}
            pairs = {**told, **{name: text for name, text in about.items() if text}}
            heard.append("\n".join([verb, *(f"{a}={b}" for a, b in pairs.items())]).encode())
            return VERBS[verb](book, how, **told)

        return act

    with (
        patch("tests.keeper.VERBS", {verb: listening(verb) for verb in VERBS}),
        new_keeper(str(folder() / "heard.db")) as keeper,
    ):
        fill_every_table(keeper)
    return heard
