"""Which rows over the jars of a trial are done how, jar by jar, without a book."""

from types import SimpleNamespace
from typing import Any

import pytest

from cli.kit.call import Call
from cli.screens.bench import trial
from cli.screens.bench.evening import Evening
from cli.screens.bench.help import TRIAL_LINES
from cli.screens.bench.trial import TrialEvening, table_of, trial_evening
from ledger.domain.amounts.quantity import Measure

Done = list[tuple[str, ...]]


def jar(code: str, grade: str | None = None, **factors: str) -> Any:
    lot = SimpleNamespace(code=code, on_hand=40_000, measure=Measure.UL, grade=grade)
    return SimpleNamespace(lot=lot, factors=factors)


JARS = (jar("A", "hazy", rest="24h"), jar("B", pore="5"), jar("C"))


@pytest.fixture
def done(monkeypatch: pytest.MonkeyPatch) -> Done:
    """What is done, line by line for each jar, or as the words of a command."""
    told: Done = []

    def do(evening: Evening, text: str) -> int:
        assert (evening.hand, evening.done, evening.source) == (None, None, None)
        told.append((evening.lot or "", text))
        return 3 if text == "oil 9" else 0

    def run(_: Evening, words: tuple[str, ...]) -> int:
        told.append(tuple(words))
        return 4 if "NONE" in words else 0

    monkeypatch.setattr(Evening, "do", do)
    monkeypatch.setattr(Evening, "_run", run)
    monkeypatch.setattr(trial, "trial_jars", lambda book, _: book)
    return told


def session(jars: tuple[Any, ...] = JARS) -> TrialEvening:
    book: Any = jars
    evening = trial_evening(Call(), book, "  the  rests ")
    evening.begin(None)
    return evening


def test_a_row_is_done_jar_by_jar_until_one_is_refused(done: Done) -> None:
    evening = session()
    stale: Any = object()
    for text, code, lines in (
        ("oil  1", 0, [("A", "oil 1"), ("B", "oil 1"), ("C", "oil 1")]),
        ("oil 1 - 2", 0, [("A", "oil 1"), ("C", "oil 2")]),
        ("oil 1 9 2", 3, [("A", "oil 1"), ("B", "oil 9")]),
    ):
        evening.lot, evening.hand, evening.done, evening.source = "X", stale, stale, "Y"
        done.clear()
        assert evening.do(text) == code
        assert done == lines


@pytest.mark.parametrize(
    "line",
    [
        *("done", "Undo", "due", "stock --all", "journal", "compare", "pottle due"),
        "start --from-plan rests",
    ],
)
def test_what_concerns_the_whole_book_is_done_once(done: Done, line: str) -> None:
    assert session().do(line) == 0
    assert done == [("", line)]


def test_help_and_remarks_do_nothing(done: Done, capsys: pytest.CaptureFixture[str]) -> None:
    evening = session()
    assert [evening.do(line) for line in ("", "  ", "# oil 1", "?")] == [0] * 4
    assert capsys.readouterr().out.splitlines() == list(TRIAL_LINES)
    assert done == []


def test_jars_are_begun_with_their_factors_and_once(
    done: Done, capsys: pytest.CaptureFixture[str]
) -> None:
    evening = session(())
    assert [evening.do(row) for row in ("factor rest 24h -", "jars 2 orange 50")] == [0, 0]
    made = ("start", "orange", "--target", "50mL", "--trial", "the rests")
    assert done == [(*made, "--factor", "rest=24h"), (*made, "--control")]
    done.clear()
    assert evening.do("jars 1 --product 'Orange oil' --target 5mL") == 0
    assert done == [
        ("start", "--product", "Orange oil", "--target", "5mL", "--trial", "the rests"),
    ]
    done.clear()
    assert (evening.do("jars 3 NONE 50"), len(done)) == (4, 1)
    assert evening.do("oil 1") == 2
    assert capsys.readouterr().err.splitlines() == [
        'No jar of the trial "the rests" is begun.',
        "  Begin them: jars 6 orange-essence 50",
    ]
    begun = session()
    assert begun.do("jars 2 orange 50") == 2
    assert capsys.readouterr().err.splitlines() == [
        'The trial "the rests" has 3 jars already.',
        "  Write a row for them; another trial has another name.",
    ]


def test_jars_stand_beside_each_other_with_what_is_known_of_them(
    done: Done, capsys: pytest.CaptureFixture[str]
) -> None:
    heads, rows = table_of(JARS)
    assert heads == ["jar", "1", "2", "3"]
    assert rows == [
        ["lot", "A", "B", "C"],
        ["rest", "24h", "", ""],
        ["pore", "", "5", ""],
        ["there", "40 mL", "40 mL", "40 mL"],
        ["look", "hazy", "", ""],
    ]
    evening = session()
    assert (evening.prompt(), evening.heading()) == ("the rests, 3 jars > ", [])
    assert len(capsys.readouterr().out.splitlines()) == 1 + len(rows)
    evening.call = Call(json=True)
    assert (evening.heading(), session(()).heading()) == ([], [])
    assert capsys.readouterr().out == ""


def test_a_jar_in_hand_is_forgotten_but_for_its_code(done: Done) -> None:
    evening, stale = session(), object()
    kept: Any = stale
    evening.hand, evening.source, evening.offered = kept, "Y", [kept]
    evening.take("B")
    assert evening.lot == "B"
    assert [evening.hand, evening.source, *evening.offered] == [None, None]
    evening.offered = [kept]
    evening.begin("B")
    assert (evening.offered, evening.jars) == ([], JARS)
