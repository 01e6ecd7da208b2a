"""Every word of every list of the trade is read as it is written."""

from enum import StrEnum
from typing import TypeGuard

import pytest

from ledger.domain.entries import choices as words_of_the_trade
from ledger.domain.entries.texts import read_word


def is_list(item: object) -> TypeGuard[type[StrEnum]]:
    return isinstance(item, type) and issubclass(item, StrEnum) and item is not StrEnum


WORDS = [word for item in vars(words_of_the_trade).values() if is_list(item) for word in item]


@pytest.mark.parametrize("word", WORDS, ids=repr)
def test_every_word_of_every_list_is_read_as_it_is_written(word: StrEnum) -> None:
    assert read_word(str(word), type(word), "word") is word
    assert read_word(f" {str(word).upper().replace('-', '_')} ", type(word), "word") is word
