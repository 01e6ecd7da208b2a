"""What is asked of a delivery, by the kind of its material, and in what a bare number counts."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from cli.kit.call import Call
from cli.screens.bench import receive as module
from cli.screens.bench import receive as screen
from cli.screens.bench.receive import Delivery
from ledger.domain.entries.choices import MaterialKind
from ledger.errors import InputError
from ledger.service.desk.book import open_book
from tests.cli.shell import Shell
from tests.kept.golden import check_golden
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


WRONG = {
    "Material (b250, cap, carb, orange-oil, spirit, sugar, water)": "spirt",
    "How much, in mL or with its unit": "much",
    "How much, in each or with its unit": "a few",
    "Best before, as 2027-06-30": "soon",
    "Strength of this lot in % vol": "strong",
}


@pytest.mark.parametrize("material", ["spirit", "b250"])
def test_an_answer_that_cannot_be_is_told_where_it_is_asked_for(
    material: str, shell: Shell, monkeypatch: pytest.MonkeyPatch
) -> None:
    refused: dict[str, str] = {}

    def answered(question: str, *, check: Callable[[str], object] = str, **_: object) -> str:
        if question in WRONG:
            with pytest.raises(InputError) as raised:
                check(WRONG[question])
            refused[question] = raised.value.problems[0][0]
        right = {"Mate": f" {material.upper()} ", "How ": "2"}.get(question[:4], "")
        assert not right or check(right) is not None
        return right

    monkeypatch.setattr(screen, "ask", answered)
    with open_book(str(shell.book)) as book:
        found = screen._asked(book, Delivery())
        named = screen._asked(book, Delivery(material=material, amount="3L"))
    assert found.amount == {"spirit": "2mL", "b250": "2 each"}[material]
    assert (named.material, named.amount) == (material, "3L")
    check_golden(f"cli/receive_{material}.txt", "".join(f"{q}: {a}\n" for q, a in refused.items()))


def test_a_material_that_is_not_there_is_to_be_added_in_another_window() -> None:
    with pytest.raises(InputError) as raised:
        screen._known("tonic", {})
    assert raised.value.problems == (
        (
            "The material tonic is not in the book.",
            "Add it first, in another window: pottle material add CODE --kind KIND",
        ),
    )


@pytest.mark.parametrize(("as_json", "is_there"), [(True, True), (False, False), (True, False)])
def test_nobody_is_asked_by_machines_or_where_nobody_sits(
    as_json: bool, is_there: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(screen, "can_ask", lambda: is_there)
    monkeypatch.setattr(screen, "missing", lambda word: InputError(f"Missing {word}.", "See."))
    for told, word in ((Delivery(), "MATERIAL"), (Delivery(material="sugar"), "AMOUNT")):
        with pytest.raises(InputError) as raised:
            screen.received(Call(json=as_json), told)
        assert raised.value.problems[0][0] == f"Missing argument '{word}'."


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
