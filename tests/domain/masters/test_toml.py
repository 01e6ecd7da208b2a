"""The lines of a TOML text, compared with what the reader of the standard library finds in it."""

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.masters.toml import line_numbers, toml_values

TRICKY = '''\
# code = "a comment"
code = "lemon" # version = 3
words = """
version = 1
[[line]]
"""
notes = [
    "kind = 2", # a ] bracket
    "[[step]]",
]
'quoted-key' = 1
"twice quoted" = 1
[[line]]
amount = '# 30mL'
[[line]]   # the second
amount = "3\\"0mL"
[house]
name.first = "x"
'''


def test_only_keys_and_tables_count() -> None:
    assert line_numbers(TRICKY) == {
        ("", 0, ""): 1,
        ("", 0, "code"): 2,
        ("", 0, "words"): 3,
        ("", 0, "notes"): 7,
        ("", 0, "quoted-key"): 11,
        ("", 0, "twice quoted"): 12,
        ("line", 0, ""): 13,
        ("line", 0, "amount"): 14,
        ("line", 1, ""): 15,
        ("line", 1, "amount"): 16,
        ("house", 0, ""): 17,
        ("house", 0, "name"): 18,
    }


VALUES = st.sampled_from(
    ['"a"', "3", "'''\n[[line]]\nb = 1\n'''", '[\n"x", # ]\n]', "2026-03-02", '"""q = 1"""', '"#"']
)
TABLES = st.lists(
    st.dictionaries(st.sampled_from(["a", "b-c", "d_1"]), VALUES, max_size=3), max_size=4
)


@given(TABLES)
def test_every_key_that_the_reader_knows_has_its_own_line(
    tables: list[dict[str, str]],
) -> None:
    text = "".join(
        "[[line]]\n\n" + "".join(f"{key} = {value}\n" for key, value in table.items())
        for table in tables
    )
    found = line_numbers(text)
    known = {
        ("line", number, key)
        for number, row in enumerate(tomllib.loads(text).get("line", []))
        for key in row
    }
    assert {place for place in found if place[2]} == known
    lines = text.split("\n")
    assert all(lines[found[place] - 1].startswith(f"{place[2]} =") for place in known)


def test_a_head_of_many_blanks_and_many_heads_are_told_at_once() -> None:
    """The time to read a text must not grow with its length squared: these took hours."""
    assert line_numbers(f"[{' ' * 100_000}x") == {("", 0, ""): 1}
    many = line_numbers("[[line]]\n" * 50_000)
    assert many["line", 49_999, ""] == 50_000
    assert line_numbers("[[ line ]] # c\n[ 'step' ]") == {
        ("", 0, ""): 1,
        ("line", 0, ""): 1,
        ("step", 0, ""): 2,
    }


@pytest.mark.parametrize(
    "text",
    [
        "a." * 20_000 + "a = 1",
        f"[{'a . ' * 20_000}a]",
        f"x = {{ {'a.' * 17}a = 1 }}",
        "'a'." * 17 + '"b" = 1',
    ],
    ids=["a key", "a head", "in a table", "quoted"],
)
def test_a_key_of_very_many_parts_is_refused_before_it_is_read(text: str) -> None:
    with pytest.raises(tomllib.TOMLDecodeError) as raised:
        toml_values(text)
    assert str(raised.value) == "a key has more than 16 parts"


@pytest.mark.parametrize(
    "text", ["a = " + "9" * 5000, "a = " + "[" * 5000 + "]" * 5000], ids=["digits", "lists"]
)
def test_what_the_reader_stumbles_over_is_no_toml(text: str) -> None:
    with pytest.raises(tomllib.TOMLDecodeError) as raised:
        toml_values(text)
    assert str(raised.value) == "a number is too long, or lists stand too deep in one another"


def test_a_key_of_no_letters_is_none_that_is_read() -> None:
    assert line_numbers("'' = 1\n\"\" = 2") == {("", 0, ""): 1}


def test_a_text_is_read_and_what_is_none_is_told_by_the_reader() -> None:
    assert toml_values("a.b = 1") == {"a": {"b": 1}}
    with pytest.raises(tomllib.TOMLDecodeError, match="Invalid value"):
        toml_values("a =")
