"""Words and figures that readers and sums of the ledger refuse, by what is asked of them."""

from collections.abc import Callable, Iterator
from functools import partial
from types import SimpleNamespace

from ledger.domain.masters.doubts import USUAL, read_doubts
from ledger.domain.masters.nutrients import read_nutrients
from ledger.domain.tables.days import DayOrder, plain_day
from ledger.domain.tables.dialect import MOST_ROWS, read_table
from ledger.domain.tables.grid import Found
from ledger.domain.tables.templates import columns_of
from ledger.errors import LedgerError
from ledger.science.liquids import alcohol, sucrose, syrups
from ledger.science.liquids.strengths import parse_strength, parse_temperature
from ledger.service.copies.intake.column_map import read_map
from ledger.store.engine.patience import sentence

ACTS = '[table.A]\nacts = [{{do = "note", lot = "{{L}}", text = {}}}]\n{}'
NOTE = ACTS.format('"{T}"', "")
MAPS = (
    "",
    "= 7",
    "words = 7",
    "[table]\nA = 1",
    "[table.A]\nacts = 7",
    "[table.A]\nacts = []",
    f'colour = "red"\ndates = "dym"\ndecimal = "x"\n{NOTE}',
    f"[words]\nklar = 7\n{NOTE}",
    f"[words.grade]\nklar = 7\n{NOTE}",
    ACTS.format("7", ""),
    ACTS.format('"{T"', ""),
    ACTS.format('"{T}"', "if = 7"),
    ACTS.format('"{T}"', 'sum = "much"'),
    ACTS.format('"{T}"', "optional = 7"),
    ACTS.format('"{T}"', "optional = [7]"),
    ACTS.format('"{T}"', 'nose = "fine"'),
    '[table.A]\nacts = [{do = "stir"}, {do = "start", smell = "{S}"}]',
)
TABLES = (
    b"",
    b"a\0b",
    b'a,b\n"c,d\n',
    b"a,b\n1,2,3\n",
    b"a,a\n1,2\n",
    b"a,b\n" + b"1,2\n" * (MOST_ROWS + 1),
)
DAYS = (("46056", None), ("31.2.2026", None), ("2.3.2026", None), ("13.14.2026", DayOrder.DMY))
NUTRIENTS = (
    *("sugars lots", "vitamin 3", "fat 3; fat 4", "fat 60; protein 41", "  "),
    *("carbohydrate 50; sugars 51", "fat 3; saturates 4", "fat 60; protein 41; sugars 1"),
)
DOUBTS = ("ruler=3", "scale", "scale=1; scale=2", " ", *(f"{name}=100" for name in USUAL))
TIMES = ("55P03", "57014", "25P03")
SUMS: dict[str, Callable[[], object]] = {
    "alcohol, 101 %": lambda: alcohol.check_strength(101),
    "alcohol, -1 % mas": lambda: alcohol.check_strength(-1, "mass"),
    "alcohol at 41 °C": lambda: alcohol.check_temperature(41),
    "alcohol at -21 °C": lambda: alcohol.density(50, -21),
    "alcohol of 700 kg/m³": lambda: alcohol.mass_percent_from_density(700),
    "alcohol of 1001 kg/m³": lambda: alcohol.mass_percent_from_density(1001),
    "alcohol of 80 g": lambda: alcohol.abv_from_grams_per_100ml(80),
    "alcohol of -1 g": lambda: alcohol.abv_from_grams_per_100ml(-1),
    "alcohol of 201 proof": lambda: alcohol.abv_from_us_proof(201),
    "alcohol of 101 %": lambda: alcohol.mass_percent_from_abv(101),
    "sugar, 86 °Bx": lambda: sucrose.check_brix(86),
    "sugar, -1 °Bx": lambda: sucrose.density(-1),
    "sugar at 81 °C": lambda: sucrose.check_temperature(101),
    "sugar of 900 kg/m³": lambda: sucrose.brix_from_density(900),
    "sugar of 1500 kg/m³": lambda: sucrose.brix_from_density(1500),
    "sugar of 1200 g": lambda: sucrose.brix_from_grams_per_litre(1200),
    "sugar of gravity 0.9": lambda: sucrose.brix_from_specific_gravity(0.9),
    "no sugar": lambda: syrups.by_weight(0, 1),
    "no water": lambda: syrups.by_weight(1, 0),
    "sugar of 0.1 g/mL": lambda: syrups.by_volume(1, 1, 0.1),
    "sugar of 2 g/mL": lambda: syrups.by_volume(1, 1, 2),
    "saturated at 101 °C": lambda: syrups.saturation_brix(101),
    "a strength in words": lambda: parse_strength("strong"),
    "a strength above all": lambda: parse_strength("101"),
    "a temperature in words": lambda: parse_temperature("warm"),
}


def refused() -> Iterator[str]:
    """Yield what is asked, and below it what is said with what to do."""
    for text in MAPS:
        yield from _told(f"map {text!r}", partial(read_map, "my.toml", text))
    for text in DOUBTS:
        yield from _told(f"doubts {text!r}", partial(read_doubts, text))
    for text in NUTRIENTS:
        yield from _told(f"nutrients {text!r}", partial(read_nutrients, text))
    for text, order in DAYS:
        yield from _told(f"day {text!r}", partial(plain_day, text, order))
    yield from _told("template '{Oil'", lambda: columns_of("{Oil"))
    for name, work in SUMS.items():
        yield from _told(name, work)
    for content in TABLES:
        yield f"table {content[:20]!r}"
        yield from map(_found, read_table("a.csv", "a", content)[1])
    for code in TIMES:
        yield from (f"time-out {code}", *(f"  {told}" for told in _sentence(code)))


def _told(asked: str, work: Callable[[], object]) -> Iterator[str]:
    yield asked
    try:
        yield f"  = {work()}"
    except LedgerError as error:
        for what, todo in error.problems:
            yield from (f"  {type(error).__name__}: {what}", f"    {todo}")


def _found(found: Found) -> str:
    return f"  {found.file} {found.line} {found.column}: {found.what} {found.todo}"


def _sentence(code: str) -> tuple[str, ...]:
    return sentence(SimpleNamespace(sqlstate=code)) or ()
