"""The pack of a recall: its papers and tables, and what must not be in them."""

import csv
import json
from pathlib import Path

from cli.screens.recall.pack import TABLES
from tests.cli.shell import Shell
from tests.reports.pdf.readback import texts_of

OIL, PACKED, STALL = "SOO-001-3", "BOS-001-S", "Bridge Street Stall"


FSMA = Path(__file__).parents[3] / "reference" / "fsma204.json"


def rows(path: Path) -> list[dict[str, str]]:
    with path.open(newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def test_the_papers_have_everybody_and_the_files_what_the_rule_lists(
    shell: Shell, tmp_path: Path
) -> None:
    """21 CFR 1.1340(a), 1.1345(a), 1.1350(a), as of 2026-06-11."""
    answer = shell.run("recall", OIL, "--because", "throws haze", "--out", "pack")
    assert answer.exit_code == 0, answer.err
    pack = tmp_path / "pack"
    assert {path.name for path in pack.iterdir()} == {
        "recall.pdf", *(f"{table}.csv" for table in TABLES)
    }  # fmt: skip
    asked = json.loads(FSMA.read_text())
    for name in ("receiving", "transformation", "shipping"):
        assert set(asked[name]) <= set(rows(pack / f"{name}.csv")[0])
    (received,) = rows(pack / "receiving.csv")
    assert (received["traceability_lot_code"], received["lot_in_this_book"]) == ("C7731", OIL)
    assert (received["quantity"], received["unit_of_measure"]) == ("500", "mL")
    (sent,) = rows(pack / "shipping.csv")
    assert (sent["traceability_lot_code"], sent["quantity"]) == (PACKED, "6")
    assert sent["unit_of_measure"] == "bottle"
    made = rows(pack / "transformation.csv")
    assert [
        (row["new_traceability_lot_code"], row["input_traceability_lot_code"]) for row in made
    ] == [("OE-001-5", OIL), ("OS-002-M", "OE-001-5"), (PACKED, "OS-002-M")]
    text = " ".join("".join(texts_of((pack / "recall.pdf").read_bytes())).split())
    assert STALL in text
    assert "ask your food authority today" in text
    assert "claims no legal compliance" in text
    assert f"shipping.csv lacks the telephone number of {STALL}, Wren & Co." in text
    assert f"shipping.csv lacks the address of {STALL}, Wren & Co." in text
    assert "shipping.csv lacks the reference document number in 1 of 1 row." in text


def test_the_call_list_says_on_which_number_to_ring_back(shell: Shell, tmp_path: Path) -> None:
    shell.run("recall", OIL, "--drill", "--out", "before")
    shell.run("house", "--phone", "01 555 0199")
    shell.run("recall", OIL, "--drill", "--out", "after")
    before, after = (
        " ".join("".join(texts_of((tmp_path / name / "recall.pdf").read_bytes())).split())
        for name in ("before", "after")
    )
    assert "Leave the number to ring back:" in before
    assert "Ring us back on 01 555 0199." in after
    assert "01 555 0199" not in before


def test_no_price_and_no_recipe_leaves(shell: Shell, tmp_path: Path) -> None:
    shell.run("recall", OIL, "--drill", "--out", "pack")
    texts = [path.read_text() for path in (tmp_path / "pack").glob("*.csv")]
    texts += texts_of((tmp_path / "pack" / "recall.pdf").read_bytes())
    whole = "\n".join(texts)
    assert "48.00" not in whole
    for other in ("White sugar", "Neutral spirit", "Light magnesium carbonate"):
        assert other not in whole


def test_no_cell_is_a_formula(shell: Shell, tmp_path: Path) -> None:
    shell.run("send", PACKED, "1", "--to", "=HYPERLINK(1)", "--document", "@SUM")
    shell.run("party", "add", STALL, "--phone", "+353 1 555 0100")
    shell.run("recall", OIL, "--drill", "--out", "pack")
    for path in (tmp_path / "pack").glob("*.csv"):
        for row in rows(path):
            for cell in row.values():
                assert not cell.startswith(("=", "+", "-", "@"))
    assert {row["phone"] for row in rows(tmp_path / "pack" / "calls.csv")} == {
        "'+353 1 555 0100",
        "",
    }


def test_papers_are_not_written_over_and_nothing_is_held_then(shell: Shell, tmp_path: Path) -> None:
    (tmp_path / "pack").mkdir()
    (tmp_path / "pack" / "calls.csv").write_text("mine")
    before = shell.entries()
    answer = shell.run("recall", OIL, "--because", "haze", "--out", "pack")
    assert (answer.exit_code, shell.entries()) == (5, before)
    assert answer.complaints == [
        "There is a file pack/calls.csv already; it was left as it is.",
        "  Give another folder with --out, or --force to write over them.",
    ]
    (tmp_path / "file").write_text("mine")
    assert shell.run("recall", OIL, "--drill", "--out", "file").complaints == [
        "file is a file, not a folder.",
        "  Give another folder with --out.",
    ]
    assert shell.run("recall", OIL, "--drill", "--out", "pack", "--force").exit_code == 0
