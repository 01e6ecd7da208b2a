"""The program as the shell calls it.

Guarantees: what is loaded for a call is not searched for garbage while it is loaded, for all of it
is kept; from the command's own work on, garbage is looked for as ever (`run_safely`). Broken off
before that, it ends at once and without a word, as nothing was begun.
"""

import gc
import signal


def run() -> None:
    """Run the command; the entry point of the installed program."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)
    gc.disable()
    from cli.main import run as run_commands

    run_commands()


if __name__ == "__main__":
    run()
