"""What the headings of one table propose: deliveries, batches or sales, and their acts.

Guarantees: every act that is proposed can be read as one of a map; columns that nothing was made
of are named. Refuses: to be believed, as the whole map does.
"""

import re
from collections.abc import Iterator, Mapping

from ledger.domain.tables.grid import Table
from ledger.errors import visible
from ledger.service.copies.intake.heading_words import (
    KINDS,
    MOST_POINTS,
    input_of,
    is_plain,
    kind_of,
    known_words,
    plain_words,
    quoted,
    short_name,
    templated,
)
from ledger.service.copies.season_files import words_of
from ledger.service.copies.season_verbs import VERBS

STRENGTH = '# add its strength, without which nothing made of it has one: abv = "96"'
"""What is said beside a spirit that is proposed, where its name says no strength."""
_STRENGTH_SAID = re.compile(r"(?<!\d)(\d{1,2}(?:[.,]\d+)?) ?%")
"""How a name says the strength of a spirit: Alcohol 96 %."""
_MOST = 40
"""The most materials that are proposed."""


class TableProposal:
    """What is proposed of one table."""

    def __init__(self, table: Table) -> None:
        """Look through the headings of a table for what each seems to mean."""
        self.table = table
        self.heads = [head for head in table.head if is_plain(head)]
        self.used: set[str] = set()
        self.inputs = self._inputs()
        self.has_deliveries = False
        self.bought: list[str] = []
        words = known_words()["column"]
        self.named: dict[str, str] = {}
        for head in self.heads:
            # Of two meanings of one word the one counts that no column before has taken.
            free = (key for key, told in words.items() if plain_words(head) in told)
            means = next((key for key in free if key not in self.named), None)
            if means and head not in self.used:
                self.named[means] = head

    @property
    def place(self) -> int:
        """Deliveries come before batches, and batches before sales."""
        if self.inputs or self.named.keys() & {"target", "made", "until"}:
            return 1
        return 2 if "party" in self.named else 0 if "supplier" in self.named else 1

    @property
    def grades(self) -> dict[str, str]:
        """What stands in the column of clarity, with the grade it seems to be."""
        head = self.named.get("grade")
        told = (
            dict.fromkeys(self.table.cell(line, head) for line in self.table.lines) if head else {}
        )
        known = known_words()["grade"]
        return {
            cell: next(
                (grade for grade, words in known.items() if plain_words(cell) in words), "GRADE"
            )
            for cell in told
            if is_plain(cell) and cell.lower() not in known
        }

    def lines(self) -> Iterator[str]:
        """Yield the lines of the part."""
        acts = list((self._deliveries, self._batches, self._sales)[self.place]())
        when = self.named.get("received") or self.named.get("began")
        yield f"[table.{quoted(self.table.name)}]"
        yield f"at = {self._cell(when)}" if when else '# at = "{COLUMN}": say when it happened'
        if when:
            # A line without a day is a sum or a remark.
            yield f"if = {self._cell(when)}"
        if self.place == 1:
            batch = self.named.get("batch")
            yield f"lot = {self._cell(batch)}" if batch else 'lot = "{COLUMN}"'
        yield "acts = ["
        yield from (f"  {act}" if act.startswith("#") else f"  {{ {act} }}," for act in acts)
        yield "]"
        left = [visible(head) for head in self.table.head if head and head not in self.used]
        unused = [
            head if head.count(".") <= MOST_POINTS else head.replace(".", " ") for head in left
        ]
        if unused:
            yield f"# not used: {', '.join(unused)}"

    def _deliveries(self) -> Iterator[str]:
        unit = self.named.get("unit")
        amount = self._told("amount") or "{COLUMN}"
        amount += f" {self._told('unit')}" if unit else ""
        for name in self.materials:
            strength = _STRENGTH_SAID.search(name) if kind_of(name) == "ethanol" else None
            yield (
                f'do = "material", once = true, code = "{short_name(name)}", name = "{name}", '
                f'kind = "{kind_of(name)}"'
            ) + (f', abv = "{strength[1].replace(",", ".")}"' if strength else "")
            if kind_of(name) == "ethanol" and not strength:
                yield STRENGTH
        words = {"material": "material", "supplier": "supplier", "supplier_lot": "supplier_lot"}
        words |= {"cost": "cost", "best_before": "best_before"}
        yield self._act("receive", {"code": "batch", **words}, {"amount": amount})

    def _came(self) -> Iterator[str]:
        """Yield the deliveries that rows of batches tell of, where no table of their own does."""
        for material, lot, amount in self.inputs if not self.has_deliveries else ():
            kind = KINDS.get(material, material)
            yield (
                f'do = "material", once = true, code = "{material}", name = "{material}", '
                f'kind = "{kind}"'
            )
            if kind == "ethanol":
                yield STRENGTH
            code = f"{{{lot}}}" if lot else f"{material.upper()}-BEFORE"
            paid = self.costs.get(material)
            self.used |= {head for head in (lot, amount, paid) if head}
            cost = f', cost = "{{{paid}}}"' if paid else ""
            yield (
                f'do = "receive", once = "sum", code = "{code}", material = "{material}", '
                f'amount = "{templated(amount)}"{cost}'
            )

    def _batches(self) -> Iterator[str]:
        yield from self._came()
        yield self._act(
            "start",
            {"code": "batch", "product": "product", "target": "target"},
            # What sugar goes into is a syrup; the rest are taken for essences.
            {"kind": "syrup" if any(name == "sugar" for name, _, _ in self.inputs) else "essence"},
        )
        for material, lot, amount in self.inputs:
            self.used |= {head for head in (lot, amount) if head}
            bought = self._bought(material) if self.has_deliveries else f"{material.upper()}-BEFORE"
            source = f"{{{lot}}}" if lot else bought
            yield f'do = "add", source = "{source}", amount = "{templated(amount)}"'
        at = {"at": "finished"} if "finished" in self.named else {}
        yield from self._worked()
        yield from self._ended(at)
        yield from self._left(at)
        if "note" in self.named:
            yield self._act("note", {"text": "note"})

    def _bought(self, material: str) -> str:
        """Return the one material of a kind that was delivered; where it is not one, the kind's."""
        fits = [name for name in self.bought if kind_of(name) == KINDS.get(material, material)]
        return short_name(fits[0]) if len(fits) == 1 else material

    def _worked(self) -> Iterator[str]:
        """Yield what was done to a batch between its additions and its end."""
        if "brix" in self.named:
            yield self._act("measure", {"reading": "brix"}, {"what": "brix"})
        if "until" in self.named:
            ends = self._told("until")
            yield (
                f'do = "rest", purpose = "macerate", started = "{self._told("began")}", '
                f'until = "{ends}", at = "{ends}"'
            )
        if "filtered" in self.named:
            yield self._act(
                "filter",
                {
                    "pore": "pore",
                    "volume_in": "put_on",
                    "volume_out": "filtered",
                    # After its rest, if a column says when that ended.
                    **({"at": "until"} if "until" in self.named else {}),
                },
                {"medium": self._told("filter") or "paper"},
            )

    def _ended(self, at: Mapping[str, str]) -> Iterator[str]:
        """Yield how a batch looked and what came out."""
        if "grade" in self.named or "ntu" in self.named:
            yield self._act("look", {"grade": "grade", "ntu": "ntu", **at})
        if "made" in self.named:
            yield self._act("finish", {"volume": "made", "labour": "labour", **at})

    def _left(self, at: Mapping[str, str]) -> Iterator[str]:
        """Yield what it was filled into, and to whom that went."""
        if "bottles" in self.named:
            pack = f"{self._told('bottles')} x {self._told('size') or '250 mL'}"
            lot = self._told("batch")
            on = f', at = "{self._told("finished")}"' if at else ""
            yield f'do = "bottle", code = "{lot}-B", source = "{lot}", pack = "{pack}"{on}'
        if "party" in self.named and "bottles" in self.named:
            yield self._act(
                "send",
                {"party": "party", "document": "document", **at},
                {"lot": f"{self._told('batch')}-B", "amount": self._told("bottles")},
            )

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
        return templated(head)

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
        return [name for name in told if is_plain(name)][:_MOST]

    def _inputs(self) -> list[tuple[str, str | None, str]]:
        """Return material, column of its lot and column of its amount of each input."""
        lots: dict[str, str] = {}
        amounts: dict[str, str] = {}
        self.costs: dict[str, str] = {}
        for head in self.heads:
            material = input_of(head)
            if material:
                parts = set(plain_words(head, with_unit=True).split())
                is_lot = bool(parts & set(known_words()["lot"]["words"]))
                is_cost = bool(parts & {"eur", *known_words()["column"]["cost"]})
                found = lots if is_lot else self.costs if is_cost else amounts
                found.setdefault(material, head)
        for material in amounts.keys() - lots.keys():
            # Beside an amount, a column that is headed by the material alone names its lot.
            words = known_words()["input"][material]
            for head in self.heads:
                if plain_words(head, with_unit=True) in words:
                    lots.setdefault(material, head)
        told = [(name, lots.get(name), head) for name, head in amounts.items()]
        self.used |= {head for _, lot, amount in told for head in (lot, amount) if head}
        return told
