"""Below the papers nothing opens a file, prints, or asks the clock; both arrive as arguments."""

from __future__ import annotations

import ast

import pytest

from .tree import modules

ABOVE = {"web", "cli", "actions", "documents", "storage"}
PACKAGED_DATA = {"tables", "firm"}  # each reads what is shipped with it, once
READS = {"open", "read_text", "read_bytes"}
WRITES = {"write_text", "write_bytes", "mkdir", "unlink", "print", "input"}
CLOCK = {"now", "utcnow", "today", "fromtimestamp"}


def calls(tree: ast.Module):
    """The name at the end of every call, and its line."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name | ast.Attribute):
            name = node.func.id if isinstance(node.func, ast.Name) else node.func.attr
            yield name, node.lineno


def outside(place: str, tree: ast.Module) -> list[str]:
    """What a module below the papers does that it should be given instead."""
    room = place.split("/")[2]
    if room in ABOVE:
        return []
    forbidden = WRITES | CLOCK | (set() if room in PACKAGED_DATA else READS)
    return [f"{place}:{line} {name}" for name, line in calls(tree) if name in forbidden]


def test_nothing_below_the_papers_reaches_outside():
    assert not [found for place, tree in modules().items() for found in outside(place, tree)]


@pytest.mark.parametrize("line", ["open('x')", "Path('x').write_text('')", "date.today()"])
def test_it_would_be_found(line):
    assert outside("src/ampwright/design/x.py", ast.parse(line))
