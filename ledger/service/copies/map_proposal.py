"""A map that the headings of tables propose, for the maker to read and put right.

Guarantees: what is proposed can be read as a map; columns that nothing was made of are named in
it. Refuses: to be believed: headings are words, and the same word means one thing here and another
there.
"""

import re
import tomllib
import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from importlib.resources import files
from typing import Any

from ledger.domain.tables.days import DayOrder, plain_day
from ledger.domain.tables.grid import Table
from ledger.errors import InputError
from ledger.service.copies.season_files import words_of
from ledger.service.copies.season_verbs import VERBS

_MOST = 40
"""The most materials that are proposed."""
_LETTERS = re.compile(r"[^a-z0-9%]+")


def proposed_map(tables: Sequence[Table]) -> str:
    """Return a map in TOML that the headings of tables propose."""
    order = _order(tables)
    said = [f'dates = "{order}"'] if order else ['# dates = "dmy", "mdy" or "ymd": say which']
    parts = sorted(map(_Part, tables), key=lambda part: part.place)
    lines = [_ABOUT, *said, "[words]", '# "their word" = "the word of the book"']
    if names := [name for part in parts for name in part.materials]:
        lines += ["[words.material]", *(f'"{name}" = "{_short(name)}"' for name in names)]
    return "\n".join([*lines, *(line for part in parts for line in part.lines())]) + "\n"


_ABOUT = """# Proposed by the headings; read it line by line. {Column} stands for the cell of a row.
# An act is left out of a row where all the columns that it names itself are empty."""


def _order(tables: Sequence[Table]) -> DayOrder | None:
    """Return the only order in which every day in the first rows can be read."""
    cells = [cell for table in tables for line in table.lines[:200] for cell in line.cells]
    days = [cell for cell in cells if re.fullmatch(r"\d{1,2}[./-]\d{1,2}[./-]\d{2,4}", cell)]
    fits = [order for order in DayOrder if days and all(_is_day(day, order) for day in days)]
    return fits[0] if len(fits) == 1 else None


def _is_day(text: str, order: DayOrder) -> bool:
    try:
        plain_day(text, order)
    except InputError:
        return False
    return True


class _Part:
    """What is proposed of one table."""

    def __init__(self, table: Table) -> None:
        self.table = table
        self.heads = [head for head in table.head if head]
        self.used: set[str] = set()
        self.inputs = self._inputs()
        words = _words()["column"]
        self.named: dict[str, str] = {}
        for head in self.heads:
            # Of two meanings of one word the one counts that no column before has taken.
            free = (key for key, told in words.items() if _plain(head) in told)
            means = next((key for key in free if key not in self.named), None)
            if means and head not in self.used:
                self.named[means] = head

    @property
    def place(self) -> int:
        """Deliveries come before batches, and batches before sales."""
        return 2 if "party" in self.named else 0 if "supplier" in self.named else 1

    def lines(self) -> Iterator[str]:
        """Yield the lines of the part."""
        acts = list((self._deliveries, self._batches, self._sales)[self.place]())
        when = self.named.get("received") or self.named.get("began")
        yield f"[table.{_quoted(self.table.name)}]"
        yield f"at = {self._cell(when)}" if when else '# at = "{COLUMN}": say when it happened'
        if self.place == 1 and "batch" in self.named:
            yield f"lot = {self._cell(self.named['batch'])}"
        yield "acts = ["
        yield from (f"  {{ {act} }}," for act in acts)
        yield "]"
        unused = [head for head in self.heads if head not in self.used]
        if unused:
            yield f"# not used: {', '.join(unused)}"

    def _deliveries(self) -> Iterator[str]:
        unit = self.named.get("unit")
        amount = self._told("amount") or "{COLUMN}"
        amount += f" {self._told('unit')}" if unit else ""
        for name in self.materials:
            yield (
                f'do = "material", once = true, code = "{_short(name)}", name = "{name}", '
                f'kind = "{_kind(name)}"'
            )
        words = {"material": "material", "supplier": "supplier", "supplier_lot": "supplier_lot"}
        words |= {"cost": "cost", "best_before": "best_before"}
        yield self._act("receive", {"code": "batch", **words}, {"amount": amount})

    def _batches(self) -> Iterator[str]:
        yield self._act(
            "start",
            {"code": "batch", "product": "product", "target": "target"},
            {"kind": "essence"},
        )
        for material, lot, amount in self.inputs:
            self.used |= {head for head in (lot, amount) if head}
            source = f"{{{lot}}}" if lot else material
            yield f'do = "add", source = "{source}", amount = "{_templated(amount)}"'
        if "until" in self.named:
            ends = self._told("until")
            yield (
                f'do = "rest", purpose = "macerate", started = "{self._told("began")}", '
                f'until = "{ends}", at = "{ends}"'
            )
        if "filtered" in self.named:
            yield self._act(
                "filter",
                {"pore": "pore", "volume_in": "put_on", "volume_out": "filtered"},
                {"medium": self._told("filter") or "paper"},
            )
        at = {"at": "finished"} if "finished" in self.named else {}
        if "grade" in self.named or "ntu" in self.named:
            yield self._act("look", {"grade": "grade", "ntu": "ntu", **at})
        if "made" in self.named:
            yield self._act("finish", {"volume": "made", "labour": "labour", **at})
        if "bottles" in self.named:
            pack = f"{self._told('bottles')} x {self._told('size') or '250 mL'}"
            lot = self._told("batch")
            on = f', at = "{self._told("finished")}"' if at else ""
            yield f'do = "bottle", code = "{lot}-B", source = "{lot}", pack = "{pack}"{on}'
        if "note" in self.named:
            yield self._act("note", {"text": "note"})

    def _sales(self) -> Iterator[str]:
        amount = self._told("bottles") or self._told("amount") or "{COLUMN}"
        words = {"party": "party", "document": "document"}
        yield self._act("send", words, {"lot": f"{self._told('batch')}-B", "amount": amount})

    def _act(
        self, verb: str, words: Mapping[str, str], fixed: Mapping[str, str] | None = None
    ) -> str:
        needed = words_of(VERBS[verb])
        told = {
            # A column that is not there is found when the map is used, and asks to be named.
            word: self._told(key) or ("{COLUMN}" if needed.get(word) else "")
            for word, key in words.items()
        } | dict(fixed or {})
        says = [f'{word} = "{value}"' for word, value in told.items() if value]
        return ", ".join([f'do = "{verb}"', *says])

    def _told(self, key: str) -> str:
        head = self.named.get(key)
        if head is None:
            return ""
        self.used.add(head)
        return _templated(head)

    def _cell(self, head: str) -> str:
        self.used.add(head)
        return f'"{{{head}}}"'

    @property
    def materials(self) -> list[str]:
        """What was bought, each once, where the table is of deliveries."""
        head = self.named.get("material")
        if head is None or self.place:
            return []
        told = dict.fromkeys(self.table.cell(line, head) for line in self.table.lines)
        return [name for name in told if name and '"' not in name and "\\" not in name][:_MOST]

    def _inputs(self) -> list[tuple[str, str | None, str]]:
        """Return material, column of its lot and column of its amount of each input."""
        lots: dict[str, str] = {}
        amounts: dict[str, str] = {}
        for head in self.heads:
            material = _input(head)
            if material:
                is_lot = bool(set(_plain(head).split()) & set(_words()["lot"]["words"]))
                (lots if is_lot else amounts).setdefault(material, head)
        told = [(name, lots.get(name), head) for name, head in amounts.items()]
        self.used |= {head for _, lot, amount in told for head in (lot, amount) if head}
        return told


@cache
def _words() -> dict[str, dict[str, Any]]:
    text = files("ledger").joinpath("headings.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


def _short(name: str) -> str:
    """Return the short name that a material may have in the book.

    >>> _short("Orangenöl, süß")
    'orangenol-suss'
    """
    return _plain(name, with_unit=True).replace("%", "").strip().replace(" ", "-") or "material"


def _kind(name: str) -> str:
    """Return of what kind a material seems; "KIND" where nothing says so.

    >>> _kind("Orangenöl"), _kind("Neutral spirit"), _kind("Kork")
    ('oil', 'ethanol', 'KIND')
    """
    kinds = {"spirit": "ethanol", "carbonate": "clarifier", "essence": "other"}
    parts = _plain(name, with_unit=True).split()
    for material, told in _words()["input"].items():
        # German writes the two as one word.
        if any(part.endswith(word) for part in parts for word in told):
            return str(kinds.get(material, material))
    return "KIND"


def _input(head: str) -> str | None:
    """Return the material that a heading is about, if it says an amount of one or its lot.

    >>> _input("Öl ml"), _input("Sprit-Los"), _input("Essence"), _input("Kunde")
    ('oil', 'spirit', None, None)
    """
    parts = _plain(head, with_unit=True).split()
    rest = set(_words()["units"]["words"]) | set(_words()["lot"]["words"])
    if not rest & set(parts):
        return None
    for material, told in _words()["input"].items():
        if any(part in told for part in parts):
            return str(material)
    return None


def _plain(head: str, *, with_unit: bool = False) -> str:
    """Return a heading without accents, capitals, signs, and without its unit.

    >>> _plain("Öl (ml)"), _plain("Öl ml", with_unit=True), _plain("N° lot")
    ('ol', 'ol ml', 'n lot')
    """
    apart = unicodedata.normalize("NFD", head.casefold().replace("ß", "ss"))
    bare = "".join(letter for letter in apart if not unicodedata.combining(letter))
    parts = _LETTERS.sub(" ", bare.replace("μ", "u")).split()
    units = _words()["units"]["words"]
    if not with_unit and len(parts) > 1 and parts[-1] in units:
        parts = parts[:-1]
    return " ".join(parts)


def _templated(head: str) -> str:
    """Return the template of a column, with the unit that its heading names.

    >>> _templated("Öl (ml)"), _templated("Menge")
    ('{Öl (ml)} mL', '{Menge}')
    """
    unit = _plain(head, with_unit=True).split()[-1:]
    known = {"ml": "mL", "cl": "cL", "l": "L", "g": "g", "kg": "kg", "mg": "mg", "min": "min"}
    has_more = len(_plain(head, with_unit=True).split()) > 1
    return (
        f"{{{head}}} {known[unit[0]]}" if has_more and unit and unit[0] in known else f"{{{head}}}"
    )


def _quoted(name: str) -> str:
    return name if re.fullmatch(r"[A-Za-z0-9_-]+", name) else f'"{name}"'
