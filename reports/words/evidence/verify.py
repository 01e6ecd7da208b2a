"""What a verification says, in words.

Guarantees: says what was looked at and what was not. Refuses: to say more than was checked.
"""

from ledger.domain.evidence.seals import Seal
from ledger.service.evidence.verify import Audit
from reports.kit.format import plural

MOST_SHOWN = 10
"""So many things that do not fit are told in words; the plain values have all."""
NEEDS_A_SEAL = "Only a seal kept outside this book can show that it was not rebuilt whole."
NO_LAST = "No verification of this book is remembered at this device, so all of it was read."
_SOUND = "tables, tree and guards fit."
KEEP = "Keep this file as it is, and restore a copy that verifies."
KEEP_WITH_SEAL = (
    "Keep this book and the paper as they are, read the seal again, and restore a copy that fits."
)


def audit_lines(audit: Audit, older: Seal | None = None) -> list[str]:
    """Return what a verification found, against a seal or without."""
    if audit.faults:
        return [
            _headed(audit),
            *(f"- {fault.what}" for fault in audit.faults[:MOST_SHOWN]),
            *_more(audit),
            KEEP if older is None else KEEP_WITH_SEAL,
        ]
    root, gone = f"Root {audit.root.hex()}", _forgotten(audit)
    if older is None:
        return [_all_sound(audit), *gone, root, NEEDS_A_SEAL]
    return [_looked_at(audit), *gone, root, _continued(audit, older)]


def _headed(audit: Audit) -> str:
    things = plural(len(audit.faults), "thing does", "things do")
    if not audit.is_cut:
        return f"{plural(audit.entries, 'entry', 'entries')}; {things} not fit:"
    # Where the search ended before the entries, nobody counted them.
    counted = f"{plural(audit.entries, 'entry', 'entries')}; at" if audit.entries else "At"
    return f"{counted} least {things} not fit:"


def _more(audit: Audit) -> list[str]:
    more = len(audit.faults) - MOST_SHOWN
    if more <= 0:
        return []
    told = f"at least {more} more; --json tells the first {len(audit.faults)}"
    return [f"- and {told if audit.is_cut else f'{more} more; --json tells them all'}."]


def _forgotten(audit: Audit) -> list[str]:
    if not audit.forgotten:
        return []
    told = plural(audit.forgotten, "entry tells", "entries tell")
    return [f"{told} of somebody who was forgotten since; who that was is not there any more."]


def _all_sound(audit: Audit) -> str:
    entries = plural(audit.entries, "entry", "entries")
    return f"{entries}, all as {'it was' if audit.entries == 1 else 'they were'} written; {_SOUND}"


def _looked_at(audit: Audit) -> str:
    entries = plural(audit.entries, "entry", "entries")
    if not audit.after:
        return _all_sound(audit)
    if audit.after == audit.entries:
        return f"{entries}, none of them since the seal; the guards fit."
    return (
        f"{entries}; all after entry {audit.after} are as they were written, and the "
        "ones before were not read again."
    )


def _continued(audit: Audit, older: Seal) -> str:
    if older.entries == audit.entries:
        return "The seal is of this book as it is now."
    return (
        f"The seal fits: its {plural(older.entries, 'entry is', 'entries are')} the beginning of "
        f"this book, and {audit.entries - older.entries} came after."
    )
