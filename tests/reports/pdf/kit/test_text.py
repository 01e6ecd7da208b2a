import pytest
from hypothesis import given
from hypothesis import strategies as st

from reports.pdf.kit.fonts import REGULAR
from reports.pdf.kit.text import Face, widest_word, width_of, wrap

FACE = Face(REGULAR, 8)

WORDS = st.text(st.sampled_from("abWi.-/ "), max_size=80)


@given(WORDS, st.floats(10, 200))
def test_no_line_is_wider_than_its_room_and_no_character_is_lost(text: str, room: float) -> None:
    lines = wrap(text, FACE, lambda _: room)
    assert all(width_of(line, FACE) <= room for line in lines)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")


@given(WORDS)
def test_words_stay_whole_where_each_fits(text: str) -> None:
    lines = wrap(text, FACE, lambda _: max(widest_word(text, FACE), 1.0))
    assert " ".join(lines).split() == text.split()


@pytest.mark.parametrize(
    ("text", "room", "lines"),
    [
        ("", 50, [""]),
        ("one\ntwo", 500, ["one", "two"]),
        ("E26-014-7/LO", 36, ["E26-014-", "7/LO"]),
        ("abcdefghijkl", 22, ["abcd", "efghij", "kl"]),
        ("30\u00a0mL of oil", 28, ["30\u00a0mL", "of oil"]),
        ("Nu\u031bo\u031b\u0301c", 50, ["Nước"]),
    ],
    ids=["empty", "own line ends", "after a hyphen", "anywhere", "held together", "composed"],
)
def test_lines_break_where_a_reader_expects(text: str, room: float, lines: list[str]) -> None:
    assert wrap(text, FACE, lambda _: room) == lines


def test_each_line_has_the_room_of_its_number() -> None:
    assert wrap("aaaa aaaa aaaa aaaa", FACE, lambda line: 20 if line < 2 else 100) == [
        "aaaa",
        "aaaa",
        "aaaa aaaa",
    ]
