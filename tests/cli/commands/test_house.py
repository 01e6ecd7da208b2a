"""`pottle house`: what the house says, and what is said anew."""

from cli.screens.masters import house as module
from tests.cli.asked import check_asked
from tests.cli.cases import check_answers
from tests.cli.shell import Shell
from tests.cli.shown import check_shown
from tests.kept.said import check_constants


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


def test_the_house_is_shown_as_it_was_said(shell: Shell) -> None:
    answer = "name: Wren & Co\ncurrency: EUR\ntime zone: UTC\nfluid ounce: US\n"
    check_answers(("house", answer), shell)
    said = (
        "house --fluid-ounce imperial --hour 18 --phone '01 555 0100' --address '1 Quay' --keep 24 "
        "--web https://example.com/l --doubt scale=0.2"
    )
    assert shell.line(said).exit_code == 0
    assert shell.line("house").lines[2:] == [
        "address: 1 Quay",
        "time zone: UTC",
        "fluid ounce: imperial",
        "phone: 01 555 0100",
        "doubts: scale=0.2",
        "web: https://example.com/l",
        "an hour of work: 18.00 EUR",
        "records kept: 24 months beyond the last date on them",
    ]


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("house")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("house", still)


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
