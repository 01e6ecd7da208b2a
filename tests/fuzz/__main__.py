"""Fuzz the readers of text from outside, one after the other, and print the table.

``python -m tests.fuzz [SECONDS [PARSER ...]] [--out FOLDER]`` gives each reader SECONDS (60 if not
said). An input that breaks a law is kept in the folder, beside a text that tells the law;
``python -m tests.fuzz --again FILE`` tries such an input once more. It needs the extra `fuzz`.
"""

import argparse
import os
import subprocess
import sys
import tempfile
from contextlib import suppress
from importlib.util import find_spec
from pathlib import Path

from tests.fuzz.table import HEAD, Run, read_run
from tests.fuzz.targets import TARGETS
from tests.memory import in_memory

PATIENCE = 120
"""Seconds after its time in which a run makes its seeds and comes to its end."""


def fuzz(name: str, seconds: int, folder: Path) -> Run:
    """Fuzz one reader in a process of its own, as the fuzzer ends its process."""
    report = folder / f"report-{name}.log"
    command = [sys.executable, "-m", "tests.fuzz.worker", name, str(seconds), str(folder)]
    with report.open("wb") as log, tempfile.TemporaryDirectory(dir=in_memory()) as scratch:
        places = {**os.environ, "TMPDIR": scratch}
        with suppress(subprocess.TimeoutExpired):
            subprocess.run(
                command, stdout=log, stderr=log, env=places, timeout=seconds + PATIENCE, check=False
            )
    return read_run(name, report.read_text(encoding="utf-8", errors="replace"), folder)


def again(file: Path) -> None:
    """Give a reader an input that was kept; what it finds is raised."""
    TARGETS[file.name.split("-")[0]].check(file.read_bytes())
    print("No law is broken.")


def main(names: list[str], seconds: int, folder: Path) -> int:
    """Fuzz readers and print the table; return how many findings there are."""
    print(HEAD)
    findings = 0
    for name in names:
        run = fuzz(name, seconds, folder)
        findings += run.count
        print(run.row, flush=True)
        for path in run.findings:
            print(f"  python -m tests.fuzz --again {path}")
        if not run.has_ended:
            print(f"  it ended before its time: {folder / f'report-{name}.log'}")
    return findings


def _asked() -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python -m tests.fuzz", description=__doc__)
    parser.add_argument("seconds", nargs="?", type=int, default=60)
    parser.add_argument("parser", nargs="*", help=f"any of: {', '.join(TARGETS)}")
    parser.add_argument("--out", type=Path, help="folder for the findings")
    parser.add_argument("--again", type=Path, metavar="FILE", help="an input to try once more")
    asked = parser.parse_args()
    if not asked.again and find_spec("atheris") is None:
        parser.error("The fuzzer is not installed: pip install -e '.[test,fuzz]'.")
    if unknown := [name for name in asked.parser if name not in TARGETS]:
        parser.error(f"There is no parser {unknown[0]}; there are: {', '.join(TARGETS)}.")
    return asked


if __name__ == "__main__":
    asked = _asked()
    if asked.again:
        again(asked.again)
    else:
        out = asked.out or Path(tempfile.mkdtemp(prefix="fuzz-"))
        out.mkdir(parents=True, exist_ok=asked.out is None)
        sys.exit(bool(main(asked.parser or list(TARGETS), asked.seconds, out)))
