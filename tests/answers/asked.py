"""What every book is asked: about itself, and about one lot of each sort and standing in it.

Guarantees: the story of rare things is asked everything, also for machines and on paper; the others
what only they can tell.
"""

from collections.abc import Iterator

from tests.cli.shell import Shell

OF_THE_BOOK = (
    *("house", "person list", "material list", "party list", "formula list", "limits", "due"),
    *("stock", "stock --value", "stock --by-date", "stock --low 1L", "stock --spirit"),
    *("journal --last 0", "journal --last 3", "seal", "verify"),
    *("suspects --explain", "suspects --complaints --explain"),
)
OF_A_LOT = (
    *("lot {lot}", "trace {lot}", "serving {lot} --explain", "recall {lot} --drill"),
    *("cost {lot} --hour 20 --margin 60", "sheet {lot}"),
)
ON_PAPER = (
    *("trace {lot} --csv trace.csv --out trace.pdf", "record {lot} --out record.pdf"),
    *("label {lot} --out labels.pdf --count 2", "sheet {lot} --out sheet.pdf"),
    "recall {lot} --drill --out drill",
)
OF_FORMULAS = ("formula show {code}", "formula scale {code} 777mL", "formula diff {code} 1 2")
OF_NO_BOOK = (
    *("dilute 96.3% 80% 1L --temp 25C", "dilute '190 proof' 40% 500g", "dilute 40% 80% 1L"),
    *(
        "strength '190 proof' '55 US gal' --temp 77F",
        "strength '94 % w/w'",
        "strength 40% 500g --temp 25C",
    ),
    *("syrup 3:2 --by volume --bulk '0.85 g/mL'", "syrup 65Bx --read-at 28C --kept-at 4C"),
    *("syrup '850 g/L'", "syrup '1.33 SG'", "syrup 1:1 --by weight", "syrup 95Bx", "guide"),
    *("help rest", "help options"),
    *("limits eu-safrole", "limits --place EU", "compare 'two jars'", "suspects"),
)
OTHER_WAYS = (
    *("trace {packed} --back", "trace {oil} --forward --depth 1", "trace {packed} --only oil"),
    "serving {syrup} --glass 300mL --pour 1:5 --adult 70kg --child 15kg --explain",
    *("serving {essence} --dose 60mL", "cost {packed}", "cost {syrup} --glass 300mL"),
    *("stock --all", "stock --of spirit", "stock --spirit --from 2026-03-03 --to 2026-03-05"),
    *("suspects {syrup} --explain", "suspects --worse-than clear", "journal {essence} --last 4"),
    *("verify --since seal.txt", "prove --check proof.json", "prove --check proof.json --json"),
)
WRONG = (
    *("serving NO-001-X", "lot NO-001-X", "trace {oil} --only gold", "record {oil} --out seal.txt"),
    *("serving {syrup} --glass tall --pour 7 --dose some --adult x --child y", "serving {caps}"),
    *("cost {packed} --hour dear --margin 100", "cost {packed} --glass none", "stock --low few"),
    *("stock --of gold", "stock --spirit --from soon --to late", "suspects --worse-than muddy"),
    *("suspects --since then", "suspects NO-001-X", "compare nothing", "journal --entry 9999"),
    *("dilute strong 40% 1L", "dilute 96% 40% much", "dilute 96% 120% 1L --temp hot"),
    *("syrup sweet", "syrup 3:2 --by weighing", "syrup 3:2 --by volume --bulk heavy"),
    *("syrup 65Bx --read-at hot --kept-at cold", "guide nothing", "limits --place Mars"),
    *("help filtr", "recall NO-001-X --drill"),
    *("prove NO-001-X", "prove --check missing.json", "verify --seal nonsense", "sheet {oil}"),
    *("verify --since missing.txt", "backup seal.txt", "restore missing.jsonl --to other.db"),
    *("import --book missing.jsonl --ledger other.db", "export book.jsonl", "label {oil}"),
    *("label {packed} --out l.pdf --count 0", "record {essence}", "nonsense", "add"),
    *("formula show nothing", "formula scale orange-essence much", "formula diff nothing 1 2"),
)
OF_SOME = (
    *("lot {lot}", "trace {lot}", "cost {lot} --hour 20 --margin 60", "serving {lot} --explain"),
    "recall {lot} --drill",
)


def asked(name: str, shell: Shell) -> Iterator[str]:
    """Yield the commands for a book."""
    if name == "story":
        yield from _all(shell)
        return
    lots = _lots(shell)
    yield from OF_THE_BOOK if name == "season" else OF_THE_BOOK[-8:]
    for lot in lots:
        for command in OF_SOME if not name.startswith("version") else OF_SOME[:1]:
            yield command.format(lot=lot)
    if name in ("season", "batch", "open batch"):
        made = next(lot for lot in lots if not lot.startswith(("B", "S")))
        yield from (command.format(lot=made) for command in (*ON_PAPER, "sheet {lot} --json"))
    if name in ("season", "trial"):
        trial = "orange rest" if name == "season" else "rests"
        yield from (f"compare '{trial}'{way}" for way in ("", " --json", " --out trial.pdf"))
        yield from ("suspects --explain --json", "suspects --complaints --json")
    if name == "season":
        yield from ("compare 'cloudy orange'", "trial prove 'cloudy orange'")
        yield from ("chart", "chart 'Orange essence'", "chart 'Orange syrup' --json")
        yield from ("foretell --score", "foretell --score --json", "due --all", "list sales")
    if name != "trial":
        yield from (command.format(code="orange-essence") for command in OF_FORMULAS)


def _all(shell: Shell) -> Iterator[str]:
    for command in (*OF_THE_BOOK, *OF_NO_BOOK):
        yield from (command, f"{command} --json")
    for command in OF_FORMULAS[:2]:
        yield from (command.format(code="orange-essence"),)
        yield from (f"{command.format(code='orange-essence')} --json",)
    lots = _lots(shell)
    for lot in lots:
        yield from (command.format(lot=lot) for command in (*OF_A_LOT, *ON_PAPER))
    for code in ("oil", "essence", "packed"):
        yield from (f"{command.format(lot=shell.codes[code])} --json" for command in OF_A_LOT)
    yield from (command.format(**shell.codes) for command in (*OTHER_WAYS, *WRONG))
    yield from ("stock --spirit --json", "cost NO-001-X --json")


def _lots(shell: Shell) -> list[str]:
    """Return the first lot of each sort and standing."""
    lots = shell.line("stock --all --json").json
    found = {(lot["lot_type"], lot["status"]): lot["code"] for lot in reversed(lots)}
    return list(found.values())
