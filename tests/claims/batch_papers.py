"""A small book in which a batch goes from its formula to bottles sold, and all its papers in text.

Guarantees: the words are those that are printed; nothing is read from the book but through them.
"""

from pathlib import Path

from tests.cli.shell import Shell
from tests.formula_texts import line, orange, step, table
from tests.keeper import Keeper
from tests.path import receive_all
from tests.reports.pdf.readback import text_of

FORMULA = orange(
    "240mL",
    line("orange-oil", "15mL", tolerance="2%", overage="1%"),
    line("carb", "8g"),
    line("spirit", "220mL"),
    step("rest", rest_for="macerate", words="Macerate in the dark.", at_least="24h"),
    step("filter", words="Return the first runnings.", pore_max="25"),
    step("look", looked_at="neat", worst="clear"),
    step("finish"),
    step("bottle", words="Fill brown bottles of 250 mL."),
    step("look", looked_at="neat", age="7d"),
    table("keeping", storage="cool and dark", days=360, opened_days=180),
    abv_min="70%",
    abv_max="95%",
    label="Ingredients: ethanol, orange oil.",
    packaging="Brown glass of 50 mL, black cap with a cone, label of 90 by 44 mm.",
    prepared_by="AB",
    checked_by="CD",
    valid_from="2026-03-01",
)


def keep_batch(keeper: Keeper, folder: Path) -> None:
    """Make essence by a formula, with a second person's checks, a departure, rework and a sale."""
    codes = keeper.codes
    file = folder / "orange-essence.toml"
    file.write_text(FORMULA, encoding="utf-8")
    keeper.do("house", address="3 Pretend Lane", keep="24")
    for code, name, kind in (
        ("paper", "Filter paper, 20 µm", "filter"),
        ("blank", "Blank labels", "label"),
    ):
        keeper.do("material", code=code, name=name, kind=kind)
    keeper.do("person", initials="CD", name="Cleo Dunn")
    keeper.do("party", name="Bridge Street Stall", address="1 Bridge Street")
    keeper.do("formula", file=str(file))
    lots = receive_all(keeper)
    codes.update(oil=lots.oil, spirit=lots.spirit, carb=lots.carb, bottles=lots.bottles)
    codes["paper"] = keeper.opens("receive", material="paper", amount="100")
    codes["blank"] = keeper.opens("receive", material="blank", amount="200")
    codes["barred"] = keeper.opens(
        "receive", material="orange-oil", amount="1L", hold="yes", because="no papers yet"
    )
    keeper.do("judge", lot=codes["barred"], verdict="reject", because="smells of solvent")
    cleaned = keeper.do("clean", vessel="Demijohn 2", method="Hot water", last_held="Lemon essence")
    codes["cleaned"] = str(cleaned.seq)
    keeper.do("equipment", name="Scale 1", words="Set to zero with the 200 g weight.")
    codes["essence"] = _make(keeper)
    codes["packed"] = _pack(keeper)
    keeper.do("complain", lot=codes["packed"], symptom="cloudy", party="Bridge Street Stall")
    codes["rework"] = keeper.opens(
        "start", product="Orange essence, reworked", kind="rework", target="100mL"
    )
    keeper.do(
        "add",
        lot=codes["rework"],
        source=codes["essence"],
        amount="80mL",
        added_as="rework",
        because="hazy after all",
    )


def _make(keeper: Keeper) -> str:
    codes = keeper.codes
    code = keeper.opens("start", formula="orange-essence", target="480mL", vessel="Demijohn 2")
    oil = keeper.do(
        "add", lot=code, source=codes["oil"], amount="31mL", instrument="Scale 1",
        because="the cylinder ran over"
    )  # fmt: skip
    keeper.by = "CD"
    keeper.do("check", entry=str(oil.seq), words="read the cylinder")
    keeper.by = "AB"
    keeper.do("add", lot=code, source=codes["carb"], amount="16g", triturated="10min")
    keeper.do("add", lot=code, source=codes["spirit"], amount="440mL")
    keeper.do("rest", lot=code, purpose="macerate")
    keeper.clock.forward(days=2)
    keeper.do("rest", lot=code, ended="yes")
    keeper.do("rest", lot=code, purpose="warm", temp="30")
    keeper.do("rest", lot=code, ended="yes", temp="30")
    keeper.do("filter", lot=code, medium="paper", pore="20", volume_in="465mL", volume_out="440mL",
              paper=codes["paper"], wetted_with=codes["spirit"], first_runnings="20mL")  # fmt: skip
    keeper.do("measure", lot=code, what="abv", reading="88", instrument="Hydrometer 1")
    keeper.do("finish", lot=code, volume="440mL")
    keeper.do("look", lot=code, grade="bright", ntu="0.9")
    keeper.by = "CD"
    keeper.do("check", lot=code, words="the whole record was read")
    keeper.do("judge", lot=code, verdict="release")
    keeper.by = "AB"
    return code


def _pack(keeper: Keeper) -> str:
    codes = keeper.codes
    code = keeper.opens(
        "bottle", source=codes["essence"], pack="6 x 50mL", bottles=codes["bottles"]
    )
    keeper.do("labels", lot=code, printed="8", used="6", spoiled="2", stock=codes["blank"])
    keeper.do("judge", lot=code, verdict="release")
    keeper.do("send", lot=code, amount="1", moved_as="retained")
    keeper.do("send", lot=code, amount="1", moved_as="destroyed", witness="Edda Fell")
    keeper.do("send", lot=code, amount="3", party="Bridge Street Stall", document="DN-1")
    return code


def papers_of(keeper: Keeper, book: Path, folder: Path) -> dict[str, str]:
    """Return the words of every paper of the batch, each with its white space as one blank."""
    shell = Shell(book, codes=keeper.codes)
    shown = {
        "formula": "formula show orange-essence",
        "lot": "lot {essence}",
        "barred lot": "lot {barred}",
        "journal": "journal --last 99",
        "parties": "party list",
    }
    papers = {name: shell.line(command).out for name, command in shown.items()}
    printed = {
        "sheet": "sheet {essence}",
        "record": "record {essence}",
        "packed record": "record {packed}",
        "delivery record": "record {oil}",
        "rework record": "record {rework}",
        "labels": "label {packed}",
    }
    for name, command in printed.items():
        file = folder / f"{name}.pdf"
        answer = shell.line(f"{command} --out '{file}'")
        assert answer.exit_code == 0, answer.err
        papers[name] = text_of(file.read_bytes())
    return {name: " ".join(text.split()) for name, text in papers.items()}
