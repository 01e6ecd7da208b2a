"""The level that is left when every failure counts as an asking."""

from pathlib import Path

import pytest

from ledger.science.statistics.looks import share_left


def test_it_never_grows_and_falls_with_each_doubling() -> None:
    shares = [share_left(failures) for failures in range(1, 200)]
    assert shares == sorted(shares, reverse=True)
    assert shares[0] < 1
    for failures in (5, 12, 60):
        ratio = float(share_left(2 * failures) / share_left(failures))
        assert ratio == pytest.approx(2**-1.5, rel=1e-3)


def test_what_each_doubling_takes_has_an_end() -> None:
    assert sum(share_left(5 * 2**n) for n in range(40)) < 1.3


def test_the_guide_tells_what_is_left_of_the_level() -> None:
    page = (Path(__file__).parents[3] / "cli" / "guide" / "trace.md").read_text("utf-8")
    heads, _, told = page[page.index("| failures so far") :].splitlines()[:3]
    most = [int(head.split()[-1]) for head in heads.split("|")[2:-1]]
    levels = [float(level.strip(" %")) for level in told.split("|")[2:-1]]
    assert most == [5, 10, 20, 40, 80]
    assert levels == [float(f"{5 * float(share_left(number)):.2g}") for number in most]
