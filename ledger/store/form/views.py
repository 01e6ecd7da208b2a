"""The queries of the book's views on either engine.

Guarantees: views are kept in SQLite's words; what those two engines have no common words for is a
moment on the clock it was written by, and is turned into a server's here.
"""

import re

_LOCAL = re.compile(r"datetime\((\w+)\.happened_at, \1\.offset_min \|\| ' minutes'\)")
_ON_SERVER = (
    r"to_char(CAST(\1.happened_at AS timestamp) + \1.offset_min * interval '1 minute', "
    r"'YYYY-MM-DD HH24:MI:SS')"
)


def on_server(query: str) -> str:
    """Return the query of a view in a server's words.

    >>> on_server("SELECT substr(datetime(e.happened_at, e.offset_min || ' minutes'), 1, 10)")[:54]
    'SELECT substr(to_char(CAST(e.happened_at AS timestamp)'
    """
    return _LOCAL.sub(_ON_SERVER, query)
