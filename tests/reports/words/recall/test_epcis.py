"""What is said beside a file of events."""

from reports.epcis.document import Exported
from reports.words.recall import epcis as module
from reports.words.recall.epcis import epcis_lines
from tests.kept.said import check_said

MADE = Exported(
    content=b"",
    objects=1,
    transformations=0,
    cases=2,
    mistaken=1,
    rough=2,
    articles=("Lemon syrup, 250 mL", "Orange syrup, 250 mL"),
    web="https://example.com/lots",
)


def test_what_is_wrong_and_rough_in_it_is_said_and_how_lots_are_named() -> None:
    assert epcis_lines(MADE, "events.jsonld") == (
        "3 events of EPCIS 2.0 in events.jsonld: 1 of goods, 0 of what was made or filled of what, "
        "2 of cases.",
        "Told wrongly at first, and declared so in it: 1 event.",
        "Not timed to the minute, and marked so in it: 2 events; a day alone stands as noon.",
        "Named by article and lot (GS1 Digital Link): Lemon syrup, 250 mL; Orange syrup, 250 mL.",
        "All other lots are named by addresses below https://example.com/lots.",
        "What your batches were made of is in it, and the names of those you deal with.",
    )


def test_a_file_in_which_no_article_has_a_number_says_so() -> None:
    bare = Exported(b"", 0, 0, 0, 0, 0, (), "https://example.com/lots")
    assert epcis_lines(bare, "none.jsonld") == (
        "0 events of EPCIS 2.0 in none.jsonld: 0 of goods, 0 of what was made or filled of what.",
        "All lots are named by addresses below https://example.com/lots; none by the number of an "
        "article.",
        'Where GS1 gave you such numbers: pottle house --gtin "WHAT=NUMBER"',
        "What your batches were made of is in it, and the names of those you deal with.",
    )


def test_what_is_said_of_every_field_alone_is_the_kept_one() -> None:
    check_said(module)
