"""A small season that is whole, for tests to break."""

from pathlib import Path

import pytest

from ledger.errors import InputError
from ledger.service.copies.season import read_season

GOOD = {
    "house.toml": """
name = "Madeup Works"
currency = "EUR"
time_zone = "Europe/Dublin"
[story]
cloudy = "essence"
record = "essence"
labels = "essence"
culprit = "oil"
""",
    "person.csv": "at,by,initials,name\n2026-07-01 09:00,NM,NM,Nora Madeup\n",
    "material.csv": "at,by,code,name,kind\n2026-07-01 09:00,NM,orange-oil,Orange oil,oil\n",
    "receive.csv": "at,by,as,material,amount\n2026-07-01 09:10,NM,oil,orange-oil,100mL\n",
    "start.csv": "at,by,as,product,kind,target\n"
    "2026-07-01 10:00,NM,essence,Orange essence,essence,480mL\n",
    "add.csv": "at,by,as,lot,source,amount\n"
    "2026-07-01 10:05,NM,poured,essence,oil,30mL\n"
    "2026-07-01 10:05,NM,twice,essence,oil,20mL\n",
    "note.csv": "at,recorded,by,lot,text,sheet\n"
    "2026-07-01,2026-07-03 17:00,NM,oil,Smells of fresh peel.,B-0001\n",
    "correct.csv": "at,by,as,entry,changes,because\n"
    "2026-07-02 08:00,NM,mended,poured,amount=32mL,misread the cylinder\n",
    "strike.csv": "at,by,entry,because\n2026-07-02 08:05,NM,twice,typed twice\n",
}


def folder_with(folder: Path, **changed: str) -> Path:
    """Write the good season with some files changed; `add_csv` names add.csv."""
    files = GOOD | {name.replace("_", "."): text for name, text in changed.items()}
    for name, text in files.items():
        (folder / name).write_text(text, encoding="utf-8")
    return folder


def problems_of(folder: Path) -> tuple[tuple[str, str], ...]:
    with pytest.raises(InputError) as caught:
        read_season(folder)
    return caught.value.problems
