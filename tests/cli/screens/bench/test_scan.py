"""What a scanner types: plain, by GS1, or garbled by a keyboard that is set otherwise."""

import pytest

from cli.screens.bench import scan as module
from cli.screens.bench.scan import LAYOUTS, lot_scanned, scanned, unfolded
from ledger.errors import InputError
from tests.cli.shell import Shell
from tests.kept.golden import check_golden
from tests.kept.said import check_constants

GTIN = "09506000134352"
"""The GTIN of the examples in the GS1 General Specifications (from memory)."""
SCANS = {
    f"]Q301{GTIN}10OE-001-5\x1d21456": "OE-001-5",
    f"]d201{GTIN}10OE-001-5": "OE-001-5",
    f"(01){GTIN}(10)OE-001-5": "OE-001-5",
    "(10)OE-001-5": "OE-001-5",
    f"https://id.gs1.org/01/{GTIN}/10/OE-001-5": "OE-001-5",
}


@pytest.mark.parametrize(("scan", "lot"), SCANS.items())
def test_the_lot_of_a_gs1_code_is_read(scan: str, lot: str) -> None:
    assert lot_scanned(scan) == lot


@pytest.mark.parametrize("scan", ["]Q3zz", "(01)12", "https://example.com/x"])
def test_half_a_scan_and_a_foreign_one_are_told_to_be_unreadable(scan: str) -> None:
    with pytest.raises(InputError) as refused:
        lot_scanned(scan)
    assert refused.value.problems == (
        (f"The scan {scan} cannot be read as a GS1 code.", "Scan it again, or type the lot."),
    )


def test_a_code_without_a_lot_is_told_to_have_none() -> None:
    for scan in (f"(01){GTIN}", "]Q3"):
        with pytest.raises(InputError) as refused:
            lot_scanned(scan)
        assert refused.value.problems == (
            (f"The scan {scan} says nothing of a lot.", "Scan the code of the lot, or type it."),
        )


@pytest.mark.parametrize("layout", LAYOUTS)
@pytest.mark.parametrize("code", ["OE-001-5", "BOS-009-C", "ZYQ-234-W", "MAM-678-A"])
def test_what_a_layout_garbles_is_unfolded_again(layout: str, code: str) -> None:
    typed = {meant: typed for typed, meant in LAYOUTS[layout].items()}
    garbled = "".join(chr(typed.get(ord(letter), ord(letter))) for letter in code)
    assert code in unfolded(garbled)


def test_every_key_of_a_layout_is_the_one_that_was_checked() -> None:
    """Against the symbol tables of xkeyboard-config 2.35, as `LAYOUTS` says."""
    told = [
        f"{name}: {' '.join(f'{chr(typed)}{chr(meant)}' for typed, meant in keys.items())}\n"
        for name, keys in LAYOUTS.items()
    ]
    check_golden("cli/keyboards.txt", "".join(told))
    assert unfolded("OE*001*5") == ("OE-001-5",)


def test_a_garbled_code_is_a_lot_only_where_the_book_has_it() -> None:
    assert scanned("BOSß009ßC 15", {"BOS-009-C"}.__contains__) == "BOS-009-C 15"
    assert scanned("BOSß009ßC 15", {"BOS-009-D"}.__contains__) == "BOSß009ßC 15"


@pytest.mark.parametrize("line", ["oil 15", "note it's hazy", "1 212", "", "# (10)x", "@14:30"])
def test_what_is_typed_stays_as_it_is(line: str) -> None:
    assert scanned(line, lambda _: True) == line


def test_a_scanned_lot_waits_for_its_amount(shell: Shell) -> None:
    start = 'start --product "Orange essence" --kind essence --target 240mL'
    answer = shell.bench(start, "SOOß001ß3", "15", "(10)NS-001-J", "100")
    assert (answer.exit_code, answer.err) == (0, "")
    assert shell.run("lot", "OE-002-3", "--json").json["on_hand"]["amount"] == "115"


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
