"""What is bought, and whose book it is, in words.

Guarantees: all that was recorded is told, in the order in which a maker would say it.
"""

from ledger.domain.entries.choices import FoodGrade
from ledger.domain.entries.evidence import Forget
from ledger.domain.entries.house import Article, House, Party, Person
from ledger.domain.entries.masters import Formula, Material
from ledger.domain.entries.receipt import Receipt
from ledger.domain.masters.articles import product_and_size
from ledger.domain.masters.formulas import version_of
from reports.kit.format import money, plural, scaled, tidy
from reports.words.entries.parts import Parts, at, before


def house(facts: House) -> Parts:
    """Return what is told of the house."""
    return (
        facts.name,
        facts.address,
        facts.country,
        f"money in {facts.currency}",
        f"clock of {facts.time_zone}",
        f"{facts.fluid_ounce} fluid ounces",
        before("telephone", facts.phone),
        f"records kept {plural(facts.keep_months, 'month')}" if facts.keep_months else None,
        f"an hour of work {money(facts.hour_minor, facts.currency, facts.hour_digits)}"
        if facts.hour_minor is not None
        else None,
        before("instruments off by", facts.doubts),
        before("pages at", facts.web),
        before("GLN", facts.gln),
        before("GS1 Company Prefix", facts.company_prefix),
        *map(article_words, facts.articles),
    )


def article_words(article: Article) -> str:
    """Return an article with its number.

    >>> article_words(Article("Orange syrup", "09521234543213"))
    'Orange syrup, GTIN 09521234543213'
    """
    return f"{product_and_size(article.product, article.size)}, GTIN {article.gtin}"


def person(facts: Person) -> Parts:
    """Return what is told of a person."""
    is_known = facts.name not in ("", facts.initials)
    return f"{facts.initials} is {facts.name}" if is_known else facts.initials, facts.role


def party(facts: Party) -> Parts:
    """Return what is told of a supplier or a customer."""
    is_known = facts.code and facts.name not in ("", facts.code)
    name = f"{facts.code} is {facts.name}" if is_known else facts.code or facts.name
    return name, facts.phone, facts.email, facts.address, facts.words, before("GLN", facts.gln)


def forget(facts: Forget) -> Parts:
    """Return what is told of somebody who is forgotten."""
    erased = [f"{named.entry}" for named in facts.entries if not named.is_kept]
    kept = [f"{named.entry}" for named in facts.entries if named.is_kept]
    return (
        before("party", facts.party),
        before("person", facts.person),
        f"details erased of {_numbered(erased)}" if erased else None,
        f"the name stays in the text of {_numbered(kept)}" if kept else None,
    )


def _numbered(entries: list[str]) -> str:
    *first, last = entries
    return f"entries {', '.join(first)} and {last}" if first else f"entry {last}"


def material(facts: Material) -> Parts:
    """Return what is told of a material."""
    density, abv = facts.density_mg_per_l, facts.abv_mpct
    return (
        f"{facts.code} is {facts.name}",
        str(facts.sort),
        facts.how_obtained,
        scaled(density, 1_000_000, "g/mL") if density else None,
        at(facts.density_temp_mdegc),
        scaled(abv, 1000, "% vol") if abv is not None else None,
        None if facts.food_grade is FoodGrade.UNKNOWN else f"food grade {facts.food_grade}",
        before("allergens", facts.allergens),
        before("on ingredient lists", facts.ingredient_name),
        *(f"in {told.language} {told.name}" for told in facts.names),
        before("additive", facts.additive),
        before("100 g hold", facts.nutrition),
        *(f"{c.substance} {scaled(c.fraction_ppm, 10_000, '%')}" for c in facts.constituents),
        before("caution", facts.caution),
    )


def formula(facts: Formula) -> Parts:
    """Return what is told of a version of a formula."""
    return (
        f"{version_of(facts)} for {facts.product}",
        f"basis {tidy(facts.basis.written)}",
        f"dosed {tidy(facts.dose.written)} into {tidy(facts.dose_into.written)} of syrup"
        if facts.dose and facts.dose_into
        else None,
        f"{plural(len(facts.lines), 'line')} and {plural(len(facts.steps), 'step')}",
    )


def receipt(facts: Receipt, currency: str = "") -> Parts:
    """Return what is told of a delivery, its money in a currency where that is known."""
    return (
        f"{tidy(facts.amount.written)} of {facts.material}",
        before("from", facts.supplier),
        before("their lot", facts.supplier_lot),
        f"cost {money(facts.cost_minor, currency, facts.cost_digits)}"
        if facts.cost_minor is not None
        else None,
        before("best before", facts.best_before),
        before("certificate", facts.certificate),
        facts.certificate_sha256 and f"its file {facts.certificate_sha256[:12]}…",
        scaled(facts.abv_mpct, 1000, "% vol") if facts.abv_mpct is not None else None,
        scaled(facts.density_mg_per_l, 1_000_000, "g/mL") if facts.density_mg_per_l else None,
        before("food grade", facts.food_grade),
        f"of it duty {money(facts.duty_minor, currency, facts.cost_digits)}"
        if facts.duty_minor
        else None,
        before("document", facts.document),
    )
