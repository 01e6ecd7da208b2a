"""Short lists and what is said where there is nothing to list: that it is so, and the next step."""

from pathlib import Path

import pytest

from tests.cli.shell import Shell


@pytest.fixture
def bare(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shell:
    """A book of which only the house is known."""
    monkeypatch.chdir(tmp_path)
    shell = Shell(tmp_path / "pottle.db")
    assert shell.run("init", "--house", "Wren & Co", "--currency", "EUR").exit_code == 0
    return shell


@pytest.mark.parametrize(
    ("command", "lines"),
    [
        (
            "person list",
            [
                "There is nobody in the book yet.",
                'Next: pottle person add INITIALS "NAME"',
            ],
        ),
        (
            "material list",
            [
                "There is no material in the book yet.",
                'Next: pottle material add CODE --name "NAME" --kind KIND',
            ],
        ),
        (
            "party list",
            [
                "The book knows nobody's telephone number yet.",
                'Next: pottle party add "NAME" --phone NUMBER',
            ],
        ),
    ],
)
def test_an_empty_list_says_so_and_how_to_begin(
    bare: Shell, command: str, lines: list[str]
) -> None:
    assert bare.line(command).lines == lines
    assert bare.line(f"{command} --json").json == []


@pytest.mark.parametrize(
    ("command", "step"),
    [
        ("journal", "pottle journal --entry 38"),
        ("journal --last 3", "pottle journal --entry 38"),
        ("journal {essence}", "pottle lot OE-001-5"),
        ("journal --entry 18", "pottle lot OE-001-5"),
        ("journal --entry 1", "pottle journal"),
        ("cost {oil}", "pottle cost SOO-001-3 --margin PERCENT"),
        ("cost {oil} --margin 50", "pottle lot SOO-001-3"),
        ("cost {carb}", 'pottle correct 12 --set cost=PRICE --because "from the invoice"'),
        (
            "record {essence} --out record.pdf",
            'pottle start --product "NAME" --kind syrup --target VOLUME',
        ),
        ("record {packed} --out record.pdf", "pottle trace BOS-001-S"),
    ],
)
def test_what_is_looked_up_or_printed_ends_with_the_next_step(
    shell: Shell, command: str, step: str
) -> None:
    assert shell.line(command).lines[-1] == f"Next: {step}"
    plain = shell.line(f"{command.replace('record.pdf', 'again.pdf')} --json")
    assert plain.exit_code == 0
    assert "next" not in plain.json


def test_a_book_of_one_entry_is_verified_in_the_singular(bare: Shell) -> None:
    bare.run("seal", "--out", "seal.txt")
    first = "1 entry, all as it was written; tables, tree and guards fit."
    assert bare.run("verify").lines[0] == first
    assert bare.run("verify", "--seal", "seal.txt").lines[0] == first
    assert bare.run("verify", "--since", "seal.txt").lines[0] == (
        "1 entry, none of them since the seal; the guards fit."
    )
    bare.run("person", "add", "AB", "Ada Brook")
    assert bare.run("verify", "--seal", "seal.txt").lines[2] == (
        "The seal fits: its 1 entry is the beginning of this book, and 1 came after."
    )


def test_the_house_says_what_an_hour_costs_in_its_money(shell: Shell) -> None:
    shell.run("house", "--hour", "18")
    lines = shell.run("house").lines
    assert lines[-1] == "an hour of work: 18.00 EUR"
    assert not any("minor" in line for line in lines)
    assert shell.run("house", "--json").json["hour"] == "18.00"


def test_the_house_has_its_telephone_number_from_the_beginning_and_may_change_it(
    shell: Shell,
) -> None:
    told = ("--house", "A", "--currency", "EUR", "--ledger", "new.db")
    assert shell.run("init", *told, "--phone", "01 555 0100").exit_code == 0
    at_new = ("--ledger", "new.db")
    assert "phone: 01 555 0100" in shell.run("house", *at_new).lines
    shell.run("person", "add", "AB", "Ada Brook", *at_new)
    for args in (("--phone", "01 555 0199"), ("--address", "1 Quay")):
        assert shell.run("house", *args, *at_new).exit_code == 0
    assert shell.run("house", "--json", *at_new).json["phone"] == "01 555 0199"


def test_a_telephone_number_nobody_can_read_makes_no_book(shell: Shell) -> None:
    answer = shell.run(
        *("init", "--house", "A", "--currency", "EUR", "--ledger", "new.db", "--phone", "01\u202e5")
    )
    assert (answer.exit_code, answer.complaints[0]) == (
        2,
        "The telephone number holds the invisible character U+202E.",
    )
    assert not Path("new.db").exists()
