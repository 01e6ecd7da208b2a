"""A map is read whole, or all that is wrong in it is told."""

import pytest

from ledger.errors import InputError
from ledger.service.copies.intake.column_map import read_map
from ledger.service.copies.intake.table_maps import SHIPPED, shipped_map, shipped_text

WRONG = """
dates = "dym"
colour = "red"
[table.Batches]
vessel = "jar 1"
nose = "fine"
acts = [
  { do = "stir", lot = "{Batch}" },
  { do = "add", lot = "{Batch}", source = "{Oil", amount = "{mL} mL", smell = "{Nose}" },
  { do = "start", product = "{What}" },
]
"""


def test_all_that_is_wrong_in_a_map_is_told_at_once() -> None:
    with pytest.raises(InputError) as caught:
        read_map("my.toml", WRONG)
    whats = [what.removeprefix("The map my.toml: ") for what, _ in caught.value.problems]
    assert whats == [
        'It has "colour", which no map has.',
        "Its dates are in no known order.",
        'The table Batches has "nose", which none of its acts takes.',
        'The table Batches has the act "stir", which is no verb of the book.',
        'The table Batches, act add: "{Oil" has a brace without its other.',
        'The table Batches, act add, has an unknown word "smell".',
        "The table Batches, act start, does not say the target.",
    ]


ACTS = "Write: acts = [ {do = ...}, ... ]"


@pytest.mark.parametrize(
    ("text", "problems"),
    [
        ("[table.A]\nacts = 7", (("The table A has no acts.", ACTS),)),
        (
            "words = 7",
            (
                ("Its words are no pairs of texts.", 'Write each as: "klar" = "clear"'),
                ("It has no table.", 'Begin one with: [table."NAME"]'),
            ),
        ),
        ("[table]\nA = 1", (("The table A has no acts.", ACTS),)),
    ],
)
def test_what_is_no_map_is_told(text: str, problems: tuple[tuple[str, str], ...]) -> None:
    with pytest.raises(InputError) as caught:
        read_map("my.toml", text)
    assert caught.value.problems == tuple(
        (f"The map my.toml: {what}", todo) for what, todo in problems
    )


def test_what_is_no_toml_is_told_with_what_its_reader_says() -> None:
    with pytest.raises(InputError) as caught:
        read_map("my.toml", "= 7")
    ((what, todo),) = caught.value.problems
    assert what.startswith("The map my.toml cannot be read as TOML: Invalid statement (at line 1")
    assert todo == "Put right the line it names."


@pytest.mark.parametrize("name", SHIPPED)
def test_a_map_that_comes_with_pottle_can_be_read_and_has_under_forty_lines(name: str) -> None:
    assert shipped_map(name).tables
    assert len(shipped_text(name).splitlines()) < 40


def test_a_map_that_comes_with_no_version_of_pottle_is_refused_with_those_that_do() -> None:
    with pytest.raises(InputError) as caught:
        shipped_map("none")
    assert caught.value.problems == (
        (
            "There is no map none, neither as a file nor with pottle.",
            f"Name a file, or one of: {', '.join(SHIPPED)}.",
        ),
    )


def test_a_map_says_neither_order_nor_sign_where_its_text_does_not() -> None:
    told = read_map("my.toml", '[table.A]\nacts = [{do = "note", lot = "{L}", text = "{T}"}]')
    assert (told.dates, told.decimal, told.words) == (None, None, {"": {}})


NOTE = '{ do = "note", lot = "{L}", text = "{T}" }'


@pytest.mark.parametrize(
    ("text", "what", "todo"),
    [
        (
            'colour = "red"',
            'It has "colour", which no map has.',
            "A map has: dates, decimal, words, table.",
        ),
        (
            'dates = "dym"',
            "Its dates are in no known order.",
            "Write one of: dmy, mdy, ymd.",
        ),
        (
            'decimal = ";"',
            "Its decimal is no sign that parts decimals.",
            'Write decimal = "," or ".".',
        ),
        ("words = 7", "Its words are no pairs of texts.", 'Write each as: "klar" = "clear"'),
        (
            "[words]\nklar = 7",
            "Its words are no pairs of texts.",
            'Write each as: "klar" = "clear"',
        ),
        (
            '[words]\nklar = "clear"\n[words.kind]\n"öl" = 7',
            "Its words are no pairs of texts.",
            'Write each as: "klar" = "clear"',
        ),
        (
            "[words.kind.more]\na = 1",
            None,
            None,
        ),
        (
            '[table.B]\nif = 7\nacts = [{ do = "note", lot = "{L}", text = "{T}" }]',
            "The table B has an if that is no text.",
            'Write if = "{Batch}".',
        ),
        ("[table.B]\nacts = []", "The table B has no acts.", "Write: acts = [ {do = ...}, ... ]"),
        (
            "[table.B]\nacts = [7]",
            "The table B has no acts.",
            "Write: acts = [ {do = ...}, ... ]",
        ),
        (
            '[table.B]\nlot = "{L}"\nacts = [{ do = "note", text = 7 }]',
            "The table B, act note: text is no text.",
            'Write text = "..."',
        ),
        (
            '[table.B]\nacts = [{ do = "note", lot = "{L}" }]',
            "The table B, act note, does not say the text.",
            'Add text = "{COLUMN}".',
        ),
        (
            '[table.B]\nacts = [{ do = "note", text = "{T}", hue = "x" }]',
            'The table B, act note, has an unknown word "hue".',
            "It takes: at, by, because, origin, sheet, lot, text.",
        ),
        (
            '[table.B]\nsource = "x"\nacts = [{ do = "note", text = "{T}" }]',
            'The table B has "source", which none of its acts takes.',
            "Leave it out, or say it in the act that is meant.",
        ),
    ],
)
def test_one_thing_that_is_wrong_in_a_map_is_told_with_what_to_write(
    text: str, what: str | None, todo: str | None
) -> None:
    """Tables of words within tables of words are none of a word."""
    whole = f"{text}\n[table.A]\nacts = [{NOTE}]"
    if what is None:
        assert read_map("my.toml", whole).tables
        return
    with pytest.raises(InputError) as caught:
        read_map("my.toml", whole)
    assert caught.value.problems == ((f"The map my.toml: {what}", todo),)


def test_a_map_without_a_table_is_told_how_to_begin_one() -> None:
    for text in ("", "table = 7", "[table]"):
        with pytest.raises(InputError) as caught:
            read_map("my.toml", text)
        assert caught.value.problems == (
            ("The map my.toml: It has no table.", 'Begin one with: [table."NAME"]'),
        )


WHOLE = """
dates = "dmy"
decimal = ","
[words]
"  Klar  KLAR " = "clear"
[words.kind]
"Öl" = "oil"
[table.Batches]
at = "{Day}"
by = "{Who}"
lot = "{Batch}"
if = "{Batch} = {Sort}"
sum = "{out} = {in} + {lost}"
optional = ["lost", "Who"]
acts = [
  { do = "note", text = "{Note}", at = "{Other day}" },
  { do = "look", grade = "{Grade}", if = "{Seen}" },
  { do = "receive", once = "sum", code = "{Oil}", material = "oil", amount = "{mL} mL" },
  { do = "material", once = true, code = "{Oil}", name = "{Name}", kind = "oil" },
  { do = "rest", purpose = "macerate", lot = "{Batch}" },
]
"""


def test_a_map_is_read_with_its_words_its_conditions_and_the_columns_that_each_act_tells() -> None:
    told = read_map("my.toml", WHOLE)
    assert (told.name, told.dates, told.decimal) == ("my.toml", "dmy", ",")
    assert told.words == {"": {"klar klar": "clear"}, "kind": {"öl": "oil"}}
    (table,) = told.tables
    assert [(act.verb, sorted(act.tells), act.condition) for act in table.acts] == [
        ("note", ["Note"], None),
        ("look", ["Grade"], "{Seen}"),
        ("receive", ["mL"], None),
        ("material", ["Name"], None),
        ("rest", [], None),
    ]
    assert [(act.is_once, act.is_summed) for act in table.acts] == [
        *((False, False), (False, False), (True, True), (True, False), (False, False)),
    ]
    assert table.acts[0].words == {
        "at": "{Other day}", "by": "{Who}", "lot": "{Batch}", "text": "{Note}",
    }  # fmt: skip
    assert table.acts[3].words["at"] == "{Day}"
    assert "lot" not in table.acts[3].words
    assert table.balance is not None
    assert table.condition == "{Batch} = {Sort}"
    assert table.optional == {"lost", "Who"}
    assert set(table.columns) == {
        *("Day", "Other day", "Who", "Batch", "Sort", "Note", "Grade", "Seen", "Oil", "mL"),
        *("Name", "out", "in", "lost"),
    }
    assert set(table.needed) == set(table.columns) - {"lost", "Who"}
    assert len(table.columns) == len(set(table.columns))


def test_a_sum_or_columns_that_cannot_be_read_are_told_with_the_form_they_have() -> None:
    acts = '[table.A]\nacts = [{do = "note", at = "{D}", text = "{T}"}]\n'
    for line, what, todo in (
        (
            'sum = "whole"',
            "has a sum that cannot be read.",
            'Write it as: sum = "{out} = {sold} + {back}"',
        ),
        (
            "sum = 7",
            "has a sum that cannot be read.",
            'Write it as: sum = "{out} = {sold} + {back}"',
        ),
        (
            "optional = [7]",
            "has an optional that is no list of columns.",
            'Write it as: optional = ["tasted", "lost"]',
        ),
        (
            'optional = "D"',
            "has an optional that is no list of columns.",
            'Write it as: optional = ["tasted", "lost"]',
        ),
    ):
        with pytest.raises(InputError) as caught:
            read_map("my.toml", acts + line)
        assert caught.value.problems == ((f"The map my.toml: The table A {what}", todo),)
    (table,) = read_map("my.toml", acts + 'optional = ["D"]').tables
    assert table.needed == ("T",)
