"""Every kind of change on a small text, and the laws that hold for all of them."""

import ast
from random import Random
from textwrap import dedent

import pytest

from tests.mutants.making.places import Place, changed, function_lines, is_fault, places
from tests.mutants.making.tree import ROOT, mutable, project_files
from tests.mutants.making.written import Written

BODY = "def f(a, b, c):\n    "


def made(text: str, kind: str) -> list[str]:
    """Return what a text is made into by changes of a kind, without the head of its function."""
    texts = [changed(text, place) for place in places(text) if place.kind == kind]
    return [text.removeprefix(BODY).strip() for text in texts]


@pytest.mark.parametrize(
    ("kind", "line", "expected"),
    [
        ("comparison", "a < b", ["a <= b"]),
        ("comparison", "a <= b < c", ["a < b < c", "a <= b <= c"]),
        ("comparison", "a == (b)", ["a != (b)"]),
        ("comparison", "a not  in b", ["a in b"]),
        ("comparison", "a is not None", ["a is None"]),
        ("condition", "if a:\n        b()", ["if not (a):\n        b()"]),
        ("condition", "if not a:\n        b()", ["if a:\n        b()"]),
        ("condition", "while a < b:\n        b()", ["while not (a < b):\n        b()"]),
        ("condition", "if a == b:\n        b()", []),
        ("condition", "a = b if c else a", ["a = b if not (c) else a"]),
        ("condition", "a = [b for b in c if b]", ["a = [b for b in c if not (b)]"]),
        ("not", "a = not b", ["a = (b)"]),
        ("and/or", "a = a and b and c", ["a = (a or b or c)"]),
        ("and/or", "a = a or b and c", ["a = (a and b and c)", "a = a or (b or c)"]),
        ("sum", "a = a + b", ["a = a - b"]),
        ("sum", "a = (a) * (b)", ["a = (a) / (b)"]),
        ("sum", "a = a**b", ["a = ((a) * (b))"]),
        ("sum", "a = a | b & c", ["a = ((a ) & ( b & c))", "a = a | ((b ) | ( c))"]),
        ("sum", "a += b", ["a -= b"]),
        ("sum", "a = -b", ["a = (b)"]),
        ("sum", "a = Lot | None", []),
        ("number", "a = 1", ["a = 2"]),
        ("number", "a = 0.19", ["a = 0.10"]),
        ("number", "a = 2.5e-9", ["a = 2.6e-9"]),
        ("number", "a = 18523.73922069467", ["a = 18523.83922069467"]),
        ("number", "a = 0.0", ["a = 0.1"]),
        ("number", 'a = Decimal("0.7893")', ['a = Decimal("0.7894")']),
        ("truth", "a = True", ["a = False"]),
        ("nothing", "a = None", ["a = True"]),
        ("nothing", "a = b is None", []),
        ("words", 'a = "cloudy"', ['a = "XXcloudy"']),
        ("words", "a = ''", ["a = 'XX'"]),
        ("words", 'a = rb"cloudy"', ['a = rb"XXcloudy"']),
        ("words", 'a = f"{b} is cloudy"', ['a = f"XX{b} is cloudy"']),
        ("words", 'a = "is " f"{b}"', ['a = "XXis " f"{b}"', 'a = "is " f"XX{b}"']),
        ("statement", "a(b)", ["pass"]),
        ("statement", "a += b", ["pass"]),
        ("statement", "a[b] = c", ["pass"]),
        ("statement", "raise a", ["pass"]),
        ("statement", "yield a", ["yield from ()"]),
        ("statement", "a = b", []),
        ("element", "a = [a, b, c]", ["a = [a, b]"]),
        ("element", "a = {a: b, b: c, c: a}", ["a = {a: b, b: c}"]),
        ("element", "a = a, b", []),
        ("element", "return a, b", ["return a"]),
        ("answer", "return a", ["return None"]),
        ("answer", "return a, b", ["return ()", "return None"]),
        ("answer", "return [b for b in a]", ["return None", "return []"]),
        ("answer", "return f'{a}'", ['return ""', "return None"]),
        ("answer", "return sorted(a)", ["return None", "return []"]),
        ("answer", "return []", []),
        ("answer", "return False", []),
    ],
)
def test_a_place_is_changed(kind: str, line: str, expected: list[str]) -> None:
    assert sorted(made(BODY + line, kind)) == sorted(expected)


@pytest.mark.parametrize(
    "text",
    [
        '"""A module."""\nimport a\nfrom b import c\n__all__ = ["a", "b", "c"]\n',
        'class A:\n    """A class."""\n\n    b: dict[str, "A"]\n    """A field."""\n',
        'def f(a: "A") -> "B":\n    """Return it."""\n    ...\n',
        'if TYPE_CHECKING:\n    a = 1\n    b("c")\n',
        'a = cast("A", b)\n',
        "a: tuple[1, 2, 3]\n",
    ],
)
def test_what_only_readers_and_type_checkers_need_is_left_alone(text: str) -> None:
    assert places(text) == []


def test_a_sign_in_a_comment_is_not_taken_for_the_sign() -> None:
    text = "a = (  # and\n    b  # < or and\n    and c\n)\n"
    assert made(text, "and/or") == ["a = (  # and\n    (b  # < or and\n    or c)\n)"]


def test_a_place_knows_which_lines_are_run_for_it_and_when() -> None:
    text = dedent("""\
        LIMITS = (
            1,
        )
        def f(a=2):
            if (
                a == 3
            ):
                return g(
                    4)
    """)
    found = {
        changed_number(text, place): (place.lines, place.in_function)
        for place in places(text)
        if place.kind == "number"
    }
    assert found == {
        "1": ((1, 3), False),
        "2": ((4, 4), False),
        "3": ((5, 6), True),
        "4": ((8, 9), True),
    }
    assert function_lines(text) == {5, 6, 7, 8, 9}


def changed_number(text: str, place: Place) -> str:
    return text[place.start : place.end]


def differing(before: ast.AST, after: ast.AST) -> list[ast.AST]:
    """Return the smallest nodes of a tree that are others in another tree."""
    if type(before) is not type(after):
        return [before]
    found: list[ast.AST] = []
    for field, old in ast.iter_fields(before):
        new = getattr(after, field)
        olds, news = (part if isinstance(part, list) else [part] for part in (old, new))
        if len(olds) != len(news):
            return [before]
        for one, other in zip(olds, news, strict=True):
            if isinstance(one, ast.AST) and isinstance(other, ast.AST):
                below = differing(one, other)
                found += below if all(hasattr(node, "lineno") for node in below) else [before]
            elif one != other:
                return [before]
    return found


def drawn_places() -> list[tuple[str, Place]]:
    """Draw one place from each of many modules."""
    draw = Random(7)
    files = draw.sample(mutable(project_files()), 150)
    texts = [(ROOT / file).read_bytes().decode() for file in files]
    return [(text, draw.choice(found)) for text in texts if (found := places(text))]


def test_every_changed_text_is_python_and_another_program_at_that_place_alone() -> None:
    drawn = drawn_places()
    assert len(drawn) > 100
    for text, place in drawn:
        assert is_fault(text, place)
        before = Written(text)
        (node,) = differing(before.tree, ast.parse(changed(text, place)))
        assert isinstance(node, ast.expr | ast.stmt)
        start, end = before.span(node)
        assert start <= place.end
        assert place.start <= end


def test_a_text_that_is_no_python_or_the_same_program_is_no_fault() -> None:
    (number,) = (place for place in places("a = 1\n") if place.kind == "number")
    assert is_fault("a = 1\n", number)
    same = Place("number", 4, 5, "(1)", (1, 1), False)
    broken = Place("number", 4, 5, "", (1, 1), False)
    assert not is_fault("a = 1\n", same)
    assert not is_fault("a = 1\n", broken)


def test_mutants_are_made_in_the_source_and_not_in_migrations_or_tests() -> None:
    files = mutable(project_files(), "ledger/domain")
    assert "ledger/domain/lots/codes.py" in files
    assert all(file.startswith("ledger/domain/") for file in files)
    assert not mutable(project_files(), "ledger/store/migrations")
    assert not mutable(["tests/mutants/making/places.py", "ledger/usual.toml"])
