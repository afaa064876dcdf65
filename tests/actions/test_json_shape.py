"""An answer's JSON and its schema come from its dataclass, and agree."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Literal

import jsonschema
import pytest

from ampwright.actions.json_shape import json_of, schema_of
from ampwright.foundations.source import SetBy
from ampwright.foundations.working import given


@dataclass(frozen=True, slots=True)
class Leaf:
    """A part.

    With more said of it.
    """

    volts: float
    kind: Literal["low", "high"]


@dataclass(frozen=True, slots=True)
class Tree:
    """A whole."""

    on: date
    leaves: tuple[Leaf, ...]
    by_name: Mapping[str, Leaf]
    most: float | None


TREE = Tree(date(2026, 12, 10), (Leaf(216.2, "low"),), {"a": Leaf(240.0, "high")}, None)
SCHEMA = schema_of(Tree, "A tree")


def test_schema_is_one():
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    assert SCHEMA["$defs"]["Leaf"]["description"] == "A part."


def test_answer_keeps_to_its_schema():
    jsonschema.validate(json.loads(json_of(TREE)), SCHEMA)


@pytest.mark.parametrize(
    "change",
    [
        {"on": 2026},
        {"most": "60"},
        {"leaves": [{"volts": 216.2}]},
        {"leaves": [{"volts": 216.2, "kind": "middling"}]},
        {"more": 1},
        {"by_name": {"a": {}}},
    ],
)
def test_anything_else_does_not(change):
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(json.loads(json_of(TREE)) | change, SCHEMA)


def test_numbers_lose_their_working():
    worked = given("U", 216.2, "V", SetBy("a test"))
    assert json.loads(json_of(Leaf(worked, "low"))) == {"volts": 216.2, "kind": "low"}


def test_a_type_without_a_schema_is_refused():
    @dataclass
    class Odd:
        what: complex

    Odd.__annotations__["what"] = complex
    with pytest.raises(TypeError, match="may not hold"):
        schema_of(Odd, "Odd")
