"""Firm rules: what a firm asks beyond the law. They may tighten it, never loosen it."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import MISSING, dataclass, field, fields
from enum import Enum
from typing import Any, Final, cast

from ampwright.foundations.errors import BadFileError, Problem
from ampwright.foundations.quantity import Amperes, Metres, Ohms, Share, SquareMm, Volts
from ampwright.foundations.source import Place, SetBy, Source, Trust

from .rows import BadCell, Column, cells_of, columns_of, read_cells


class Tighter(Enum):
    """Which way a rule is tightened."""

    LOWER = "lower"
    HIGHER = "higher"
    YES = "yes"


LOOSEST: Final[dict[Tighter, float]] = {
    Tighter.LOWER: math.inf, Tighter.HIGHER: -math.inf, Tighter.YES: False,
}  # fmt: skip


def rule(tighter: Tighter, symbol: str, says: str) -> Any:
    """Declare a rule: which way is tighter, its symbol in a working and what it asks."""
    return field(metadata={"symbol": symbol, "says": says, "tighter": tighter})


@dataclass(frozen=True, slots=True)
class FirmRules:
    """The rules of a firm and where each comes from."""

    voltage_margin_v: Volts = rule(
        Tighter.HIGHER, "Um", "volts to keep between the point and its trip window, each side"
    )
    ordinary_load_a: Amperes = rule(
        Tighter.HIGHER,
        "Iusual",
        "load of the house under which the volts read must still be lawful",
    )
    drop_share: Share = rule(Tighter.LOWER, "dUmax", "most voltage drop from the origin")
    drop_share_lights: Share = rule(
        Tighter.LOWER, "dUlight", "most voltage drop where lights share the feed"
    )
    stable_rod_ohm: Ohms = rule(
        Tighter.LOWER, "RAmax", "most resistance of an electrode that counts as stable"
    )
    aim_rod_ohm: Ohms = rule(Tighter.LOWER, "RAaim", "resistance of an electrode to aim for")
    house_limit_a: Amperes = rule(
        Tighter.LOWER, "Ilimit", "current on each line that a limiter holds the house to"
    )
    least_house_limit_a: Amperes = rule(
        Tighter.HIGHER, "Ileast", "least limit worth setting on a house"
    )
    least_point_mm2: SquareMm = rule(
        Tighter.HIGHER, "Smin", "least line conductor of a point's circuit"
    )
    least_tails_mm2: SquareMm = rule(Tighter.HIGHER, "Stails", "least size of new meter tails")
    own_device_over_m: Metres = rule(
        Tighter.LOWER, "Lfeed", "longest feed from the meter without a device of its own"
    )
    ladder_to_m: Metres = rule(
        Tighter.LOWER, "hladder", "greatest height of work that is done from a ladder"
    )
    tower_to_m: Metres = rule(
        Tighter.LOWER, "htower", "greatest height of work that is done from a tower"
    )
    need_margin: Share = rule(
        Tighter.HIGHER, "mneed", "what a car needs, times this, must still be covered"
    )
    later_load_a: Amperes = rule(
        Tighter.HIGHER, "Ilater", "a further load that may come: a heat pump, a second car"
    )
    watch_every_line: bool = rule(
        Tighter.YES, "", "open-neutral detection on three phases must be made for them"
    )
    wait_out_dips: bool = rule(
        Tighter.YES, "", "open-neutral detection lets a dip or rise pass that is over soon"
    )
    recommend_least: bool = rule(Tighter.YES, "", "recommend the least that covers the need")
    registered_person: bool = rule(
        Tighter.YES, "", "work is done by a person registered to certify it themselves"
    )
    sources: Mapping[str, Source] = field(compare=False, repr=False, default_factory=dict)


TIGHTER: Final[dict[str, Tighter]] = {
    each.name: each.metadata["tighter"]
    for each in fields(FirmRules)
    if each.default_factory is MISSING
}


def tighten(base: FirmRules, more: FirmRules) -> FirmRules:
    """Combine two sets of rules, keeping the tighter of each with its reason.

    The only combiner of rules: whatever ``more`` says, nothing in ``base`` is loosened.
    """
    values: dict[str, Any] = {}
    sources: dict[str, Source] = {}
    for name in TIGHTER:
        stands = more if is_tighter(name, getattr(more, name), getattr(base, name)) else base
        values[name] = getattr(stands, name)
        if name in stands.sources:
            sources[name] = stands.sources[name]
    return FirmRules(**values, sources=sources)


def is_tighter(name: str, value: float, than: float) -> bool:
    """Say whether one value of a rule asks more than another.

    Examples
    --------
    >>> is_tighter("drop_share", 0.03, 0.05), is_tighter("voltage_margin_v", 1.0, 3.0)
    (True, False)
    """
    if TIGHTER[name] is Tighter.LOWER:
        return value < than
    return value > than


def read_limits(name: str, text: str) -> FirmRules:
    """Return the loosest that the law and the standards allow; no row means no limit."""
    values: dict[str, Any] = {each: LOOSEST[way] for each, way in TIGHTER.items()}
    columns = {each.name: each for each in columns_of(FirmRules)}
    sources: dict[str, Source] = {}
    header = ("name", "loosest", "document", "edition", "at", "trust", "doubtful")
    for cells in cells_of(name, text, header):
        values[cells["name"]] = columns[cells["name"]].read(cells["loosest"])
        sources[cells["name"]] = place_in(cells)
    return FirmRules(**values, sources=sources)


@dataclass(frozen=True, slots=True)
class Marks:
    """How far a row's value may be relied on."""

    trust: Trust
    doubtful: bool


def place_in(cells: Mapping[str, str]) -> Place:
    """Return the place that a row's own columns name; raises ``BadCell``."""
    marks = read_cells(columns_of(Marks), cells)
    return Place(cells["document"], cells["edition"], cells["at"], **marks)


def read_rules(name: str, text: str, limits: FirmRules) -> FirmRules:
    """Return a firm's rules, each with its reason.

    Raises ``BadFileError`` when a rule is missing, unknown or looser than the law allows.
    """
    columns = {each.name: each for each in columns_of(FirmRules)}
    values: dict[str, Any] = {}
    sources: dict[str, Source] = {}
    problems: list[Problem] = []
    for cells in cells_of(name, text, ("name", "value", "trust", "reason")):
        said = cells["name"], cells["value"]
        try:
            values[said[0]] = _value(columns.get(said[0]), said, limits)
            trust = read_cells(columns_of(Marks)[:1], cells)["trust"]
        except BadCell as bad:
            problems.append(Problem(int(cells["line"]), bad.column, bad.cell, bad.expected))
            continue
        sources[said[0]] = SetBy("firm rule", f"{cells['reason']} ({trust.value})")
    lacking = [each for each in TIGHTER if each not in values]
    if lacking and not problems:
        problems.append(Problem(1, "the rules", ", ".join(values), f"also {', '.join(lacking)}"))
    if problems:
        raise BadFileError(name, problems)
    return tighten(limits, FirmRules(**values, sources=sources))


def _value(column: Column | None, said: tuple[str, str], limits: FirmRules) -> object:
    """Return a rule's value; raises ``BadCell`` when it is none or looser than the law."""
    name, cell = said
    if column is None:
        raise BadCell("name", name, f"one of {', '.join(TIGHTER)}")
    value = cast(float, read_cells([column], {name: cell})[name])
    limit = getattr(limits, name)
    if is_tighter(name, limit, value):
        law = limits.sources[name]
        raise BadCell(
            name,
            cell,
            f"nothing looser than {limit:g}: a firm rule may only tighten the law, {law}",
        )
    return value
