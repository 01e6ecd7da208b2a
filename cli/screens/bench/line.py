"""The grammar of a line at the bench: what a short line says, as the words of a command.

Guarantees: pure; a line becomes the words of exactly one command, which does it as ever. Refuses:
words that have no place in the line, with those that have one; nothing is guessed.
"""

import re
from collections.abc import Sequence

from cli.screens.bench.parts import Act, Bench, Line, Named, Pick, Plain, Usual
from cli.screens.bench.slots import GRADES, LASTS, READINGS, RESTS, VERBS, Slot
from cli.screens.bench.words import filled_slots, joined, parted, split, told, with_unit
from ledger.errors import InputError, did_you_mean

END = "end"
LEAVE = frozenset({"done", "quit", "exit", "bye"})
"""Words that end the session."""
HELP = frozenset({"help", "?"})
UNDO = frozenset({"undo", "u"})
AGAIN = "again"
"""The word that says of a line that the same was done twice."""
SHORTEST = 3
"""How many letters of a material's short name are a head of it at least."""
_NUMBER = re.compile(r"[-−]?[\d½¼¾][\d.,/½¼¾]*")
_ABOUT_THE_LOT = frozenset(
    {
        *("release", "reject", "hold", "check", "count", "label"),
        *("lot", "sheet", "trace", "record", "prove", "serving", "cost"),
    }
)
"""Commands that are about the lot in hand where no other is named."""


def read_line(text: str, bench: Bench) -> Line | None:
    """Return what a line says; None for a line that says nothing.

    Args:
        text: The line.
        bench: What it is read beside.

    Raises:
        InputError: It cannot be read.
    """
    text = " ".join(text.split())
    if not text or text.startswith("#"):
        return None
    head, _, rest = text.partition(" ")
    word = head.casefold()
    for words, what in ((UNDO, "undo"), (LEAVE, "done"), (HELP, "help")):
        if word in words and not rest:
            return Plain(what)
    if word == "note":
        return Act(("note", _lot(bench), "--", rest))
    if bench.source and _NUMBER.match(word):
        return _act("add", text, bench, bench.source)
    if head.isdecimal():
        return Pick(int(head), tuple(rest.split()))
    return _worded(word, head, rest, bench)


def _worded(word: str, head: str, rest: str, bench: Bench) -> Line:
    if word == "pottle":
        command, *words = split(rest) or [""]
        return Act((command, *_with_lot(command, words, bench)))
    if word == "rest" and rest.casefold().split()[:1] == [END]:
        word, rest = END, rest.partition(" ")[2]
    if word == END:
        return _act("rest", rest, bench, flags=("--end",))
    if word == "add" and rest:
        head, _, rest = rest.partition(" ")
        return _addition(head, rest, bench)
    if word == "start" and "--" in rest:
        return Act(("start", *split(rest)))
    if word in VERBS:
        return _act(word, rest, bench)
    for kinds, verb in ((GRADES, "look"), (READINGS, "measure"), (RESTS, "rest")):
        if word in kinds:
            return _act(verb, f"{word} {rest}", bench)
    material = material_of(word, bench)
    if material or word not in bench.commands:
        return _addition(head, rest, bench)
    plain, raw = parted(rest)
    return Act((word, *_with_lot(word, split(plain), bench), *raw))


def _with_lot(command: str, words: Sequence[str], bench: Bench) -> list[str]:
    """Return the words of a command, a dot being the lot in hand, which needs not be named."""
    told = [bench.lot if word == "." and bench.lot else word for word in words]
    is_bare = command in _ABOUT_THE_LOT and (not told or told[0].startswith("-"))
    return [bench.lot, *told] if is_bare and bench.lot else told


def _addition(head: str, rest: str, bench: Bench) -> Line:
    material = material_of(head.casefold(), bench)
    _check_word(head, material, bench)
    return _act("add", rest, bench, material or head) if rest else Named(head, material)


def _check_word(head: str, material: str | None, bench: Bench) -> None:
    """Refuse a first word that is near to something known, and no lot.

    Raises:
        InputError: It is.
    """
    if material or bench.unit_of(head) is not None or any(letter.isdigit() for letter in head):
        return
    known = [*VERBS, *GRADES, *READINGS, *RESTS, *bench.materials, *bench.commands]
    hint = did_you_mean(head, known)
    raise InputError(
        f'"{head}" is no act, grade, material or lot that the book knows.{hint}',
        "Write help to see the lines there are.",
    )


def material_of(word: str, bench: Bench) -> str | None:
    """Return the material that a word names: its short name, a part or the head of it, or its kind.

    What the formula of the lot in hand calls for comes before all others.

    Raises:
        InputError: Several do.

    >>> shelf = {"orange-oil": "oil", "clove-oil": "oil", "spirit": "ethanol"}
    >>> material_of("oil", Bench(materials=shelf, called=frozenset({"clove-oil"})))
    'clove-oil'
    """
    if word in bench.materials:
        return word
    named = [code for code in bench.materials if word in code.split("-")]
    found = named or [code for code, kind in bench.materials.items() if kind == word]
    if not found and len(word) >= SHORTEST:
        found = [code for code in bench.materials if code.startswith(word)]
    called = [code for code in found if code in bench.called]
    found = called or found
    if len(found) > 1:
        raise InputError(
            f'"{word}" could be {", ".join(found[:-1])} or {found[-1]}.', "Write which."
        )
    return found[0] if found else None


def _act(
    name: str, rest: str, bench: Bench, source: str | None = None, flags: Sequence[str] = ()
) -> Act:
    verb = VERBS[name]
    plain, written = parted(rest)
    raw = [*flags, *written]
    words = joined(plain.split())
    own = [word for word in words if word != AGAIN and not word.startswith("@")]
    filled = filled_slots(name, verb, own)
    notes, more = _filled_in(name, filled, raw, bench)
    unit = bench.unit_of(source) if source else None
    given = [source] if source else []
    for slot, value in filled:
        if not slot.option:
            given.append(with_unit(value, slot.unit if unit is None else unit))
    options = [*more, *(part for slot, value in filled for part in told(slot, value)), *raw]
    options += [part for word in words if word.startswith("@") for part in ("--at", word[1:])]
    return Act(
        words=(verb.command, *([] if name == "start" else [_lot(bench)]), *given, *options),
        notes=notes,
        ends_rest=verb.ends_rest and bench.is_resting and not flags,
        lasts=next((value for slot, value in filled if slot.option == LASTS), None),
        is_again=AGAIN in words,
    )


def _filled_in(
    name: str, filled: Sequence[tuple[Slot, str]], raw: Sequence[str], bench: Bench
) -> tuple[tuple[str, ...], list[str]]:
    """Return what a line leaves to the bench: a sentence each, and the options."""
    said = {slot.option for slot, _ in filled} | {word.partition("=")[0] for word in raw}
    match name:
        case "filter":
            return _as_usual(said, bench.usual)
        case "rest" if not said & {"--for", "--end"}:
            return (), ["--for", "macerate"]
        case "rinse" | "makeup" if "--with" not in said:
            to = [] if name == "makeup" or "--to" in said else ["--to", "batch"]
            return (), ["--with", _liquid(name, bench), *to]
        case "rinse" if "--to" not in said:
            return (), ["--to", "batch"]
        case _:
            return (), []


def _as_usual(said: set[str], usual: Usual) -> tuple[tuple[str, ...], list[str]]:
    told = {"--medium": usual.medium, "--pore": usual.pore, "--vacuum": usual.vacuum}
    ours = {option: value for option, value in told.items() if value and option not in said}
    options = [part for option, value in ours.items() for part in (option, value)]
    if "--vacuum" in ours and usual.is_absolute:
        options.append("--absolute")
    note = f"Filtered {usual.said}: {', '.join(map(_shown, ours, ours.values()))}."
    if "--medium" not in said | ours.keys():
        options += ["--medium", "unsaid"]
    return (note,) if ours else (), options


def _shown(option: str, value: str) -> str:
    units = {"--pore": " µm", "--vacuum": " kPa"}
    return f"{value}{units.get(option, '')}"


def _liquid(name: str, bench: Bench) -> str:
    if bench.liquid:
        return bench.liquid
    raise InputError(
        f"No spirit went into {_lot(bench)} that it could be {_DONE[name]} with.",
        f"Say with what: {VERBS[name].example} LOT",
    )


_DONE = {"rinse": "rinsed", "makeup": "made up"}


def _lot(bench: Bench) -> str:
    if bench.lot:
        return bench.lot
    raise InputError("There is no lot in hand.", "Write the code of one, or: start FORMULA VOLUME")
