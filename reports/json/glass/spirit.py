"""The spirit account, for machines: litres of pure alcohol as decimals in text."""

from typing import Any

from ledger.service.glass.spirit import SpiritReport


def plain(report: SpiritReport) -> dict[str, Any]:
    """Return the account as plain values; litres of pure alcohol as decimal strings."""
    found = report.account
    return {
        "from": report.first.isoformat(),
        "to": report.last.isoformat(),
        "unit": "litres of pure alcohol at 20 °C",
        "opening": f"{found.opening:.6f}",
        "received": f"{found.received:.6f}",
        "used": f"{found.used:.6f}",
        "sent": {why: f"{amount:.6f}" for why, amount in sorted(found.sent.items())},
        "lost": f"{found.lost:.6f}",
        "unexplained": f"{found.unexplained:.6f}",
        "in_spirit": f"{found.in_spirit:.6f}",
        "in_making": f"{found.in_making:.6f}",
        "in_product": f"{found.in_product:.6f}",
        "closing": f"{found.closing:.6f}",
        "lots": [
            {
                "lot": code,
                "name": report.names[code],
                "received": f"{lot.received:.6f}",
                "used": f"{lot.used:.6f}",
                "left": f"{lot.left:.6f}",
            }
            for code, lot in found.lots.items()
        ],
        "missing": list(report.unknown),
    }
