"""Tracing at the prompt: a tree, a table, a paper, and words where there is nothing to show."""

import csv
import re
from pathlib import Path

import pytest

from cli.screens.lots import trace as module
from cli.screens.lots.trace import fold
from ledger.service.desk.book import open_book
from ledger.service.lots.shares import traced
from reports.words.lots.trace_table import trace_view
from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.said import check_constants
from tests.reports.pdf.examples import FRAME
from tests.reports.pdf.readback import texts_of

OIL, ESSENCE, PACKED = "SOO-001-3", "OE-001-5", "BOS-001-S"


def test_a_trace_back_to_one_kind_shows_the_way_to_it(shell: Shell) -> None:
    lines = shell.run("trace", PACKED, "--only", "oil").lines
    assert [line.split("  ")[0].strip() for line in lines[:2]] == [PACKED, ""]
    assert lines[2] == f"Made of 3 lots (amount, lot, how much of it is in {PACKED})"
    told = [re.findall(r"\b[A-Z]+-\d{3}-[0-9A-Z]\b", line) for line in lines[3:-2]]
    assert told == [["OS-002-M"], [ESSENCE], [OIL]]
    assert "sugar" not in "".join(lines).lower()
    assert lines[-2] == "6 lots not on the way to oil left out; without --only they show."


def test_a_lot_of_no_such_material_is_told_so(shell: Shell) -> None:
    answer = shell.run("trace", PACKED, "--only", "gum")
    assert answer.exit_code == 0
    assert answer.lines[-2] == f"{PACKED} is made of no gum that the book knows of."


def test_an_unknown_kind_is_refused_with_the_kinds_there_are(shell: Shell) -> None:
    answer = shell.run("trace", PACKED, "--only", "goo")
    assert (answer.exit_code, answer.out) == (2, "")
    assert answer.complaints == [
        '"goo" is no kind of material.',
        "  Give one of: oil, ethanol, clarifier, sugar, water, acid, preservative, gum, colour, "
        "bottle, closure, label, filter, other.",
    ]


def test_a_kind_of_material_is_not_looked_for_forward(shell: Shell) -> None:
    answer = shell.run("trace", OIL, "--only", "oil", "--forward")
    assert (answer.exit_code, answer.out) == (2, "")
    assert answer.complaints == [
        "Materials stand behind a lot, so --only does not go with --forward.",
        "  Leave one of the two out.",
    ]


def test_a_kind_of_material_further_than_the_depth_is_left_out_not_denied(shell: Shell) -> None:
    lines = shell.run("trace", PACKED, "--only", "oil", "--depth", "1").lines
    assert lines[-3:-1] == [
        "2 lots further away left out; without --depth they show.",
        "6 lots not on the way to oil left out; without --only they show.",
    ]
    assert shell.run("trace", PACKED, "--depth", "1", "--json").json["left_out_count"] > 2


def test_a_lot_without_ancestors_and_one_that_nobody_used_are_told_in_words(shell: Shell) -> None:
    assert shell.run("trace", OIL, "--back").lines[-2] == "Made of no other lot"
    code = shell.run("receive", "water", "1L", "--json").json["code"]
    assert shell.run("trace", code, "--forward").lines[1:] == [
        "",
        "Went nowhere yet",
        "└─ 1 L still here",
        f"Next: pottle lot {code}",
    ]


def test_a_depth_says_how_many_lots_it_left_out(shell: Shell) -> None:
    lines = shell.run("trace", OIL, "--forward", "--depth", "1").lines
    assert lines[-2] == "2 lots further away left out; without --depth they show."


def test_a_table_and_a_paper_are_written_and_never_over_what_is_there(
    shell: Shell, tmp_path: Path
) -> None:
    answer = shell.run("trace", OIL, "--csv", "t.csv", "--out", "t.pdf")
    assert answer.lines == [
        f"The trace of {OIL} with 3 other lots is in t.csv and t.pdf.",
        f"Next: pottle recall {OIL} --drill",
    ]
    with (tmp_path / "t.csv").open(newline="") as file:
        rows = list(csv.DictReader(file))
    assert [(row["from_lot"], row["to"], row["amount"], row["unit"]) for row in rows] == [
        (OIL, ESSENCE, "30", "mL"),
        (ESSENCE, "OS-002-M", "30", "mL"),
        ("OS-002-M", PACKED, "3750", "mL"),
        (PACKED, "Bridge Street Stall", "6", "each"),
    ]
    # 30 of 450 mL, 430 mL of which made 450; 30 mL of that in 3.93 L reckoned, in 250 mL bottles.
    assert [row["concentration"] for row in rows] == ["6.37", "0.0487", "0.122", "0.122"]
    assert "Bridge Street Stall" in "".join(texts_of((tmp_path / "t.pdf").read_bytes()))
    again = shell.run("trace", OIL, "--csv", "t.csv")
    assert (again.exit_code, again.out) == (5, "")
    assert again.complaints[1] == "  Give another name with --csv, or --force to write over it."


def test_a_paper_of_the_way_to_one_kind_says_that_it_is_not_all(
    shell: Shell, tmp_path: Path
) -> None:
    shell.run("trace", PACKED, "--only", "oil", "--out", "t.pdf")
    text = "".join(texts_of((tmp_path / "t.pdf").read_bytes()))
    assert "6 lots not on the way to oil left out; without --only they show." in text


def test_the_paper_of_a_bought_lot_says_that_nothing_is_behind_it(
    shell: Shell, tmp_path: Path
) -> None:
    shell.run("trace", OIL, "--out", "t.pdf")
    text = "".join(texts_of((tmp_path / "t.pdf").read_bytes()))
    assert "Made of no other lot." in text
    assert "None recorded" not in text


def test_the_paper_has_who_has_goods_beside_how_many_and_since_when(
    shell: Shell, tmp_path: Path
) -> None:
    shell.run("send", PACKED, "2", "--to", "Pretend Bar", "--document", "DN-7")
    shell.run("send", PACKED, "1", "--as", "destroyed")
    with open_book(str(shell.book)) as book:
        view = trace_view(traced(book, PACKED), FRAME, back=False, forward=True)
    found = view.forward
    assert found is not None
    told = [(row.became, row.what, row.amount, row.is_held) for row in found]
    assert told == [
        ("sold to", "Bridge Street Stall", "6", True),
        ("sold to", "Pretend Bar, DN-7", "2", True),
        ("destroyed", "", "1", False),
        ("still here", "", "6", True),
    ]
    assert all(re.fullmatch(r"\d{4}-\d\d-\d\d", row.status) for row in found[:-1])


def test_a_supplier_without_a_lot_of_their_own_is_named_alone(shell: Shell, tmp_path: Path) -> None:
    code = shell.run("receive", "water", "9L", "--from", "own tap", "--json").json["code"]
    shell.run("start", "--product", "Plain", "--kind", "syrup", "--target", "1L")
    shell.run("add", ".", code, "1L")
    shell.run("trace", ".", "--out", "t.pdf")
    text = " ".join("".join(texts_of((tmp_path / "t.pdf").read_bytes())).split())
    assert ", own tap, " in text


def test_a_trace_as_json_says_how_much_of_the_oil_is_where(shell: Shell) -> None:
    found = shell.run("trace", OIL, "--json").json
    shares = {node["code"]: node["share"] for node in found["nodes"]}
    assert shares[OIL] is None
    assert shares[ESSENCE]["carried"] == {"amount": "28.539", "unit": "mL"}
    assert shares[PACKED]["whole"] == {"amount": "15", "unit": "each"}
    assert found["circles"] == []


def test_wherever_a_lot_is_told_as_json_it_has_the_date_that_is_reckoned_for_it(
    shell: Shell,
) -> None:
    days = {lot["code"]: lot["best_before"] for lot in shell.run("stock", "--json").json}
    assert days[OIL] == days[ESSENCE] == days[PACKED] is not None
    assert shell.run("lot", ESSENCE, "--json").json["best_before"] == days[ESSENCE]
    nodes = shell.run("trace", OIL, "--json").json["nodes"]
    lots = shell.run("recall", OIL, "--drill", "--json").json["lots"]
    for found in (nodes, lots):
        told = {lot["code"]: lot["best_before"] for lot in found}
        assert {told[OIL], told[ESSENCE], told[PACKED]} == {days[OIL]}


@pytest.mark.parametrize("lot", [OIL, ESSENCE, PACKED])
def test_the_first_line_says_what_the_lot_is(shell: Shell, lot: str) -> None:
    assert shell.run("trace", lot).lines[0].startswith(f"{lot}  ")


@pytest.mark.parametrize(
    ("lot", "step"),
    [
        (OIL, f"pottle recall {OIL} --drill"),
        (ESSENCE, f"pottle suspects {ESSENCE}"),
        (PACKED, f"pottle suspects {PACKED}"),
        ("CAP-001-B", "pottle recall CAP-001-B --drill"),
    ],
)
def test_a_trace_ends_with_its_cause_or_with_a_try_at_its_recall(
    shell: Shell, lot: str, step: str
) -> None:
    assert shell.run("trace", lot).lines[-1] == f"Next: {step}"
    assert shell.run("trace", lot, "--json").json["next"] == step
    assert shell.line(step.removeprefix("pottle ")).exit_code == 0


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("trace")


def test_a_folded_branch_carries_its_rules_and_keeps_codes_whole() -> None:
    folded = fold("│  ├─ 30 mL  OE-001-5  Orange essence, from a supplier, in stock", 24)
    assert folded.splitlines() == [
        "│  ├─ 30 mL  OE-001-5",
        "│  │    Orange essence,",
        "│  │    from a supplier,",
        "│  │    in stock",
    ]
    last = fold("│  └─ 30 mL  OE-001-5  Orange essence", 24)
    assert last.splitlines() == ["│  └─ 30 mL  OE-001-5", "│       Orange essence"]


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("trace", still)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
