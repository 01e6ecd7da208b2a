"""What lines there are at the bench, in a screenful.

Guarantees: every act with words of its own is among them, by a line that the grammar reads.
"""

from cli.front import COMMANDS
from cli.screens.bench.slots import VERBS

OTHERS = (
    ("oil", "Name a material or a lot; the amount comes next."),
    ("1", "Take the step that is offered by this number."),
    ("clear", "A look; any grade does, with NTU behind it."),
    ("end", "End the rest that goes on."),
    ("carb weigh", "With --scale: the weight that is on it."),
    ("note WORDS", "Write a note."),
    ("undo", "Strike your own last entry; Ctrl-Z too."),
    ("... because WHY", "Give the reason where one is asked for."),
    ("... again", "Say that the same was done twice."),
    ("... @14:30", "Say when it happened."),
    ("due, stock, ...", "Any other command; a dot is the lot in hand."),
    ("done", "Leave the bench; Ctrl-D too."),
)
"""Lines beside those of the acts."""
TRIAL_LINES = (
    "  factor rest 24h 48h 24h 48h    Set a factor, a level for each jar; - for none.",
    "  jars 4 orange-essence 50       Begin the jars with what was set.",
    "  start --from-plan NAME         Begin those of a planned trial.",
    "  oil 1                          The same in each jar.",
    "  oil 1 1 2 2                    A word for each jar; - leaves one out.",
    "  filter 40 38 41 40 / paper 20  What is the same for all, behind a stroke.",
    "  clear hazy clear cloudy        An evening's grades.",
    "  undo, due, compare, done       As ever.",
)
"""The rows there are over the jars of a trial."""


def help_lines() -> list[str]:
    """Return the lines there are, each with what it does."""
    acts = [(verb.example, COMMANDS[verb.command][1]) for verb in VERBS.values()]
    width = max(len(line) for line, _ in (*acts, *OTHERS)) + 2
    return [f"  {line:{width}}{words}" for line, words in (*acts, *OTHERS)]
