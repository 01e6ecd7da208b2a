"""Answers as JSON: keys that stay, amounts as strings of whole numbers."""

import json
from typing import Any

import pytest

from tests.cli.formulas import write_formulas
from tests.cli.shell import Shell
from tests.golden import check_golden

READS: tuple[str, ...] = (
    "person list",
    "material list",
    "house",
    "stock",
    "stock --all",
    "lot {essence}",
    "lot {packed}",
    "journal --last 1",
    "journal --entry 18",
    "trace {packed}",
    "limits",
    "limits eu-safrole",
    "serving {packed} --explain",
    "serving {essence}",
    "cost {packed} --hour 20 --margin 60",
    "stock --spirit",
    "party list",
    "recall {oil} --drill",
    "suspects {packed}",
    "suspects --complaints --since 2026-01-01",
    "verify",
    "seal",
    "prove {essence} --out proof.json",
    "backup",
    "export book.jsonl",
    "import --book book.jsonl --ledger new.db",
    "restore book.jsonl --to back.db",
    "upgrade",
    "record {essence} --out record.pdf",
    "due",
    "stock --by-date",
    "stock --value --of spirit",
    "stock --low 1000",
    "sheet {essence}",
    "sheet {essence} --out sheet.pdf",
)
WRITES: tuple[str, ...] = (
    "init --house Other --currency EUR --ledger other.db",
    'house --address "1 Quay"',
    'person add CD "Cleo Dunn"',
    "material add acid --kind acid",
    'material change acid --name "Citric acid"',
    "limits eu-safrole --value 2",
    "receive water 10L",
    "start --product Lemon --kind syrup --target 1L",
    "add {syrup} {water} 10mL",
    "rest {syrup} --for chill",
    "filter {essence} --medium paper --out 400mL",
    "rinse {essence} --with {spirit} --in 20mL --out 15mL --to apart",
    "decant {essence} 390mL",
    "look {essence} bright",
    "measure {essence} abv 85.0",
    "makeup {essence} 500mL --with {spirit}",
    "finish {essence} 400mL",
    "note {essence} Good.",
    "bottle {essence} 2 x 50mL",
    "label {packed} --out more.pdf",
    "send {packed} 1 --as sample",
    "hold {packed}",
    "release {packed}",
    "reject {packed}",
    "complain {packed} ring",
    'party add "Bridge Street Stall" --phone 5550100',
    "recall {oil} --because haze --out pack",
    'contact {oil} "Bridge Street Stall" --still 2',
    "recall {oil} --close 'old oil'",
    "correct 18 --set amount=31mL --because misread",
    "strike 38 --because mistake",
    "check {essence} the balance",
    "clean Demijohn 2 --how steam",
    "equipment 'Scale 1' set to zero",
    "count {sugar} 22.6kg",
    "formula load first.toml",
    "formula load second.toml",
    "formula list",
    "formula show orange",
    "formula diff orange 1 2",
    "formula scale orange 480mL",
    "start orange 480mL --code ORA-100",
    "rest {essence} --for chill --because 'one more look'",
    "due",
    "formula withdraw orange 2",
)


def keys(value: Any, path: str = "") -> set[str]:
    """Return the paths of all keys in a value, those of a list's items as one."""
    if isinstance(value, dict):
        own = {f"{path}.{key}".lstrip(".") for key in value}
        return own.union(*(keys(item, f"{path}.{key}") for key, item in value.items()))
    if isinstance(value, list):
        return set().union(*(keys(item, f"{path}[]") for item in value))
    return set()


def numbers(value: Any) -> list[object]:
    if isinstance(value, dict):
        return [found for item in value.values() for found in numbers(item)]
    if isinstance(value, list):
        return [found for item in value for found in numbers(item)]
    return [value] if isinstance(value, float) else []


def test_the_keys_of_every_answer_are_the_kept_ones(shell: Shell) -> None:
    write_formulas()
    told = []
    for command in (*READS, *WRITES):
        answer = shell.line(f"{command} --json")
        assert (answer.exit_code, answer.err) == (0, ""), command
        assert numbers(answer.json) == [], f"{command} has a floating-point number"
        told += [f"pottle {command}", *(f"  {key}" for key in sorted(keys(answer.json)))]
    check_golden("cli/keys.txt", "\n".join(told) + "\n")


def test_every_amount_is_a_string_of_a_whole_number_with_its_unit(shell: Shell) -> None:
    found = shell.line("trace {packed} --json").json
    amounts = [*found["edges"], *found["holders"]]
    assert len(amounts) > 5
    for item in amounts:
        assert item["amount"] == str(int(item["amount"]))
        assert item["unit"] in ("uL", "mg", "ueach")
    for lot in found["nodes"]:
        assert lot["on_hand"] == str(int(lot["on_hand"]))


def test_a_trace_says_what_went_into_what(shell: Shell) -> None:
    found = shell.line("trace {essence} --json").json
    assert found["lot"] == "OE-001-5"
    nodes = {node["code"]: node for node in found["nodes"]}
    here, oil, packed = nodes["OE-001-5"], nodes["SOO-001-3"], nodes["BOS-001-S"]
    assert (here["kind"], here["product"], here["depth"]) == ("made", "Orange essence", 0)
    assert (oil["kind"], oil["material"], oil["depth"]) == ("received", "orange-oil", 1)
    assert (packed["kind"], packed["product"], packed["depth"]) == ("packed", "Orange syrup", 2)
    edge = {"from": "SOO-001-3", "to": "OE-001-5", "amount": "30000", "unit": "uL"}
    assert edge in found["edges"]


def test_a_verification_says_whether_all_fits(shell: Shell) -> None:
    found = shell.run("verify", "--json").json
    assert (found["ok"], found["entries"], found["findings"]) == (True, 38, [])
    assert len(bytes.fromhex(found["root"])) == 32


@pytest.mark.parametrize("command", ["stock", "journal", "lot {essence}"])
def test_words_beyond_ascii_stay_readable(shell: Shell, command: str) -> None:
    shell.run("note", "OE-001-5", "Čistý, 20 µm")
    out = shell.line(f"{command} --json").out
    assert json.loads(out)
    assert "\\u" not in out


def test_an_error_leaves_standard_output_empty(shell: Shell) -> None:
    answer = shell.run("lot", "XYZ-1", "--json")
    assert (answer.exit_code, answer.out) == (3, "")
