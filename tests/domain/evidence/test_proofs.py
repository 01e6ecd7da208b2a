"""A proof fits only as it was made, and a second reader of the RFC agrees."""

from collections.abc import Callable
from contextlib import suppress
from datetime import UTC, datetime
from json import dumps

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from ledger.domain.entries import Draft, Entry, Note, When
from ledger.domain.entries.plain import entry_text
from ledger.domain.evidence.merkle import (
    consistency_path,
    inclusion_path,
    leaf_hash,
    new_nodes,
    root,
)
from ledger.domain.evidence.proofs import Proof, Proved, proof_faults, proof_text, read_proof
from ledger.domain.evidence.seals import Seal
from ledger.errors import InputError
from tests.domain.evidence.rfc6962 import check_file, leaf, root_by_path, roots_by_proof

AT = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)
ASK = "Ask for the proof again: pottle prove LOT --out FILE"


def note(seq: int, lot: str = "OE-001-5") -> str:
    entry = Entry(seq, Draft(Note(f"Note {seq}."), lot, When(AT, 0), "AB"), AT, seq)
    return entry_text(entry)


def nodes_of(leaves: list[bytes]) -> dict[tuple[int, int], bytes]:
    nodes: dict[tuple[int, int], bytes] = {}
    for index, own in enumerate(leaves):
        found = new_nodes(index, own, lambda level, place: nodes[level, place])
        nodes[0, index] = own
        nodes.update({(level, place): value for level, place, value in found})
    return nodes


def proof_of(size: int, numbers: list[int]) -> Proof:
    bodies = [note(seq) for seq in range(1, size + 1)]
    leaves = [leaf_hash(body.encode()) for body in bodies]
    nodes = nodes_of(leaves)
    entries = tuple(
        Proved(
            seq,
            bodies[seq - 1],
            tuple(inclusion_path(seq - 1, size, lambda level, place: nodes[level, place])),
        )
        for seq in numbers
    )
    return Proof("OE-001-5", Seal("Wren & Co", size, root(leaves).hex()), entries)


PROOF = proof_of(11, [2, 7, 11])


@given(st.integers(1, 40), st.data())
def test_a_proof_is_read_as_it_was_written_and_fits(size: int, data: st.DataObject) -> None:
    numbers = sorted(data.draw(st.sets(st.integers(1, size), min_size=1)))
    proof = proof_of(size, numbers)
    text = proof_text(proof)
    assert read_proof(f"{text}\n") == proof
    assert list(proof_faults(read_proof(text), proof.seal)) == []
    assert check_file(text) == []


@given(st.integers(0, len(PROOF.entries) - 1), st.data())
def test_both_checks_find_a_changed_bit_of_a_path(place: int, data: st.DataObject) -> None:
    one = PROOF.entries[place]
    step = data.draw(st.integers(0, len(one.path) - 1))
    flipped = int.from_bytes(one.path[step]) ^ 1 << data.draw(st.integers(0, 255))
    path = (*one.path[:step], flipped.to_bytes(32), *one.path[step + 1 :])
    changed = put(place, replace(one, path=path))
    assert list(proof_faults(changed)) == [
        f"Entry {one.seq} is not in the book of the seal as it is told here."
    ]
    assert check_file(proof_text(changed)) == [one.seq]


def put(place: int, one: Proved) -> Proof:
    entries = (*PROOF.entries[:place], one, *PROOF.entries[place + 1 :])
    return replace(PROOF, entries=entries)


@pytest.mark.parametrize(
    ("proof", "faults"),
    [
        (
            put(1, replace(PROOF.entries[1], body=note(7).replace("Note 7.", "Note 8."))),
            ["Entry 7 is not in the book of the seal as it is told here."],
        ),
        (
            put(1, replace(PROOF.entries[1], body=note(6))),
            [
                "Entry 7 is not in the book of the seal as it is told here.",
                "The text of entry 7 is that of entry 6.",
            ],
        ),
        (
            put(1, replace(PROOF.entries[1], body="{}")),
            [
                "Entry 7 is not in the book of the seal as it is told here.",
                "The text of entry 7 is not what a book writes.",
            ],
        ),
        (
            put(1, replace(PROOF.entries[1], path=PROOF.entries[1].path[:-1])),
            ["Entry 7 is not in the book of the seal as it is told here."],
        ),
        (
            put(1, replace(PROOF.entries[1], seq=12)),
            [
                "The entries do not stand in the order of their numbers, each once.",
                "Entry 12 is not in the book of the seal as it is told here.",
                "The text of entry 12 is that of entry 7.",
            ],
        ),
        (
            replace(PROOF, entries=(PROOF.entries[0], PROOF.entries[0])),
            ["The entries do not stand in the order of their numbers, each once."],
        ),
        (replace(PROOF, entries=()), ["The proof holds no entry about OE-001-5."]),
        (
            replace(PROOF, lot="OE-002-3", entries=PROOF.entries[:1]),
            ["Entry 2 is not about OE-002-3."],
        ),
        (
            replace(PROOF, seal=replace(PROOF.seal, entries=8), entries=PROOF.entries[:1]),
            ["Entry 2 is not in the book of the seal as it is told here."],
        ),
    ],
    ids=[
        "text changed", "text of another", "no entry", "path cut", "number changed", "twice",
        "nothing", "another lot", "another size",
    ],
)  # fmt: skip
def test_what_does_not_fit_is_told(proof: Proof, faults: list[str]) -> None:
    assert list(proof_faults(proof)) == faults


@pytest.mark.parametrize(
    ("given_seal", "faults"),
    [
        (PROOF.seal, []),
        (replace(PROOF.seal, house="wren  & co"), []),
        (
            replace(PROOF.seal, house="Robin"),
            ["The proof is of the house Wren & Co, and the seal given of Robin."],
        ),
        (
            replace(PROOF.seal, root="ab" * 32),
            [f"The proof's root is {PROOF.seal.root}, and that of the seal given is {'ab' * 32}."],
        ),
        (
            replace(PROOF.seal, entries=9),
            [
                "The proof is made against a seal of 11 entries, and the one given is of 9: ask "
                "for a proof against that seal (pottle prove LOT --seal ...)."
            ],
        ),
    ],
    ids=["same", "same house in other letters", "house", "root", "entries"],
)
def test_a_proof_is_held_against_the_seal_given(given_seal: Seal, faults: list[str]) -> None:
    assert list(proof_faults(PROOF, given_seal)) == faults


@pytest.mark.parametrize(
    ("text", "what"),
    [
        (
            proof_text(PROOF).replace("pottle proof 1", "pottle proof 2"),
            'The file is of the form "pottle proof 2", not "pottle proof 1".',
        ),
        ("{}", "The file is not a proof: a part is missing or damaged."),
        (
            proof_text(PROOF).replace('"lot":', '"lots":'),
            "The file is not a proof: a part is missing or damaged.",
        ),
        (
            proof_text(PROOF).replace(PROOF.entries[0].path[0].hex(), "xyz"),
            "The file is not a proof: a part is missing or damaged.",
        ),
        (
            proof_text(PROOF).replace('"entries":11', '"entries":true'),
            "The file is not a proof: a part is missing or damaged.",
        ),
        *(
            (
                proof_text(PROOF).replace(was, put),
                "The file is not a proof: a part is missing or damaged.",
            )
            for was, put in (
                (f'"lot":"{PROOF.lot}"', '"lot":5'),
                (f'"seq":{PROOF.entries[0].seq}}}', '"seq":true}'),
                (f'"body":{dumps(PROOF.entries[0].body)}', '"body":5'),
            )
        ),
        (
            proof_text(PROOF).replace('"entries":11', '"entries": 11'),
            "The file is not a proof as it was written. The text is not in its canonical form: "
            "at character 12, '1' was expected, but ' ' was got.",
        ),
    ],
    ids=[
        *("newer", "empty", "renamed", "no digits", "wrong type"),
        *("no lot", "no number", "no text", "spaced"),
    ],
)
def test_a_file_that_is_no_proof_is_refused_in_words(text: str, what: str) -> None:
    assert text != proof_text(PROOF)
    with pytest.raises(InputError) as raised:
        read_proof(text)
    assert raised.value.problems == ((what, ASK),)


@given(st.integers(0, len(proof_text(PROOF)) - 1), st.characters(codec="utf-8"))
def test_any_changed_character_is_found(place: int, letter: str) -> None:
    text = proof_text(PROOF)
    changed = text[:place] + letter + text[place + 1 :]
    with suppress(InputError):
        assert changed == text or list(proof_faults(read_proof(changed), PROOF.seal))


@given(st.integers(1, 60), st.data())
def test_a_second_reader_of_the_rfc_agrees_on_every_path(size: int, data: st.DataObject) -> None:
    """RFC 6962, sections 2.1.1 and 2.1.2."""
    leaves = [leaf_hash(bytes([index])) for index in range(size)]
    nodes = nodes_of(leaves)
    index, old = data.draw(st.integers(0, size - 1)), data.draw(st.integers(1, size))
    path = inclusion_path(index, size, lambda level, place: nodes[level, place])
    assert root_by_path(index, size, leaf(bytes([index])), path) == root(leaves)
    proof = consistency_path(old, size, lambda level, place: nodes[level, place])
    roots = (root(leaves[:old]), root(leaves))
    assert roots_by_proof(old, size, roots[0], proof) == roots


def alone(body: str) -> Proof:
    """Return a proof whose one entry, whatever it is, is all there is in its book."""
    seal = Seal("Wren & Co", 1, leaf_hash(body.encode()).hex())
    return Proof("OE-001-5", seal, (Proved(1, body, ()),))


@pytest.mark.parametrize(
    ("was", "put"),
    [
        ('"text":"Note 1."', '"text":5'),
        ('"offset_min":0', '"offset_min":"0"'),
        ('"offset_min":0', '"offset_min":1440'),
        ('"happened_at":"2026-03-02T09:00:00Z"', '"happened_at":"2026-03-02T09:00"'),
        ('"v":1', '"v":2'),
        ('"by":"AB",', '"by":"AB","colour":"pale",'),
        ('"v":1', '"v": 1'),
    ],
)
def test_a_text_that_no_book_writes_is_told_though_it_is_in_the_tree(was: str, put: str) -> None:
    """Whoever makes a proof up can hash anything; it must not come to grief where it is shown."""
    body = note(1)
    assert list(proof_faults(alone(body))) == []
    assert was in body
    proof = read_proof(proof_text(alone(body.replace(was, put))))
    assert list(proof_faults(proof)) == ["The text of entry 1 is not what a book writes."]


@pytest.mark.parametrize("change", [str.upper, lambda digits: f"{digits[:2]} {digits[2:]}"])
def test_a_path_written_in_another_way_is_no_proof(change: Callable[[str], str]) -> None:
    digits = PROOF.entries[0].path[0].hex()
    with pytest.raises(InputError) as raised:
        read_proof(proof_text(PROOF).replace(digits, change(digits)))
    assert raised.value.problems == (
        ("The file is not a proof: a part is missing or damaged.", ASK),
    )
