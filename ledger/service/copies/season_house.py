"""Reading a season's house.toml: whose book it is, and what the season tells of.

Guarantees: all that is wrong in the file is told at once. Refuses: missing, unknown and empty
keys, and values that are not text.
"""

import tomllib
from collections.abc import Collection, Iterator
from pathlib import Path
from typing import Any

from msgspec import Struct
from msgspec.structs import fields

from ledger.domain.masters.toml import toml_values
from ledger.errors import InputError
from ledger.service.copies.season_files import MOST_BYTES, Problem
from ledger.service.desk.clock import zones
from ledger.text_files import bytes_of


class SeasonHouse(Struct, frozen=True):
    """The house that keeps the book, as `init` takes it."""

    name: str
    """Its trading name."""
    currency: str
    """ISO 4217 code."""
    address: str | None = None
    """Postal address in one line."""
    country: str | None = None
    """ISO 3166 two-letter code."""
    time_zone: str = "UTC"
    """IANA name of the zone of the season's times."""
    fluid_ounce: str = "US"
    """US or imperial."""
    phone: str | None = None
    """Telephone number."""


class Story(Struct, frozen=True):
    """Nicknames of the rows that a season tells of."""

    cloudy: str
    """A packed lot that came back cloudy."""
    record: str
    """A batch whose record is worth reading."""
    labels: str
    """A packed lot to print labels for."""
    culprit: str
    """The lot that the cloudy ones have in common."""
    trial: str | None = None
    """The plan of the trial that decides about it; None: none is planned."""


def read_house(folder: Path) -> tuple[SeasonHouse | None, Story | None, list[Problem]]:
    """Return the house and the story of a season, and all that is wrong with them."""
    file = folder / "house.toml"
    if not file.exists():
        todo = "Name the folder of a season, which has one."
        return None, None, [(f"There is no house.toml in the folder {folder.name}.", todo)]
    try:
        told = toml_values(bytes_of(file, MOST_BYTES).decode())
    except InputError as error:
        return None, None, list(error.problems)
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        what = f"house.toml cannot be read as TOML: {error}."
        return None, None, [(what, "Save it again as TOML in UTF-8.")]
    story_told = told.pop("story", None)
    story_told = story_told if isinstance(story_told, dict) else {}
    problems = [*_problems(SeasonHouse, told), *_problems(Story, story_told)]
    problems += _zone_problems(told.get("time_zone", "UTC"))
    if problems:
        return None, None, problems
    return SeasonHouse(**told), Story(**story_told), []


def story_problems(story: Story | None, nicknames: Collection[str | None]) -> Iterator[Problem]:
    """Return what the story tells of that no row gives as its nickname."""
    for field in fields(Story) if story else ():
        name = getattr(story, field.name)
        if name is not None and name not in nicknames:
            what = f'house.toml has "{name}" as {field.name}, which no row gives as its nickname.'
            yield what, "Put right the nickname."


def _problems(kind: type[SeasonHouse | Story], told: dict[str, Any]) -> Iterator[Problem]:
    known = {field.name: field.required for field in fields(kind)}
    for name, is_needed in known.items():
        if is_needed and name not in told:
            yield f"house.toml does not say the {name}.", f'Write it as: {name} = "..."'
    for name, value in told.items():
        if name not in known:
            what = f'house.toml has "{name}", which a season does not know.'
            yield what, f"Here it knows: {', '.join(known)}."
        elif not isinstance(value, str) or not value.strip():
            yield f"house.toml has no text for {name}.", f'Write it as: {name} = "..."'


def _zone_problems(zone: object) -> Iterator[Problem]:
    if isinstance(zone, str) and zone not in zones():
        yield f'house.toml has "{zone}", which is no time zone.', "Write one such as Europe/Dublin."
