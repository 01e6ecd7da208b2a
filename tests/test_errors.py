"""Whatever an error quotes, its sentences can be printed."""

import pytest

from ledger.errors import InputError, LedgerError, RefusedError, attempt, together

HOSTILE = "30\x1b[31m\u202emL\n\udcff"
SEEN = "30U+001B[31mU+202EmLU+000AU+DCFF"
ERRORS: dict[str, LedgerError] = {
    "one": InputError(f'"{HOSTILE}" is not an amount.', f"Write {HOSTILE}."),
    "several": InputError.of([(f'"{HOSTILE}" is not an amount.', f"Write {HOSTILE}.")] * 2),
    "together": together([RefusedError(f'"{HOSTILE}" is not an amount.', f"Write {HOSTILE}.")]),
}


@pytest.mark.parametrize("case", ERRORS)
def test_what_cannot_be_seen_is_told_by_its_number(case: str) -> None:
    """A terminal would take it for a command, or show the sentence in another order."""
    error = ERRORS[case]
    assert error.problems == ((f'"{SEEN}" is not an amount.', f"Write {SEEN}."),)
    assert str(error) == f'"{SEEN}" is not an amount. Write {SEEN}.'


def test_letters_of_every_script_are_told_as_they_are() -> None:
    assert InputError("'crème שלום 20 µm' is not an amount.").what.startswith("'crème שלום 20 µm'")


def test_an_attempt_keeps_what_was_raised_and_goes_on_with_a_stand_in() -> None:
    errors: list[LedgerError] = []

    def refuse() -> int:
        raise RefusedError("No.", "Ask again.")

    assert [attempt(errors, lambda: 1, 0), attempt(errors, refuse, 0)] == [1, 0]
    assert [error.problems for error in errors] == [(("No.", "Ask again."),)]


def test_an_attempt_hides_no_fault_of_our_own() -> None:
    with pytest.raises(ZeroDivisionError):
        attempt([], lambda: 1 // 0, 0)
