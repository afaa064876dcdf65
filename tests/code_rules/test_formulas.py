"""Wherever a formula is printed it is the code, with its inputs, its unit and no others."""

from __future__ import annotations

import ast
import math
import random
import typing

import pytest

from ampwright.foundations.quantity import UNIT_OF
from ampwright.foundations.source import Place
from ampwright.foundations.working import FORMULA_WORDS, Formula, computes
from ampwright.standards.catalogue import Kind, clauses

from .tree import rooms

WORDS = FORMULA_WORDS | {"π": math.pi}
UNITS = UNIT_OF | {"float": ""}
DRAWS = 40
ROOMS = [f"ampwright.{room.name}" for room in rooms() if room.name not in {"web", "cli"}]


def formulas(room: str) -> list[Formula]:
    """The formulas printed by one room."""
    return [each.clause.clause for each in clauses(room) if each.kind is Kind.COMPUTES]


def draw(annotation, chance):
    """A value such as a clause may be given; wide, so that every branch is taken."""
    if typing.get_origin(annotation) is tuple:
        return tuple(draw(float, chance) for _ in range(chance.choice([2, 3])))
    while isinstance(annotation, typing.NewType):
        annotation = annotation.__supertype__
    return chance.randint(1, 9) if annotation is int else chance.uniform(0.5, 60.0)


def read(text: str, given: dict[str, object]) -> float:
    """What a printed formula comes to."""
    return eval(text, {"__builtins__": {}} | WORDS, given)


def disagreements(formula: Formula) -> list[str]:
    """Where the printed formula and the code part, or how few draws either would take."""
    kinds = typing.get_type_hints(formula.body)
    chance = random.Random(formula.name)
    found, agreed = [], 0
    for _ in range(DRAWS):
        given = {name: draw(kinds[name], chance) for name in formula.step.names}
        try:
            answer = formula.body(**given)
        except (ValueError, ZeroDivisionError) as refused:
            with pytest.raises(type(refused)):
                read(formula.step.formula, given)
            continue
        if read(formula.step.formula, given) == pytest.approx(answer, rel=1e-12, abs=1e-12):
            agreed += 1
        else:
            found.append(f"{formula.name} with {given}")
    return found if agreed > DRAWS / 5 else [*found, f"{formula.name}: {agreed} draws agree"]


def names_in(text: str) -> set[str]:
    """The symbols of a printed formula."""
    nodes = ast.walk(ast.parse(text, mode="eval"))
    return {node.id for node in nodes if isinstance(node, ast.Name)} - WORDS.keys()


@pytest.mark.parametrize("room", ROOMS)
def test_the_printed_formula_is_the_code(room):
    assert [each for formula in formulas(room) for each in disagreements(formula)] == []


@pytest.mark.parametrize("room", ROOMS)
def test_the_formula_names_its_inputs_and_no_others(room):
    odd = [
        formula.name
        for formula in formulas(room)
        if names_in(formula.step.formula) != set(formula.step.names)
    ]
    assert odd == []


@pytest.mark.parametrize("room", ROOMS)
def test_the_unit_printed_is_that_of_the_type(room):
    odd = []
    for formula in formulas(room):
        kind = typing.get_type_hints(formula.body)["return"]
        if formula.step.unit != UNITS.get(kind.__name__):
            odd.append(f"{formula.name}: {formula.step.unit!r} for {kind.__name__}")
    assert odd == []


def test_the_standards_print_their_formulas():
    assert len(formulas("ampwright.standards")) > 50


def test_a_formula_that_is_not_the_code_would_be_found():
    @computes("c", "", formula="a - b", place=Place("example"))
    def add(a: float, b: float) -> float:
        return a + b

    assert disagreements(typing.cast(typing.Any, add).clause)
