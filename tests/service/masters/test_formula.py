"""Formulas from files: what is wrong is told with its line, and a version is written once."""

from pathlib import Path

import pytest

from ledger.errors import InputError, LedgerError, RefusedError, StorageError
from ledger.service.masters.formula import version, versions, withdrawn
from tests.formula_texts import line, orange, step, table
from tests.keeper import Keeper

GOOD = orange(
    "480mL",
    line("orange-oil", "30mL", tolerance="2%", overage="1%"),
    step("rest", rest_for="macerate", at_least="24h"),
    step("filter", precoat_min="4g", passes_min=2),
    step("look", looked_at="as-poured", dilution="1:7", worst="clear", age="7d"),
    table("keeping", storage="cool and dark", days=540, opened_days=180, brix_min="60"),
    abv_min="80%",
    abv_max="90%",
    claim="not for drinking as it is",
    prepared_by="ab",
)


def load(keeper: Keeper, folder: Path, text: str) -> bool:
    file = folder / "orange.toml"
    file.write_text(text, encoding="utf-8")
    return keeper.do("formula", file=str(file)).is_new


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


def test_the_same_version_is_recorded_once(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    load(sqlite_keeper, tmp_path, GOOD)
    before = sqlite_keeper.bodies()
    assert not load(sqlite_keeper, tmp_path, f"# said otherwise\n{GOOD}")
    assert sqlite_keeper.bodies() == before


def test_a_version_with_other_content_is_refused(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    load(sqlite_keeper, tmp_path, GOOD)
    with pytest.raises(RefusedError) as raised:
        load(sqlite_keeper, tmp_path, GOOD.replace("24h", "48h"))
    assert raised.value.problems == (
        (
            "Version 1 of the formula orange-essence is in the book already.",
            "Write the change as version 2; old batches keep theirs.",
        ),
    )
    assert load(sqlite_keeper, tmp_path, GOOD.replace("version = 1", "version = 2"))
    assert [item.version for item in versions(sqlite_keeper.book, "orange-essence")] == [1, 2]


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
        "yield-max, abv-min, abv-max, claim, label, caution, prepared-by, checked-by, valid-from, "
        "line, step, keeping"
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


CHECK = "Check the number."
TOO_MUCH = f"""\
code = "orange-essence"
version = 0x{"f" * 5000}
product = "Orange essence"
kind = "essence"
basis = "480mL"
best-before-days = 36501

[[keeping]]
storage = "cool"
days = 36500
opened-days = 9999999999
"""


def test_figures_that_no_sum_could_use_are_told(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    """A date so many days away would be in no calendar, so no lot of it could be shown."""
    with pytest.raises(InputError) as raised:
        load(sqlite_keeper, tmp_path, TOO_MUCH)
    assert raised.value.problems == (
        ('orange.toml line 2: "version" is too long a number.', CHECK),
        ('orange.toml line 6: "best-before-days" is more than a hundred years.', CHECK),
        ('orange.toml line 11: "opened-days" is more than a hundred years.', CHECK),
    )


@pytest.mark.parametrize(
    ("text", "error", "what", "todo"),
    [
        (
            b"code = \n",
            InputError,
            "The file orange.toml is not in the form of TOML: Invalid value (at line 1, column 8).",
            "Mend that place and load it again.",
        ),
        (
            b"line = " + b"[" * 2000,
            InputError,
            "The file orange.toml is not in the form of TOML: a number is too long, or lists stand "
            "too deep in one another.",
            "Mend that place and load it again.",
        ),
        (
            b"version = " + b"9" * 5000,
            InputError,
            "The file orange.toml is not in the form of TOML: a number is too long, or lists stand "
            "too deep in one another.",
            "Mend that place and load it again.",
        ),
        (
            b"\xff\xfe",
            InputError,
            "The file {file} is no text in UTF-8.",
            "Save it again as UTF-8 and load it.",
        ),
        (
            None,
            StorageError,
            "The file {file} could not be read: No such file or directory.",
            "Check its name and rights.",
        ),
        (
            b"#" * 1_000_001,
            InputError,
            "The file {file} is larger than 1000000 bytes.",
            "Name the right file.",
        ),
    ],
    ids=["no TOML", "lists too deep", "a number too long", "no text", "no file", "too large"],
)
def test_a_file_that_cannot_be_read_is_told(
    text: bytes | None,
    error: type[LedgerError],
    what: str,
    todo: str,
    sqlite_keeper: Keeper,
    tmp_path: Path,
) -> None:
    file = tmp_path / "orange.toml"
    if text is not None:
        file.write_bytes(text)
    with pytest.raises(LedgerError) as raised:
        sqlite_keeper.do("formula", file=str(file))
    assert type(raised.value) is error
    assert raised.value.problems == ((what.format(file=file), todo),)


def test_a_version_is_withdrawn_and_stays_readable(sqlite_keeper: Keeper, tmp_path: Path) -> None:
    load(sqlite_keeper, tmp_path, GOOD)
    sqlite_keeper.do("withdraw", code="orange-essence", version="1")
    assert withdrawn(sqlite_keeper.book) == {("orange-essence", 1)}
    assert version(sqlite_keeper.book, "orange-essence", 1).product == "Orange essence"
    with pytest.raises(RefusedError) as raised:
        version(sqlite_keeper.book, "orange-essence", 3)
    assert raised.value.what == "The formula orange-essence version 3 is not in the book."
