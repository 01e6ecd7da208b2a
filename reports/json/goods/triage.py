"""What a complaint points to, for machines."""

from typing import Any

from ledger.service.goods.triage import Triage
from reports.json.lots.brief import brief_plain
from reports.kit.format import clock
from reports.words.entries.sentence import sentence


def triage_plain(found: Triage) -> dict[str, Any]:
    """Return what a complaint points to, for machines."""
    look = found.look
    return {
        "still_open": [question.name.lower() for question in found.still_open],
        "look": {
            "entry": look.seq,
            "happened": clock(look.draft.happened),
            "grade": found.grade,
            "of_the_lot": found.is_of_the_lot,
            "since_complaint": found.is_fresh,
        }
        if look
        else None,
        "kept_back": found.kept_back,
        "others": [
            {"entry": e.seq, "happened": clock(e.draft.happened), "says": sentence(e)}
            for e in found.others
        ],
        "shared": [
            {**brief_plain(item.brief), "complaints": item.complaints, "lots": item.lots}
            for item in found.shared
        ],
    }
