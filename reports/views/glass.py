"""What papers of glass and spirit show, as plain frozen data.

Guarantees: every text is ready to print, every list in the order it is shown.
"""

from msgspec import Struct

from reports.kit.frame import Frame


class SpiritView(Struct, frozen=True):
    """The spirit account of a period."""

    frame: Frame
    """Its house, seal and date."""
    period: str
    """Its first and last day."""
    rows: tuple[tuple[str, str, str], ...]
    """Lines of the account: sign, what, and how many litres."""
    lots: tuple[tuple[str, ...], ...]
    """Lots of spirit: code, what, received, used, left."""
    notes: tuple[str, ...]
    """What to know besides, each a sentence."""
