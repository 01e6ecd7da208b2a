"""What all rules together find in the cases of each family is kept whole, with less of each too."""

import importlib
from collections.abc import Iterator
from pathlib import Path

from msgspec.structs import replace

from ledger.domain.lots.scene import Scene
from ledger.domain.rules import findings
from tests.domain.rules.cases import Case
from tests.kept.golden import check_golden

HERE = Path(__file__).parent


def test_all_that_the_rules_find_in_the_cases_of_each_family_is_kept() -> None:
    """Renew with ``POTTLE_GOLDEN=write`` and read the difference."""
    check_golden("found.txt", "".join(f"{line}\n" for line in _told()))


def _told() -> Iterator[str]:
    """Yield each case with its findings; one that was told before is told by its number."""
    numbers: dict[str, int] = {}
    for path in sorted(HERE.glob("*/test_*.py")):
        room = f"{path.parent.name}.{path.stem}"
        module = importlib.import_module(f"tests.domain.rules.{room}")
        for case in _cases(module):
            yield f"{room.replace('.test_', ' ')}: {case}"
            yield from _found(case, numbers)


def _cases(module: object) -> list[Case]:
    """Return the cases of a module, each once, in the order in which they stand there."""
    lists = (value for value in vars(module).values() if isinstance(value, list | tuple))
    every = [case for cases in lists for case in cases if isinstance(case, Case)]
    return list({id(case): case for case in every}.values())


def _found(case: Case, numbers: dict[str, int]) -> Iterator[str]:
    before = list[str]()
    for name, scene in _scenes(case.scene).items():
        found = [
            f"{one.severity} {one.rule}: {one.what} {one.todo}"
            for one in findings(case.draft, scene)
        ]
        if found == before:
            continue
        before, again = found, [str(numbers[one]) for one in found if one in numbers]
        yield f"  {name}: {', '.join(again) or 'nothing again'}"
        for one in found:
            if one not in numbers:
                numbers[one] = len(numbers) + 1
                yield f"    {numbers[one]} {one}"


def _scenes(scene: Scene) -> dict[str, Scene]:
    """Return a scene as it is, and without each of what rules look at."""
    control = scene.control
    return {
        "as it is": scene,
        "without its formula": replace(scene, control=replace(control, formula=None)),
        "without its lot": replace(scene, lot=None),
        "without what went in": replace(
            scene, sources=(), control=replace(control, inputs=()), corrected=None
        ),
        "by a house of one": replace(scene, people=frozenset({"AB"})),
    }
