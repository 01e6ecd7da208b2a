"""Characters without a shape: noted while somebody wants to know, and named in a sentence."""

import pytest

from reports.kit.boxed import boxed_words, note_boxed, noting_boxed


def test_characters_are_noted_by_whoever_asks_last_and_else_by_nobody() -> None:
    note_boxed("☃")
    with noting_boxed() as outer:
        note_boxed("☃")
        with noting_boxed() as inner:
            note_boxed("⛄")
        note_boxed("☃")
        note_boxed("\a")
    note_boxed("☂")
    assert (outer, inner) == ({"☃", "\a"}, {"⛄"})


@pytest.mark.parametrize(
    ("chars", "words"),
    [
        (
            "☃",
            "No font here has a shape for “☃” (U+2603 SNOWMAN); its number stands in a box on the "
            "paper.",
        ),
        (
            "☃\a",
            "No font here has a shape for (U+0007), “☃” (U+2603 SNOWMAN); their numbers stand in "
            "boxes on the paper.",
        ),
    ],
)
def test_each_is_named_so_that_it_can_be_found(chars: str, words: str) -> None:
    assert boxed_words(chars) == words
