"""A map that the headings propose takes a season in once a few lines are put right."""

from pathlib import Path

import pytest

from ledger.domain.tables.days import DayOrder
from ledger.domain.tables.grid import Line, Table
from ledger.service.copies.intake.column_map import read_map
from ledger.service.copies.intake.map_proposal import _order, proposed_map
from ledger.service.copies.intake.table_files import read_tables
from ledger.service.copies.intake.take_in import Asked, take_in
from ledger.service.desk.book import How
from ledger.service.glass.cost import cost
from ledger.service.lots.trace import trace
from tests.keeper import Keeper
from tests.kept.golden import check_golden

GERMAN = Path(__file__).parent / "german_season"
SPANISH_SEASON = Path(__file__).parent / "spanish_season"


def test_a_german_heading_proposes_a_map_that_takes_its_batches_in(sqlite_keeper: Keeper) -> None:
    text = proposed_map(read_tables(GERMAN)[0])
    assert 'dates = "dmy"' in text
    assert '{ do = "add", source = "{Öl-Los}", amount = "{Öl ml} mL" },' in text
    assert "# not used: Frei\n" in text
    mended = text.replace("[words]\n", '[words]\n"Papier" = "paper"\n')
    told = take_in(
        sqlite_keeper.book,
        How("AB", because="released on paper"),
        GERMAN,
        Asked(read_map("proposed", mended)),
    )
    assert (told.found, told.rows, told.is_recorded) == ((), 8, True)


def test_a_column_that_is_wanted_and_not_there_is_left_to_be_named(tmp_path: Path) -> None:
    file = tmp_path / "made.csv"
    file.write_text("Batch,Started,Product,Oil mL\nO1,2026-01-05,Orange,30\n", encoding="utf-8")
    text = proposed_map(read_tables(file)[0])
    assert 'target = "{COLUMN}"' in text
    assert '# dates = "dmy", "mdy" or "ymd": say which' in text


SPANISH = """Temporada 2025;;;;;;;;;;;;;;;;;;
Nº lote;Fecha;Producto;Previsto (ml);Lote aceite;Aceite (ml);Coste aceite (€);Lote alcohol;\
Alcohol (ml);Coste alcohol (€);Reposo hasta;Filtrado (ml);Aspecto;Obtenido (ml);Terminado;Botellas;\
Tamaño (ml);Cliente;Notas
2025/01;03/02/25;Esencia;500;AN-1;31,5;3,02;AL-7;465,0;55,80;06/02/25;470;claro;468,5;07/02/25;9;\
50;Bar Inventado;primera prueba
2025/02;13/02/25;Esencia;500;ALI-2;30;4,10;AL-7;470;56,40;17/02/25;475,5;turbio;472;18/02/25;;;;\
"olor; fuerte"
2025/03;01/03/25;Esencia;1.000;AN-1;62;5,95;AL-7;930;111,60;;;;;;;;;
Total;;;2.000;;123,5;;;;;;;;;;;;;
"""
"""An invented notebook whose rows tell what was drawn of each lot and what that cost."""


def test_a_spanish_notebook_comes_in_by_its_proposed_map_as_it_stands(
    sqlite_keeper: Keeper, tmp_path: Path
) -> None:
    file = tmp_path / "libro.csv"
    file.write_text(SPANISH.replace("\\\n", ""), encoding="utf-8")
    told = take_in(
        sqlite_keeper.book,
        How("AB", because="sold without a release on paper"),
        file,
        Asked(read_map("proposed", proposed_map(read_tables(file)[0]))),
    )
    assert (told.found, told.rows, told.is_recorded) == ((), 3, True)
    assert told.tables[0].said[-1] == "left out by the map: 1"
    # By hand: of AN-1 31.5 and 62 mL are told for 3.02 and 5.95, so a mL cost 8.97/93.5; of AL-7
    # 1,865 mL for 223.80. In 2025-01 are 31.5 × 8.97/93.5 + 465 × 223.80/1865 = 58.82.
    assert cost(sqlite_keeper.book, "2025-01").total_minor == round(
        31.5 * 897 / 93.5 + 465 * 22380 / 1865
    )
    ahead = {node.brief.code for node in trace(sqlite_keeper.book, "AN-1").nodes}
    assert ahead == {"AN-1", "2025-01", "2025-01-B", "2025-03"}


HEADINGS = {
    "inkoop": "Datum;Grondstof;Leverancier;Lot lev.;Hoeveelheid (ml);Prijs €;Onze code;THT\n"
    "2 mrt 2026;Sinaasappelolie;Verzonnen;VO-88;250,0;€ 42,50;OLIE 1;31-12-2027\n"
    "2 mrt 2026;Alcohol 95,6 %;Verzonnen;A-7;5.000;€ 110,00;SPR 1;\n"
    "3 mrt 2026;Wijngeest;Verzonnen;A-8;500;€ 11,00;SPR 2;\n",
    "partijen": "Partij;Begonnen;Soort;Olie;Olie ml;Alcohol;Alcohol ml;MgCO3 g;Helder?;NTU;"
    "Opbrengst ml;Klaar op;Flesjes;Klant\n"
    "SE/1;05-03-2026;Essence;OLIE 1;31,25;SPR 1;468,75;12,5;licht troebel;0,8;470;;4;Café\n",
    "lotes": "Lote;Início;Receita;Óleo ml;Álcool ml;Limpidez;Rendimento ml\n"
    "1;05/03/2026;Laranja;30;450;turvo;460\n",
    "batcher": "Batchnr;Startdato;Navn;Olie ml;Sprit ml;Klarhed;Udbytte ml;Bemærkning\n"
    "1;05-03-2026;Appelsin;30;450;mælket;460;\n",
    "szarze": "Nr partii;Data rozpoczęcia;Nazwa;Olejek ml;Spirytus ml;Wygląd;Otrzymano ml\n"
    "1;05.03.2026;Pomarańcza;30;450;mętny;460\n",
    "metingen": "Partij;Begonnen;Soort;Olie ml;Alcohol ml;NTU;Opbrengst ml\n"
    "1;05-03-2026;Essence;30;450;2,5;460\n",
    "zonder": "Partij;Begonnen;Soort;Olie ml;Alcohol ml;Opbrengst ml;Flesjes;Klant\n"
    "1;05-03-2026;Essence;30;450;460;4;Café\n",
}
"""Invented tables in Dutch, Portuguese, Danish and Polish, some of batches nobody looked at."""


def test_the_maps_that_headings_of_several_tongues_propose_are_the_kept_ones(
    tmp_path: Path,
) -> None:
    """German, Spanish and Dutch seasons, batches in three more tongues, sales in English."""
    file = tmp_path / "sales.csv"
    file.write_text(
        "Batch,Date,Customer,Bottles,Delivery note,Customer\nO1,2026-01-05,Inn,3,DN-1,Inn\n",
        encoding="utf-8",
    )
    others = [tmp_path / f"{name}.csv" for name in HEADINGS]
    for place in others:
        place.write_text(HEADINGS[place.stem], encoding="utf-8")
    places = (GERMAN, SPANISH_SEASON, file, *others)
    texts = [proposed_map(read_tables(place)[0]) for place in places]
    check_golden("proposed_maps.txt", "\n".join(texts))


@pytest.mark.parametrize(
    ("days", "order"),
    [
        (["13.01.2026"], DayOrder.DMY),
        (["01/13/26", "02/03/26"], DayOrder.MDY),
        (["02/03/26"], None),
        (["13.01.2026", "01/13/26"], None),
        (["2026-01-13"], None),
        (["about 13.01.2026", "x"], None),
        ([], None),
    ],
)
def test_the_order_of_days_is_the_only_one_in_which_all_can_be_read(
    days: list[str], order: DayOrder | None
) -> None:
    lines = tuple(Line(number, (day,)) for number, day in enumerate(days, 2))
    assert (
        _order([Table("t.csv", "t", ("Day",), ()), Table("u.csv", "u", ("Day",), lines)]) == order
    )
