"""What a mile takes: the few figures behind every sum of energy for a car."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from ampwright.foundations.errors import BadFileError, Problem
from ampwright.foundations.quantity import MilesPerKwh, Share
from ampwright.foundations.source import Source

from .rows import BadCell, cells_of, column, columns_of, read_cells
from .rules import place_in


@dataclass(frozen=True, slots=True)
class Driving:
    """Figures for a year's driving, each with where it comes from."""

    miles_per_kwh: MilesPerKwh = column("e", "miles driven on one kilowatt-hour in the battery")
    charging_efficiency: Share = column("eta", "share of the energy drawn that is stored")
    sources: Mapping[str, Source] = field(compare=False, repr=False, default_factory=dict)


HEADER = ("name", "value", "document", "edition", "at", "trust", "doubtful")


def read_driving(name: str, text: str) -> Driving:
    """Return the figures; raises ``BadFileError`` when one is missing or unknown."""
    columns = {each.name: each for each in columns_of(Driving)}
    values: dict[str, Any] = {}
    sources: dict[str, Source] = {}
    for cells in cells_of(name, text, HEADER):
        known = cells["name"]
        try:
            if known not in columns:
                raise BadCell("name", known, f"one of {', '.join(columns)}")
            values |= read_cells([columns[known]], {known: cells["value"]})
            sources[known] = place_in(cells)
        except BadCell as bad:
            problem = Problem(int(cells["line"]), bad.column, bad.cell, bad.expected)
            raise BadFileError(name, [problem]) from None
    if lacking := columns.keys() - values.keys():
        problem = Problem(1, "the figures", ", ".join(values), f"also {', '.join(lacking)}")
        raise BadFileError(name, [problem])
    return Driving(**values, sources=sources)
