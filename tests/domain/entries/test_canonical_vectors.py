"""Canonical entries against the vectors published with RFC 8785."""

import json
from pathlib import Path

import pytest

from ledger.domain.entries.canonical import canonical_text, read_canonical
from ledger.errors import RefusedError

# cyberphone/json-canonicalization, testdata (Apache-2.0; the LICENSE is beside the file).
VECTORS = json.loads(
    (Path(__file__).parents[2] / "reference/jcs/vectors.json").read_text(encoding="utf-8")
)["cases"]


def test_the_published_vector_within_the_subset_matches_byte_for_byte() -> None:
    vector = VECTORS["unicode"]
    expected = bytes.fromhex(vector["outhex"])
    assert canonical_text(json.loads(vector["input"])).encode() == expected
    assert canonical_text(read_canonical(expected.decode())).encode() == expected


def test_the_published_structures_match_once_their_one_float_is_a_whole_number() -> None:
    vector = VECTORS["structures"]
    value = json.loads(vector["input"], parse_float=lambda text: int(float(text)))
    assert canonical_text(value).encode() == bytes.fromhex(vector["outhex"])


FLOAT = "but a whole number of a smallest unit was expected"
ASCII = "was given, but names are text in ASCII"
OUTSIDE = {
    "french": f"the name 'p\\xe9ch\\xe9' {ASCII}; the name 'p\\xeache' {ASCII}",
    "structures": f"`1.\\n` is 56.0, {FLOAT}",
    "values": f"`numbers[0]` is 333333333.3333333, {FLOAT}; `numbers[1]` is 1e+30, {FLOAT}; "
    f"`numbers[2]` is 4.5, {FLOAT}; `numbers[3]` is 0.002, {FLOAT}; `numbers[4]` is 1e-27, {FLOAT};"
    " `literals[0]` is null, but what is absent is left out",
    "weird": "; ".join(
        f"the name {name} {ASCII}"
        for name in ("'\\u20ac'", "'\\x80'", "'\\U0001f602'", "'\\xf6'", "'\\ufb33'")
    ),
}


@pytest.mark.parametrize("name", OUTSIDE)
def test_published_vectors_outside_the_subset_are_refused_in_words(name: str) -> None:
    with pytest.raises(RefusedError) as refusal:
        canonical_text(json.loads(VECTORS[name]["input"]))
    assert refusal.value.what == f"The entry cannot be written in the book: {OUTSIDE[name]}."


def test_the_published_vector_that_is_a_list_is_refused() -> None:
    with pytest.raises(RefusedError) as refusal:
        read_canonical(bytes.fromhex(VECTORS["arrays"]["outhex"]).decode())
    assert refusal.value.what == "An entry is written as names with values, but a list was given."


def test_every_published_vector_is_checked() -> None:
    assert set(VECTORS) == {"unicode", "arrays", *OUTSIDE}
