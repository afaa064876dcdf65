"""The JSON Schema of the home file, made from the register."""

from __future__ import annotations

import re
from typing import Any, Final

from ampwright.foundations.answers import Value
from ampwright.foundations.source import Evidence

from .accept import expected_of
from .home import Home
from .homefile import ANSWERS
from .records import Moment
from .register import ID, Collection, Fact, Part, collections_of, facts_of, parts_of

DIALECT: Final = "https://json-schema.org/draft/2020-12/schema"
WORDS: Final[dict[str, Any]] = {"type": "string"}
NAMES: Final[dict[str, Any]] = {"anyOf": [WORDS, {"type": "array", "items": WORDS}]}
DAY: Final[dict[str, Any]] = {"anyOf": [{"type": "string", "format": "date"}, {"const": ""}]}
KINDS: Final = {bool: "boolean", int: "integer", float: "number", str: "string"}


def home_schema() -> dict[str, Any]:
    """Return the schema of a home file, once its dates are written as text.

    Holds what a form or an editor can check by itself. That a meter number adds up, that a
    range runs upward and that withdrawals name records is checked when the file is read.
    """
    answers: dict[str, Any] = {}
    inside = of_part(Home, answers)
    said = {
        "type": "object",
        "title": "What holds for every answer that does not say otherwise",
        "properties": {
            "evidence": {"enum": [each.word for each in Evidence]},
            **dict.fromkeys(("how", "by", "job", "phone"), WORDS),
            "on": DAY,
        },
        "additionalProperties": False,
    }
    top = {"title": WORDS, "home": WORDS, "said": said}
    return {
        "$schema": DIALECT,
        "title": "Home file",
        "description": "One home: facts with who gave them and how they are known.",
        "type": "object",
        "properties": {**top, **inside["properties"]},
        "additionalProperties": False,
        "$defs": {"record": record(), **dict(sorted(answers.items()))},
    }


def of_part(part: type[Part], answers: dict[str, Any]) -> dict[str, Any]:
    """Return the schema of the table of one part; kinds of answers are added to ``answers``."""
    properties: dict[str, Any] = {each.name: of_fact(each, answers) for each in facts_of(part)}
    properties |= {name: of_part(inner, answers) for name, inner in parts_of(part)}
    properties |= {each.name: of_collection(each, answers) for each in collections_of(part)}
    return {
        "type": "object",
        "title": (part.__doc__ or "").strip().partition("\n")[0],
        "properties": properties,
        "additionalProperties": False,
    }


def of_collection(collection: Collection, answers: dict[str, Any]) -> dict[str, Any]:
    """Return the schema of a collection: one table for each thing, under its id."""
    thing = of_part(collection.item, answers)
    names = "|".join(collection.standard) if collection.closed else ID.pattern
    return {
        "type": "object",
        "title": collection.all_listed.trade,
        "properties": {"all_listed": of_fact(collection.all_listed, answers)},
        "patternProperties": {f"^({names})$": thing},
        "additionalProperties": False,
    }


def of_fact(fact: Fact, answers: dict[str, Any]) -> dict[str, Any]:
    """Return the schema of one fact, its kind of answer under a name shared with its like."""
    name = re.sub(r"[^A-Za-z0-9.]+", "-", expected_of(fact)).strip("-")
    answers[name] = of_answer(fact, f"#/$defs/{name}")
    unit = {"x-unit": fact.unit} if fact.unit else {}
    return {"title": fact.trade, "description": fact.ask, **unit, "$ref": f"#/$defs/{name}"}


def of_answer(fact: Fact, place: str) -> dict[str, Any]:
    """Return the schema of an answer: a bare value, a record, or a list of either."""
    value = f"{place}/$defs/value"
    one = [{"$ref": value}, {"$ref": f"{place}/$defs/record"}]
    return {
        "$defs": {"value": of_value(fact), "record": of_record(fact, value)},
        "anyOf": [*one, {"type": "array", "items": {"anyOf": one}, "minItems": 1}],
    }


def of_value(fact: Fact) -> dict[str, Any]:
    """Return the schema of one bare value."""
    if fact.kind is bool:
        return {"type": "boolean"}
    if fact.allowed:
        return {"enum": [plain(value) for value in fact.allowed]}
    if fact.between:
        low, high = map(plain, fact.between)
        return {"type": KINDS[fact.kind], "minimum": low, "maximum": high}
    return {"type": "string", "minLength": 1}


def plain(value: Value) -> Value:
    """Return a whole number without a point, so that 80 and 80.0 read the same."""
    return int(value) if isinstance(value, float) and value.is_integer() else value


def of_record(fact: Fact, place: str) -> dict[str, Any]:
    """Return the schema of an answer that says how it is known; its value stands elsewhere."""
    value = {"$ref": place}
    answers: dict[str, Any] = {
        "is": value,
        "one_of": {"type": "array", "items": value, "minItems": 2, "uniqueItems": True},
    }
    if fact.is_number:
        ends = {"type": "number"} if fact.allowed else value
        answers["between"] = {"type": "array", "items": ends, "minItems": 2, "maxItems": 2}
    return {"$ref": "#/$defs/record", "properties": answers, "unevaluatedProperties": False}


def record() -> dict[str, Any]:
    """Return the schema of what every record has: one answer, or what it takes back."""
    answers = [{"required": [name]} for name in ANSWERS]
    return {
        "type": "object",
        "properties": {
            "cannot_say": WORDS,
            **{each.word: WORDS for each in Evidence},
            **dict.fromkeys(("by", "job", "phone", "id"), WORDS),
            "on": DAY,
            "moment": {"enum": [each.value for each in Moment]},
            "withdraws": NAMES,
            "since": NAMES,
        },
        "oneOf": [*answers, {"required": ["withdraws"], "not": {"anyOf": answers}}],
    }
