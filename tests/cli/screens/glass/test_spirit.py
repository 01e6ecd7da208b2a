"""The spirit account on a screen, which `pottle stock --spirit` shows."""

from tests.cli.shell import Shell
from tests.golden import check_golden


def test_the_account_is_told_with_the_lots_of_spirit(shell: Shell) -> None:
    """5 L of 96 % are 4.8 L of pure alcohol; 440 mL of it were used."""
    lines = shell.run("stock", "--spirit").lines
    told = {" ".join(line.split()[:-1]): line.split()[-1] for line in lines if line.strip()}
    assert told["received"] == "4.800"
    assert told["of it spirit"] == "4.378"
    assert any(line.split() == SPIRIT for line in lines)


SPIRIT = ["NS-001-J", "Neutral", "spirit", "4.800", "0.422", "4.378"]


def test_the_account_and_its_lots_stand_apart_as_kept(shell: Shell) -> None:
    answer = shell.line("stock --spirit --from 2026-01-01 --to 2099-12-31")
    check_golden("cli/spirit.txt", answer.out)
