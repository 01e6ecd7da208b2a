"""What the words of headings mean, whatever their accents, capitals, signs and units."""

import pytest

from ledger.service.copies.intake.heading_words import (
    LONGEST_NAME,
    MOST_POINTS,
    input_of,
    is_plain,
    kept_code,
    kept_name,
    kind_of,
    plain_unit,
    plain_words,
    quoted,
    short_name,
    templated,
)


@pytest.mark.parametrize(
    ("head", "bare", "whole"),
    [
        ("Öl (ml)", "ol", "ol ml"),
        ("Øl ML", "ol", "ol ml"),
        ("Łubin µg", "lubin ug", "lubin ug"),
        ("Đa æsken œuf", "da aesken oeuf", "da aesken oeuf"),
        ("Größe in cl", "grosse in", "grosse in cl"),
        ("Preis €", "preis", "preis eur"),
        ("ml", "ml", "ml"),
        ("% g", "%", "% g"),
        ("  ", "", ""),
    ],
)
def test_a_heading_is_bare_of_accents_and_signs_and_of_its_unit_but_for_a_unit_alone(
    head: str, bare: str, whole: str
) -> None:
    assert (plain_words(head), plain_words(head, with_unit=True)) == (bare, whole)


@pytest.mark.parametrize(
    ("head", "template"),
    [
        *((f"Menge {unit}", f"{{Menge {unit}}} {unit}") for unit in ("cL", "L", "g", "kg", "mg")),
        ("Menge (ML)", "{Menge (ML)} mL"),
        ("Zeit min.", "{Zeit min.} min"),
        ("Menge", "{Menge}"),
        ("ml", "{ml}"),
        ("Preis €", "{Preis €}"),
        ("g Zucker", "{g Zucker}"),
        ("", "{}"),
    ],
)
def test_a_column_is_read_with_the_unit_that_ends_its_heading(head: str, template: str) -> None:
    assert templated(head) == template


@pytest.mark.parametrize(
    ("amount", "plain"),
    [
        ("200 Stk.", "200 each"),
        ("1.250,5 Litros", "1.250,5 L"),
        ("−3mililitros", "−3 mL"),
        ("+4 GRAMM", "+4 g"),
        ("2 quilos", "2 kg"),
        ("2 mL", "2 mL"),
        ("Stk. 200", "Stk. 200"),
        ("2 dozen", "2 dozen"),
        ("12", "12"),
        ("", ""),
    ],
)
def test_a_unit_in_words_is_the_books_and_another_stays_as_it_is(amount: str, plain: str) -> None:
    assert plain_unit(amount) == plain


@pytest.mark.parametrize(
    ("head", "material"),
    [
        ("Öl ml", "oil"),
        ("Sprit-Los", "spirit"),
        ("Lot essence", "essence"),
        ("Zucker, Preis", "sugar"),
        ("Essence", None),
        ("Kunde", None),
        ("ml", None),
        ("Preis", None),
    ],
)
def test_a_heading_is_about_a_material_that_names_its_amount_its_lot_or_its_cost(
    head: str, material: str | None
) -> None:
    assert input_of(head) == material


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("Orangenöl", "oil"),
        ("Alcohol 96", "ethanol"),
        ("Weinsprit", "ethanol"),
        ("Magnesia", "clarifier"),
        ("Orange essence", "other"),
        ("Rohrzucker", "sugar"),
        ("Flasche 250", "bottle"),
        ("Kork", "closure"),
        ("Etiketten", "label"),
        ("Filterpapier", "filter"),
        # A whole word counts before the end of another.
        ("Orangenöl water", "water"),
        ("Stein", "KIND"),
        ("", "KIND"),
    ],
)
def test_a_material_is_of_the_kind_that_a_word_of_its_name_means(name: str, kind: str) -> None:
    assert kind_of(name) == kind


@pytest.mark.parametrize(
    ("text", "is_fit"),
    [
        ("Öl (ml)", True),
        ('the "fine" one', False),
        ("{x", False),
        ("x}", False),
        ("back\\slash", False),
        ("two\nlines", False),
        ("." * MOST_POINTS, True),
        ("." * (MOST_POINTS + 1), False),
        ("", False),
    ],
)
def test_a_heading_is_plain_that_can_stand_between_quotes_and_as_a_column(
    text: str, is_fit: bool
) -> None:
    assert is_plain(text) == is_fit
    assert quoted(text) == (f'"{text}"' if is_fit else "table")


def test_a_name_of_bare_letters_is_a_key_without_quotes() -> None:
    assert [quoted(name) for name in ("Chargen_2026-a", "Lose 2", "Öl")] == [
        *("Chargen_2026-a", '"Lose 2"', '"Öl"'),
    ]


def test_codes_and_short_names_keep_the_letters_that_the_book_has() -> None:
    assert [kept_code(text) for text in ("OR 23/01", "-Öl-7-", "orange-oil", "?")] == [
        *("OR-23-01", "Ol-7", "orange-oil", "?"),
    ]
    assert [kept_name(text) for text in ("Aceite (fino)", "Orange-oil", "Öl 96 %")] == [
        *("aceite-fino", "Orange-oil", "ol-96"),
    ]
    assert [short_name(text) for text in ("Orangenöl, süß", "%", "Spirit 96 %")] == [
        *("orangenol-suss", "material", "spirit-96"),
    ]
    long = "Zucker " * 9
    assert kept_name(long) == "zucker-zucker-zucker-zucker-zu"
    assert len(kept_name(long)) == LONGEST_NAME
    assert kept_name("a" * 29 + " b") == "a" * 29
