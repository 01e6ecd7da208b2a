"""`pottle release`: what stands in its way, and the reason that overrides it."""

from tests.cli.cases import check_answers
from tests.cli.shell import Shell


def test_a_release_names_all_that_stands_in_its_way_and_yields_to_a_reason(shell: Shell) -> None:
    code = shell.run(
        "start", "--product", "Lemon essence", "--kind", "essence", "--target", "1L", "--json"
    ).json["code"]
    before = shell.entries()
    barred = shell.run("release", code)
    assert barred.exit_code == 1
    assert barred.complaints == [
        f"{code} has not been looked at.",
        f"  Look at it: pottle look {code} GRADE --of neat",
        f"{code} has no yield in the book.",
        f"  Finish it with what came out: pottle finish {code} VOLUME",
    ]
    assert shell.entries() == before
    assert shell.run("release", code, "--because", "A sample for the fair.").exit_code == 0
    assert shell.entries() == before + 3


def test_a_second_release_says_that_there_was_one_and_how_it_looked(shell: Shell) -> None:
    answer = (
        "Recorded 39, judged BOS-001-S: released.\n"
        "BOS-001-S, Orange syrup, 250 mL: 9 there, released.\n"
        "Note: BOS-001-S was released already. See by whom: pottle journal BOS-001-S\n"
        "Note: The last look at BOS-001-S found it cloudy. If it should not be so: pottle "
        "hold BOS-001-S\n"
        "Next: pottle send BOS-001-S COUNT --to WHO\n"
    )
    check_answers(("release {packed}", answer), shell)
