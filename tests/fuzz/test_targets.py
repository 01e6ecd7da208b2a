"""The targets of fuzzing hold for what it begins with and for whatever is near it or anything."""

from pathlib import Path
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ledger.errors import InputError
from tests.fuzz.findings import keeping
from tests.fuzz.laws import BrokenLawError, attempt
from tests.fuzz.mutators import blindly
from tests.fuzz.table import read_run
from tests.fuzz.targets import TARGETS

ANYTHING = st.binary(max_size=60) | st.text(max_size=60).map(
    lambda text: text.encode("utf-8", "replace")
)


@pytest.mark.parametrize("name", TARGETS)
def test_the_laws_hold_for_every_seed(name: str) -> None:
    seeds = TARGETS[name].seeds()
    assert seeds
    for seed in seeds:
        TARGETS[name].check(seed)


@pytest.mark.parametrize("name", TARGETS)
@settings(max_examples=20)
@given(data=ANYTHING)
def test_the_laws_hold_for_anything(name: str, data: bytes) -> None:
    TARGETS[name].check(data)


@pytest.mark.parametrize("name", TARGETS)
@given(number=st.integers(0, 2**32))
@settings(max_examples=20)
def test_the_laws_hold_for_a_changed_seed(name: str, number: int) -> None:
    target, chance = TARGETS[name], Random(number)
    data = chance.choice(target.seeds())
    blind = blindly(chance)
    target.check(target.mutate(data, chance, blind) if target.mutate else blind(data))


@pytest.mark.parametrize(
    ("what", "law"),
    [
        ("No full stop", "a problem is a whole sentence: 'No full stop'"),
        ("", "a problem is a whole sentence: ''"),
    ],
)
def test_an_error_that_is_no_sentence_breaks_a_law(what: str, law: str) -> None:
    def refuse() -> None:
        raise InputError(what)

    with pytest.raises(BrokenLawError) as raised:
        attempt(refuse)
    assert str(raised.value) == law


def test_a_finding_is_kept_once_and_the_next_input_is_tried(tmp_path: Path) -> None:
    def check(data: bytes) -> None:
        attempt(lambda: int(data))

    one = keeping(check, "numbers", tmp_path)
    for data in (b"1", b"x", b"yy"):
        one(data)
    kept, told = sorted(tmp_path.iterdir())
    assert kept.name == "numbers-2d711642.input"
    assert kept.read_bytes() == b"x"
    assert "ValueError: invalid literal for int() with base 10: b'x'" in told.read_text()


REPORT = """\
#3\tINITED cov: 30 ft: 41 corp: 2/9b exec/s: 0 rss: 40Mb
#90\tNEW    cov: 35 ft: 60 corp: 3/12b lim: 4 exec/s: 90 rss: 40Mb L: 3/5 MS: 1 CopyPart-
#99\t{end}   cov: 36 ft: 61 corp: 3/12b lim: 4 exec/s: 99 rss: 40Mb
stat::number_of_executed_units: 99
"""


def test_a_report_is_told_in_one_row(tmp_path: Path) -> None:
    (tmp_path / "numerals-0a.input").touch()
    (tmp_path / "numerals-0a.txt").touch()
    run = read_run("numerals", REPORT.format(end="DONE"), tmp_path)
    assert run.row == "numerals           99         30→36           41→61         1"
    assert run.findings == (tmp_path / "numerals-0a.input",)


def test_a_run_that_ended_before_its_time_is_a_finding(tmp_path: Path) -> None:
    assert read_run("numerals", REPORT.format(end="pulse"), tmp_path).count == 1
    assert read_run("numerals", "", tmp_path).count == 1
