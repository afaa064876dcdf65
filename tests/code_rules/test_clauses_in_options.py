"""Every clause that requires something passes, fails and, where it can, does not apply.

Not in a test of its own but inside an option: in the designs of the shipped homes, of some pairs
of homes that differ in one fact, and of a few more, listed. Every other requirement of a stage
fails in one of them, or finds that something is lacking.
"""

from __future__ import annotations

import ast
import inspect
import pkgutil
import textwrap
import tomllib
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from functools import cache
from importlib import import_module
from pathlib import Path
from typing import Any

import ampwright
from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Check, Outcome, Requirement
from ampwright.foundations.stages import Made
from ampwright.options.homes import Homes
from ampwright.options.lifting import Lifter
from ampwright.options.menu import menu_of
from ampwright.options.search import Walk
from ampwright.options.work import work_of
from ampwright.standards.catalogue import Kind, clauses

from .printed import Answers, homes_and_basis
from .test_facts_matter import HOMES, listed, matters, said

DATA = Path(__file__).with_name("clauses_in_options.toml")
REQUIRING = {each.id: each.clause.clause for each in clauses() if each.kind is Kind.REQUIRES}
STAGES = ("demand", "supply", "network", "design", "energy", "costing")
"""The rooms whose stages declare requirements that are no clause of a standard."""
FAILS = (Outcome.FAIL.value, Outcome.UNDETERMINED.value)
End = tuple[str, str]
"""A clause by its short name, or another requirement by its whole name, and an outcome."""
FEW = ("window-lead", "three-socket")
"""The points of the homes that differ in one fact: what else a point is, the others show."""
Stock = tuple[tuple[str, Answers], ...]
"""Columns of the firm's catalogue that are otherwise in every row, by kind of goods.

After the id of a row and a dot, in that row alone. Of ``kits``, by the work, whether the firm
buys any.
"""
Looked = tuple[str, Answers, Stock]
"""A shipped home, what is said of it otherwise, and what the firm has in stock otherwise."""


@cache
def kept() -> dict[str, Any]:
    return tomllib.loads(DATA.read_text("utf-8"))


def wanted() -> Iterator[End]:
    """Every outcome that every clause can have."""
    for name, requirement in REQUIRING.items():
        yield name, Outcome.PASS.value
        yield name, Outcome.FAIL.value
        if may_not_apply(requirement):
            yield name, Outcome.NOT_APPLICABLE.value


def may_not_apply(requirement: Requirement) -> bool:
    """Say whether a clause itself ever finds that it does not apply."""
    tree = ast.parse(textwrap.dedent(inspect.getsource(requirement.body)))
    return any(
        isinstance(node, ast.Name) and node.id == "not_applicable" for node in ast.walk(tree)
    )


@cache
def others() -> frozenset[str]:
    """The names of the requirements of stages that are no clause of a standard."""
    found = set()
    for info in pkgutil.walk_packages(ampwright.__path__, "ampwright."):
        if info.name.split(".")[1] in STAGES:
            for each in vars(import_module(info.name)).values():
                clause = getattr(each, "clause", None)
                if isinstance(clause, Requirement) and clause.name.split(".")[1] in STAGES:
                    found.add(clause.name.removeprefix("ampwright."))
    return frozenset(found)


def homes() -> dict[Looked, None]:
    """Every home looked at, once: a shipped one, and what is said of it otherwise."""
    found: dict[Looked, None] = {(name, (), ()): None for name in HOMES}
    for each in matters():
        if each["fact"] in kept()["pairs"]:
            found.update((looked, None) for looked in pair(each))
    found.update((listed_home(each), None) for each in kept().get("home", ()))
    return found


def pair(each: dict[str, Any]) -> list[Looked]:
    """The homes that differ in one fact."""
    return [(*said(each, value), ()) for value in each["values"]]


def listed_home(each: dict[str, Any]) -> Looked:
    """A home of the list, and what the firm has in stock otherwise."""
    stock = tuple(
        (kind, tuple(sorted(rows.items()))) for kind, rows in each.get("stock", {}).items()
    )
    answers = each.get("said", listed("that_matter")["variants"].get(each.get("variant"), {}))
    if not answers:
        return each["home"], (), stock
    key, value = next(iter(answers.items()))
    return *said({"fact": key, **each, "key": key}, value), stock


def with_stock(basis: Basis, stock: Stock, few: bool) -> Basis:
    """The same basis, some columns of its catalogue otherwise; with few of its points, or all."""
    catalogue = basis.catalogue
    if few:
        few_points = tuple(each for each in catalogue.points if each.id in FEW)
        catalogue = replace(catalogue, points=few_points)
    for kind, columns in stock:
        if kind == "kits":
            gone = {work for work, bought in columns if not bought}
            kits = {at: kit for at, kit in basis.rates.kits.items() if at[0] not in gone}
            basis = replace(basis, rates=replace(basis.rates, kits=kits))
            continue
        rows = tuple(replace(each, **in_row(columns, each.id)) for each in getattr(catalogue, kind))
        catalogue = replace(catalogue, **{kind: rows})
    return replace(basis, catalogue=catalogue)


def in_row(columns: Answers, id_: str) -> dict[str, Any]:
    """The columns that are otherwise in a row of the catalogue."""
    parted = ((key.rpartition("."), value) for key, value in columns)
    return {name: value for (row, _, name), value in parted if row in ("", id_)}


def checks_in(folded: Homes, basis: Any) -> Iterator[Check]:
    """Yield the checks of every design that is looked at in a home, sound or ruled out."""
    lifter = Lifter(folded)
    searched = Walk(lifter, menu_of(lifter, basis), work_of(basis)).run()
    seen: set[int] = set()
    for option in searched.options:
        for ran in option.ran:
            if id(ran.made) not in seen:
                seen.add(id(ran.made))
                for made in ran.made.values:
                    if isinstance(made, Made):
                        yield from (*made.checks, *held_in(made.out))
    for rejection in searched.rejections:
        yield from rejection.checks


def held_in(out: Any) -> Iterator[Check]:
    """Yield the checks that a stage's result holds itself."""
    if is_dataclass(out):
        for each in fields(out):
            value = getattr(out, each.name)
            found = value if isinstance(value, tuple) else (value,)
            yield from (part for part in found if isinstance(part, Check))


@cache
def brought_about() -> dict[End, Looked]:
    """Return every outcome that some home brings about, and the first such home."""
    found: dict[End, Looked] = {}
    whole = {(name, (), ()) for name in HOMES} | set(map(listed_home, kept().get("home", ())))
    for home in homes():
        where, answers, stock = home
        folded, basis = homes_and_basis(where, answers)
        for check in checks_in(folded, with_stock(basis, stock, home not in whole)):
            one, said = check.requirement, check.outcome.value
            is_clause = REQUIRING.get(one.id) is one
            name = one.id if is_clause else one.name.removeprefix("ampwright.")
            if is_clause or said in FAILS:
                found.setdefault((name, said), home)
    return found


def test_every_clause_passes_fails_and_does_not_apply_inside_an_option():
    """One test of three questions, so that the homes are walked through once."""
    found = brought_about()
    lacking = [end for end in wanted() if end not in found]
    assert lacking == [], "bring it about in a home"
    vain = [each for each in kept().get("home", ()) if listed_home(each) not in found.values()]
    idle = [each["fact"] for each in matters() if each["fact"] in kept()["pairs"]
            and not set(pair(each)) & set(found.values())]  # fmt: skip
    assert vain == idle == [], "some home before it brings about the same: take it off the list"


def test_every_other_requirement_of_a_stage_fails_in_some_home():
    failing = {name for name, outcome in brought_about() if outcome in FAILS}
    assert others() - failing == set(), "bring it about, tell it as a note, or leave it out"
