"""A formula's file: all that is wrong is told with its line."""

from pathlib import Path

import pytest

from ledger.errors import InputError
from ledger.service.masters.formula import version, versions
from ledger.service.masters.formula_file import HEAD, KEEPING, LINE, STEPS
from tests.formula_texts import line, orange, step
from tests.keeper import Keeper
from tests.kept.golden import check_golden
from tests.service.masters.formula_files import GOOD, load


def test_every_key_of_a_file_is_kept(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    assert load(sqlite_keeper, tmp_path, GOOD)
    formula = version(sqlite_keeper.book, "Orange-Essence")
    rest, filtering, look = formula.steps
    (line,), (keeping,) = formula.lines, formula.keeping
    assert (formula.abv_min_mpct, formula.abv_max_mpct) == (80_000, 90_000)
    assert (formula.claim, formula.prepared_by) == ("not for drinking as it is", "AB")
    assert (line.tolerance_mpct, line.overage_mpct) == (2000, 1000)
    assert (rest.rest_for, rest.minutes_min) == ("macerate", 24 * 60)
    assert filtering.precoat_min is not None
    assert (filtering.precoat_min.amount, filtering.passes_min) == (4000, 2)
    assert (look.looked_at, look.dilution, look.worst) == ("as-poured", "1:7", "clear")
    assert look.age_minutes == 7 * 24 * 60
    assert (keeping.storage, keeping.days) == ("cool and dark", 540)
    assert (keeping.opened_days, keeping.brix_min_mpct) == (180, 60_000)


WRONG = """\
code = "orange-essence"
version = 0
product = "Orange essence"
kind = "perfume"
basis = "480g"
colour = "orange"
yield-min = "104%"
yield-max = "102%"
checked-by = "ZZ"

[[line]]
material = "neroli-oil"

[[line]]
material = "orange-oil"
amount = "30mL"
tolerance = "-2%"

[[step]]
verb = "rest"
pore-max = "20"

[[step]]
verb = "shake"

[[step]]
verb = "filter"
temp-min = "-8"
temp-max = ["6", "8"]
"""


def test_all_that_is_wrong_is_told_with_its_line(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    before = sqlite_keeper.bodies()
    with pytest.raises(InputError) as raised:
        load(sqlite_keeper, tmp_path, WRONG)
    kinds = "essence, washed-essence, gum-emulsion, blend, macerate, base-syrup, syrup, rework"
    keys = (
        "code, version, product, kind, basis, wanted-clarity, pour, best-before-days, yield-min, "
        "yield-max, abv-min, abv-max, claim, label, dose, dose-into, caution, prepared-by, "
        "checked-by, valid-from, packaging, line, step, keeping"
    )
    verbs = (
        "add, rest, filter, rinse, decant, measure, makeup, look, finish, bottle, labels, check, "
        "note"
    )
    told = [
        (2, "A version counts from 1.", "Write version = 1."),
        (4, '"perfume" is not a kind of product.', f"Choose one of: {kinds}."),
        (
            5,
            '480g is not a volume, so it cannot be the "basis".',
            "Write a volume, such as 480mL.",
        ),
        (6, '"colour" is not known in the formula.', f"Choose from: {keys}."),
        (
            8,
            '"yield-min" 104% is more than "yield-max" 102%.',
            "Exchange them, or put right whichever is wrong.",
        ),
        (
            9,
            "The initials ZZ are not in the book.",
            'Add the person with: pottle person add ZZ "FULL NAME"',
        ),
        (11, 'A line has no "amount".', "Write amount = and its value."),
        (
            12,
            "The material neroli-oil is not in the book.",
            'Add it with: pottle material add neroli-oil --name "NAME" --kind KIND',
        ),
        (17, '"tolerance" is below zero.', "Write a number from zero up."),
        (19, 'The step rest has no "rest-for".', "Say what it is for."),
        (
            21,
            '"pore-max" is not known in the step rest.',
            "Choose from: verb, words, rest-for, at-least, at-most, temp-min, temp-max.",
        ),
        (24, '"shake" is not a verb of the bench.', f"Choose one of: {verbs}."),
        (29, '"temp-max" is not a single value.', 'Write it in "quotes".'),
    ]
    assert raised.value.problems == tuple(
        (f"orange.toml line {line}: {what}", todo) for line, what, todo in told
    )
    assert sqlite_keeper.bodies() == before


def syrup(*lines: str) -> str:
    """Return the formula of a syrup with these lines."""
    head = 'code = "syrup"\nversion = 1\nproduct = "Syrup"\nkind = "syrup"\nbasis = "4L"\n'
    return head + "".join(f'[[line]]\namount = "120mL"\n{line}\n' for line in lines)


def test_a_line_calls_for_what_is_made_here_by_its_formula(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    load(sqlite_keeper, tmp_path, GOOD)
    load(sqlite_keeper, tmp_path, syrup('formula = "Orange-Essence"'))
    (found,) = versions(sqlite_keeper.book, "syrup")
    assert [(line.material, line.formula) for line in found.lines] == [(None, "orange-essence")]


def test_a_line_calls_for_one_thing_that_the_book_knows(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    text = syrup('material = "orange-oil"\nformula = "orange-essence"', "", 'formula = "Balm"')
    with pytest.raises(InputError) as raised:
        load(sqlite_keeper, tmp_path, text)
    assert raised.value.problems == (
        (
            "orange.toml line 9: A line calls for one thing, bought or made here, and this names "
            "both.",
            "Write each in a [[line]] of its own.",
        ),
        (
            "orange.toml line 9: The formula orange-essence is not in the book.",
            "Load that first: pottle formula load FILE",
        ),
        (
            "orange.toml line 10: A line does not say what it calls for.",
            'Write material = "CODE" for what is bought, or formula = "CODE" for what is made.',
        ),
        (
            "orange.toml line 15: The formula balm is not in the book.",
            "Load that first: pottle formula load FILE",
        ),
    )


@pytest.mark.parametrize(("kind", "value"), [("word", '"?"'), ("hidden", '"\u200b"')])
def test_each_key_of_a_file_is_named_where_its_value_is_wrong(
    kind: str, value: str, sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    """Every key of the head, of a line, of each sort of step and of keeping, each with its line."""
    parts = [
        [key for key in HEAD if key not in ("version", "line", "step", "keeping")],
        ("[[line]]", *LINE),
        *(("[[step]]", f'verb = "{verb}"', *keys) for verb, keys in STEPS.items()),
        ("[[keeping]]", *KEEPING),
    ]
    text = "\n".join(
        key if key.startswith(("[[", "verb")) else f"{key} = {value}"
        for keys in parts
        for key in keys
    )
    with pytest.raises(InputError) as raised:
        load(sqlite_keeper, tmp_path, text)
    told = [f"{what}\n  {todo}" for what, todo in raised.value.problems]
    check_golden(f"wrong_words/formula_{kind}.txt", "\n".join((*told, "")))


def test_a_key_that_no_keeping_has_is_told_with_those_it_may_have(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    text = syrup('material = "orange-oil"') + '[[keeping]]\nstorage = "cool"\ndays = 9\nhue = "x"\n'
    with pytest.raises(InputError) as raised:
        load(sqlite_keeper, tmp_path, text)
    assert raised.value.problems == (
        (
            'orange.toml line 12: "hue" is not known in how long it keeps.',
            "Choose from: storage, days, opened-days, brix-min.",
        ),
    )


WHOLE = orange(
    "480mL",
    line("orange-oil", "30mL"),
    step(
        "filter", words="Slowly.", pore_max="20 µm", at_least="1h", at_most="2h", temp_min="-8 °C"
    ),
    step("rest", rest_for="chill", temp_max="4 °C"),
    wanted_clarity="bright",
    pour="1:9",
    best_before_days=540,
    yield_min="90%",
    yield_max="95%",
    label="Shake.",
    caution="Burns.",
    checked_by="ab",
    valid_from="2026-03-01",
    dose="30mL",
    dose_into="1L",
    packaging="glass",
)
"""A formula in which all is said that GOOD leaves out."""


def test_what_may_be_said_of_a_formula_is_kept_and_what_is_not_said_is_nothing(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    load(sqlite_keeper, tmp_path, GOOD)
    bare = version(sqlite_keeper.book, "orange-essence")
    load(sqlite_keeper, tmp_path, WHOLE.replace("version = 1", "version = 2"))
    told = version(sqlite_keeper.book, "orange-essence")
    assert (told.wanted_clarity, told.pour_parts, told.best_before_days) == ("bright", 9, 540)
    assert (told.yield_min_mpct, told.yield_max_mpct) == (90_000, 95_000)
    assert (told.label_text, told.caution, told.packaging) == ("Shake.", "Burns.", "glass")
    assert (told.checked_by, str(told.valid_from), told.prepared_by) == ("AB", "2026-03-01", None)
    assert told.dose is not None
    assert told.dose_into is not None
    assert (told.dose.amount, told.dose_into.amount) == (30_000, 1_000_000)
    filtering, rest = told.steps
    assert (filtering.minutes_min, filtering.minutes_max, filtering.words) == (60, 120, "Slowly.")
    assert (filtering.temp_min_mdegc, filtering.temp_max_mdegc) == (-8000, None)
    assert (filtering.pore_max_nm, rest.temp_max_mdegc) == (20_000, 4000)
    unsaid = (bare.pour_parts, bare.best_before_days, bare.label_text, bare.packaging)
    assert unsaid == (None, None, None, None)
    assert (bare.dose, bare.dose_into, bare.caution, bare.checked_by) == (None, None, None, None)


def test_what_keeps_for_no_day_is_kept_as_such(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    keeping = '[[keeping]]\nstorage = "open"\ndays = 0\nbrix-min = "60 °Bx"\n'
    load(sqlite_keeper, tmp_path, syrup('material = "orange-oil"') + keeping)
    (told,) = version(sqlite_keeper.book, "syrup").keeping
    assert (told.storage, told.days, told.opened_days) == ("open", 0, None)
    assert told.brix_min_mpct == 60_000


ONE_WRONG = {
    "a dose without its syrup": (
        6,
        'dose = "30mL"',
        "A formula with dose tells dose-into too.",
        'Write both, such as dose = "30mL" and dose-into = "1 US gal".',
    ),
    "a syrup without its dose": (
        6,
        'dose-into = "1L"',
        "A formula with dose-into tells dose too.",
        'Write both, such as dose = "30mL" and dose-into = "1 US gal".',
    ),
    "strengths the wrong way round": (
        6,
        'abv-max = "80%"\nabv-min = "90%"',
        '"abv-min" 90% is more than "abv-max" 80%.',
        "Exchange them, or put right whichever is wrong.",
    ),
    "a time the wrong way round": (
        8,
        '[[step]]\nverb = "add"\nat-most = "1h"\nat-least = "2h"',
        '"at-least" 2h is more than "at-most" 1h.',
        "Exchange them, or put right whichever is wrong.",
    ),
    "a step that is no table": (
        6,
        "step = 3",
        '"step" is not a list of tables.',
        "Write each as [[step]].",
    ),
    "a step in a list of words": (
        6,
        'step = ["rest"]',
        '"step" is not a list of tables.',
        "Write each as [[step]].",
    ),
    "a step that does nothing": (
        6,
        '[[step]]\nwords = "Wait."',
        "The verb is missing.",
        "Give the verb in words.",
    ),
    "a look at nothing": (
        6,
        '[[step]]\nverb = "LOOK"',
        'The step look has no "looked-at".',
        "Say what is to be looked at.",
    ),
    "a note with a limit": (
        8,
        '[[step]]\nverb = "note"\ntemp-max = "4"',
        '"temp-max" is not known in the step note.',
        "Choose from: verb, words.",
    ),
    "keeping without its days": (
        6,
        '[[keeping]]\nstorage = "cool"',
        'A keeping has no "days".',
        "Write days = and its value.",
    ),
    "keeping for longer than anybody knows": (
        8,
        '[[keeping]]\nstorage = "cool"\ndays = 36501',
        '"days" is more than a hundred years.',
        "Check the number.",
    ),
    "a coating in litres": (
        8,
        '[[step]]\nverb = "filter"\nprecoat-min = "4mL"',
        '4mL is not a weight, so it cannot be the "precoat-min".',
        "Write a weight, such as 4g.",
    ),
}


@pytest.mark.parametrize(
    ("number", "text", "what", "todo"), ONE_WRONG.values(), ids=list(ONE_WRONG)
)
def test_one_thing_that_is_wrong_is_told_alone_with_its_line(
    number: int, text: str, what: str, todo: str, sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    """What is not there is told with the line of its table."""
    head = 'code = "x"\nversion = 1\nproduct = "X"\nkind = "syrup"\nbasis = "4L"\n'
    with pytest.raises(InputError) as raised:
        load(sqlite_keeper, tmp_path, head + text)
    assert raised.value.problems == ((f"orange.toml line {number}: {what}", todo),)
