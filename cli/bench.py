"""Commands at the bench: receive, start, add, rest, filter, rinse, decant, look, measure, makeup,
note, finish.

Guarantees: amounts may be written without quotes (0.5 fl oz). Refuses: rules of their own.
"""

from typing import Annotated

import typer

from cli.call import Call, writes

Text = str | None
Lot = Annotated[str, typer.Argument(help="Code of the lot, or its ending; . for the lot in hand.")]
Amount = Annotated[
    list[str], typer.Argument(help="Amount with its unit, such as 30mL or 0.5 fl oz.")
]
Temp = Annotated[Text, typer.Option("--temp", help="Temperature of the liquid in °C.")]
Code = Annotated[Text, typer.Option("--code", help="The maker's own code for the new lot.")]


def _record(call: Call, verb: str, **words: str | None) -> None:
    from cli.out import recorded
    from ledger.service.verbs import VERBS

    book = call.book()
    recorded(call, book, VERBS[verb](book, call.how(), **words))


def receive(
    call: Call,
    material: Annotated[str, typer.Argument(help="Short name of the material.")],
    amount: Amount,
    supplier: Annotated[Text, typer.Option("--from", help="Who sent it.")] = None,
    their_lot: Annotated[Text, typer.Option(help="The supplier's lot.")] = None,
    cost: Annotated[Text, typer.Option(help="What it cost in all.")] = None,
    best_before: Annotated[Text, typer.Option(help="As 2027-06-30.")] = None,
    certificate: Annotated[Text, typer.Option(help="Reference of the certificate.")] = None,
    density: Annotated[Text, typer.Option(help="Density of this lot in g/mL.")] = None,
    abv: Annotated[Text, typer.Option(help="Strength of this lot in % vol.")] = None,
    food_grade: Annotated[Text, typer.Option(help="yes, no or unknown.")] = None,
    hold: Annotated[bool, typer.Option("--hold", help="Put it on hold at once.")] = False,
    code: Code = None,
) -> None:
    """Record a delivery; opens a lot."""
    _record(
        call,
        "receive",
        material=material,
        amount=" ".join(amount),
        supplier=supplier,
        supplier_lot=their_lot,
        cost=cost,
        best_before=best_before,
        certificate=certificate,
        density=density,
        abv=abv,
        food_grade=food_grade,
        hold="yes" if hold else None,
        code=code,
    )


def start(
    call: Call,
    formula: Annotated[Text, typer.Argument(help="Formula to follow, if there is one.")] = None,
    volume: Annotated[list[str] | None, typer.Argument(help="Target volume.")] = None,
    product: Annotated[Text, typer.Option(help="Name of what is made.")] = None,
    kind: Annotated[
        Text,
        typer.Option(
            help="essence, washed-essence, gum-emulsion, blend, macerate, base-syrup, syrup or "
            "rework."
        ),
    ] = None,
    target: Annotated[Text, typer.Option(help="Target volume.")] = None,
    pour: Annotated[Text, typer.Option(help="How a syrup is poured, such as 1:7.")] = None,
    best_before: Annotated[Text, typer.Option(help="As 2027-06-30.")] = None,
    vessel: Annotated[Text, typer.Option(help="What it is made in.")] = None,
    trial: Annotated[Text, typer.Option(help="Name of the trial it belongs to.")] = None,
    factor: Annotated[
        list[str] | None, typer.Option(help="Factor set on purpose: rest=48h.")
    ] = None,
    code: Code = None,
) -> None:
    """Begin a batch; opens a lot."""
    _record(
        call,
        "start",
        formula=formula,
        product=product,
        kind=kind,
        target=target or " ".join(volume or []) or "?",
        pour=pour,
        best_before=best_before,
        vessel=vessel,
        trial=trial,
        factors="; ".join(factor or []),
        code=code,
    )


def add(
    call: Call,
    lot: Lot,
    source: Annotated[str, typer.Argument(help="Code of the lot that goes in.")],
    amount: Amount,
    added_as: Annotated[
        Text, typer.Option("--as", help="ingredient, top-up, rework, rinse-liquor or old-cake.")
    ] = None,
    temp: Temp = None,
    over: Annotated[Text, typer.Option(help="How long the adding took, such as 5min.")] = None,
) -> None:
    """Put some of a lot into a batch."""
    _record(
        call,
        "add",
        lot=lot,
        source=source,
        amount=" ".join(amount),
        added_as=added_as,
        temp=temp,
        minutes=over,
    )


def rest(
    call: Call,
    lot: Lot,
    purpose: Annotated[Text, typer.Option("--for", help="macerate, settle or chill.")] = None,
    end: Annotated[bool, typer.Option("--end", help="End the rest that goes on.")] = False,
    started: Annotated[Text, typer.Option("--started", help="When it began.")] = None,
    until: Annotated[Text, typer.Option("--until", help="When it ended.")] = None,
    temp: Temp = None,
    shaken: Annotated[Text, typer.Option(help="How many times it was shaken.")] = None,
    vessel: Annotated[Text, typer.Option(help="In what it stands.")] = None,
) -> None:
    """Begin a rest, end it, or tell a whole one."""
    _record(
        call,
        "rest",
        lot=lot,
        purpose=purpose,
        ended="yes" if end else None,
        started=started,
        until=until,
        temp=temp,
        shaken=shaken,
        vessel=vessel,
    )


def filter_(
    call: Call,
    lot: Lot,
    medium: Annotated[str, typer.Option(help="paper, frit, membrane and so on.")],
    out: Annotated[str, typer.Option("--out", help="Volume of filtrate.")],
    put_in: Annotated[
        Text, typer.Option("--in", help="Volume put on the filter; default all that is there.")
    ] = None,
    pore: Annotated[Text, typer.Option(help="Pore size in µm: 20 or 20-25.")] = None,
    vacuum: Annotated[Text, typer.Option(help="kPa below atmosphere.")] = None,
    absolute: Annotated[bool, typer.Option("--absolute", help="The vacuum is absolute.")] = False,
    temp: Temp = None,
    cake: Annotated[Text, typer.Option(help="fresh or same.")] = None,
    cake_of: Annotated[Text, typer.Option(help="Lot whose old cake it ran through.")] = None,
    precoat: Annotated[Text, typer.Option(help="Precoat laid beforehand, such as 4g.")] = None,
    first_runnings: Annotated[Text, typer.Option(help="First runnings returned.")] = None,
    took: Annotated[Text, typer.Option(help="How long it took, such as 20min.")] = None,
) -> None:
    """Record one pass through a filter."""
    _record(
        call,
        "filter",
        lot=lot,
        medium=medium,
        volume_in=put_in,
        volume_out=out,
        pore=pore,
        vacuum=vacuum,
        absolute="yes" if absolute else None,
        temp=temp,
        cake=cake,
        cake_of=cake_of,
        precoat=precoat,
        first_runnings=first_runnings,
        minutes=took,
    )


def rinse(
    call: Call,
    lot: Lot,
    source: Annotated[str, typer.Option("--with", help="Lot it was rinsed with.")],
    put_in: Annotated[str, typer.Option("--in", help="Volume put on the cake.")],
    out: Annotated[str, typer.Option("--out", help="Volume that ran through.")],
    to: Annotated[str, typer.Option("--to", help="batch, apart or waste.")],
    code: Code = None,
) -> None:
    """Rinse the cake; kept apart, the liquor opens a lot."""
    _record(
        call,
        "rinse",
        lot=lot,
        source=source,
        volume_in=put_in,
        volume_out=out,
        went_to=to,
        code=code,
    )


def decant(
    call: Call,
    lot: Lot,
    drawn: Amount,
    heel: Annotated[Text, typer.Option(help="Volume left behind.")] = None,
) -> None:
    """Draw the clear liquid off its sediment."""
    _record(call, "decant", lot=lot, drawn=" ".join(drawn), heel=heel)


def look(
    call: Call,
    lot: Lot,
    grade: Annotated[str, typer.Argument(help="bright, clear, hazy, opalescent, cloudy or milky.")],
    of: Annotated[Text, typer.Option(help="neat, in-syrup or as-poured.")] = None,
    dilution: Annotated[Text, typer.Option(help="As poured at, such as 1:7.")] = None,
    ntu: Annotated[Text, typer.Option(help="Turbidity in NTU.")] = None,
    instrument: Annotated[Text, typer.Option(help="Meter it was read on.")] = None,
    zeroed_on: Annotated[Text, typer.Option(help="What the meter was set to zero on.")] = None,
    age: Annotated[Text, typer.Option(help="Age of the sample, such as 24h.")] = None,
    temp: Temp = None,
    flag: Annotated[
        list[str] | None, typer.Option(help="ring, louche, sediment, floc or crystals.")
    ] = None,
    words: Annotated[Text, typer.Option(help="Colour, nose, taste.")] = None,
) -> None:
    """Record how clear a lot looked."""
    _record(
        call,
        "look",
        lot=lot,
        grade=grade,
        of=of,
        dilution=dilution,
        ntu=ntu,
        instrument=instrument,
        zeroed_on=zeroed_on,
        age=age,
        temp=temp,
        flags=",".join(flag or []),
        words=words,
    )


def measure(
    call: Call,
    lot: Lot,
    what: Annotated[str, typer.Argument(help="brix, abv, density, ph, temperature or weight.")],
    reading: Annotated[str, typer.Argument(help="The reading as the instrument shows it.")],
    temp: Temp = None,
    instrument: Annotated[Text, typer.Option(help="The instrument.")] = None,
) -> None:
    """Record an instrument's reading."""
    _record(call, "measure", lot=lot, what=what, reading=reading, temp=temp, instrument=instrument)


def makeup(
    call: Call,
    lot: Lot,
    volume: Amount,
    source: Annotated[str, typer.Option("--with", help="Lot it was made up with.")],
    used: Annotated[
        Text, typer.Option(help="How much of that it took; default what was missing.")
    ] = None,
    temp: Temp = None,
) -> None:
    """Make a batch up to a volume."""
    _record(call, "makeup", lot=lot, volume=" ".join(volume), source=source, used=used, temp=temp)


def note(
    call: Call,
    lot: Annotated[str, typer.Argument(help="Code of the lot; - for the house as a whole.")],
    text: Annotated[list[str], typer.Argument(help="The words.")],
) -> None:
    """Write a note."""
    _record(call, "note", lot=None if lot == "-" else lot, text=" ".join(text))


def finish(call: Call, lot: Lot, volume: Amount, temp: Temp = None) -> None:
    """End the making of a batch with what came out."""
    _record(call, "finish", lot=lot, volume=" ".join(volume), temp=temp)


def register(app: typer.Typer) -> None:
    """Add the commands to the front door."""
    for function in (receive, start, add, rest, rinse, decant, look, makeup, note, finish):
        app.command()(writes(function))
    app.command("filter")(writes(filter_))
    app.command(context_settings={"ignore_unknown_options": True})(writes(measure))
