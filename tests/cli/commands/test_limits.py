"""`pottle limits`: one with its source, one said anew, and none of that name."""

from tests.cli.asked import check_asked
from tests.cli.cases import check_answers, check_refused
from tests.cli.shell import Shell
from tests.cli.shown import check_shown


def test_one_limit_is_shown_with_its_source(shell: Shell) -> None:
    answer = (
        "eu-safrole: safrole at most 1 mg/kg as served: non-alcoholic beverages.\n"
        "Place: EU, since 2011-01-20.\n"
        "Source: Regulation (EC) 1334/2008, Annex III part B, OJ L 354, 31.12.2008; so in "
        "the press on its proposal, 2006 (value from memory: look it up).\n"
        "Next: pottle limits eu-safrole --value NUMBER --citation SOURCE says it anew.\n"
    )
    check_answers(("limits eu-safrole", answer), shell)


def test_a_limit_is_said_anew_with_its_source(shell: Shell) -> None:
    answer = (
        "Recorded 39, limit: eu-safrole: safrole at most 2 mg/kg as served, EU, "
        "non-alcoholic beverages, since 2011-01-20, our own rule, the value recalled.\n"
        "Next: pottle limits eu-safrole\n"
    )
    check_answers(('limits eu-safrole --value 2 --citation "our own rule"', answer), shell)


def test_another_value_with_the_old_source_is_remarked_on(shell: Shell) -> None:
    note = (
        'Note: The value is another now, and its source still the old one: "Regulation (EC) '
        "1334/2008, Annex III part B, OJ L 354, 31.12.2008; so in the press on its proposal, "
        '2006", recalled. If the value stands elsewhere: pottle limits eu-safrole --citation '
        "SOURCE --known-by read"
    )
    assert shell.line("limits eu-safrole --value 2").lines[1] == note
    assert "Note" not in shell.line("limits eu-safrole --value 2.0 --says so").out


def test_a_limit_that_is_none_is_refused(shell: Shell) -> None:
    problem = (
        "There is no limit nosuch.",
        (
            "pottle limits lists them; to add one say its substance, value, unit, basis, place "
            "and citation."
        ),
    )
    check_refused(("limits nosuch", 3, problem), shell)


def test_its_words_its_options_and_the_kinds_of_its_answer_are_the_kept_ones() -> None:
    check_asked("limits")


def test_all_that_it_shows_for_a_maker_and_for_machines_is_the_kept_one(still: Shell) -> None:
    check_shown("limits", still)
