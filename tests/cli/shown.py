"""What commands show, whole: each said with all of its options, for a maker and for machines.

Guarantees: all that is printed and complained of stands there, the exit code, and of files that are
text what is in them. Refuses: the sums of the seal, which are others each time, and what is drawn
on paper, which `tests/golden/ink` keeps.
"""

import re
from collections.abc import Iterator
from pathlib import Path

from tests.cli.shell import Shell
from tests.kept.golden import check_golden

TEXTS = (".csv", ".json", ".toml", ".html")
OTHER_EACH_TIME = (
    (r"[0-9a-f]{16,}|(?:[0-9a-f]{4,8} ){3,}[0-9a-f]{4,8}|\b[0-9a-f]{8}\b", "SUM"),
    (r"^ *\d+ +\d  \d{3}-[0-9A-Z]  pore .*", "JAR"),
    (r"(took_ms\": |took )[\d.]+", r"\1LONG"),
)
SHOWN: dict[str, tuple[str, ...]] = {
    "add": (
        "add {syrup} {water} 500mL --temp 18 --took 5min --as top-up --json",
        "add {essence} {oil} 5mL --because more",
    ),
    "answer": (
        "answer 38 explained --told-by AB --told today --words 'It is the peel.'",
        "answer 38 replaced --close --because absent --json",
    ),
    "backup": ("backup . --json",),
    "bottle": (
        "bottle {essence} 2 x 50mL --drawn 110mL --best-before 2027-06-30 --labour 9min",
        "bottle {essence} 2 x 50mL --json",
    ),
    "case": ("case {packed} 1 x 2", "case {packed} 1 x 2 --json"),
    "chart": ("chart", "chart essence", "chart essence --out chart.pdf", "chart essence --json"),
    "check": ("check {essence} the balance", "check {essence} the sum --entry 18 --json"),
    "clean": ("clean Demijohn 2 --how steam --held rum", "clean Pot 1 --how lye --json"),
    "compare": (
        "start --product P --kind syrup --target 1L --trial pores --factor pore=5",
        "start --product P --kind syrup --target 1L --trial pores --factor pore=20",
        "compare pores",
        "compare pores --csv pores.csv --out pores.pdf",
        "compare pores --json",
    ),
    "complain": (
        "complain {packed} ring --from market --opened Monday --stored warm --mixed soda",
        "complain {packed} ring --json",
    ),
    "complaints": ("complaints", "complaints --open --csv c.csv", "complaints {packed} --json"),
    "contact": (
        "recall {oil} --because haze",
        "contact {oil} 'Bridge Street Stall' --still 2 --json",
    ),
    "correct": ("correct 18 --set amount=31mL --because misread", "correct 18 --because x"),
    "cost": (
        "cost {packed} --hour 20 --margin 60 --glass 200mL --pour 1:5",
        "cost {packed} --out cost.pdf",
        "cost {oil} --json",
    ),
    "count": ("count {sugar} 22.6kg --because spilt", "count {sugar} 22.6kg --json"),
    "decant": ("decant {essence} 390mL --json", "decant {essence} 300mL --because again"),
    "dilute": ("dilute 96.3% 80% 1L --temp 25C", "dilute 96.3% 80% 1L --json"),
    "due": ("due", "due --all", "due --csv due.csv", "due --json"),
    "equipment": ("equipment 'Scale 1' set to zero --json", "equipment 'Scale 1' checked"),
    "export": (
        "export book.jsonl",
        "export --csv tables",
        "export other.jsonl --json",
        "export both.jsonl --epcis events.json",
        "export book.jsonl",
    ),
    "filter": (
        "filter {essence} --medium paper --pore 5 --in 400mL --out 390mL --cake same --json",
        "filter {essence} --medium paper --out 380mL --because again",
    ),
    "finish": ("finish {essence} 400mL --json", "finish {essence} 390mL --because again"),
    "foretell": ("foretell {essence}", "foretell {essence} --json", "foretell --score"),
    "forget": (
        "answer 38 explained --close --because absent",
        "forget 'Bridge Street Stall' --because 'asked for it' --yes --json",
    ),
    "guide": ("guide", "guide --json"),
    "help": ("help add --json", "help options"),
    "hold": ("hold {packed} --because ring", "hold {packed} --because ring --json"),
    "house": (
        "house",
        "house --address '1 Quay' --phone 555 --country IE --hour 20",
        "house --json",
    ),
    "import": ("export book.jsonl", "import --book book.jsonl --ledger new.db"),
    "init": ("init --house Other --currency EUR --time-zone UTC --ledger other.db --json",),
    "journal": (
        "journal --last 3",
        "journal {essence} --last 2 --json",
        "journal --last 2 --csv journal.csv",
        "journal --entry 18",
    ),
    "label": (
        "label {packed} --out more.pdf --count 3",
        "label {packed} --used 2 --spoiled 1",
        "label {packed} --out again.pdf --json",
        "label {packed} --kind case --count 0 --out none.pdf",
        "label {packed} --kind case --count 1 --out one.pdf",
    ),
    "limits": ("limits eu-safrole", "limits --place EU", "limits eu-safrole --value 2 --json"),
    "list": (
        "list sales",
        "list receipts",
        "list cleanings",
        "list sales --csv sales.csv",
        "list receipts --json",
    ),
    "look": (
        "look {essence} bright --ntu 0.4 --of as-poured --dilution 1:7 --age 24h --temp 20 "
        "--instrument M1 --zeroed-on water --flag ring --words fine",
        "look {syrup} clear --json",
    ),
    "lot": ("lot {essence}", "lot {packed}", "lot {oil} --json"),
    "makeup": ("makeup {essence} 500mL --with {spirit} --json",),
    "material": (
        "material list",
        "material add acid --kind acid --name 'Citric acid' --allergens none",
        "material change acid --name 'Acid of lemons' --json",
        "material list --json",
    ),
    "measure": ("measure {essence} abv 85.0 --temp 20 --json", "measure {essence} brix 61"),
    "note": ("note {essence} Good.", "note {essence} Better. --json"),
    "packet": ("packet {packed} --out packet.pdf", "packet {packed} --out p.pdf --json"),
    "page": ("page {packed} --out page.html", "page --all --json"),
    "party": (
        "party add Inn --phone 1 --email a@b.example --address '1 Q' --words 'ask Mo'",
        "party list",
        "party list --json",
    ),
    "person": ("person add CD 'Cleo Dunn' --role taster", "person list", "person list --json"),
    "prove": (
        "prove {essence} --out proof.txt",
        "prove --check proof.txt",
        "prove {oil} --out p.txt --json",
    ),
    "recall": ("recall {oil} --drill", "recall {oil} --because haze --out pack"),
    "receive": (
        "receive water 10L --from Tap --their-lot 7 --cost 1.20 --best-before 2099-01-01",
        "receive water 10L --json",
    ),
    "record": ("record {essence} --out record.pdf", "record {packed} --out r.pdf --json"),
    "reject": ("reject {packed} --because ring", "reject {packed} --because ring --json"),
    "release": ("release {packed} --because wiped --anyway", "release {packed} --json"),
    "rest": (
        "rest {essence} --for chill --temp -18 --vessel 'Demijohn 2'",
        "rest {essence} --end --shaken 3",
        "rest {essence} --for settle --json",
    ),
    "restore": ("export book.jsonl", "restore book.jsonl --to back.db"),
    "rinse": ("rinse {essence} --with {spirit} --in 20mL --out 15mL --to apart --json",),
    "seal": ("seal --json",),
    "send": (
        "send {packed} 1 --as sample --to market --document DN-7",
        "send {packed} 1 --as returned --to 'Bridge Street Stall' --json",
    ),
    "serving": (
        "serving {packed} --glass 200mL --pour 1:5 --adult 70kg --child 15kg",
        "serving {essence} --dose 60mL",
        "serving {packed} --out card.pdf",
    ),
    "sheet": ("sheet {essence}", "sheet {essence} --out sheet.pdf", "sheet {essence} --json"),
    "start": (
        "start --product Lemon --kind syrup --target 1L --vessel 'Pot 1' --code LEM-1",
        "start --product Lemon --kind syrup --target 1L --json",
    ),
    "stock": (
        "stock",
        "stock --all",
        "stock --by-date",
        "stock --value --of spirit",
        "stock --low 10L",
        "stock --low 10L --of water --json",
        "stock --spirit",
        "stock --value --csv stock.csv",
    ),
    "strength": ("strength 96.3% 1L --temp 25C", "strength 96.3% 1L --temp 25C --json"),
    "strike": ("strike 38 --because mistake", "strike 37 --because mistake --json"),
    "suspects": ("suspects {packed}", "suspects --complaints --explain", "suspects --json"),
    "syrup": ("syrup 3:2 --by volume", "syrup 65Bx --read-at 28C --kept-at 4C --json"),
    "trace": (
        "trace {oil} --forward --depth 1",
        "trace {packed} --back",
        "trace {packed} --only oil",
        "trace {packed} --only gum",
        "trace {oil} --csv trace.csv --out trace.pdf",
        "trace {oil} --out other.pdf --json",
    ),
    "trial": (
        "trial plan pores --try pore=5/20 --out plan.pdf",
        "trial sheet pores --out pores.pdf",
        "trial prove pores",
    ),
    "upgrade": ("upgrade", "upgrade --json"),
    "verify": ("verify", "verify --json"),
}
"""For each command what is said to it, one after the other on one book."""


def check_shown(name: str, shell: Shell) -> None:
    """Fail unless what a command shows is what is kept."""
    lines = (line for command in SHOWN[name] for line in _of(command, shell))
    check_golden(f"cli/shown/{name}.txt", "".join(f"{line}\n" for line in lines))


def _of(command: str, shell: Shell) -> Iterator[str]:
    before = _files()
    answer = shell.line(command)
    yield f"$ pottle {command}"
    yield from map(_masked, answer.lines)
    yield from (_masked(f"! {line}") for line in answer.complaints)
    if answer.exit_code:
        yield f"(exit code {answer.exit_code})"
    for path in sorted(_files() - before):
        if path.suffix != ".db":
            yield _masked(f"-- {path}")
        if path.suffix in TEXTS:
            yield from map(_masked, path.read_text(encoding="utf-8").splitlines())


def _files() -> set[Path]:
    return {path for path in Path().rglob("*") if path.is_file()}


def _masked(line: str) -> str:
    for pattern, told in OTHER_EACH_TIME:
        line = re.sub(pattern, told, line)
    return line
