"""Deliberate faults in the stages, put into the running code of one function at a time.

Who must notice are the tests of the stage's own room that state their answer themselves: figures
of the worked homes, of tables and of documents, sums done by hand, and cases at a limit. A test
that only holds the code against itself does not count: one that draws its cases, or that sets the
documented run beside the plain one.
"""

from __future__ import annotations

import ast
import inspect
import signal
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from importlib import import_module
from itertools import product
from pathlib import Path
from types import CodeType, FunctionType
from typing import Any

import pytest

from ampwright.foundations.rulings import Ruling

from .mutation import spots
from .tree import PACKAGE, ROOT

LONGEST_TEST_S = 2.0
"""A fault that makes a test run longer than this was noticed: it never ends."""


@dataclass(frozen=True)
class Fault:
    """One change to one function: how its statement reads now, and the function with it."""

    module: str
    function: str
    reads: str
    code: CodeType

    @property
    def id(self) -> str:
        return f"{self.module.removeprefix('ampwright.')}.{self.function}: {self.reads}"


@dataclass
class Noticer:
    """One test with one set of its arguments, and how long it takes."""

    name: str
    run: Callable[[], None]
    seconds: float = 0.0


def modules_of(rooms: tuple[str, ...]) -> list[str]:
    """Every module of some rooms, by its full name."""
    paths = [path for room in rooms for path in sorted((PACKAGE / room).rglob("*.py"))]
    return [
        ".".join(("ampwright", *path.relative_to(PACKAGE).with_suffix("").parts))
        for path in paths
        if path.name != "__init__.py"
    ]


def definitions(module: str) -> Iterator[tuple[str, ast.FunctionDef | ast.Lambda]]:
    """Yield every function, method and row of a ruling that a module defines."""
    tree = ast.parse(inspect.getsource(import_module(module)))
    for node in tree.body:
        if isinstance(node, ast.FunctionDef):
            yield node.name, node
        elif isinstance(node, ast.ClassDef):
            for inner in node.body:
                if isinstance(inner, ast.FunctionDef):
                    yield f"{node.name}.{inner.name}", inner
        elif isinstance(node, ast.Assign | ast.AnnAssign):
            target = node.targets[0] if isinstance(node, ast.Assign) else node.target
            for inner in ast.walk(node):
                if isinstance(inner, ast.Lambda):
                    yield ast.unparse(target), inner


def faults(module: str) -> Iterator[Fault]:
    """Yield every fault of a module, one at a time."""
    for name, node in definitions(module):
        sound, whole = code_of(node, module), counted(node)
        for statement in statements(node):
            for spot in spots(statement):
                spot.change()
                ast.fix_missing_locations(node)
                fault = Fault(module, name, told(statement), code_of(node, module))
                senseless = any(type(each.value) is not int for each in whole)
                spot.restore()
                if fault.code != sound and not senseless:
                    yield fault


def told(statement: ast.AST) -> str:
    """Return how a statement reads, on one line."""
    return " ".join(ast.unparse(statement).split())


def counted(node: ast.AST) -> list[ast.Constant]:
    """Return the whole numbers that something counted is held against, or that stand for a place.

    They are changed by one; a hundredth more of a thing that is counted is no fault.
    """
    inside: list[ast.AST] = []
    for each in ast.walk(node):
        if isinstance(each, ast.Compare):
            inside += [each.left, *each.comparators]
        elif isinstance(each, ast.Subscript):
            inside.append(each.slice)
        elif isinstance(each, ast.Call) and getattr(each.func, "id", "") == "Count":
            inside += each.args
    return [each for each in inside if isinstance(each, ast.Constant) and type(each.value) is int]


def statements(node: ast.FunctionDef | ast.Lambda) -> list[ast.AST]:
    """Return what of a definition is judged: its body without what it says of itself."""
    if isinstance(node, ast.Lambda):
        return [node]
    return list(node.body[1:] if ast.get_docstring(node) else node.body)


def code_of(node: ast.FunctionDef | ast.Lambda, module: str) -> CodeType:
    """Compile one definition by itself."""
    whole: ast.Module
    if isinstance(node, ast.Lambda):
        whole = ast.Module([ast.Expr(node, lineno=node.lineno, col_offset=0)], [])
    else:
        whole = ast.Module([node], [])
    made = compile(whole, module, "exec", flags=annotations.compiler_flag, dont_inherit=True)
    name = "<lambda>" if isinstance(node, ast.Lambda) else node.name
    return next(c for c in made.co_consts if isinstance(c, CodeType) and c.co_name == name)


def function_of(fault: Fault) -> FunctionType | None:
    """Return the function that a fault is put into; none where it cannot be reached."""
    found: Any = sys.modules[fault.module]
    for step in fault.function.split("."):
        found = vars(found)[step]
    if isinstance(found, Ruling):
        return next(
            (row.test for row in found.rows if row.test.__code__.co_firstlineno
             == fault.code.co_firstlineno),
            None,
        )  # fmt: skip
    for step in ("fget", "func", "plain", "__func__", "__wrapped__"):
        found = getattr(found, step, found)
    reached = isinstance(found, FunctionType)
    return found if reached and found.__code__.co_freevars == fault.code.co_freevars else None


@contextmanager
def put_in(fault: Fault, function: FunctionType) -> Iterator[None]:
    """Run with a fault in place."""
    sound = function.__code__
    function.__code__ = fault.code
    try:
        yield
    finally:
        function.__code__ = sound


def noticers(path: Path, left_out: Callable[[str], bool]) -> Iterator[Noticer]:
    """Yield the tests of a file that state their answer, with each set of their arguments."""
    module = import_module(".".join(path.relative_to(ROOT).with_suffix("").parts))
    for name, thing in vars(module).items():
        if inspect.isclass(thing) and name.startswith("Test"):
            for inner, method in vars(thing).items():
                if inner.startswith("test"):
                    yield from expanded(
                        f"{module.__name__}.{name}.{inner}", method, thing, left_out
                    )
        elif name.startswith("test") and inspect.isfunction(thing):
            yield from expanded(f"{module.__name__}.{name}", thing, None, left_out)


def expanded(
    name: str, test: Any, owner: type | None, left_out: Callable[[str], bool]
) -> Iterator[Noticer]:
    """Yield a test once for each set of its arguments; one that wants more is left out."""
    if left_out(name) or hasattr(test, "hypothesis"):
        return
    marks = [*getattr(test, "pytestmark", ()), *getattr(owner, "pytestmark", ())]
    columns = [arguments(mark) for mark in marks if mark.name == "parametrize"]
    wanted = set(inspect.signature(test).parameters) - {"self"}
    if wanted != {key for column in columns for key in column[0]}:
        return
    for number, chosen in enumerate(product(*columns)):
        given = {key: value for each in chosen for key, value in each.items()}
        yield Noticer(f"{name}[{number}]", lambda given=given: call(test, owner, given))


def arguments(mark: pytest.Mark) -> list[dict[str, Any]]:
    """Return the sets of arguments that one mark gives."""
    names = mark.args[0]
    if isinstance(names, str):
        names = [each.strip() for each in names.split(",")]
    found = []
    for each in mark.args[1]:
        values = getattr(each, "values", None) if type(each).__name__ == "ParameterSet" else None
        if values is None:
            values = each if len(names) > 1 else (each,)
        found.append(dict(zip(names, values, strict=True)))
    return found


def call(test: Any, owner: type | None, given: dict[str, Any]) -> None:
    """Run a test."""
    if owner is None:
        test(**given)
    else:
        getattr(owner(), test.__name__)(**given)


Where = tuple[str, int]
"""A function by its file and the line on which it begins."""


def reached_by(run: Callable[[], None]) -> set[Where]:
    """Run a test and return every function of the package that it went through."""
    inside, found = str(PACKAGE), set()

    def note(frame: Any, event: str, _: Any) -> None:
        code = frame.f_code
        if event == "call" and code.co_filename.startswith(inside):
            found.add((code.co_filename, code.co_firstlineno))

    sys.setprofile(note)
    try:
        run()
    finally:
        sys.setprofile(None)
    return found


def by_function(tests: list[Noticer]) -> dict[Where, list[Noticer]]:
    """Return which tests go through each function, the quickest first."""
    found: dict[Where, list[Noticer]] = {}
    for test in tests:
        test.run()
        for where in reached_by(test.run):
            found.setdefault(where, []).append(test)
        began = time.perf_counter()
        test.run()
        test.seconds = time.perf_counter() - began
    for through in found.values():
        through.sort(key=lambda test: test.seconds)
    return found


class NeverEndsError(Exception):
    """A test with a fault in place runs on and on."""


@contextmanager
def no_longer_than(seconds: float) -> Iterator[None]:
    """Stop what runs longer than this."""

    def stop(*_: Any) -> None:
        raise NeverEndsError

    before = signal.signal(signal.SIGALRM, stop)
    signal.setitimer(signal.ITIMER_REAL, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)


def fate(fault: Fault, through: dict[Where, list[Noticer]]) -> str:
    """Say what became of a fault: ``killed``, ``alive``, or ``not code`` where it cannot run."""
    function = function_of(fault)
    if function is None:
        return "out of reach"
    sound = function.__code__
    tests = through.get((sound.co_filename, sound.co_firstlineno), [])
    with put_in(fault, function):
        for test in tests:
            try:
                with no_longer_than(LONGEST_TEST_S):
                    test.run()
            except TypeError:
                return "not code"
            except BaseException:
                return "killed"
    return "alive"
