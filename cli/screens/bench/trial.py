"""A trial at the bench: its jars side by side, a row an act, a factor or an evening's grades.

Guarantees: each jar's part of a row is done as a line of its own, by the same commands; it stops at
the first jar that is refused, and says which are done. Refuses: to begin jars that a plan did not
draw where the trial is planned.
"""

from dataclasses import dataclass, field

from cli.kit.call import Call
from cli.kit.errors import complain, family_of
from cli.kit.tables import print_lines, print_table
from cli.screens.bench.evening import Evening
from cli.screens.bench.help import TRIAL_LINES
from cli.screens.bench.line import HELP, LEAVE, UNDO
from cli.screens.bench.rows import FACTOR, JARS, Plan, lines_of
from cli.screens.bench.words import split, with_unit
from ledger.domain.amounts.quantity import show
from ledger.errors import InputError, LedgerError
from ledger.service.bench.grid import TrialJar, trial_jars
from ledger.service.desk.book import Book, Recorded
from ledger.service.lots.dossier import Dossier
from reports.words.desk.answer import answer

WHOLE = frozenset({"due", "stock", "journal", "compare", "pottle"})
"""Words that begin a command for the whole book, not for each jar."""


@dataclass(slots=True)
class TrialEvening(Evening):
    """A session over the jars of a trial."""

    trial: str = ""
    """Its name."""
    plan: Plan = field(default_factory=Plan)
    """What is set in jars that are not begun."""
    jars: tuple[TrialJar, ...] = ()
    """Those that are begun."""

    def begin(self, text: str | None) -> None:
        """Take up the jars that are begun."""
        self.offered = []
        self.jars = trial_jars(self.book, self.trial)

    def do(self, text: str) -> int:
        """Do a row, jar by jar, and return the exit code of the first that is refused, or 0."""
        try:
            return self._do_row(" ".join(text.split()))
        except LedgerError as error:
            family, code = family_of(error)
            complain(error.problems, family, as_json=self.call.json)
            return code

    def _do_row(self, text: str) -> int:
        head, _, rest = text.partition(" ")
        word = head.casefold()
        if not text or text.startswith("#"):
            return 0
        if word in HELP:
            print_lines(TRIAL_LINES)
            return 0
        if word in LEAVE | UNDO | WHOLE or word == "start":
            code = Evening.do(self, text)
        elif word == FACTOR:
            self.plan = self.plan.with_row(rest.split())
            return 0
        elif word == JARS:
            code = self._begin_jars(rest)
        else:
            code = self._each(text)
        self.jars = trial_jars(self.book, self.trial)
        return code

    def _begin_jars(self, rest: str) -> int:
        if self.jars:
            raise InputError(
                f'The trial "{self.trial}" has {len(self.jars)} jars already.',
                "Write a row for them; another trial has another name.",
            )
        for words in self.plan.starts(split(rest), self.trial):
            code, volume, *options = words
            if code.startswith("--"):
                told = ("start", *words)
            else:
                told = ("start", code, "--target", with_unit(volume, "mL"), *options)
            if failed := self._run(told):
                return failed
        self.plan = Plan()
        return 0

    def _each(self, text: str) -> int:
        if not self.jars:
            raise InputError(
                f'No jar of the trial "{self.trial}" is begun.',
                "Begin them: jars 6 orange-essence 50",
            )
        for jar, line in zip(self.jars, lines_of(text, len(self.jars)), strict=True):
            if line is None:
                continue
            self.lot, self.hand, self.done, self.source = jar.lot.code, None, None, None
            if code := Evening.do(self, line):
                return code
        return 0

    def take(self, lot: str) -> None:
        """Take a jar in hand, which concerns nobody else's lot in hand."""
        self.lot, self.hand, self.source, self.offered = lot, None, None, []

    def _hear(self, done: Recorded, found: Dossier | None, step: str | None) -> None:
        self.answers.append((done, found, step))
        if not self.call.json:
            said = answer(done, found, step)
            # What is in a jar stands in the table of all.
            told = said.found[1:] if found else said.found
            print_lines((said.done, *told, *(f"Note: {note}" for note in self.notes)))
        self.notes = ()

    def heading(self) -> list[str]:
        """Return nothing: the jars are shown as a table instead."""
        if self.jars and not self.call.json:
            print_table(*table_of(self.jars))
        return []

    def prompt(self) -> str:
        """Return what a row is written behind: the trial, and how many jars it has."""
        return f"{self.trial}, {len(self.jars)} jars > "


def table_of(jars: tuple[TrialJar, ...]) -> tuple[list[str], list[list[str]]]:
    """Return the heads and rows of jars in columns: codes, factors, what is there, last grades."""
    names = list(dict.fromkeys(name for jar in jars for name in jar.factors))
    rows = [
        ["lot", *(jar.lot.code for jar in jars)],
        *([name, *(jar.factors.get(name, "") for jar in jars)] for name in names),
        ["there", *(show(jar.lot.on_hand, jar.lot.measure) for jar in jars)],
        ["look", *(str(jar.lot.grade or "") for jar in jars)],
    ]
    return ["jar", *(str(number) for number in range(1, len(jars) + 1))], rows


def trial_evening(call: Call, book: Book, name: str) -> TrialEvening:
    """Return a session over the jars of a trial."""
    return TrialEvening(call, book, trial=" ".join(name.split()))
