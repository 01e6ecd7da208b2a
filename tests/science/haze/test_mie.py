"""Scattering by a sphere: against a reference library and published cases."""

import csv
import random
import re
from math import pi
from pathlib import Path

import miepython
import pytest

from ledger.science.haze.mie import Scattered, scattered

PUBLISHED = Path("tests/reference/turbidity.csv")
FIGURES = {"Q_ext": "extinction", "Q_sca": "scattering", "asymmetry g": "asymmetry"}


def spheres(count: int) -> list[tuple[complex, float]]:
    """Return spheres of any index, half of them absorbing, a sixteenth to 60 waves across."""
    draw = random.Random(20)
    return [
        (
            complex(draw.uniform(0.8, 2), -draw.choice((0, 10 ** draw.uniform(-6, 0.3)))),
            10 ** draw.uniform(-0.7, 2.3),
        )
        for _ in range(count)
    ]


def test_a_thousand_spheres_scatter_as_in_the_reference_library_to_a_part_in_a_million() -> None:
    """The library is miepython 3.3, which goes by Wiscombe's scheme."""
    for index, size in spheres(1000):
        mine = scattered(index, size)
        extinction, scattering, _, asymmetry = miepython.efficiencies_mx(index, size)
        across, along = miepython.S1_S2(index, size, [0.0], norm="wiscombe")
        sideways = (abs(across[0]) ** 2 + abs(along[0]) ** 2) / 2
        told = (mine.extinction, mine.scattering, mine.sideways)
        assert told == pytest.approx((extinction, scattering, sideways), rel=1e-6)
        # A mean cosine may be next to nought, where a share of it says nothing.
        assert mine.asymmetry == pytest.approx(asymmetry, rel=1e-6, abs=1e-8)


def published() -> list[tuple[str, complex, str, str]]:
    """Return the published cases: quantity, index, size and value as they are printed."""
    with PUBLISHED.open(encoding="utf-8", newline="") as file:
        rows = [row for row in csv.DictReader(file) if row["kind"] == "mie"]
    asked = (re.match(r"m = (.+?); x = (.+?);", row["conditions"]) for row in rows)
    return [
        (row["quantity"], complex(match[1]), match[2], row["value"])
        for row, match in zip(rows, asked, strict=True)
        if match
    ]


@pytest.mark.parametrize(("quantity", "index", "size", "printed"), published())
def test_a_published_case_comes_out_to_its_last_printed_figure(
    quantity: str, index: complex, size: str, printed: str
) -> None:
    """Cases of MIEV0 and of Bohren and Huffman, as tests/reference/turbidity.csv quotes them.

    A size that is printed with decimals was rounded there too; the value may be off by as much.
    """
    found, off = (
        getattr(scattered(index, float(size) + more), FIGURES[quantity])
        for more in (0, half_of_last(size) if "." in size else 0)
    )
    spread = abs(off - found) + 1.02 * half_of_last(printed)
    assert found == pytest.approx(float(printed), abs=spread)


def half_of_last(printed: str) -> float:
    """Return half a unit of the last decimal of a number as it is printed.

    >>> half_of_last("0.12"), half_of_last("1.2e-05")
    (0.005, 5e-07)
    """
    mantissa, _, power = printed.partition("e")
    return float(f"5e{int(power or 0) - len(mantissa.partition('.')[2]) - 1}")


def test_all_published_cases_are_tried() -> None:
    text = PUBLISHED.read_text(encoding="utf-8")
    assert len(published()) == sum(line.startswith("mie,") for line in text.splitlines()) == 22


def test_a_drop_far_smaller_than_the_wave_scatters_by_the_law_of_rayleigh() -> None:
    """Q = 8/3 x⁴ ((m²-1)/(m²+2))², and 3/16π of it a steradian sideways (Rayleigh, textbooks)."""
    index, size = 1.1, 0.01
    found = scattered(index, size)
    whole = 8 / 3 * size**4 * ((index**2 - 1) / (index**2 + 2)) ** 2
    assert found.scattering == pytest.approx(whole, rel=1e-4, abs=0)
    assert found.sideways == pytest.approx(3 / (16 * pi) * whole * pi * size**2, rel=1e-4, abs=0)


def test_larger_drops_scatter_sideways_as_in_the_reference_library() -> None:
    """A few of the spheres above, so that each term of the series is seen at once."""
    for index, size in spheres(20):
        across, along = miepython.S1_S2(index, size, [0.0], norm="wiscombe")
        sideways = (abs(across[0]) ** 2 + abs(along[0]) ** 2) / 2
        assert scattered(index, size).sideways == pytest.approx(sideways, rel=1e-6, abs=0)


def test_what_does_not_absorb_scatters_all_that_it_takes() -> None:
    for index, size in spheres(40):
        found: Scattered = scattered(index.real, size)
        assert found.scattering == pytest.approx(found.extinction, rel=1e-9)
