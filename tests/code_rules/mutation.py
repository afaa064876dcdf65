"""Deliberate faults, one at a time, in the code that says what is safe.

A module is parsed, one spot is changed and the whole is run again under its own name; the cases
that other people's figures and the limits give must notice. What nobody notices survives.
"""

from __future__ import annotations

import ast
import inspect
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from importlib import import_module
from typing import Any

from ampwright.foundations.checks import at_least, at_most

Namespace = Mapping[str, Any]
Killer = Callable[[Namespace], str]
"""Given a module's names, says what is wrong with them; nothing where all is well."""

ARITHMETIC = {
    ast.Add: (ast.Sub,),
    ast.Sub: (ast.Add,),
    ast.Mult: (ast.Div,),
    ast.Div: (ast.Mult,),
    ast.Pow: (ast.Mult,),
}
COMPARISON = {
    ast.Lt: (ast.LtE, ast.GtE),
    ast.LtE: (ast.Lt, ast.Gt),
    ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,),
    ast.NotEq: (ast.Eq,),
    ast.In: (ast.NotIn,),
    ast.NotIn: (ast.In,),
    ast.Is: (ast.IsNot,),
    ast.IsNot: (ast.Is,),
}
NAMES = {"min": "max", "max": "min", "at_most": "at_least", "at_least": "at_most"}
FINDINGS = {"at_most": 2, "at_least": 2, "holds": 1, "not_applicable": 0, "undetermined": 0}
"""How many of a finding's arguments judge; the rest are words."""


@dataclass(frozen=True)
class Subject:
    """A module to put faults into, and what must notice them."""

    module: str
    killers: tuple[tuple[str, Killer], ...]
    """Each with the name of the function it looks at, so that the nearest is tried first."""


@dataclass(frozen=True)
class Mutant:
    """One fault: where it is, how the statement reads now, and the module with it."""

    subject: Subject
    function: str
    reads: str
    code: Any

    @property
    def id(self) -> str:
        short = self.subject.module.removeprefix("ampwright.")
        return f"{short}.{self.function}: {self.reads}"


@dataclass(frozen=True)
class Spot:
    """One change to the tree, and how to take it back."""

    change: Callable[[], None]
    restore: Callable[[], None]


def mutants(subject: Subject) -> Iterator[Mutant]:
    """Yield every mutant of a module's functions and rows."""
    tree = ast.parse(inspect.getsource(import_module(subject.module)))
    for name, statement in judging(tree):
        for spot in spots(statement):
            spot.change()
            ast.fix_missing_locations(tree)
            reads = " ".join(ast.unparse(statement).split())
            yield Mutant(subject, name, reads, compile(tree, subject.module, "exec"))
            spot.restore()


def judging(tree: ast.Module) -> Iterator[tuple[str, ast.AST]]:
    """Yield the statements of every function, and the tests of every ruling's rows."""
    for node in tree.body:
        if isinstance(node, ast.FunctionDef):
            body = node.body[1:] if ast.get_docstring(node) else node.body
            for statement in body:
                yield node.name, statement
        elif isinstance(node, ast.Assign | ast.AnnAssign):
            target = node.targets[0] if isinstance(node, ast.Assign) else node.target
            for inner in ast.walk(node):
                if isinstance(inner, ast.Lambda):
                    yield ast.unparse(target), inner


def spots(root: ast.AST) -> Iterator[Spot]:
    """Yield every change that can be made below a node."""
    for node in walk(root):
        if isinstance(node, ast.BinOp):
            yield from swapped(node, "op", [kind() for kind in ARITHMETIC.get(type(node.op), ())])
        elif isinstance(node, ast.Compare):
            yield from compared(node)
        elif isinstance(node, ast.BoolOp):
            yield from swapped(
                node, "op", [ast.Or() if isinstance(node.op, ast.And) else ast.And()]
            )
        elif isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            yield from called(node)
        elif isinstance(node, ast.Constant):
            yield from swapped(node, "value", values(node.value))
        if isinstance(node, ast.If | ast.IfExp | ast.Lambda):
            yield from negated(node, "body" if isinstance(node, ast.Lambda) else "test")


def walk(root: ast.AST) -> Iterator[ast.AST]:
    """Yield a node and all below it, leaving out what is only words."""
    yield root
    children = list(ast.iter_child_nodes(root))
    if isinstance(root, ast.Call) and getattr(root.func, "id", "") in FINDINGS:
        children = root.args[: FINDINGS[root.func.id]]
    if isinstance(root, ast.JoinedStr | ast.Raise):
        children = []
    if isinstance(root, ast.arguments | ast.arg):
        children = []
    for child in children:
        yield from walk(child)


def swapped(node: ast.AST, field: str, others: list[Any]) -> Iterator[Spot]:
    """Yield one change for each other value of a field."""
    now = getattr(node, field)
    for other in others:
        yield Spot(
            lambda other=other: setattr(node, field, other), lambda: setattr(node, field, now)
        )


def compared(node: ast.Compare) -> Iterator[Spot]:
    """Yield each comparison with its limit moved to the other side, and turned round."""
    for place, op in enumerate(node.ops):
        others = [
            [*node.ops[:place], kind(), *node.ops[place + 1 :]] for kind in COMPARISON[type(op)]
        ]
        yield from swapped(node, "ops", others)


def called(node: ast.Call) -> Iterator[Spot]:
    """Yield a call of the opposite, and a bare statement turned round."""
    name = node.func.id
    if name in NAMES:
        yield from swapped(node, "func", [ast.Name(NAMES[name], ast.Load())])
    if name == "holds" and isinstance(node.args[0], ast.Name | ast.Attribute | ast.UnaryOp):
        turned = [turn(node.args[0]), *node.args[1:]]
        yield from swapped(node, "args", [turned])


def negated(node: ast.AST, field: str) -> Iterator[Spot]:
    """Yield a condition turned round, unless its own operator is changed anyway."""
    test = getattr(node, field)
    if isinstance(test, ast.Name | ast.Attribute | ast.Call | ast.UnaryOp):
        yield from swapped(node, field, [turn(test)])


def turn(test: ast.expr) -> ast.expr:
    """Return the opposite of a condition."""
    if isinstance(test, ast.UnaryOp) and isinstance(test.op, ast.Not):
        return test.operand
    return ast.UnaryOp(ast.Not(), test)


def values(value: object) -> list[Any]:
    """Return wrong values of a constant: one per cent either way, and one for whole numbers."""
    if isinstance(value, bool):
        return [not value]
    if isinstance(value, int):
        near = [value * 1.01, value * 0.99] if value else []
        return [*near, value + 1, value - 1]
    return [value * 1.01, value * 0.99] if isinstance(value, float) else []


def fate(mutant: Mutant) -> str:
    """Say what became of a mutant: ``killed``, ``alive``, or ``not code`` where it cannot run."""
    names: dict[str, Any] = {
        "__name__": mutant.subject.module,
        "__package__": mutant.subject.module.rpartition(".")[0],
        "at_least": at_least,
        "at_most": at_most,
    }  # a module brings in only the findings that it uses itself
    try:
        exec(mutant.code, names)
        for _, killer in sorted(
            mutant.subject.killers, key=lambda killer: killer[0] != mutant.function
        ):
            if killer(names):
                return "killed"
    except TypeError:
        return "not code"
    except (ArithmeticError, LookupError, ValueError):
        return "killed"
    return "alive"
