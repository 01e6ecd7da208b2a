"""What is asked of a delivery, by the kind of its material, and in what a bare number counts."""

from dataclasses import replace

import pytest

from cli.kit.call import Call
from cli.screens.bench import receive as module
from cli.screens.bench import receive as screen
from cli.screens.bench.receive import Delivery
from ledger.domain.entries.choices import MaterialKind
from tests.cli.shell import Shell
from tests.kept.said import check_constants

OF_ALL = ["Supplier", "Their lot", "Cost in all"]
DATED = [*OF_ALL, "Best before, as 2027-06-30", "Certificate"]
KINDS: dict[MaterialKind, tuple[str, list[str]]] = {
    MaterialKind.OIL: ("mL", DATED),
    MaterialKind.ETHANOL: ("mL", [*DATED, "Strength of this lot in % vol"]),
    MaterialKind.CLARIFIER: ("g", DATED),
    MaterialKind.SUGAR: ("g", DATED),
    MaterialKind.WATER: ("mL", OF_ALL),
    MaterialKind.ACID: ("g", DATED),
    MaterialKind.PRESERVATIVE: ("g", DATED),
    MaterialKind.GUM: ("g", DATED),
    MaterialKind.COLOUR: ("g", DATED),
    MaterialKind.BOTTLE: (" each", OF_ALL),
    MaterialKind.CLOSURE: (" each", OF_ALL),
    MaterialKind.LABEL: (" each", DATED),
    MaterialKind.FILTER: (" each", DATED),
    MaterialKind.OTHER: ("mL", DATED),
}
TOLD = Delivery(material="stuff", amount="1")


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The questions that are asked, each answered with its own words."""
    questions: list[str] = []

    def answered(question: str, **_: object) -> str:
        questions.append(question)
        return f"<{question}>"

    monkeypatch.setattr(screen, "ask", answered)
    return questions


@pytest.mark.parametrize("kind", MaterialKind)
def test_each_kind_of_material_is_counted_and_asked_about_in_its_own_way(
    kind: MaterialKind, asked: list[str]
) -> None:
    unit, questions = KINDS[kind]
    assert screen._unit(kind) == unit
    found = screen._with_papers(TOLD, kind)
    assert asked == questions
    told = dict.fromkeys(questions, "") | {question: f"<{question}>" for question in questions}
    assert found == replace(
        TOLD,
        supplier=told["Supplier"],
        supplier_lot=told["Their lot"],
        cost=told["Cost in all"],
        best_before=told.get("Best before, as 2027-06-30"),
        certificate=told.get("Certificate"),
        abv=told.get("Strength of this lot in % vol"),
    )


def test_what_was_said_is_not_asked_again_and_what_is_not_known_is_left_out(
    asked: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    said = replace(
        TOLD,
        supplier="Harbour Oils",
        supplier_lot="C7",
        cost="10",
        best_before="2027-01-31",
        certificate="17/3",
        abv="96",
    )
    assert screen._with_papers(said, MaterialKind.ETHANOL) == said
    assert asked == []
    monkeypatch.setattr(screen, "ask", lambda *_, **__: "")
    assert screen._with_papers(TOLD, MaterialKind.ETHANOL) == TOLD


def test_a_delivery_that_is_asked_for_is_recorded_as_it_was_answered(
    shell: Shell, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    asked: list[tuple[str, bool]] = []
    answers = {
        "Material (b250, cap, carb, orange-oil, spirit, sugar, water)": "Sugar",
        "How much, in g or with its unit": "750",
        "Their lot": "S-9",
    }

    def answered(question: str, *, is_needed: bool = False, **_: object) -> str:
        asked.append((question, is_needed))
        return answers.get(question, "")

    monkeypatch.setattr(screen, "ask", answered)
    monkeypatch.setattr(screen, "can_ask", lambda: True)
    call = Call(ledger=str(shell.book), by="AB")
    with call.at_end:
        screen.received(call, Delivery())
    assert capsys.readouterr().out.splitlines()[:2] == [
        "What is not known is left out with Enter; Ctrl-D ends, with nothing recorded.",
        "Recorded 39, received WS-002-P: 750 g of sugar, their lot S-9.",
    ]
    assert asked == [
        *((question, True) for question in list(answers)[:2]),
        *((question, False) for question in DATED),
    ]


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
