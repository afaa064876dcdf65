r"""Numbers that remember how they were reached.

A worked number *is* a float, so formulas stay ordinary arithmetic and the type checker
sees only ``Ohms`` or ``Amperes``. Plain numbers in give a plain number out; as soon as one
input has a working, so has the result.

Examples
--------
>>> from ampwright.foundations.quantity import Ohms
>>> @computes("Zs", "Ω", formula="Ze + R1R2", place=Place("example"))
... def loop(Ze: Ohms, R1R2: Ohms) -> Ohms:
...     return Ohms(Ze + R1R2)
>>> loop(Ohms(0.35), Ohms(0.12))
0.47
>>> Ze = given("Ze", Ohms(0.35), "Ω", Said("supply.ze_ohm", Evidence.MEASURED))
>>> print(*working(loop(Ze, Ohms(0.12))), sep="\n")
Ze = 0.35 Ω  [supply.ze_ohm: measured]
Zs = Ze + R1R2 = 0.35 + 0.12 = 0.47 Ω  [example]
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import wraps
from inspect import signature
from typing import Any, Final, ParamSpec, TypeVar, cast

from .source import Evidence, Place, Said, Source

P = ParamSpec("P")
T = TypeVar("T", bound=float)


def largest(numbers: Iterable[float], count: int) -> float:
    """Return the sum of the ``count`` largest numbers.

    Examples
    --------
    >>> largest((3.0, 9.0, 5.0), 2)
    14.0
    """
    return float(sum(sorted(numbers, reverse=True)[:count]))


def next_up(needed: float, sizes: Iterable[float]) -> float:
    """Return the least of some sizes that is not below what is needed.

    Raises ``ValueError`` when every size is below it.

    Examples
    --------
    >>> next_up(21.0, (16.0, 20.0, 25.0, 32.0))
    25.0
    """
    return min(size for size in sizes if size >= needed)


DUST: Final = 5e-7


def nearest(number: float) -> int:
    """Return the nearest whole number, halves upward, as tax offices round pence.

    Half a millionth below a half is dust of the machine's arithmetic and counts as the half.

    Examples
    --------
    >>> nearest(80.5), nearest(80.49), nearest(1030 * 1.15)
    (81, 80, 1185)
    """
    return math.floor(number + 0.5 + DUST)


def upward(number: float) -> int:
    """Return the least whole number not below this one; half a millionth above is dust.

    Examples
    --------
    >>> upward(23.2), upward(3 * 1.1 / 0.3), upward(4.0)
    (24, 11, 4)
    """
    return math.ceil(number - DUST)


FORMULA_WORDS: dict[str, Callable[..., float]] = {
    "min": min,
    "max": max,
    "sum": lambda numbers: float(sum(numbers)),
    "abs": abs,
    "sqrt": math.sqrt,
    "ln": math.log,
    "largest": largest,
    "next_up": next_up,
    "nearest": nearest,
    "upward": upward,
}
"""The words a printed formula may use beside its symbols, and what they mean."""


@dataclass(frozen=True, slots=True)
class Step:
    """What a number is called, how it is worked out and where that is written."""

    symbol: str
    unit: str
    source: Source
    formula: str = ""
    names: tuple[str, ...] = ()


class Worked(float):
    """A float with its step and its inputs; treat as frozen, never use as a key."""

    __slots__ = ("inputs", "step")
    step: Step
    inputs: tuple[Any, ...]

    def __new__(cls, value: float, step: Step, inputs: tuple[Any, ...] = ()) -> Worked:
        """Attach a step and its inputs to a value."""
        self = float.__new__(cls, value)
        self.step = step
        self.inputs = inputs
        return self

    def __reduce__(self) -> tuple[type[Worked], tuple[float, Step, tuple[Any, ...]]]:
        """Keep the working when the number is copied or pickled."""
        return (type(self), (float(self), self.step, self.inputs))


@dataclass(frozen=True, slots=True)
class Formula:
    """A clause that computes: its step and the plain function behind it."""

    name: str
    step: Step
    body: Callable[..., float]


def given(symbol: str, value: T, unit: str, source: Source) -> T:
    """Mark a number as a starting point: read, stated, published, chosen or assumed."""
    return cast(T, Worked(value, Step(symbol, unit, source)))


def has_working(value: object) -> bool:
    """Say whether a number, or any number of a tuple, carries a working."""
    kind = type(value)
    if kind is Worked:
        return True
    return kind is tuple and Worked in map(type, cast(tuple[object, ...], value))


def computes(
    symbol: str, unit: str, *, formula: str, place: Place
) -> Callable[[Callable[P, T]], Callable[P, T]]:
    """Declare the printed formula of a function that computes one number.

    The decorated function has the same signature for the type checker. ``formula`` is what
    people read; a test evaluates it against the function, so the two cannot drift apart.
    The body stays reachable as ``.plain`` and the declaration as ``.clause``.
    """

    def decorate(body: Callable[P, T]) -> Callable[P, T]:
        names = tuple(signature(body).parameters)
        step = Step(symbol, unit, place, formula, names)

        @wraps(body)
        def keep(*args: P.args, **kwargs: P.kwargs) -> T:
            value = body(*args, **kwargs)
            inputs: tuple[Any, ...] = args
            if kwargs:
                inputs = args + tuple(kwargs[name] for name in names[len(args) :])
            for each in inputs:
                kind = type(each)
                if kind is Worked or (kind is tuple and has_working(each)):
                    return cast(T, Worked(value, step, inputs))
            return value

        found = cast(Any, keep)
        found.plain = body
        found.clause = Formula(f"{body.__module__}.{body.__qualname__}", step, body)
        return cast(Callable[P, T], keep)

    return decorate


def walk(number: object) -> Iterator[object]:
    """Yield every number that went into this one, inputs before results, each once."""
    seen: set[int] = set()

    def visit(node: object) -> Iterator[object]:
        if isinstance(node, tuple):
            for each in node:
                yield from visit(each)
        elif id(node) not in seen:
            seen.add(id(node))
            if isinstance(node, Worked):
                yield from visit(node.inputs)
            yield node

    yield from visit(number)


def orphans(number: object) -> list[object]:
    """Return the numbers in this working that nobody has given a source."""
    return [node for node in walk(number) if not isinstance(node, Worked)]


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a working, in pieces, so that a paper may set it as it likes."""

    symbol: str
    formula: str
    numbers: str
    result: str
    unit: str
    source: Source

    def __str__(self) -> str:
        """Render the line as text."""
        shown = f"{self.result} {self.unit}".rstrip()
        if not self.formula:
            return f"{self.symbol} = {shown}  [{self.source}]"
        return f"{self.symbol} = {self.formula} = {self.numbers} = {shown}  [{self.source}]"


def working(number: object, digits: int = 4) -> Iterator[Line]:
    """Yield the working of a number, one line a step, inputs before results."""
    for node in walk(number):
        if not isinstance(node, Worked):
            continue
        step = node.step
        numbers = ""
        if step.formula:
            values = dict(zip(step.names, node.inputs, strict=True))
            numbers = substitute(step.formula, values, digits)
        yield Line(step.symbol, step.formula, numbers, figure(node, digits), step.unit, step.source)


def figure(value: object, digits: int = 4) -> str:
    """Render a number, or a tuple of them, to so many significant figures.

    Examples
    --------
    >>> figure(0.473213), figure((15.0, 10.0)), figure(1667.0)
    ('0.4732', '15, 10', '1667')
    """
    if isinstance(value, tuple):
        return ", ".join(figure(each, digits) for each in value)
    number = float(cast(float, value))
    if abs(number) >= 10**digits:
        return f"{number:.0f}"
    return f"{number:.{digits}g}"


def substitute(formula: str, values: dict[str, object], digits: int = 4) -> str:
    """Put numbers in the place of symbols.

    Examples
    --------
    >>> substitute("Ze + R1R2", {"Ze": 0.35, "R1R2": 0.12})
    '0.35 + 0.12'
    """

    def number(match: re.Match[str]) -> str:
        name = match[0]
        return figure(values[name], digits) if name in values else name

    return re.sub(r"[A-Za-z_][A-Za-z_0-9]*", number, formula)


__all__ = [
    "FORMULA_WORDS", "Evidence", "Formula", "Line", "Place", "Said", "Step", "Worked",
    "computes", "figure", "given", "has_working", "largest", "nearest", "next_up",
    "orphans", "substitute", "upward", "walk", "working",
]  # fmt: skip
