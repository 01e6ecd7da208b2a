"""Answers as JSON: each as its schema says, keys that stay, one way to write each thing."""

import json
import re
from collections.abc import Iterator
from datetime import datetime
from typing import Any

import pytest

from cli.screens.guide.guide import page
from ledger.domain.entries import FACTS
from reports.json.kit.problems import ErrorAnswer
from tests.cli.formulas import write_formulas
from tests.cli.schemas import faults, schema_keys, verb_of, verbs
from tests.cli.shell import Shell
from tests.kept.golden import check_golden

READS: tuple[str, ...] = (
    "complaints",
    "chart",
    "chart essence",
    "person list",
    "material list",
    "house",
    "formula samples",
    "page --all",
    "list sales",
    "list receipts",
    "list cleanings",
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
    "foretell {essence}",
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
    "packet {packed} --out packet.pdf",
    "due",
    "stock --by-date",
    "stock --value --of spirit",
    "stock --low 1000",
    "sheet {essence}",
    "sheet {essence} --out sheet.pdf",
    "dilute 96.3% 80% 1L --temp 25C",
    "strength 96.3% 1L --temp 25C",
    "syrup 3:2 --by volume",
    "guide",
    "guide machines",
    "help add",
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
    "case {packed} 1 x 2",
    "label {packed} --out more.pdf",
    "send {packed} 1 --as sample --to market",
    "hold {packed} --because ring",
    "release {packed} --because wiped --anyway",
    "reject {packed} --because ring",
    "complain {packed} ring",
    "answer 38 explained",
    'party add "Bridge Street Stall" --phone 5550100',
    "recall {oil} --because haze --out pack",
    'contact {oil} "Bridge Street Stall" --still 2',
    "recall {oil} --close 'old oil' --because 'kept to look at'",
    "correct 18 --set amount=31mL --because misread",
    "strike 38 --because mistake",
    "check {essence} the balance",
    "clean Demijohn 2 --how steam",
    "equipment 'Scale 1' set to zero",
    "count {sugar} 22.6kg",
    "trial plan pores --try pore=5/20",
    "trial sheet pores --out pores.pdf",
    "trial prove pores",
    "start --from-plan pores",
    "compare pores",
    "formula new lemon-essence",
    "formula load first.toml",
    "formula load second.toml",
    "formula list",
    "formula show orange",
    "formula diff orange 1 2",
    "formula scale orange 480mL",
    "start orange 480mL --code ORA-100",
    "rest {essence} --for chill --because 'one more look'",
    "due",
    "formula withdraw orange 2 --because weak",
    "forget 'Bridge Street Stall' --because 'asked for it' --yes",
)


LOOKED_AT_ELSEWHERE = {("demo",), ("bench",)}
"""Commands whose answers are held to their schemas in tests of their own."""


def values(value: Any, key: str = "") -> Iterator[tuple[str, Any]]:
    """Yield every value of an answer with its key, those of a list with that of the list."""
    yield key, value
    if isinstance(value, dict):
        for name, item in value.items():
            yield from values(item, name)
    if isinstance(value, list):
        for item in value:
            yield from values(item, key)


CODE = re.compile(r"([A-Z]+|T\d+)-\d{3,}-[0-9A-Z]|ORA-100")


def test_every_answer_fits_its_schema_says_no_float_and_one_word_is_one_thing(
    shell: Shell,
) -> None:
    """An amount, a time and a lot are each written in one way, whichever command answers."""
    write_formulas()
    seen: set[tuple[str, ...]] = {*LOOKED_AT_ELSEWHERE}
    for command in (*READS, *WRITES):
        answer = shell.line(f"{command} --json")
        assert (answer.exit_code, answer.err) == (0, ""), command
        assert faults(answer.json, verb_of(command)) == [], command
        assert [v for v in values(answer.json) if isinstance(v[1], float)] == [], command
        check_one_way(command, answer.json)
        seen.add(verb_of(command))
    assert seen == set(verbs())


def check_one_way(command: str, found: Any) -> None:
    """Fail where a thing is written in another way than everywhere."""
    for key, value in values(found):
        if isinstance(value, dict) and "unit" in value and "amount" in value:
            assert set(value) == {"amount", "unit"}
            assert value["unit"] in ("mL", "g", "each")
            assert re.fullmatch(r"-?(0|[1-9]\d*)(\.\d*[1-9])?", value["amount"])
        if key in ("happened", "recorded_at", "begun", "closed", "due") and value:
            assert datetime.fromisoformat(value).tzinfo, (command, key)
            assert re.search(r"[+-]\d\d:\d\d$", value), (command, key)
        if (key == "code" or key.endswith("_codes")) and isinstance(value, str):
            assert CODE.fullmatch(value), (command, key, value)
        if key == "kind":
            assert value in FACTS, (command, value)
        if key in ("entries", "lot_count", "complaint_count", "tested"):
            assert isinstance(value, int), (command, key)


def test_the_keys_of_every_answer_are_the_kept_ones() -> None:
    told = []
    for verb in verbs():
        told += [f"pottle {' '.join(verb)}", *(f"  {key}" for key in schema_keys(verb))]
    check_golden("cli/keys.txt", "\n".join(told) + "\n")


def test_the_page_of_changed_keys_names_keys_that_there_are() -> None:
    known = {
        key.rpartition(".")[2].removesuffix("[]") for verb in verbs() for key in schema_keys(verb)
    }
    told = [line.split(" | ")[-1] for line in page("machines-keys").splitlines() if "`" in line]
    named = {
        word for cell in told if cell.endswith("|") for word in re.findall(r"`([a-z_]+)`", cell)
    }
    assert len(named) > 50
    assert named - known - {*ErrorAnswer.__struct_fields__, "each", "g", "null"} == set()


def test_a_trace_says_what_went_into_what(shell: Shell) -> None:
    found = shell.line("trace {essence} --json").json
    assert found["code"] == "OE-001-5"
    nodes = {node["code"]: node for node in found["nodes"]}
    here, oil, packed = nodes["OE-001-5"], nodes["SOO-001-3"], nodes["BOS-001-S"]
    assert (here["lot_type"], here["product"], here["depth"]) == ("made", "Orange essence", 0)
    assert (oil["lot_type"], oil["material"], oil["depth"]) == ("received", "orange-oil", 1)
    assert (packed["lot_type"], packed["product"], packed["depth"]) == (
        "packed",
        "Orange syrup",
        2,
    )
    amount = {"amount": "30", "unit": "mL"}
    assert {"from": "SOO-001-3", "to": "OE-001-5", "amount": amount} in found["edges"]


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
