"""A commitment fits its details alone, and says nothing of them without their salt."""

import hashlib
import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.entries import Party, Person
from ledger.domain.evidence.commitments import SALT_SIZE, commitment, details_of

SALT = bytes(range(SALT_SIZE))
WORDS = st.text(st.characters(codec="utf-8"), min_size=1, max_size=12)
DETAILS = st.dictionaries(st.sampled_from(["name", "phone", "address"]), WORDS)


def test_it_is_the_hash_of_salt_and_canonical_details() -> None:
    """Reckoned a second time from the words of the module alone."""
    details = {"phone": "01 555 0100", "name": "Café Blue"}
    text = json.dumps(details, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
    assert text == '{"name":"Café Blue","phone":"01 555 0100"}'
    wanted = hashlib.sha256(b"\x02" + SALT + text.encode()).hexdigest()
    assert commitment(SALT, details) == wanted


@given(DETAILS, DETAILS, st.binary(min_size=SALT_SIZE, max_size=SALT_SIZE))
def test_other_details_and_another_salt_fit_no_commitment(
    one: dict[str, str], other: dict[str, str], salt: bytes
) -> None:
    assert (commitment(salt, one) == commitment(salt, other)) is (one == other)
    assert (commitment(salt, one) == commitment(SALT, one)) is (salt == SALT)


def test_a_salt_of_another_length_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^A salt has 32 bytes, and this one 31\.$"):
        commitment(SALT[1:], {"name": "Quay Bar"})


def test_the_short_code_and_initials_are_no_details() -> None:
    party = Party("Quay Bar", phone="01 555 0100", code="P1", commitment="ab" * 32)
    assert details_of(party) == {"name": "Quay Bar", "phone": "01 555 0100"}
    assert details_of(Person("AB", "Anna Bell", "maker")) == {"name": "Anna Bell", "role": "maker"}
