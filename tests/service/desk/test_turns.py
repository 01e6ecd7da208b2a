"""On a server others write while an act is judged; where they did, it is judged anew."""

import ast
from collections.abc import Callable
from pathlib import Path

import pytest

from ledger.domain.entries import Draft
from ledger.domain.lots.scene import Scene
from ledger.errors import MovedError, ReasonNeededError
from ledger.service.bench.add import add
from ledger.service.bench.note import note
from ledger.service.bench.start import start
from ledger.service.copies.season_verbs import VERBS
from ledger.service.desk import judged as judging
from ledger.service.desk.book import Book, How, open_book
from ledger.service.desk.scene import build_scene
from ledger.store.engine.connections import Connection
from tests.keeper import Keeper, SetClock

HOW = How("AB")
LOT, SPIRIT = "OE-001-5", "NS-001-J"
Other = Callable[[Book], object]


def while_judged(monkeypatch: pytest.MonkeyPatch, keeper: Keeper, others: list[Other]) -> list[int]:
    """Let others write in the book, each while an act is judged; return how often that was done."""
    looks: list[int] = []

    def judged(connection: Connection, draft: Draft, now: object) -> Scene:
        scene = build_scene(connection, draft, keeper.clock.now)
        looks.append(len(looks))
        if others:
            write = others.pop()
            with open_book(keeper.book.where, SetClock(keeper.clock.now)) as book:
                monkeypatch.setattr(judging, "build_scene", build_scene)
                write(book)
                monkeypatch.setattr(judging, "build_scene", judged)
        return scene

    monkeypatch.setattr(judging, "build_scene", judged)
    return looks


def test_others_write_while_an_act_is_judged_and_it_is_judged_anew(
    postgres_walked: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    book, last = postgres_walked.book, len(postgres_walked.bodies())
    looks = while_judged(monkeypatch, postgres_walked, [lambda other: note(other, HOW, text="I.")])
    assert note(book, HOW, text="Me.").seq == last + 2
    assert looks == [0, 1]
    assert book.recorded == [last + 2]


def test_who_was_overtaken_takes_turns_until_nobody_else_writes(
    postgres_walked: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    book = postgres_walked.book
    while_judged(monkeypatch, postgres_walked, [lambda other: note(other, HOW, text="I.")])
    told = [book.is_in_turn]
    for text in ("Once.", "Twice."):
        note(book, HOW, text=text)
        told.append(book.is_in_turn)
    assert told == [False, True, False]


def test_who_draws_what_another_took_while_it_was_judged_is_asked_why(
    postgres_walked: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    keeper = postgres_walked
    last = keeper.opens("receive", material="spirit", amount="10 mL")

    def draw(book: Book) -> object:
        return add(book, HOW, lot=LOT, source=last, amount="10 mL")

    while_judged(monkeypatch, keeper, [draw])
    with pytest.raises(ReasonNeededError):
        draw(keeper.book)
    assert keeper.on_hand(last) == 0


def test_of_two_who_begin_a_batch_at_once_each_has_a_code_of_its_own(
    postgres_walked: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    codes: list[str | None] = []

    def begin(book: Book) -> None:
        done = start(book, HOW, product="Rose syrup", kind="syrup", target="1 L")
        codes.append(done.code)

    while_judged(monkeypatch, postgres_walked, [begin])
    begin(postgres_walked.book)
    assert codes == ["RS-001-2", "RS-002-Z"]


def test_nothing_is_recorded_of_an_act_that_is_not_judged_anew(
    postgres_walked: Keeper, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = len(postgres_walked.bodies())
    while_judged(monkeypatch, postgres_walked, [lambda other: note(other, HOW, text="I.")])
    with pytest.raises(MovedError) as raised:
        note.__wrapped__(postgres_walked.book, HOW, text="Me.")  # type: ignore[attr-defined]
    assert str(raised.value) == (
        "Somebody else wrote in the book at the same moment. Nothing was recorded. Enter it again."
    )
    assert len(postgres_walked.bodies()) == before + 1


def test_all_that_opens_a_desk_is_judged_anew() -> None:
    """Its words are read anew too: what a code or a material stands for may be another."""
    at_a_desk = [
        one
        for path in Path("ledger/service").rglob("*.py")
        for one in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(one, ast.FunctionDef) and "with at_desk(" in ast.unparse(one)
    ]
    assert len(at_a_desk) > len(VERBS) / 2
    assert [one.name for one in at_a_desk if "act" not in map(ast.unparse, one.decorator_list)] == [
        "_recorded"  # of a forecast, whose verbs reckon it anew
    ]
