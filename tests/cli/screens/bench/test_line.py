"""A short line is the words of one command, or is refused with what it would take."""

from dataclasses import replace
from types import ModuleType

import pytest

from cli.screens.bench import help as bench_help
from cli.screens.bench import line as bench_line
from cli.screens.bench import parts as bench_parts
from cli.screens.bench import slots as bench_slots
from cli.screens.bench.help import OTHERS, help_lines
from cli.screens.bench.line import material_of, read_line
from cli.screens.bench.parts import Act, Bench, Named, Pick, Plain, Usual
from cli.screens.bench.slots import VERBS
from ledger.errors import InputError
from tests.kept.golden import check_golden
from tests.kept.said import check_constants

OIL = "orange-oil"
UNITS = {"orange-oil": "mL", "spirit": "mL", "carbonate": "g", "SOO-001-3": "mL", "b30": " each"}
BENCH = Bench(
    lot="OE-001-5",
    materials={
        "orange-oil": "oil",
        "clove-oil": "oil",
        "spirit": "ethanol",
        "carbonate": "clarifier",
        "b30": "bottle",
    },
    called=frozenset({"orange-oil"}),
    commands=frozenset({"due", "release", "trace", "note"}),
    unit_of=UNITS.get,
    usual=Usual("as the pass before", "paper", "20-25", "40"),
    liquid="NS-001-J",
)
NEW = replace(BENCH, lot=None, liquid=None, usual=Usual(""))

ACTS = {
    "oil 15": "add OE-001-5 orange-oil 15mL",
    "spirit 225": "add OE-001-5 spirit 225mL",
    "carb 7.5": "add OE-001-5 carbonate 7.5g",
    "carb 7.5 g 19C": "add OE-001-5 carbonate 7.5|g --temp 19",
    "b30 3": "add OE-001-5 b30 3|each",
    "add oil 0.5 fl oz": "add OE-001-5 orange-oil 0.5|fl|oz",
    "SOO-001-3 15 top-up": "add OE-001-5 SOO-001-3 15mL --as top-up",
    "001-3 15": "add OE-001-5 001-3 15mL",
    "oil all": "add OE-001-5 orange-oil all",
    "oil 15 because it was spilt": "add OE-001-5 orange-oil 15mL --because it|was|spilt",
    "oil 15 @14:30 --instrument 'balance 2'": (
        "add OE-001-5 orange-oil 15mL --instrument balance|2 --at 14:30"
    ),
    "rest 48h": "rest OE-001-5 --for macerate",
    "rest": "rest OE-001-5 --for macerate",
    "rest settle 6x": "rest OE-001-5 --for settle --shaken 6",
    "chill 24 h -18 °C": "rest OE-001-5 --for chill --temp -18",
    "rest end": "rest OE-001-5 --end",
    "end": "rest OE-001-5 --end",
    "end 19C 6x because it was late": (
        "rest OE-001-5 --temp 19 --shaken 6 --end --because it|was|late"
    ),
    "end @14:30": "rest OE-001-5 --end --at 14:30",
    "rest end because it was late": "rest OE-001-5 --end --because it|was|late",
    "release because bright again": "release OE-001-5 --because bright|again",
    "filter 178 same": (
        "filter OE-001-5 --medium paper --pore 20-25 --vacuum 40 --out 178mL --cake same"
    ),
    "filter 178 frit 11": "filter OE-001-5 --vacuum 40 --out 178mL --medium frit --pore 11",
    "filter paper 8um 30kPa 20min 212": (
        "filter OE-001-5 --medium paper --pore 8um --vacuum 30kPa --took 20min --out 212mL"
    ),
    "cloudy": "look OE-001-5 cloudy",
    "hazy 9.4": "look OE-001-5 hazy --ntu 9.4",
    "Hazy 9.4 NTU in-syrup ring floc 1:7 24h": (
        "look OE-001-5 hazy --ntu 9.4|NTU --of in-syrup --flag ring --flag floc "
        "--dilution 1:7 --age 24h"
    ),
    "brix 65.2 20C": "measure OE-001-5 brix 65.2 --temp 20",
    "rinse 10 8": "rinse OE-001-5 --with NS-001-J --to batch --in 10mL --out 8mL",
    "rinse 10 8 apart spirit": "rinse OE-001-5 --in 10mL --out 8mL --to apart --with spirit",
    "rinse 10 8 spirit": "rinse OE-001-5 --to batch --in 10mL --out 8mL --with spirit",
    "start --product 'Orange essence' --kind essence": (
        "start --product Orange|essence --kind essence"
    ),
    "decant 400 20": "decant OE-001-5 400mL --heel 20mL",
    "makeup 240": "makeup OE-001-5 240mL --with NS-001-J",
    "makeup 240 spirit": "makeup OE-001-5 240mL --with spirit",
    "finish 238 54min": "finish OE-001-5 238mL --labour 54min",
    "bottle 16x30": "bottle OE-001-5 16x30mL",
    "bottle 16 x 30 mL": "bottle OE-001-5 16x30|mL",
    "start orange-essence 240": "start orange-essence --target 240mL",
    "note It smells -- of peel.": "note OE-001-5 -- It|smells|--|of|peel.",
    "due": "due",
    "release": "release OE-001-5",
    "trace . --forward": "trace OE-001-5 --forward",
    "pottle trace SOO-001-3": "trace SOO-001-3",
}


def words_of(text: str) -> tuple[str, ...]:
    """Return words as they are written above: a stroke is a blank within one."""
    return tuple(word.replace("|", " ") for word in text.split())


@pytest.mark.parametrize(("line", "command"), ACTS.items())
def test_a_line_is_the_words_of_a_command(line: str, command: str) -> None:
    act = read_line(line, BENCH)
    assert isinstance(act, Act)
    assert act.words == words_of(command)


def test_what_was_filled_in_is_said() -> None:
    act = read_line("filter 178 same", BENCH)
    assert isinstance(act, Act)
    assert act.notes == ("Filtered as the pass before: paper, 20-25 µm, 40 kPa.",)


def test_a_pass_of_which_nothing_is_known_is_unsaid() -> None:
    act = read_line("filter 212", replace(BENCH, usual=Usual("")))
    assert act == Act(("filter", "OE-001-5", "--medium", "unsaid", "--out", "212mL"))


def test_a_vacuum_that_counted_from_nothing_does_so_again() -> None:
    usual = Usual("as the pass before", vacuum="20", is_absolute=True)
    act = read_line("filter 212 paper", replace(BENCH, usual=usual))
    assert isinstance(act, Act)
    assert act.words[2:5] == ("--vacuum", "20", "--absolute")


def test_how_long_a_rest_lasts_is_no_word_of_the_command() -> None:
    act = read_line("rest 48h", BENCH)
    assert isinstance(act, Act)
    assert act.lasts == "48h"


@pytest.mark.parametrize("line", ["filter 212", "oil 15", "rinse 10 8", "rest 2h", "bottle 2x30"])
def test_an_act_ends_a_rest_that_goes_on(line: str) -> None:
    act = read_line(line, replace(BENCH, is_resting=True))
    assert isinstance(act, Act)
    assert act.ends_rest


@pytest.mark.parametrize("line", ["cloudy", "brix 65", "note Shaken.", "end", "start x 240"])
def test_a_look_a_reading_a_note_and_another_batch_leave_a_rest_alone(line: str) -> None:
    act = read_line(line, replace(BENCH, is_resting=True))
    assert isinstance(act, Act)
    assert not act.ends_rest


def test_again_says_that_it_was_done_twice() -> None:
    act = read_line("decant 400 again", BENCH)
    assert isinstance(act, Act)
    assert (act.words, act.is_again) == (("decant", "OE-001-5", "400mL"), True)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("", None),
        ("# a remark on the paper", None),
        ("undo", Plain("undo")),
        ("?", Plain("help")),
        ("done", Plain("done")),
        ("2", Pick(2)),
        ("1 212", Pick(1, ("212",))),
        ("OE-002-3", Named("OE-002-3")),
        ("oil", Named("oil", "orange-oil")),
    ],
)
def test_some_lines_are_no_act(line: str, said: object) -> None:
    assert read_line(line, BENCH) == said


def test_a_number_after_a_lot_is_how_much_of_it() -> None:
    act = read_line("15", replace(BENCH, source="SOO-001-3"))
    assert act == Act(("add", "OE-001-5", "SOO-001-3", "15mL"))


REFUSED = {
    "filtr": (
        '"filtr" is no act, grade, material or lot that the book knows. Did you mean filter?',
        "Write help to see the lines there are.",
    ),
    "filtr 178": (
        '"filtr" is no act, grade, material or lot that the book knows. Did you mean filter?',
        "Write help to see the lines there are.",
    ),
    "oil 15 banana": (
        '"banana" has no place in a line of add.',
        "It takes temperature, how long it took, why it goes in, amount; such as: oil 15",
    ),
    "filter same": ("The volume that came out is missing.", "Write it as: filter 178 same"),
    "rinse": (
        "The volume put on and the volume that ran through are missing.",
        "Write it as: rinse 10 8",
    ),
    'oil 15 --instrument "balance': (
        "A quotation mark in the line has no other to close it.",
        "Close it, or leave it out.",
    ),
}


@pytest.mark.parametrize(("line", "problem"), REFUSED.items())
def test_a_line_that_cannot_be_read_is_refused(line: str, problem: tuple[str, str]) -> None:
    with pytest.raises(InputError) as refused:
        read_line(line, BENCH)
    assert refused.value.problems == (problem,)


BARE = {
    "cloudy": ("There is no lot in hand.", "Write the code of one, or: start FORMULA VOLUME"),
    "oil 15": ('"oil" could be orange-oil or clove-oil.', "Write which."),
    "makeup 240": (
        "No spirit went into OE-001-5 that it could be made up with.",
        "Say with what: makeup 240 LOT",
    ),
}


@pytest.mark.parametrize(("line", "problem"), BARE.items())
def test_nothing_is_guessed(line: str, problem: tuple[str, str]) -> None:
    bench = replace(NEW, lot="OE-001-5" if line == "makeup 240" else None, called=frozenset())
    with pytest.raises(InputError) as refused:
        read_line(line, bench)
    assert refused.value.problems == (problem,)


@pytest.mark.parametrize("name", VERBS)
def test_the_example_of_every_verb_is_a_line_of_it(name: str) -> None:
    act = read_line(VERBS[name].example, BENCH)
    assert isinstance(act, Act)
    assert act.words[0] == VERBS[name].command


def test_the_help_has_every_line_and_fits_a_screen() -> None:
    lines = help_lines()
    assert len(lines) == len(VERBS) + len(OTHERS) <= 23
    assert max(map(len, lines)) <= 80


WORDS = """
15 1.5 1,5 ½ 15mL 15|mL 15g 15|kg 3kg all 20C 20°C 20|°C -5C −5C 5min 5m 5|min 2h 48h 1d 2days 1w
2weeks 3x 20µm 20um 20|μm 20-25 40kPa 40|kPa paper frit membrane same fresh 1:7 9.4 9.4NTU 9.4|NTU
24h 7d neat in-syrup as-poured ring louche abv brix ph 65.2 -1.5 −1.5 macerate settle chill warm
batch apart waste SOO-001-3 spirit 16x30 16|x|30 16×30mL tare top-up 2:30 oil-x Ω
"""
"""Words of every sort; a stroke stands for a blank inside of one."""


def test_every_word_of_a_line_fills_the_slot_that_it_always_did() -> None:
    told = []
    for name, verb in VERBS.items():
        needed = ", ".join(slot.name for slot in verb.slots if slot.is_needed) or "nothing"
        told.append(f"{name}: {verb.command}, as {verb.example}; ends a rest: {verb.ends_rest}")
        told.append(f"  needs {needed}")
        for word in (word.replace("|", " ") for word in WORDS.split()):
            slots = [slot for slot in verb.slots if slot.fits.fullmatch(word)]
            if slots:
                fills = "; ".join(
                    " ".join(part for part in (slot.name, slot.option, slot.unit) if part)
                    + (", many" if slot.takes_many else "")
                    for slot in slots
                )
                told.append(f"  {word}: {fills}")
    check_golden("cli/bench_slots.txt", "".join(f"{line}\n" for line in told))


@pytest.mark.parametrize("module", [bench_help, bench_line, bench_parts, bench_slots])
def test_its_tables_figures_and_words_are_the_kept_ones(module: ModuleType) -> None:
    check_constants(module)


@pytest.mark.parametrize(
    ("word", "material"),
    [
        *(("spirit", "spirit"), ("orange", "orange-oil"), ("ethanol", "spirit"), ("oil", OIL)),
        *(("car", "carbonate"), ("ca", None), ("cloves", None), ("clo", "clove-oil")),
    ],
)
def test_a_material_is_named_by_its_name_a_part_its_head_or_its_kind(
    word: str, material: str | None
) -> None:
    """Of two oils the one that the formula calls for; fewer letters than three are no head."""
    assert material_of(word, BENCH) == material
