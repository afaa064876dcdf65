"""Answers as JSON, and the JSON Schema of an answer, both from its dataclass alone."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from inspect import getdoc
from types import NoneType, UnionType
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints

DIALECT = "https://json-schema.org/draft/2020-12/schema"
PLAIN: dict[type, dict[str, Any]] = {
    str: {"type": "string"},
    bool: {"type": "boolean"},
    int: {"type": "integer"},
    float: {"type": "number"},
    NoneType: {"type": "null"},
    date: {"type": "string", "format": "date"},
}


def json_of(answer: object) -> str:
    """Write an answer as JSON, keys in the order they are declared."""
    return json.dumps(plain(answer), ensure_ascii=False, indent=2)


def plain(value: Any) -> Any:
    """Return what JSON holds of a value; numbers lose their working.

    Examples
    --------
    >>> plain({"on": date(2026, 12, 10), "volts": (216.2, None)})
    {'on': '2026-12-10', 'volts': [216.2, None]}
    """
    if is_dataclass(value) and not isinstance(value, type):
        return {each.name: plain(getattr(value, each.name)) for each in fields(value)}
    if isinstance(value, Mapping):
        return {str(key): plain(each) for key, each in value.items()}
    if isinstance(value, tuple | list):
        return [plain(each) for each in value]
    if isinstance(value, date):
        return value.isoformat()
    return float(value) if isinstance(value, float) else value


def schema_of(kind: type, title: str) -> dict[str, Any]:
    """Return the JSON Schema of a dataclass and of every dataclass inside it.

    Nothing beyond what is declared is allowed, and everything declared is there.
    """
    definitions: dict[str, Any] = {}
    root = _object(kind, definitions)
    return {"$schema": DIALECT, "title": title, **root, "$defs": dict(sorted(definitions.items()))}


def _object(kind: Any, definitions: dict[str, Any]) -> dict[str, Any]:
    """Return the schema of one dataclass; the first paragraph of its docstring describes it."""
    hints = get_type_hints(kind)
    names = [each.name for each in fields(kind)]
    return {
        "type": "object",
        "description": " ".join((getdoc(kind) or "").split("\n\n")[0].split()),
        "properties": {name: _schema(hints[name], definitions) for name in names},
        "required": names,
        "additionalProperties": False,
    }


def _schema(hint: Any, definitions: dict[str, Any]) -> dict[str, Any]:
    """Return the schema of a type; raises ``TypeError`` for one that an answer may not hold."""
    if hint in PLAIN:
        return PLAIN[hint]
    origin, inside = get_origin(hint), get_args(hint)
    if origin is Literal:
        return {"enum": list(inside)}
    if origin in (Union, UnionType):
        return {"anyOf": [_schema(each, definitions) for each in inside]}
    if origin is tuple and inside[1:] == (...,):
        return {"type": "array", "items": _schema(inside[0], definitions)}
    if origin is not None and issubclass(origin, Mapping):
        return {"type": "object", "additionalProperties": _schema(inside[1], definitions)}
    if is_dataclass(hint):
        name = hint.__name__  # type: ignore[union-attr]
        if name not in definitions:
            definitions[name] = {}  # stands until its own parts are known
            definitions[name] = _object(hint, definitions)
        return {"$ref": f"#/$defs/{name}"}
    raise TypeError(f"an answer may not hold {hint!r}")
