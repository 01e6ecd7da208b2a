"""The command `label`: print a sheet of labels, or record what became of them."""

from pathlib import Path
from typing import Annotated

import typer

from cli.kit.call import Call, writes
from cli.kit.complete import complete_lot
from cli.kit.options import Force, Text
from cli.kit.parsing import Verb
from cli.kit.schema import Kinds
from ledger.errors import InputError


def label(
    call: Call,
    lot: Annotated[
        Text,
        typer.Argument(
            help="Code of the lot, or its ending; . for the lot in hand.",
            autocompletion=complete_lot,
        ),
    ] = None,
    out: Annotated[Path | None, typer.Option("--out", help="PDF file to write.")] = None,
    count: Annotated[
        int | None, typer.Option(help="How many; default one a bottle, one specimen.")
    ] = None,
    used: Annotated[Text, typer.Option(help="How many went on bottles.")] = None,
    spoiled: Annotated[Text, typer.Option(help="How many were spoiled and destroyed.")] = None,
    stock: Annotated[
        Text,
        typer.Option(help="Lot of blank labels they are printed on.", autocompletion=complete_lot),
    ] = None,
    specimen: Annotated[
        bool,
        typer.Option("--specimen", help="For the record, with SPECIMEN across; for no bottle."),
    ] = False,
    nutrition: Annotated[
        bool, typer.Option("--nutrition", help="Print the nutrition too, where it fits.")
    ] = False,
    language: Annotated[
        Text, typer.Option(help="Of its fixed words: en, de, fr, es, it or nl; default en.")
    ] = None,
    link: Annotated[
        Text, typer.Option(metavar="URL", help="Address in its symbol, with {lot} for the lot.")
    ] = None,
    kind: Annotated[
        str,
        typer.Option(
            help="bottle, received, vessel, sample, case, hold, reject or flammable; all but "
            "bottle record nothing."
        ),
    ] = "bottle",
    also: Annotated[
        list[str] | None,
        typer.Option(metavar="LOT", help="A further lot on the sheet."),
    ] = None,
    gtin: Annotated[
        Text, typer.Option(help="Number of the article, for its symbol or a case.")
    ] = None,
    case: Annotated[
        list[int] | None,
        typer.Option(
            "--case", metavar="N", help="Only this case of those told of; with --kind case."
        ),
    ] = None,
    layout: Annotated[
        Text, typer.Option(help="Where labels stand; default 2x6, or letter-2x5.")
    ] = None,
    layouts: Annotated[
        Path | None, typer.Option(metavar="FILE", help="File with layouts of your own.")
    ] = None,
    start_at: Annotated[
        int, typer.Option(metavar="N", help="First label that is free on a used sheet.")
    ] = 1,
    dpi: Annotated[
        int | None, typer.Option(help="Dots of the printer, 203, 300 or 600; default its layout's.")
    ] = None,
    panels: Annotated[
        int | None,
        typer.Option(help="1, or 2: front and back as neighbours; default its layout's."),
    ] = None,
    calibrate: Annotated[
        bool, typer.Option("--calibrate", help="Print only the frames of the layout.")
    ] = False,
    force: Force = False,
) -> None:
    """Print a sheet of bottle labels, or record what became of them."""
    from cli.screens.goods.label import Asked, Fate, print_labels
    from cli.screens.goods.label_said import check_alone, check_cases, check_together, say_labels
    from ledger.service.goods.label import labels as verb

    if calibrate or kind != "bottle":
        given = {"--used": used, "--spoiled": spoiled, "--stock": stock, "--specimen": specimen}
        words = {"--nutrition": nutrition, "--language": language}
        check_alone({**given, **words, "--panels": panels}, kind)
        from cli.screens.goods import tags

        chosen = tags.chosen_layout(call.book(), layout, layouts, dpi)
        place = tags.Place(chosen, start_at)
        if calibrate:
            tags.print_calibration(call, _needed(out), place.layout, force=force)
            return
        lots = [_named(lot), *(also or [])]
        if also:
            check_together({"--case": case})
        if kind != "case" or gtin:
            check_cases(case)
        place_of_sheet = _needed(out)
        tags.print_tags(
            call,
            lots,
            place_of_sheet,
            kind,
            count,
            place=place,
            gtin=gtin,
            cases=case or (),
            force=force,
        )
        return
    check_cases(case)
    lots = [_named(lot), *(also or [])]
    if also:
        check_together({"--used": used, "--spoiled": spoiled, "--gtin": gtin})
    if out is None:
        if used is None and spoiled is None:
            raise InputError(
                "Nothing was said to print or to record.",
                "Say where the sheet goes with --out, or how many labels were used with --used.",
            )
        book = call.book()
        done = verb(book, call.how(), lot=lots[0], printed="0", used=used, spoiled=spoiled)
        say_labels(call, book, [done])
        return
    from cli.screens.goods.tags import chosen_layout

    book, fate = call.book(), Fate(used, spoiled, stock)
    chosen = chosen_layout(book, layout, layouts, dpi, panels)
    asked = Asked(specimen, nutrition, language, link, gtin, chosen, start_at)
    sheet = print_labels(book, call.how(), lots, out, count, fate=fate, asked=asked, force=force)
    say_labels(call, book, sheet.done, sheet)


def _named(lot: str | None) -> str:
    if lot is None:
        raise InputError("Labels are of a lot, and none is named.", "Name its lot.")
    return lot


def _needed(out: Path | None) -> Path:
    if out is None:
        raise InputError("Nothing was said to print.", "Say where the sheet goes with --out.")
    return out


def answers() -> Kinds:
    """Return what the command answers."""
    from reports.json.goods.label import LabelAnswer
    from reports.json.kit.answer import File

    return (LabelAnswer, File)


def register(app: typer.Typer) -> None:
    """Add the command to the front door."""
    app.command(cls=Verb)(writes(label, answers))
