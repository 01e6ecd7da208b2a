"""What the doors refuse, in whole sentences with the exit code, where no other test has them.

What is refused records nothing, so one book hears it all.
"""

import shlex
from pathlib import Path

import pytest

from cli.kit.files import Paper
from tests.cli.shell import Shell
from tests.kept.golden import check_golden

COMMANDS = """\
wread
noot x
help nothing
help stock nothing
guide labls
label --out two.pdf --kind hold
label --calibrate
label {packed} --out two.pdf --dpi 100
label {packed} --out two.pdf --kind case --used 3 --specimen
label {packed} --out two.pdf --gtin 9521234543213 --start-at 99
label {packed} --out two.pdf --count 1 --gtin 9521234543213 --link https://example.com/x
label --calibrate --layout 9x9 --out two.pdf
label --calibrate --layout 2x6 --layouts odd.toml --out two.pdf
label --calibrate --layout 2x6 --layouts empty.toml --out two.pdf
label --calibrate --layout 2x6 --layouts wrong.toml --out two.pdf
journal --last many
page {packed} --out /dev/null/pages
formula samples /dev/null/mine
prove {packed} --check there.pdf
prove --check there.pdf
complain {packed} cloudy --photo none.jpg
complain {packed} cloudy --photo folder
complain {packed} cloudy --photo /dev/null
recall {packed} --drill --out none/pack
forget "Bridge Street Stall" --because asked
export --csv there.pdf
export --csv none/tables
export --key-data there.pdf --from 2026-01-01
export --epcis there.pdf
sheet --blank-csv there.csv
formula load there.pdf
demo there.pdf
receive rum 3L
"""
"""What is typed; one line is one command."""
BENCH = """\
murky
1 2 3 4 5 6 7 8 9
9
bench
oil
rest 24h 48h
filter "212
rinse 10 8
end
(01)09506000134352
]Q3zz
"""
"""Lines at the bench with no lot in hand, and then with a batch in hand that has nothing in it."""
TRIAL = """\
factor
jars
factor rest 24h 48h; jars 3 orange 50
"""
"""Rows over the jars of a trial that is not begun."""
WRONG = "".join(
    f'[[layout]]\nname = "{name}"\npage = {page}\nacross = {across}\ndown = 1\n'
    f"width = {width}\nheight = {height}\n"
    for name, page, across, width, height in (
        ("none", '"A4"', 0, 10.0, 10.0),
        ("many", '"A4"', 1000, 0.1, 10.0),
        ("flat", '"A4"', 1, 10.0, 0.0),
        ("long", "[100.0, 9000.0]", 1, 10.0, 10.0),
        ("high", '"A4"', 1, 10.0, 900.0),
    )
)


AFTERWARDS = """\
start orange 240mL --out sheet.pdf
trial plan chilled --try chill=none/4C --product "Orange" --kind essence --out plan.pdf
label {packed} --count 2 --because "more of them" --out labels2.pdf
recall {packed} --because "a splinter" --out pack
recall {packed} --drill --out drill
"""
"""What is recorded, or not, before its paper is made."""


@pytest.fixture
def here(shell: Shell) -> Shell:
    """A book, and beside it what is in the way."""
    Path("there.csv").write_text("one,two\n1,2\n", encoding="utf-8")
    Path("empty.toml").write_text("layout = []\n", encoding="utf-8")
    Path("wrong.toml").write_text(WRONG, encoding="utf-8")
    Path("odd.toml").write_text('[[layout]]\nname = "odd"\npage = "A7"\n', encoding="utf-8")
    Path("there.pdf").touch()
    Path("folder").mkdir()
    return shell


def said(shell: Shell, command: str, given: str | None = None) -> str:
    """Return all that a command says, with its exit code."""
    before = shell.entries()
    words = command if given is None else f"{command} <<< {given}"
    lines = None if given is None else given.replace("; ", "\n") + "\n"
    answer = shell.run(*shlex.split(command.format(**shell.codes)), given=lines)
    assert shell.entries() == before, command
    told = f"{answer.out}{answer.err}".replace(str(Path.cwd()), "HERE")
    return f"$ pottle {words}\n{told}(exit code {answer.exit_code})\n"


def test_what_is_refused_is_refused_in_these_words(here: Shell) -> None:
    check_golden("cli/refused.txt", "".join(said(here, line) for line in COMMANDS.splitlines()))


def test_a_line_at_the_bench_that_cannot_be_done_is_refused_in_these_words(here: Shell) -> None:
    told = [said(here, "bench", line) for line in BENCH.splitlines()]
    assert here.bench('start --product "Orange essence" --kind essence --target 240mL').err == ""
    told += [said(here, "bench", line) for line in BENCH.splitlines()]
    told += [said(here, "bench --trial rests", line) for line in TRIAL.splitlines()]
    check_golden("cli/bench_refused.txt", "".join(told))


def test_the_bench_says_which_lines_there_are(here: Shell) -> None:
    told = said(here, "bench", "help") + said(here, "bench --trial rests", "help")
    check_golden("cli/bench_help.txt", told)


def test_what_was_recorded_is_said_where_its_paper_fails(
    formulas: Shell, monkeypatch: pytest.MonkeyPatch
) -> None:
    put = Paper.put

    def first_alone(paper: Paper, content: bytes) -> None:
        """Labels are put before anything is recorded and again after it; there is room for one."""
        if "labels" not in paper.part.name or paper.part.read_bytes():
            no_room()
        put(paper, content)

    def no_room(*_told: object, **_how: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Paper, "put", first_alone)
    monkeypatch.setattr("cli.screens.recall.recall.write_pack", no_room)
    told = [f"$ pottle {line}\n{formulas.line(line).err}" for line in AFTERWARDS.splitlines()]
    check_golden("cli/afterwards.txt", "".join(told))


EMPTY = """\
formula list
list sales
list receipts
list cleanings
chart
complaints
due
stock
material list
party list
person list
house
"""
"""What a new book is asked, of which nothing is there yet."""


def test_a_new_book_says_what_it_has_not_and_what_comes_next(bare: Shell) -> None:
    told = [f"$ pottle {line}\n{bare.line(line).out}" for line in EMPTY.splitlines()]
    check_golden("cli/empty.txt", "".join(told))
