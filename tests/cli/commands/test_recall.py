"""`pottle recall`: a drill, the real thing, the end."""

import csv
import json
from pathlib import Path

from cli.screens.recall import pack as module
from cli.screens.recall.pack import TABLES
from tests.cli.asked import check_asked
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.said import check_constants
from tests.reports.pdf.readback import texts_of

OIL, PACKED, STALL = "SOO-001-3", "BOS-001-S", "Bridge Street Stall"


def test_a_drill_records_nothing_and_tells_how_long_it_took(shell: Shell) -> None:
    before = shell.entries()
    answer = shell.run("recall", OIL, "--drill")
    assert (answer.exit_code, shell.entries()) == (0, before)
    assert answer.lines[:2] == [
        f"{OIL}, Sweet orange oil: 3 lots made of it, 1 lot of bottles in all.",
        "DRILL: nothing was held and nothing was recorded.",
    ]
    assert "15 bottles made = 9 here + 6 sent + 0 unexplained." in answer.lines
    assert "Accounted for: 100.0 %." in answer.lines
    took, following = answer.lines[-2:]
    assert took.startswith("The drill took ")
    assert took.endswith(
        " s. Aim for everything within 2 hours and 95 % or more accounted for (common practice)."
    )
    assert following == f'Next: pottle recall {OIL} --because "WHY"'


def test_an_unknown_person_to_call_is_named_as_such(shell: Shell) -> None:
    lines = shell.run("recall", OIL, "--drill").lines
    place = lines.index("Whom to call, in this order")
    assert lines[place + 1] == (
        f"1. {STALL}: no telephone number in the book; at most 6 bottles (1.5 L)"
    )
    shell.run("send", PACKED, "1", "--because", "who is not written down")
    lines = shell.run("recall", OIL, "--drill").lines
    assert (
        "2. not named: ask who was there, and put up a notice; at most 1 bottle (250 mL)" in lines
    )
    shell.run("party", "add", STALL, "--phone", "01 555 0100", "--words", "ask for Bo")
    lines = shell.run("recall", OIL, "--drill").lines
    assert f"1. {STALL}: 01 555 0100, ask for Bo; at most 6 bottles (1.5 L)" in lines


def test_a_recall_wants_a_reason_and_then_holds_all(shell: Shell) -> None:
    answer = shell.run("recall", OIL)
    assert (answer.exit_code, answer.out) == (4, "")
    answer = shell.run("recall", OIL, "--because", "throws haze")
    assert answer.exit_code == 0
    assert answer.lines[1].endswith(" by AB: throws haze.")
    assert (
        answer.lines[-1] == f'Next: pottle contact {OIL} "{STALL}" --reached spoken --still COUNT'
    )
    assert shell.run("lot", PACKED, "--json").json["status"] == "recalled"


def test_a_recall_closed_too_early_says_who_was_not_spoken_to(shell: Shell) -> None:
    shell.run("recall", OIL, "--because", "throws haze")
    shell.run("contact", OIL, STALL, "--reached", "no-answer")
    closed = f"Closed before everybody was spoken to; still to call: {STALL}."
    asked = shell.run("recall", OIL, "--close", "the oil was old")
    assert (asked.exit_code, asked.out) == (4, "")
    assert asked.complaints == [
        "Recalled goods still stand here: 470 mL of SOO-001-3, 418 mL of OE-001-5, 50 mL of "
        "OS-002-M, 9 of BOS-001-S.",
        "  Write what becomes of them, such as: pottle send SOO-001-3 AMOUNT --as destroyed; or "
        "close it all the same and say why with --because.",
        f"These may still have some and were not spoken to: {STALL}.",
        f'  Call them: pottle contact {OIL} "WHO" --reached spoken --still COUNT; or say with '
        "--because why the recall is closed all the same.",
    ]
    told = shell.run("recall", OIL, "--close", "the oil was old", "--because", "all is drunk")
    assert {closed, "Closed with something open: all is drunk."} <= set(told.lines)
    shell.run("contact", OIL, STALL, "--still", "0")
    assert closed not in shell.run("recall", OIL).lines


def test_lots_made_since_are_named_and_recalled_with_a_reason(shell: Shell) -> None:
    shell.run("recall", OIL, "--because", "throws haze")
    more = shell.run("bottle", "OS-002-M", "1 x 30mL", "--because", "as a sample", "--json")
    code = more.json["code"]
    assert f"Not recalled: {code}." in shell.run("recall", OIL).lines
    lines = shell.run("recall", OIL, "--because", "filled from it").lines
    assert not any(line.startswith("Not recalled") for line in lines)
    assert shell.run("lot", code, "--json").json["status"] == "recalled"


def test_json_has_the_keys_a_machine_needs(shell: Shell) -> None:
    found = shell.run("recall", OIL, "--drill", "--json").json
    assert found["drill"] is True
    assert found["accounted_percent"] == "100.0"
    balance = {key: int(value["amount"]) for key, value in found["balance"].items()}
    told = sum(v for k, v in balance.items() if k not in ("made", "returned"))
    assert balance["made"] == told == 15
    assert [lot["code"] for lot in found["lots"]] == [OIL, "OE-001-5", "OS-002-M", PACKED]
    (call,) = found["to_call"]
    assert (call["party"], call["phone"], call["known"]) == (STALL, None, False)
    assert call["may_have"] == {"amount": "6", "unit": "each"}
    assert call["may_have_volume"] == {"amount": "1500", "unit": "mL"}


def test_a_drill_closes_nothing(shell: Shell) -> None:
    answer = shell.run("recall", OIL, "--drill", "--close", "x")
    assert (answer.exit_code, answer.complaints) == (
        2,
        ["A drill begins no recall, so there is none to close.", "  Leave out --drill or --close."],
    )


def test_after_a_recall_is_closed_what_is_left_goes_and_no_two_steps_lead_to_each_other(
    shell: Shell,
) -> None:
    shell.run("recall", OIL, "--because", "throws haze")
    shell.run("contact", OIL, STALL, "--still", "0")
    assert shell.run("lot", OIL).lines[-1] == f"Next: pottle recall {OIL}"
    assert shell.run("recall", OIL, "--close", "old oil", "--because", "kept").lines[-1] == (
        f"Next: pottle lot {OIL}"
    )
    assert shell.run("lot", OIL).lines[-1] == f"Next: pottle send {OIL} AMOUNT --as destroyed"
    shell.run("contact", OIL, STALL, "--still", "0")
    assert shell.run("lot", OIL).lines[-1] == f"Next: pottle send {OIL} AMOUNT --as destroyed"


def test_of_a_closed_recall_with_nothing_left_the_way_of_the_goods_is_shown(shell: Shell) -> None:
    shell.run("recall", OIL, "--because", "throws haze")
    shell.run("recall", OIL, "--close", "old oil", "--because", "kept")
    left = shell.run("lot", OIL).lines[0].split(": ")[1].split(",")[0]
    assert shell.line(f"send {OIL} '{left}' --as destroyed").exit_code == 0
    assert shell.run("lot", OIL).lines[-1] == f"Next: pottle trace {OIL} --forward"


def test_less_than_one_of_a_unit_that_was_used_has_its_column(shell: Shell) -> None:
    """0.5 mL is not nothing, though it begins with a nought."""
    begin = 'start --product "Lime essence" --kind essence --target 480mL --json'
    code = shell.line(begin).json["code"]
    other = shell.line(begin).json["code"]
    assert shell.line(f"add {code} {{spirit}} 480mL").exit_code == 0
    assert shell.line(f"finish {code} 480mL").exit_code == 0
    assert shell.line(f"add {other} {code} 0.5mL --because 'to try it'").exit_code == 0
    lines = shell.run("recall", code, "--drill").lines
    table = lines[lines.index("Where all of it is") + 1 :][:3]
    assert table[0].split()[:4] == ["lot", "made", "here", "used"]
    assert table[1].split()[:7] == [code, "480", "mL", "479.5", "mL", "0.5", "mL"]


def test_what_went_to_nobody_who_can_be_named_is_not_accounted_for(shell: Shell) -> None:
    """15 bottles, 6 of them at the stall: 2 at a market and 1 nobody knows where leave 80 %."""
    shell.run("send", PACKED, "2", "--to", "Market")
    shell.run("send", PACKED, "1", "--because", "the sheet was lost")
    lines = shell.run("recall", OIL, "--drill").lines
    assert (
        "15 bottles made = 6 here + 6 sent + 3 to nobody who can be named + 0 unexplained." in lines
    )
    assert "Accounted for: 80.0 %." in lines
    assert "2. market: ask who was there, and put up a notice; at most 2 bottles (500 mL)" in lines
    named = shell.line("correct 40 --set 'party=Quay Bar' --because 'the sheet was found'")
    assert named.exit_code == 0
    assert "Accounted for: 86.6 %." in shell.run("recall", OIL, "--drill").lines


def test_the_papers_of_a_drill_are_named_with_their_folder(shell: Shell) -> None:
    lines = shell.line("recall {oil} --drill --out drill").lines
    assert [line for line in lines if line.startswith("In ")] == [
        "In drill: recall.pdf, receiving.csv, transformation.csv, shipping.csv, lots.csv, "
        "balance.csv, calls.csv, contacts.csv."
    ]


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("recall")


OIL, PACKED, STALL = "SOO-001-3", "BOS-001-S", "Bridge Street Stall"


FSMA = Path(__file__).parents[2] / "reference" / "fsma204.json"


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


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("recall", still)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
