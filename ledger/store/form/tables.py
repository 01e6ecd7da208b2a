"""The tables of the book: the spine, a typed table a kind, and what traces walk on.

Guarantees: columns are derived from the entry classes, so the two agree; every typed row hangs on
a spine row of its own kind; quantities are whole numbers with the text as written. In SQLite no
row has a hidden number besides its key, by which it could be replaced past the guards. Refuses:
floats, nulls where a fact is required, words outside their lists.
"""

from datetime import date, datetime
from enum import StrEnum

from sqlalchemy import (
    BigInteger,
    CheckConstraint,
    Column,
    ForeignKey,
    ForeignKeyConstraint,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    Table,
    Text,
    UniqueConstraint,
)

from ledger.domain.amounts.quantity import Measure, Quantity
from ledger.domain.entries import FACTS
from ledger.domain.entries.choices import LotType, Origin, Place, Precision
from ledger.domain.entries.fields import FieldSpec, specs
from ledger.store.form.columns import DETAIL_FIELDS

# SQLite takes a key for the number of its row only where it is called INTEGER.
BIG = BigInteger().with_variant(Integer, "sqlite")
METADATA = MetaData(
    naming_convention={
        "pk": "pk_%(table_name)s",
        "fk": "fk_%(table_name)s_%(column_0_N_name)s",
        "ck": "ck_%(table_name)s_%(constraint_name)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    }
)


def _one_of(column: str, words: type[StrEnum]) -> CheckConstraint:
    listed = ", ".join(f"'{word}'" for word in words)
    return CheckConstraint(f"{column} IN ({listed})", name=column)


def _later(target: str, *, use_alter: bool = False) -> ForeignKey:
    return ForeignKey(target, deferrable=True, initially="DEFERRED", use_alter=use_alter)


ENTRY = Table(
    "entry",
    METADATA,
    Column("seq", BIG, primary_key=True, autoincrement=False),
    Column("kind", Text, nullable=False),
    Column("lot", BIG, _later("lot.id", use_alter=True), index=True),
    Column("happened_at", Text, nullable=False),
    Column("offset_min", BIG, nullable=False),
    Column("precision", Text, nullable=False),
    Column("recorded_at", Text, nullable=False),
    Column("origin", Text, nullable=False),
    Column("sheet", Text),
    # use_alter: the spine refers to tables that refer to it.
    Column("by", Text, _later("person_key.initials", use_alter=True)),
    Column("corrects", BIG, ForeignKey("entry.seq"), unique=True),
    Column("stands_for", BIG, ForeignKey("entry.seq"), nullable=False, index=True),
    Column("reason", Text),
    Column("body", Text, nullable=False),
    Column("leaf", LargeBinary, nullable=False),
    UniqueConstraint("seq", "kind"),
    _one_of("precision", Precision),
    _one_of("origin", Origin),
    CheckConstraint("kind IN (" + ", ".join(f"'{kind}'" for kind in FACTS) + ")", name="kind"),
    # What holds of a null is unknown, which a condition lets pass.
    CheckConstraint("seq > 0 AND stands_for <= seq AND corrects < seq", name="order"),
    # The first entry names the house; nobody is in the book before it.
    CheckConstraint("by IS NOT NULL OR kind = 'house'", name="by"),
    CheckConstraint("length(leaf) = 32", name="leaf"),
    sqlite_strict=True,
)
Index(
    # The unique key above has a place for every entry, this index only for the few that correct
    # another; readers ask it of every entry.
    "ix_entry_correction",
    ENTRY.c.corrects,
    unique=True,
    sqlite_where=ENTRY.c.corrects.is_not(None),
    postgresql_where=ENTRY.c.corrects.is_not(None),
)

LOT = Table(
    "lot",
    METADATA,
    Column("id", BIG, _later("entry.seq"), primary_key=True, autoincrement=False),
    Column("code", Text, nullable=False, unique=True),
    Column("lot_type", Text, nullable=False),
    Column("measure", Text, nullable=False),
    _one_of("lot_type", LotType),
    _one_of("measure", Measure),
    CheckConstraint("length(code) BETWEEN 1 AND 20", name="code"),
    sqlite_strict=True,
)

PERSON_KEY = Table(
    "person_key",
    METADATA,
    Column("initials", Text, primary_key=True),
    Column("seq", BIG, _later("entry.seq"), nullable=False, unique=True),
    sqlite_strict=True,
    sqlite_with_rowid=False,
)

MATERIAL_KEY = Table(
    "material_key",
    METADATA,
    Column("code", Text, primary_key=True),
    Column("seq", BIG, _later("entry.seq"), nullable=False, unique=True),
    sqlite_strict=True,
    sqlite_with_rowid=False,
)

POSTING = Table(
    "posting",
    METADATA,
    Column("seq", BIG, ForeignKey("entry.seq"), primary_key=True, autoincrement=False),
    Column("line", BIG, primary_key=True, autoincrement=False),
    Column("source", BIG, ForeignKey("lot.id")),
    Column("target", BIG, ForeignKey("lot.id")),
    Column("place", Text),
    Column("taken", BIG, nullable=False),
    Column("given", BIG, nullable=False),
    _one_of("place", Place),
    CheckConstraint("taken >= 0 AND given >= 0", name="amounts"),
    CheckConstraint("source <> target", name="ends"),
    CheckConstraint(
        # Two of the three are given: from a lot to a lot, or between a lot and a place outside.
        "CASE WHEN source IS NULL THEN 1 ELSE 0 END + CASE WHEN target IS NULL THEN 1 ELSE 0 END"
        " + CASE WHEN place IS NULL THEN 1 ELSE 0 END = 1",
        name="two_ends",
    ),
    # With the amounts, so that what thousands of draws took is summed from the index alone.
    Index("ix_posting_source", "source", "seq", "taken"),
    Index("ix_posting_target", "target", "seq", "given"),
    sqlite_strict=True,
    sqlite_with_rowid=False,
)

LEVEL = Table(
    "level",
    METADATA,
    Column("seq", BIG, ForeignKey("entry.seq"), primary_key=True, autoincrement=False),
    Column("lot", BIG, ForeignKey("lot.id"), nullable=False, index=True),
    Column("amount", BIG, nullable=False),
    CheckConstraint("amount >= 0", name="amount"),
    sqlite_strict=True,
)

# The complete nodes above the leaves, which never change once they are there: a root costs as many
# reads as the tree is high.
TREE = Table(
    "tree",
    METADATA,
    Column("height", BIG, primary_key=True, autoincrement=False),
    Column("place", BIG, primary_key=True, autoincrement=False),
    Column("hash", LargeBinary, nullable=False),
    CheckConstraint("height > 0 AND length(hash) = 32", name="node"),
    sqlite_strict=True,
    sqlite_with_rowid=False,
)

# Who people and parties are: what the commitment of their entry is to, till it is forgotten.
DETAILS = Table(
    "details",
    METADATA,
    Column("seq", BIG, ForeignKey("entry.seq"), primary_key=True, autoincrement=False),
    Column("salt", Text, nullable=False),
    *(Column(name, Text) for name in DETAIL_FIELDS),
    CheckConstraint("length(salt) = 64", name="salt"),
    sqlite_strict=True,
)

REFERENCES = {
    "lot": "lot.code",
    "person": "person_key.initials",
    "material": "material_key.code",
    "entry": "entry.seq",
}


def _columns(spec: FieldSpec) -> list[Column[object] | CheckConstraint]:
    null, name = spec.may_lack, spec.name
    references = [ForeignKey(REFERENCES[spec.refers_to])] if spec.refers_to else []
    if spec.shape is Quantity:
        return [
            Column(name, BIG, nullable=null),
            Column(f"{name}_measure", Text, nullable=null),
            Column(f"{name}_written", Text, nullable=null),
            CheckConstraint(f"{name} {'>=' if spec.may_be_nothing else '>'} 0", name=name),
            _one_of(f"{name}_measure", Measure),
        ]
    if spec.shape is bool:
        return [
            Column(name, BIG, nullable=null),
            CheckConstraint(f"{name} IN (0, 1)", name=name),
        ]
    if spec.shape is int:
        check = [] if spec.is_signed else [CheckConstraint(f"{name} >= 0", name=name)]
        return [Column(name, BIG, *references, nullable=null), *check]
    text: list[Column[object] | CheckConstraint] = [Column(name, Text, *references, nullable=null)]
    if spec.shape is date or spec.shape is datetime:
        width = 10 if spec.shape is date else 20
        text.append(CheckConstraint(f"length({name}) = {width}", name=name))
    elif issubclass(spec.shape, StrEnum):
        text.append(_one_of(name, spec.shape))
    return text


def _typed(kind: str, facts: type) -> Table:
    items = [column for spec in specs(facts) if not spec.is_many for column in _columns(spec)]
    return Table(
        kind,
        METADATA,
        Column("seq", BIG, primary_key=True, autoincrement=False),
        Column("entry_kind", Text, nullable=False),
        *items,
        ForeignKeyConstraint(["seq", "entry_kind"], ["entry.seq", "entry.kind"]),
        CheckConstraint(f"entry_kind = '{kind}'", name="entry_kind"),
        sqlite_strict=True,
    )


def _children(kind: str, spec: FieldSpec) -> Table:
    return Table(
        f"{kind}_{spec.name}",
        METADATA,
        Column("seq", BIG, ForeignKey(f"{kind}.seq"), primary_key=True, autoincrement=False),
        Column("line", BIG, primary_key=True, autoincrement=False),
        *(item for child in specs(spec.shape) for item in _columns(child)),
        sqlite_strict=True,
        sqlite_with_rowid=False,
    )


TYPED: dict[str, Table] = {kind: _typed(kind, facts) for kind, facts in FACTS.items()}
"""The typed table of each kind of entry."""
# By them the book knows a name that it has from one that is new.
Index("ix_move_party", TYPED["move"].c.party)
Index("ix_receipt_supplier", TYPED["receipt"].c.supplier)
# A material names the lot of it that is to be used first.
Index("ix_receipt_material", TYPED["receipt"].c.material)
CHILDREN: dict[tuple[str, str], Table] = {
    (kind, spec.name): _children(kind, spec)
    for kind, facts in FACTS.items()
    for spec in specs(facts)
    if spec.is_many
}
"""The child table of each field that is a list, by kind and field."""
