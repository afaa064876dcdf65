"""A number is worked out only where its formula is declared, so that no working is ever lost.

A stage that adds two currents itself would hand on a bare number: right, but without its formula,
its inputs and its place. Rooms of numbers alone (arrays, indices) are not looked at.
"""

from __future__ import annotations

import ast

import pytest

from .tree import modules

ROOMS = {"standards", "demand", "supply", "network", "design", "costing"}
SEATS = {
    f"src/ampwright/{name}.py"
    for name in (
        "demand/moving", "demand/outlets", "design/board/freed", "design/board/levels",
        "design/board/rack", "design/board/ways", "standards/network/meter_point",
    )
}  # fmt: skip
"""Where something sits on a board and which of two seatings is the lighter: places counted and
compared, none of them handed on as a number. The digits of a meter number are no quantities."""
DECLARES = {"computes", "requires"}
SUMS = {"sum", "min", "max", "abs", "round", "sqrt", "prod", "fsum"}
OPERATIONS = ast.Add | ast.Sub | ast.Mult | ast.Div | ast.FloorDiv | ast.Mod | ast.Pow
TEXT_OR_ROW = ast.Tuple | ast.List | ast.JoinedStr


def name_of(node: ast.expr) -> str:
    """The last name of a call or a decorator."""
    node = node.func if isinstance(node, ast.Call) else node
    return getattr(node, "id", getattr(node, "attr", ""))


def joins(node: ast.BinOp) -> bool:
    """Whether an operation visibly joins texts or rows instead of numbers."""
    sides = (node.left, node.right)
    return any(
        isinstance(side, TEXT_OR_ROW)
        or (isinstance(side, ast.Constant) and isinstance(side.value, str))
        for side in sides
    )


def works_out(node: ast.AST) -> bool:
    """Whether a node makes a number out of numbers; the largest *by* something only picks."""
    if isinstance(node, ast.BinOp):
        return isinstance(node.op, OPERATIONS) and not joins(node)
    if isinstance(node, ast.AugAssign):
        return isinstance(node.op, OPERATIONS)
    if isinstance(node, ast.Call):
        return name_of(node) in SUMS and not any(word.arg == "key" for word in node.keywords)
    return False


def declares(node: ast.AST) -> bool:
    """Whether a node is a function that carries its printed formula."""
    decorators = node.decorator_list if isinstance(node, ast.FunctionDef) else []
    return bool(DECLARES & {name_of(decorator) for decorator in decorators})


def undeclared(node: ast.AST) -> list[int]:
    """The lines of arithmetic below a node, leaving out functions that declare their formula."""
    if declares(node):
        return []
    found = [node.lineno] if works_out(node) else []
    return found + [line for child in ast.iter_child_nodes(node) for line in undeclared(child)]


def test_arithmetic_is_declared():
    loose = [
        f"{place}:{line}"
        for place, tree in modules().items()
        if place.split("/")[2] in ROOMS and place not in SEATS
        for line in undeclared(tree)
    ]
    assert not loose, "declare a formula with @computes; to join rows write (*a, *b)"


@pytest.mark.parametrize(
    "body", ["return a + b", "return max(a, b)", "a *= 2\n return a", "return [x / 2 for x in a]"]
)
def test_loose_arithmetic_would_be_found(body):
    assert undeclared(ast.parse(f"def stage(a, b):\n {body}"))


@pytest.mark.parametrize(
    "code",
    [
        "@computes('Zs', 'Ω', formula='a + b', place=AT)\ndef loop(a, b):\n return a + b",
        "def stage(a, b):\n return a < b",
        "def stage(a, b):\n return (*a, *b), 'x' + a, max(a, key=size)",
    ],
)
def test_what_is_allowed_passes(code):
    assert not undeclared(ast.parse(code))
