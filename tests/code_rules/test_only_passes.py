"""What can only pass is a note: every requirement can fail, and none is asked what is answered.

A pass that nothing could have failed teaches a reader to skip those that could. Whether each one
does fail in some home is asked beside the clauses (``test_clauses_in_options.py``).
"""

from __future__ import annotations

import ast
from collections.abc import Iterator

import pytest

from .tree import modules

PASSES = {"Outcome.PASS", "Outcome.NOT_APPLICABLE"}


def name_of(node: ast.expr) -> str:
    """The last name of a call or a decorator."""
    node = node.func if isinstance(node, ast.Call) else node
    return getattr(node, "id", getattr(node, "attr", ""))


def requirements() -> Iterator[tuple[str, ast.FunctionDef]]:
    """Every function that requires something, with the module it stands in."""
    for place, tree in modules().items():
        for node in ast.walk(tree):
            if isinstance(node, ast.FunctionDef) and requires(node):
                yield place, node


def requires(node: ast.FunctionDef) -> bool:
    """Whether a function requires something."""
    return "requires" in map(name_of, node.decorator_list)


def may_fail(node: ast.FunctionDef) -> bool:
    """Whether anything that a requirement finds may be other than a pass."""
    return any(isinstance(call, ast.Call) and judges(call) for call in ast.walk(node))


def judges(call: ast.Call) -> bool:
    """Whether a finding may be a failure, or that something is lacking."""
    name, said = name_of(call), [ast.unparse(each) for each in call.args]
    if name in {"at_most", "at_least"}:
        return said[0] != said[1]
    if name == "holds":
        return said[0] != "True"
    if name == "Finding":
        return said[0] not in PASSES
    return name == "undetermined"


def answered(call: ast.Call) -> bool:
    """Whether what is handed to a requirement settles it: constants, or one thing twice."""
    given = [*call.args, *(word.value for word in call.keywords)]
    twice = len(given) > 1 and len(set(map(ast.unparse, given))) == 1
    return twice or all(isinstance(each, ast.Constant) for each in given)


def test_every_requirement_may_fail():
    only_pass = [f"{place}: {node.name}" for place, node in requirements() if not may_fail(node)]
    assert only_pass == [], "declare it with tells: it is a note"


def test_no_requirement_is_asked_what_is_answered():
    names = {node.name for _, node in requirements()}
    vain = [
        f"{place}:{node.lineno} {ast.unparse(node)}"
        for place, tree in modules().items()
        for node in ast.walk(tree)
        if isinstance(node, ast.Call) and name_of(node) in names and answered(node)
    ]
    assert vain == [], "nothing can fail by it: tell it, or leave it out"


@pytest.mark.parametrize(
    ("body", "may"),
    [
        ("return holds(True, why)", False),
        ("return Finding(Outcome.PASS, U, low)", False),
        ("return at_most(limit, limit)", False),
        ("return holds(True) if so else not_applicable('no')", False),
        ("return holds(so, why)", True),
        ("return at_most(I, limit)", True),
        ("return holds(True) if so else undetermined('who knows')", True),
        ("return Finding(outcome, last, expected)", True),
    ],
)
def test_what_can_only_pass_is_seen(body, may):
    (node,) = ast.parse(f"def f(so):\n    {body}").body
    assert may_fail(node) is may


@pytest.mark.parametrize(
    ("call", "settled"),
    [("f(limit, limit)", True), ("f(True)", True), ("f()", True), ("f(seen, limit)", False),
     ("f(False, phases)", False), ("f(seen)", False), ("f(seen=seen)", False)],
)  # fmt: skip
def test_what_is_answered_is_seen(call, settled):
    node = ast.parse(call, mode="eval").body
    assert answered(node) is settled
