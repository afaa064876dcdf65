"""Every clause is asked by a stage, or is listed with why no stage asks it.

A clause is asked where a module outside the room of clauses brings it in by name, or where another
clause calls it. What is listed and asked all the same fails as well, so the list says how things
stand.
"""

from __future__ import annotations

import ast
import tomllib
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

from ampwright.standards.catalogue import clauses

from .tree import modules

DATA = Path(__file__).with_name("clauses_asked.toml")
ROOM = "ampwright.standards"


@cache
def kept() -> dict[str, Any]:
    return tomllib.loads(DATA.read_text("utf-8"))


def brought_in() -> set[tuple[str, str]]:
    """Every clause that a module outside the room brings in, or reaches by its module's name."""
    return {
        found
        for place, tree in modules().items()
        if place.split("/")[2] != "standards"
        for found in (*by_name(tree), *by_module(tree))
    }


def by_name(tree: ast.Module) -> Iterator[tuple[str, str]]:
    """Yield every name brought in from the room, with its module."""
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith(ROOM):
            yield from ((str(node.module), each.name) for each in node.names)


def by_module(tree: ast.Module) -> Iterator[tuple[str, str]]:
    """Yield every name reached by that of a module of the room, with the module."""
    inside = {name: f"{module}.{name}" for module, name in by_name(tree) if module == ROOM}
    for node in ast.walk(tree):
        named = isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name)
        if named and node.value.id in inside:
            yield inside[node.value.id], node.attr


def called_inside() -> set[str]:
    """Every name that a clause calls or reads."""
    return {
        node.id
        for place, tree in modules().items()
        if place.split("/")[2] == "standards"
        for node in ast.walk(tree)
        if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Load)
    }


def test_every_clause_is_asked_or_listed():
    asked, inside = brought_in(), called_inside()
    waiting = {
        each.id
        for each in clauses()
        if (each.module, each.id) not in asked and each.id not in inside
    }
    listed = [each["clause"] for each in kept()["apart"]]
    assert sorted(waiting - set(listed)) == [], "let a stage ask it, or say why none does"
    assert sorted(set(listed) - waiting) == [], "a stage asks it: take it off the list"
    assert len(listed) == len(set(listed))


def test_every_reason_is_given_and_used():
    assert {each["why"] for each in kept()["apart"]} == set(kept()["reasons"])
    assert all(len(reason) > 20 for reason in kept()["reasons"].values())
