"""Printed formulas, turned from the text beside the code into something a person reads.

A formula is kept as one line of arithmetic so that a test can hold it to the code. Paper wants
fractions, lowered letters and words: ``drawn`` gives those as nested pieces, ``readable`` the
same on one line.
"""

from __future__ import annotations

import ast
from collections.abc import Sequence

from ampwright.foundations.errors import InputError

from .symbols import Drawn, plain, symbol

SUM, PRODUCT, POWER, ATOM = 1, 2, 3, 4
SIGNS: dict[type[ast.operator], tuple[str, int]] = {
    ast.Add: (" + ", SUM),
    ast.Sub: (" − ", SUM),
    ast.Mult: (" × ", PRODUCT),
}
CALLS = {"min": "least", "max": "largest", "sum": "sum", "ln": "ln",
         "nearest": "nearest whole of ", "upward": "whole up from "}  # fmt: skip


def readable(formula: str) -> str:
    """Write a printed formula on one line as a person would; raises ``InputError`` like `drawn`.

    Examples
    --------
    >>> readable("mv * Ib * L / 1000")
    '(mV × Ib × L) / 1000'
    >>> readable("s * (sum(I) - max(I))")
    's × (sum(I) − largest(I))'
    >>> readable("next_up(32, 16, 20, 40)")
    'next size up from 32 among 16, 20, 40'
    """
    return plain(drawn(formula))


def drawn(formula: str) -> Drawn:
    """Set a printed formula, or its line of numbers.

    Takes + − × / and powers, and the words that printed formulas may use; raises ``InputError``
    for anything else, so that no programming text reaches a paper.

    Examples
    --------
    >>> drawn("s * I")
    ('row', 's', ' × ', 'I')
    >>> drawn("Ib / In")
    ('over', ('sub', 'I', 'b'), ('sub', 'I', 'n'))
    """
    try:
        tree = ast.parse(formula.strip(), mode="eval").body
    except SyntaxError:
        raise refused(formula) from None
    return piece(tree, formula)[0]


def refused(formula: str) -> InputError:
    """Say that a formula cannot be set."""
    return InputError(
        "formula", formula, "+ − * / ** and min max sum abs sqrt ln largest next_up nearest upward",
        "Write the printed formula with these.",
    )  # fmt: skip


def piece(node: ast.expr, formula: str) -> tuple[Drawn, int]:
    """Set one part of a formula and say how tightly it holds together."""
    if isinstance(node, ast.Name):
        return symbol(node.id), ATOM
    if isinstance(node, ast.Constant) and type(node.value) in (int, float):
        return number(ast.get_source_segment(formula.strip(), node) or str(node.value))
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub):
        return row("−", held(node.operand, PRODUCT, formula)), SUM
    if isinstance(node, ast.BinOp):
        return operation(node, formula)
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and not node.keywords:
        return call(node.func.id, node.args, formula)
    raise refused(formula)


def operation(node: ast.BinOp, formula: str) -> tuple[Drawn, int]:
    """Set a sum, a product, a fraction or a power."""
    if isinstance(node.op, ast.Div):
        return ("over", piece(node.left, formula)[0], piece(node.right, formula)[0]), PRODUCT
    if isinstance(node.op, ast.Pow):
        base = held(node.left, ATOM, formula)
        return ("sup", base, piece(node.right, formula)[0]), POWER
    if type(node.op) not in SIGNS:
        raise refused(formula)
    sign, binds = SIGNS[type(node.op)]
    tighter = binds + 1 if isinstance(node.op, ast.Sub) else binds
    left, right = held(node.left, binds, formula), held(node.right, tighter, formula)
    return row(left, sign, right), binds


def call(name: str, given: list[ast.expr], formula: str) -> tuple[Drawn, int]:
    """Set one of the words that printed formulas may use."""
    parts = [piece(each, formula)[0] for each in given]
    if name == "sqrt" and len(parts) == 1:
        return ("root", parts[0]), ATOM
    if name == "abs" and len(parts) == 1:
        return row("|", parts[0], "|"), ATOM
    if name == "largest" and len(parts) > 1:
        return row("sum of the ", parts[-1], " largest(", *listed(parts[:-1]), ")"), ATOM
    if name == "next_up" and len(parts) > 1:
        return row("next size up from ", parts[0], " among ", *listed(parts[1:])), SUM
    if name in CALLS and parts:
        return row(f"{CALLS[name]}(", *listed(parts), ")"), ATOM
    raise refused(formula)


def held(node: ast.expr, binds: int, formula: str) -> Drawn:
    """Set a part, in brackets where it would otherwise come apart."""
    set_part, own = piece(node, formula)
    return set_part if own >= binds else row("(", set_part, ")")


def listed(parts: Sequence[Drawn]) -> tuple[Drawn, ...]:
    """Put commas between parts."""
    spread: list[Drawn] = []
    for each in parts:
        spread += [", ", each] if spread else [each]
    return tuple(spread)


def number(text: str) -> tuple[Drawn, int]:
    """Set a number; a power of ten is written out.

    Examples
    --------
    >>> number("1.2e-05"), number("230")
    ((('row', '1.2 × ', ('sup', '10', '−5')), 2), ('230', 4))
    """
    whole, _, power = text.lower().replace("_", "").partition("e")
    if not power:
        return whole, ATOM
    raised = str(int(power)).replace("-", "−")
    return ("row", f"{whole} × ", ("sup", "10", raised)), PRODUCT


def row(*parts: Drawn) -> Drawn:
    """Join pieces, taking apart rows within rows."""
    flat: list[Drawn] = []
    for part in parts:
        flat += part[1:] if isinstance(part, tuple) and part[0] == "row" else (part,)
    return ("row", *flat) if flat else ""
