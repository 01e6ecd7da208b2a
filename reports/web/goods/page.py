"""A page of a lot for a browser: one file that needs nothing else.

Guarantees: no script, nothing that is loaded from elsewhere, no tracking; it reads on a telephone
and in print, and where it must not be served that is said in words, not by colour alone. Refuses:
markup in what is shown; it stands as it was written.
"""

from html import escape

from reports.kit.held import held
from reports.views.goods import PageView

STYLE = """
:root { color-scheme: light dark; }
body { font: 1.125rem/1.5 system-ui, sans-serif; max-width: 36rem; margin: 0 auto; padding: 1rem; }
h1 { font-size: 1.6rem; line-height: 1.2; margin: 0.5rem 0; }
p { margin: 0.5rem 0; overflow-wrap: anywhere; }
dl { margin: 1rem 0; } dt { font-weight: 600; } dd { margin: 0 0 0.75rem; overflow-wrap: anywhere; }
.status { border: 2px solid; border-radius: 0.5rem; padding: 0.5rem 0.75rem; font-weight: 600; }
.barred { border-width: 6px; }
footer { font-size: 0.9rem; border-top: 1px solid; margin-top: 1.5rem; padding-top: 0.5rem; }
code { font-size: 0.8rem; overflow-wrap: anywhere; }
"""
"""How it looks: the reader's own letters and colours."""


def html_page(view: PageView) -> str:
    """Return the page of a lot."""
    status = "status barred" if view.is_barred else "status"
    facts = "".join(
        f"<dt>{escape(name)}</dt><dd>{escape(held(text))}</dd>" for name, text in view.facts
    )
    cautions = "".join(f"<p>{escape(line)}</p>" for line in view.cautions)
    house = "<br>".join(map(escape, view.house))
    seal = "<br>".join(f"<code>{escape(line)}</code>" for line in view.seal)
    title = escape(f"{view.product}, lot {view.code}")
    return f"""<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="robots" content="noindex">
<title>{title}</title>
<style>{STYLE}</style>
</head>
<body>
<main>
<h1>{escape(view.product)}</h1>
<p>Lot {escape(view.code)}</p>
<p class="{status}">{escape(view.status)}</p>
<dl>{facts}</dl>
{cautions}
</main>
<footer>
<p>{house}</p>
<p>{escape(view.stood)}</p>
<p>{seal}</p>
</footer>
</body>
</html>
"""
