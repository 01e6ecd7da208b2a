"""Answers for machines compared with kept ones, key by key."""

from msgspec import Struct

from tests.kept.golden import check_golden
from tests.kept.told import told


def check(name: str, *answers: Struct) -> None:
    """Fail unless every key and figure of the answers is the one kept under a name."""
    lines = [line for each in answers for line in told(type(each).__name__, each)]
    check_golden(f"json/{name}.txt", "\n".join((*lines, "")))
