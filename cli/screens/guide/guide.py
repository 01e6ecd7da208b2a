"""The guide on a screen or in a pipe: short pages, kept with the program as Markdown.

Guarantees: needs no book and no network; in a pipe a page is the text as it is kept.
"""

from difflib import get_close_matches
from importlib.resources import files

from cli.kit.call import Call
from cli.kit.tables import is_screen, print_json, print_lines, print_table
from ledger.errors import RefusedError

TOPICS = (
    *(
        "first-hour",
        "bench",
        "evening",
        "labels",
        "release",
        "trace",
        "recall",
        "serving",
        "declaration",
        "foretell",
        "limits",
    ),
    *("formulas", "corrections", "seals", "people", "backups", "spreadsheets"),
    *("machines", "machines-keys", "commands"),
)
"""The pages, in the order in which a maker comes to need them."""
NEXT = "Next: pottle guide first-hour"


def page(topic: str) -> str:
    """Return the text of a page."""
    return files("cli").joinpath("guide", f"{topic}.md").read_text(encoding="utf-8")


def title(text: str) -> str:
    """Return the title of a page.

    >>> title("# The first hour" + chr(10) + "From an empty folder on.")
    'The first hour'
    """
    return text.partition("\n")[0].removeprefix("# ")


def purpose(text: str) -> str:
    """Return the first sentence below the title of a page: what it is for."""
    below = text.split("\n\n")[1]
    return " ".join(below.split()).partition(". ")[0].removesuffix(".") + "."


def list_topics(call: Call) -> None:
    """List the pages."""
    pages = [(topic, page(topic)) for topic in TOPICS]
    if call.json:
        from reports.json.guide.guide import TopicRow

        print_json([TopicRow(topic, title(text)) for topic, text in pages])
        return
    print_table(("topic", "what it tells"), [[topic, purpose(text)] for topic, text in pages])
    print_lines([NEXT])


def show_page(call: Call, topic: str) -> None:
    """Show one page.

    Raises:
        RefusedError: There is none of that name; the nearest is named.
    """
    known = topic.strip().lower()
    if known not in TOPICS:
        near = get_close_matches(known, TOPICS, n=1)
        hint = f" Near to it: {near[0]}." if near else ""
        raise RefusedError(
            f"The guide has no page {topic}.{hint}", "pottle guide lists the pages that are."
        )
    text = page(known)
    if call.json:
        from reports.json.guide.guide import PageAnswer

        print_json(PageAnswer(known, title(text), text))
    elif is_screen():
        _print_page(text)
    else:
        print(text, end="")


def _print_page(text: str) -> None:
    from rich.console import Console
    from rich.markdown import Markdown
    from rich.theme import Theme

    quiet = Theme({"markdown.code": "bold", "markdown.h2": "bold underline"})
    Console(theme=quiet).print(Markdown(text, code_theme="bw"))
