"""One reader, fuzzed until its time is over: ``python -m tests.fuzz.worker NAME SECONDS FOLDER``.

Guarantees: every finding is kept once, in the folder, with the input that shows it; fuzzing goes on
after it. Refuses: to return; the fuzzer ends its process.
"""

import sys
from pathlib import Path
from random import Random

SECONDS_AN_INPUT = 10
MEGABYTES = 2048


def main(name: str, seconds: str, out: str) -> None:
    """Fuzz one reader."""
    import atheris  # an extra, which the suite does without

    with atheris.instrument_imports(include=["ledger", "reports", "tomllib"]):
        from ledger.service.copies.season_verbs import VERBS
        from tests.fuzz.findings import keeping
        from tests.fuzz.targets import TARGETS

        tuple(VERBS.values())  # which would be loaded when they are asked for, unseen
    target, folder = TARGETS[name], Path(out)
    corpus = folder / f"corpus-{name}"
    corpus.mkdir()
    for number, seed in enumerate(target.seeds()):
        (corpus / f"seed{number:03d}").write_bytes(seed)
    words = {"max_total_time": seconds, "max_len": target.longest, "timeout": SECONDS_AN_INPUT}
    words |= {"rss_limit_mb": MEGABYTES, "print_final_stats": 1, "verbosity": 1}
    words |= {"artifact_prefix": f"{folder / name}-"}
    flags = [f"-{word}={value}" for word, value in words.items()]
    mutate = target.mutate

    def change(data: bytes, most: int, seed: int) -> bytes:
        assert mutate is not None
        changed = mutate(bytes(data), Random(seed), lambda part: atheris.Mutate(part, most))
        return changed[:most]

    atheris.Setup(
        [sys.argv[0], *flags, str(corpus)],
        keeping(target.check, name, folder),
        **({"custom_mutator": change} if mutate else {}),
    )
    atheris.Fuzz()


if __name__ == "__main__":
    main(*sys.argv[1:])
