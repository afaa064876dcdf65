"""A function fits on a screen, a module in a sitting, and every room says what it is."""

from __future__ import annotations

import ast
import re

import pytest

from .tree import ROOT, modules, rooms, sources

LONGEST_MODULE = 400
LONGEST_FUNCTION = 40


def code_lines(function: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    """The lines of a function less its docstring, whose examples may be long."""
    lines = function.end_lineno - function.lineno + 1
    if ast.get_docstring(function) is None:
        return lines
    return lines - (function.body[0].end_lineno - function.body[0].lineno + 1)


def test_modules_are_short():
    long = {
        place: text.count("\n")
        for place, text in sources().items()
        if place.endswith(".py") and text.count("\n") > LONGEST_MODULE
    }
    assert not long


def test_functions_are_short():
    long = [
        f"{place}:{node.lineno} {node.name} {code_lines(node)}"
        for place, tree in modules().items()
        for node in ast.walk(tree)
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
        and code_lines(node) > LONGEST_FUNCTION
    ]
    assert not long


@pytest.mark.parametrize("room", rooms(), ids=lambda room: room.name)
def test_a_room_says_what_it_holds_in_one_sentence(room):
    says = ast.get_docstring(ast.parse((room / "__init__.py").read_text(encoding="utf-8"))) or ""
    assert re.fullmatch(r"[A-Z][^\n]*\.", says), "one line, from a capital to a full stop"
    assert not re.search(r"\.\s", says), "one sentence"


def test_the_map_in_the_readme_names_every_room():
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    on_the_map = set(re.findall(r"^\| `(\w+)` \|", readme, flags=re.MULTILINE))
    assert {room.name for room in rooms()} <= on_the_map
