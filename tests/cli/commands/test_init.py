"""`pottle init`: a new book, or none."""

from pathlib import Path

from tests.cli.cases import check_refused
from tests.cli.shell import Shell


def test_a_telephone_number_nobody_can_read_makes_no_book(shell: Shell) -> None:
    answer = shell.run(
        *("init", "--house", "A", "--currency", "EUR", "--ledger", "new.db", "--phone", "01\u202e5")
    )
    assert (answer.exit_code, answer.complaints[0]) == (
        2,
        "The telephone number holds the invisible character U+202E.",
    )
    assert not Path("new.db").exists()


def test_a_currency_that_is_none_makes_no_book(shell: Shell) -> None:
    problem = (
        '"money" is not a currency code.',
        "Write three letters, such as EUR.",
    )
    check_refused(("init --house A --currency money --ledger new.db", 2, problem), shell)


def test_a_new_book_has_its_house_as_the_first_entry(shell: Shell) -> None:
    told = ("--house", "Wren & Co", "--currency", "GBP", "--time-zone", "Europe/London")
    answer = shell.run("init", *told, "--ledger", "new.db")
    assert (answer.exit_code, answer.err) == (0, "")
    assert answer.lines[-1] == 'Next: pottle person add INITIALS "NAME"'
    assert shell.run("house", "--ledger", "new.db").lines == [
        "name: Wren & Co",
        "currency: GBP",
        "time zone: Europe/London",
        "fluid ounce: US",
    ]
