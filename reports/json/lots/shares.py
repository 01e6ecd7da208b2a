"""How much of one lot is in another, for machines."""

from typing import Any

from ledger.service.lots.shares import Share
from reports.words.lots.shares import concentration


def share_plain(share: Share) -> dict[str, Any]:
    """Return a share for machines, its amount rounded to the smallest unit."""
    number, unit = concentration(share)
    return {
        "carried": str(round(share.amount)),
        "carried_unit": str(share.measure),
        "whole": str(share.whole),
        "whole_unit": str(share.whole_measure),
        "concentration": number,
        "concentration_unit": unit,
        "all_measured": share.is_all,
    }
