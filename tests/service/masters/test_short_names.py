"""Short names of materials and limits, as they are typed at the prompt."""

import pytest

from ledger.errors import InputError
from ledger.service.masters.short_names import read_code


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("orange-oil", "orange-oil"),
        (" Orange-OIL ", "orange-oil"),
        ("b250", "b250"),
        ("7", "7"),
        ("x" * 30, "x" * 30),
    ],
)
def test_a_short_name_is_the_same_in_any_letters(text: str, code: str) -> None:
    assert read_code(text, "material", "orange-oil") == code


@pytest.mark.parametrize("text", ["", "-oil", "orange oil", "oil!", "\u00f6l", "x" * 31])
def test_blanks_and_signs_of_a_shell_are_refused(text: str) -> None:
    with pytest.raises(InputError) as raised:
        read_code(text, "limit", "eu-safrole")
    assert raised.value.problems == (
        (
            f'"{text}" cannot be the short name of a limit.',
            "Use at most 30 letters a-z, digits and dashes, such as eu-safrole.",
        ),
    )
