"""A forecast on the screen: its table, what it rests on, and whether it was recorded."""

from types import SimpleNamespace
from typing import Any

import pytest

from cli.kit.call import Call
from cli.screens.glass import foretell as screen
from ledger.errors import InputError
from tests.cli.shell import Shell

WORDS = SimpleNamespace(
    head=lambda _: ["OE-001-5 will be hazy."],
    bands=lambda _: [("neat", "4 to 12", "hazy"), ("1:7", "110", "milky")],
    notes=lambda _: ["Below its usual strength."],
    rests=lambda _: ["It rests on one oil."],
    score_words=lambda found: [f"Nothing foretold yet: {found}"],
)


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[tuple[Any, ...]]:
    """What is asked of the ledger, where `orange` is a formula and all else a lot."""
    told: list[tuple[Any, ...]] = []

    def formula(_: object, *words: Any) -> SimpleNamespace | None:
        told.append(words)
        return SimpleNamespace(shown=(False, True), code="") if words[0] == "orange" else None

    def lot(_: object, how: Any, *words: Any) -> tuple[SimpleNamespace, int]:
        told.append((how.by, *words))
        return SimpleNamespace(shown=(), code="OE-001-5"), 41

    monkeypatch.setattr(screen, "words", WORDS)
    monkeypatch.setattr(screen, "foretell_formula", formula)
    monkeypatch.setattr(screen, "record_lot", lot)
    monkeypatch.setattr(screen, "scores", lambda _: "none")
    return told


def printed(shell: Shell, capsys: pytest.CaptureFixture[str], *words: str) -> list[str]:
    call = Call(ledger=str(shell.book), by="AB")
    with call.at_end:
        screen.show_forecast(call, *words)
    return capsys.readouterr().out.splitlines()


def test_a_formula_is_foretold_in_a_table_and_nothing_is_recorded(
    bare: Shell, asked: list[tuple[Any, ...]], capsys: pytest.CaptureFixture[str]
) -> None:
    assert printed(bare, capsys, "orange", "1:7", "20") == [
        "OE-001-5 will be hazy.",
        "",
        "looked at      NTU  looks",
        "neat       4 to 12  hazy",
        "1:7            110  milky",
        "Below its usual strength.",
        "",
        "It rests on one oil.",
        "Nothing was recorded.",
        "Next: pottle start FORMULA VOLUME",
    ]
    assert asked == [("orange", "1:7", "20")]


def test_a_lot_is_foretold_once_its_forecast_is_recorded_and_without_a_band_without_a_table(
    bare: Shell, asked: list[tuple[Any, ...]], capsys: pytest.CaptureFixture[str]
) -> None:
    assert printed(bare, capsys, "OE-001-5", "1:7") == [
        "OE-001-5 will be hazy.",
        "Below its usual strength.",
        "",
        "It rests on one oil.",
        "Recorded 41, before the look.",
        "Next: pottle look OE-001-5 GRADE --ntu NTU",
    ]
    assert asked == [("OE-001-5", "1:7", None), ("AB", "OE-001-5", "1:7", None)]


@pytest.mark.usefixtures("asked")
def test_how_often_it_held_is_told_and_nothing_named_is_refused(
    bare: Shell, capsys: pytest.CaptureFixture[str]
) -> None:
    call = Call(ledger=str(bare.book), by="AB")
    with call.at_end:
        screen.show_score(call)
    assert capsys.readouterr().out == "Nothing foretold yet: none\n"
    with pytest.raises(InputError) as caught:
        screen.show_forecast(call, None, None)
    assert caught.value.problems == (
        (
            "Nothing is named.",
            "Name a formula or a lot, or give --score to see how often it held.",
        ),
    )
