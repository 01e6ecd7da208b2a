"""Calibrate the forecast on published statements, and keep what comes of it.

``python -m tests.calibration`` writes `ledger/cosolvency.toml` and tells how the statements fared
whose group of oils was left out.
"""

from tests.calibration.kept import KEPT, reckoned, text_of
from tests.calibration.statements import rows


def main() -> None:
    """Calibrate, keep it, and tell each statement that was left out."""
    found = reckoned(rows())
    KEPT.write_text(text_of(found), encoding="utf-8")
    for item in found.judged:
        statement = item.statement
        print(
            f"{statement.label:10} {statement.group:14} {statement.stated:5.1f} % stated, "
            f"{item.likely - item.half:5.1f} to {item.likely + item.half:5.1f} foretold"
            f"{'' if item.is_inside else '  OUTSIDE'}"
        )
    print(text_of(found))


if __name__ == "__main__":
    main()
