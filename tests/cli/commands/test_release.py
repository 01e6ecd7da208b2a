"""`pottle release`: what stands in its way, and the reason that overrides it."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


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
        'hold BOS-001-S --because "WHY"\n'
        "Note: BOS-001-S is self-released: AB made it and releases it, and nobody but its makers "
        "has checked it. Have it checked: pottle check BOS-001-S --by INITIALS\n"
        "Next: pottle send BOS-001-S COUNT --to WHO\n"
    )
    check_answers(("release {packed}", answer), shell)


def test_the_end_of_a_hold_says_why_and_answers_for_nothing_else(shell: Shell) -> None:
    shell.line('hold {packed} --because "a ring"')
    unseen = "BOS-001-S has not been looked at since it was put on hold."
    look = "  Look at it: pottle look BOS-001-S GRADE --of neat"
    bare = shell.line("release {packed}")
    assert (bare.exit_code, bare.complaints) == (
        1,
        [
            unseen,
            look,
            "BOS-001-S is on hold: a ring.",
            "  Say with --because why that is gone.",
        ],
    )
    reason = 'release {packed} --because "syrup on the neck"'
    blind = shell.line(reason)
    assert (blind.exit_code, blind.complaints) == (1, [unseen, look])
    anyway = shell.line(f"{reason} --anyway")
    assert [line for line in anyway.lines if "Deviation" in line] == [f"Deviation 41: {unseen}"]
    shell.line('hold {packed} --because "another ring"')
    shell.line("look {packed} bright --of neat")
    why = shell.line("release {packed}")
    assert (why.exit_code, why.complaints) == (
        4,
        ["BOS-001-S is on hold: another ring.", "  Say with --because why that is gone."],
    )
    seen = shell.line(f"{reason} --json")
    assert (seen.exit_code, seen.json["deviations"]) == (0, [])


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("release")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("release", still)
