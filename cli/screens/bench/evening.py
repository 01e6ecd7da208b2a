"""An evening at the bench: the lot in hand, and lines that are done one after the other.

Guarantees: a line is done by the command that it is, with the rules and the answer of that, in a
transaction of its own; what was recorded stands whatever comes after. Refuses: to record by itself.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import datetime

from cli.kit.answer import lacking_in, step_for
from cli.kit.call import Call, Held
from cli.kit.errors import complain, family_of
from cli.kit.tables import print_lines
from cli.screens.bench import device
from cli.screens.bench.beside import UNITS, beside, by_instrument, unit_word
from cli.screens.bench.customs import (
    ACTS,
    ENDED,
    MOST_OFFERED,
    NOT_ENDED,
    SLIP,
    TWICE,
    lasts_for,
)
from cli.screens.bench.help import help_lines
from cli.screens.bench.line import read_line
from cli.screens.bench.offer import Offer, filled_in, offer
from cli.screens.bench.parts import Act, Bench, Line, Named, Pick, Plain
from cli.screens.bench.run import run
from cli.screens.bench.scale import WORD, weigh
from cli.screens.bench.scan import scanned
from ledger.domain.amounts.quantity import show
from ledger.domain.entries.choices import LotType
from ledger.domain.lots.state import name
from ledger.errors import InputError, LedgerError, ReasonNeededError, RefusedError
from ledger.service.bench.hand import (
    Hand,
    first_lot,
    hand,
    hand_of,
    in_hand_after,
    is_as_read,
    known_code,
    measure_of,
)
from ledger.service.bench.slip import last_slip
from ledger.service.desk.book import Book, Recorded
from ledger.service.lots.dossier import Dossier, dossier, find_lot
from ledger.service.lots.due import Waits, due
from ledger.service.masters.material import materials
from reports.words.bench.draws import offers_of
from reports.words.desk.answer import answer, what_is_there


@dataclass(slots=True)
class Evening:
    """A session at the bench."""

    call: Call
    """The call that began it."""
    book: Book
    """The book, open for all of it."""
    is_same_meant: Callable[[str], bool] | None = None
    """Asks whether the same line again is meant; None where nobody can be asked."""
    scale: str | None = None
    """The serial port of a scale."""
    lot: str | None = None
    """Code of the lot in hand."""
    source: str | None = None
    """A lot that was named, and of which the amount comes next."""
    hand: Hand | None = None
    """That lot as it was read last."""
    offered: list[Offer] = field(default_factory=list)
    """The steps that are offered."""
    answers: list[tuple[Recorded, Dossier | None, str | None]] = field(default_factory=list)
    """What was recorded, with its lot and the next step."""
    done: Act | None = None
    """The act that was done last, where no other line came between."""
    notes: tuple[str, ...] = ()
    """What is remarked on with the answer that comes next."""
    is_over: bool = False
    """Whether it was said that the session is to end."""
    others: dict[str, datetime] = field(default_factory=dict)
    """When rests of lots end by their formulas, as the book had it when the session began."""

    def begin(self, text: str | None) -> None:
        """Take up the lot that is named, else the one that was in hand here, if there is one.

        Raises:
            LedgerError: The one that is named is no lot.
        """
        by = self.call.writer
        self.others = {
            item.lot: item.at
            for item in due(self.book).items
            if item.waits is Waits.REST and item.at
        }
        if text:
            self.take(find_lot(self.book, text, by))
            return
        for known in (device.lot_in_hand(self.book.where, by), "."):
            try:
                self.take(find_lot(self.book, known or "", by))
            except LedgerError:
                continue
            return

    def take(self, lot: str) -> None:
        """Take a lot in hand, and offer its next steps."""
        self.lot, self.source = lot, None
        device.take_in_hand(self.book.where, self.call.writer, lot)
        found = dossier(self.book, lot)
        self._look_ahead(found, step_for(self.book, found))

    def _look_ahead(self, found: Dossier, step: str | None) -> None:
        """Take up how the lot in hand is now, and offer what comes next for it."""
        code = found.state.code
        steps = offers_of(code, lacking_in(self.book, found))
        told = [offer(typed, code, shown) for typed, shown in steps]
        if not told and step:
            told = [offer(step, code)]
        self.offered = told[:MOST_OFFERED]
        self.hand = hand_of(self.book, found.state)
        self._count(self.hand)

    def do(self, text: str) -> int:
        """Do what a line says, and return the exit code that its command would end with."""
        try:
            return self._do(self._read(text))
        except LedgerError as error:
            family, code = family_of(error)
            complain(error.problems, family, as_json=self.call.json)
            return code

    def _read(self, text: str) -> Line | None:
        """Return what a line says, once what was scanned and weighed stands in it as words."""
        told = scanned(text, lambda code: known_code(self.book, code))
        words = told.split()
        if not self.scale or WORD not in words[1:]:
            return read_line(told, self._bench())
        weight = weigh(self.scale)
        line = read_line(told.replace(f" {WORD}", f" {weight}", 1), self._bench())
        return by_instrument(line, self.scale) if isinstance(line, Act) else line

    def _do(self, line: Line | None) -> int:
        match line:
            case Act():
                return self._act(line)
            case Named():
                return self._named(line)
            case Pick(number=number, words=words):
                return self._pick(number, words)
            case Plain(what="undo"):
                return self._undo()
            case Plain(what="help"):
                print_lines(help_lines())
            case Plain():
                self.is_over = True
            case None:
                pass
        return 0

    def _act(self, act: Act) -> int:
        self._ask_twice(act)
        self.source = None
        if act.ends_rest and (code := self._end_rest()):
            return code
        words = list(act.words)
        if act.is_again and words[0] == "add" and "--because" not in words:
            words += ["--because", TWICE]
        self.notes = act.notes
        lasts = lasts_for(act)
        code = self._run(words)
        self.done = act if code == 0 else None
        if code == 0 and lasts and self.lot:
            device.count_down(self.book.where, self.lot, self.book.clock() + lasts)
        return code

    def _end_rest(self) -> int:
        self.notes = (ENDED,)
        if (code := self._run(("rest", self.lot or "", "--end"))) and not self.call.json:
            complain([NOT_ENDED], "usage", as_json=False)
        return code

    def _ask_twice(self, act: Act) -> None:
        is_same = self.done is not None and self.done.words == act.words and act.words[0] in ACTS
        # Of an addition the book itself asks.
        if not is_same or act.is_again or act.words[0] == "add":
            return
        what = f"The line before said the same, and it is entry {self.book.recorded[-1]}."
        if self.is_same_meant is None:
            raise ReasonNeededError(
                what, "If it was done twice, write again behind it; if not, leave it out."
            )
        if not self.is_same_meant(f"{what} Was it done twice?"):
            raise RefusedError(f"{what} It was not done twice, so nothing was recorded.")

    def _run(self, words: Sequence[str]) -> int:
        """Run a command in this session; return its exit code."""
        if words and words[0] == "bench":
            raise InputError("This is the bench already.", "Write a line; help shows which.")
        before = len(self.book.recorded)
        code = run(self.call, Held(self.book, self._hear, before), words)
        numbers = self.book.recorded[before:]
        if numbers:
            self._after(numbers)
        return code

    def _hear(self, done: Recorded, found: Dossier | None, step: str | None) -> None:
        self.answers.append((done, found, step))
        if not self.call.json:
            said = answer(done, found, step)
            print_lines((said.done, *said.found, *(f"Note: {note}" for note in self.notes)))
        self.notes = ()

    def _after(self, numbers: Sequence[int]) -> None:
        lot = in_hand_after(self.book, numbers)
        _, found, step = self.answers[-1] if self.answers else (None, None, None)
        if lot and lot != self.lot:
            self.take(lot)
        elif self.lot and found and found.state.code == self.lot:
            # What was read for the answer; but after a correction it proposes to look at that.
            is_mended = numbers[-1] != found.state.entries[-1].seq
            self._look_ahead(found, step_for(self.book, found) if is_mended else step)
        elif self.lot:
            self.take(self.lot)

    def _count(self, found: Hand) -> None:
        """Count down the rest of the lot in hand, if one goes on."""
        code = found.state.code
        self.others.pop(code, None)
        if found.rest is None:
            device.count_down(self.book.where, code, None)
        elif found.rest_ends:
            self.others[code] = found.rest_ends

    def rests(self) -> dict[str, datetime]:
        """Return when each rest ends that is counted down, by the code of its lot."""
        return {**self.others, **device.rests(self.book.where)}

    def _named(self, line: Named) -> int:
        lot = first_lot(self.book, line.material) if line.material else line.text
        found = dossier(self.book, lot, self.call.writer)
        is_bought = found.state.opened.lot_type is LotType.RECEIVED
        print_lines([what_is_there(found)])
        if not is_bought:
            self.take(found.state.code)
        elif self.lot is None:
            raise RefusedError(
                f"There is no batch in hand to put {found.state.code} into.",
                "Write the code of one, or: start FORMULA VOLUME",
            )
        else:
            self.source = found.state.code
        return 0

    def _pick(self, number: int, words: Sequence[str]) -> int:
        if not 1 <= number <= len(self.offered):
            raise InputError(
                f"There is no step {number}.",
                f"Write a number up to {len(self.offered)}, or a line; help shows which.",
            )
        told = filled_in(self.offered[number - 1], words, self._unit_of)
        return self._act(Act(told))

    def _undo(self) -> int:
        entry = last_slip(self.book, self.call.writer)
        self.done = None
        return self._run(("strike", str(entry.seq), "--because", SLIP))

    def _bench(self) -> Bench:
        known = {item.code: str(item.sort) for item in materials(self.book)}
        return beside(self._in_hand(), known, self._unit_of, self.source)

    def _in_hand(self) -> Hand | None:
        """Return the lot in hand, read anew where anybody wrote in the book since."""
        if self.lot and not (self.hand and is_as_read(self.book, self.hand)):
            self.hand = hand(self.book, self.lot, None)
        return self.hand

    def _unit_of(self, text: str) -> str | None:
        measure = measure_of(self.book, text, self.call.writer)
        return UNITS[measure] if measure else None

    def heading(self) -> list[str]:
        """Return what stands above a prompt: the steps that are offered, a line each."""
        if self.source:
            return []
        return [f"  {number}  {item.shown}" for number, item in enumerate(self.offered, 1)]

    def prompt(self) -> str:
        """Return what a line is written behind: the lot in hand with what is in it."""
        if self.source:
            return f"How much of {self.source}, in {unit_word(self._unit_of(self.source))}: "
        found = self._in_hand()
        if found is None:
            return "no lot in hand > "
        state = found.state
        return f"{state.code} {name(state)}, {show(state.on_hand, state.measure)} > "
