"""The schema of an answer: its keys in words, one of several answers, and its parts once."""

from reports.json.evidence.seal import SealAnswer
from reports.json.kit.answer import Amount, Told
from reports.json.kit.problems import ErrorAnswer, Problem
from reports.json.kit.schema import field_words, schema_of, structs_in
from reports.json.kit.seal import SealTold


def test_every_key_has_the_words_that_stand_below_its_field() -> None:
    part = schema_of([Told], "pottle it")["$defs"]["Told"]
    assert part["required"] == ["what", "what_to_do"]
    said = {"type": "string", "description": "What, a whole sentence."}
    assert part["properties"]["what"] == said


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
