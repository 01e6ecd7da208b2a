"""The schema of an answer: its keys in words, one of several answers, and its parts once."""

from reports.json.evidence.seal import SealAnswer
from reports.json.kit import schema as module
from reports.json.kit.answer import Amount, Told
from reports.json.kit.problems import ErrorAnswer, Problem
from reports.json.kit.schema import field_words, schema_of, structs_in
from reports.json.kit.seal import SealTold
from tests.kept.said import check_constants


def test_every_key_has_the_words_that_stand_below_its_field() -> None:
    todo = "What to do about it; empty where there is nothing."
    assert schema_of([Told], "pottle it") == {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "pottle it",
        "$ref": "#/$defs/Told",
        "$defs": {
            "Told": {
                "title": "Told",
                "description": "Something that is said, and what to do about it.",
                "type": "object",
                "properties": {
                    "what": {"type": "string", "description": "What, a whole sentence."},
                    "what_to_do": {"type": "string", "description": todo},
                },
                "required": ["what", "what_to_do"],
                "additionalProperties": False,
            }
        },
    }


def test_one_of_several_answers_or_a_list_is_said_so() -> None:
    assert schema_of([Told], "")["$ref"] == "#/$defs/Told"
    assert schema_of([list[Told]], "")["items"] == {"$ref": "#/$defs/Told"}
    assert schema_of([list[Told], Amount], "")["anyOf"] == [
        {"type": "array", "items": {"$ref": "#/$defs/Told"}},
        {"$ref": "#/$defs/Amount"},
    ]


def test_the_parts_of_an_answer_are_met_once_and_a_base_lends_its_words() -> None:
    assert structs_in([ErrorAnswer, list[ErrorAnswer]]) == (ErrorAnswer, Problem)
    words = field_words(SealAnswer)
    assert [*words] == [*SealTold.__struct_fields__, "path"]
    assert words["entries"] == "How many entries it had."


def test_its_tables_figures_and_words_are_the_kept_ones() -> None:
    check_constants(module)
