"""Events and their parts: under which names and as which kind each is written."""

from collections.abc import Iterator

from msgspec import Struct
from msgspec.structs import fields

from reports.epcis import events as module
from tests.kept.golden import check_golden
from tests.kept.said import check_constants


def test_every_part_of_an_event_has_the_names_that_were_kept() -> None:
    """Renew with ``POTTLE_GOLDEN=write``; test_document holds them to the standard's schema."""
    parts = [kind for kind in vars(module).values() if _is_part(kind)]
    check_golden("epcis.txt", "".join(f"{line}\n" for kind in parts for line in _told(kind)))


def _is_part(kind: object) -> bool:
    return (
        isinstance(kind, type) and issubclass(kind, Struct) and kind.__module__ == module.__name__
    )


def _told(kind: type[Struct]) -> Iterator[str]:
    config = kind.__struct_config__
    tag = f", {config.tag_field} {config.tag}" if config.tag else ""
    yield f"{kind.__name__}{tag}, {'without' if config.omit_defaults else 'with'} its defaults"
    yield from (f"  {field.encode_name}" for field in fields(kind))


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
