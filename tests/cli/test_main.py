"""The front door: what is given before a command counts for it, and no word asks for help."""

from tests.cli.shell import Shell


def test_options_may_stand_before_the_command(shell: Shell) -> None:
    told = shell.line("--by AB --json note {essence} Good.")
    assert (told.exit_code, told.json["code"]) == (0, "OE-001-5")


def test_without_a_command_the_help_is_shown(shell: Shell) -> None:
    told = shell.run()
    assert "The batch book of a small maker of soda-fountain essences and syrups." in told.err
    assert "receive     Record a delivery; opens a lot." in told.err


def test_a_command_that_is_none_is_said_to_be_none(shell: Shell) -> None:
    told = shell.run("stir")
    assert told.exit_code == 2
    assert "No such command 'stir'" in told.err
