"""Which tests run a place, by what was noted of lines, fixtures and files."""

from tests.mutants.making.places import places
from tests.mutants.trying.mapping import Map, Timed, mirrored, running
from tests.mutants.trying.plugins.mutants_map import closed

TEXT = """\
LIMIT = 1
def f(a):
    return a + 2
def g(a):
    b = (
        a + 3
    )
    return b
"""
A, B, C, D = (f"tests/domain/test_sums.py::test_{name}" for name in "abcd")
FIXTURE = "tests/domain::book"
OTHER = "tests/store/test_rows.py::test_e"
TESTS = {
    A: Timed(0.5),
    B: Timed(0.1),
    C: Timed(0.3, frozenset({FIXTURE})),
    D: Timed(0.2, frozenset({FIXTURE})),
    OTHER: Timed(0.0),
}
LINES = {
    1: ["import"],
    2: ["import"],
    3: [f"test {A}", f"test {B}", "test tests/gone.py::test_gone"],
    4: ["import"],
    6: [f"fixture {FIXTURE}"],
    8: [f"fixture {FIXTURE}"],
}


def found(number: str, lines: dict[int, list[str]] = LINES) -> list[str]:
    """Return the tests that run the place of a number."""
    place = next(one for one in places(TEXT) if TEXT[one.start : one.end] == number)
    return running(place, "ledger/domain/sums.py", TEXT, Map(TESTS, lambda _: lines))


def test_a_line_of_a_function_is_run_by_the_tests_that_were_seen_to_the_quickest_first() -> None:
    assert found("2") == [B, A]


def test_what_a_fixture_runs_is_run_by_all_tests_that_use_it_on_any_line_of_a_statement() -> None:
    assert found("3") == [D, C]


def test_what_a_file_runs_while_it_is_read_is_run_by_its_tests() -> None:
    assert found("3", LINES | {6: ["file tests/store/test_rows.py"]}) == [OTHER]


def test_what_is_run_at_import_is_run_by_the_tests_of_the_functions() -> None:
    assert found("1") == [B, D, C, A]
    assert found("2", LINES | {3: ["import"]}) == [D, C]


def test_what_is_made_at_import_may_be_looked_at_by_any_test_of_the_nearest_files() -> None:
    """Such as one that compares a table of the module whole, and calls nothing of it."""
    place = next(one for one in places(TEXT) if TEXT[one.start : one.end] == "1")
    known = Map(TESTS, lambda _: {3: [f"test {A}"], 6: [], 8: []})
    near = ["tests/store/test_rows.py"]
    assert running(place, "ledger/domain/sums.py", TEXT, known, near) == [OTHER, A]


def test_what_is_called_at_import_alone_is_no_sign_of_who_uses_what_it_made() -> None:
    """A test that imports the module in a process of its own runs such a line too."""
    lines = LINES | {3: ["import", f"test {A}"], 6: ["import"], 8: ["import"]}
    assert found("1", lines) == [B, D, C, A, OTHER]


def test_a_line_that_nothing_runs_has_no_tests() -> None:
    assert found("2", LINES | {3: []}) == []


def test_a_module_without_functions_is_run_by_all_tests_those_of_its_folder_first() -> None:
    assert found("1", {}) == [B, D, C, A, OTHER]


def test_where_the_map_may_lack_some_the_tests_beside_a_module_stand_for_all() -> None:
    place = next(one for one in places(TEXT) if TEXT[one.start : one.end] == "1")
    known = Map(TESTS, lambda _: {})
    told = running(place, "ledger/domain/sums.py", TEXT, known, is_whole=False)
    assert told == [B, D, C, A]


def test_the_folder_that_mirrors_a_module_may_be_one_above() -> None:
    tests = ["tests/reports/pdf/test_a.py::test_a", "tests/domain/test_b.py::test_b"]
    assert mirrored("reports/pdf/tables/rows.py", tests) == {tests[0]}
    assert mirrored("ledger/domain/rules/gate.py", tests) == {tests[1]}
    assert mirrored("ledger/errors.py", tests) == set(tests)
    assert mirrored("ledger/errors.py", []) == set()


def test_tests_of_the_nearest_files_come_before_quicker_ones() -> None:
    known = Map(TESTS, lambda _: {})
    near = {"tests/domain/test_sums.py"}
    assert known.in_order([A, B, OTHER], near) == [B, A, OTHER]
    assert known.in_order([A, B, OTHER]) == [OTHER, B, A]


def test_the_first_tests_are_taken_until_their_time_is_over_and_one_always() -> None:
    known = Map(TESTS, lambda _: {})
    assert known.within([B, D, C, A], 0.65) == [B, D, C]
    assert known.within([A, B], 0.4) == [A]
    assert Map(TESTS, lambda _: {}, {FIXTURE: 2.0}).within([C, D, B], 2.5) == [C, D]
    assert known.within([], 1.0) == []


def test_a_fixture_that_tests_share_is_counted_once_and_makes_each_slower() -> None:
    known = Map(TESTS, lambda _: {}, {FIXTURE: 2.0})
    assert known.seconds([A, C, D]) == 3.0
    assert known.in_order([A, C, D]) == [A, D, C]


def test_a_fixture_brings_those_it_needs() -> None:
    needs = {"keeper": ["server"], "server": ["folder"], "other": ["clock"]}
    assert closed({"keeper", "tmp_path"}, needs) == {"keeper", "tmp_path", "server", "folder"}
