"""What a network operator asks, as dated profiles; what it has not said stays not known."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Any

from ampwright.foundations.errors import BadFileError, Problem
from ampwright.foundations.quantity import Amperes, Count
from ampwright.foundations.source import Source

from .rows import BadCell, cells_of, column, columns_of, read_cells
from .rules import place_in


@dataclass(frozen=True, slots=True)
class OperatorProfile:
    """What one operator asks before a point may be fitted.

    ``None`` in an ampere figure means that the operator states none; ``None`` in
    ``counts_limiter`` or ``counts_setting`` means that nobody has asked it yet.
    """

    id: str = column(says="id")
    words: str = column(says="what the profile is, in words")
    threshold_a: Amperes | None = column("Itell", "demand above which to ask, one phase")
    threshold_each_line_a: Amperes | None = column(
        "Itell", "demand on any line above which to ask, three phases"
    )
    counts_limiter: bool | None = column(says="takes a limiter's figure as the demand")
    counts_setting: bool | None = column(
        says="takes a point's locked setting, not its largest size, as its current"
    )
    largest_device_a: Amperes = column("Imost", "current of a device above which to ask")
    notice_days: Count = column(says="days within which to tell after fitting")
    sources: Mapping[str, Source] = field(compare=False, repr=False, default_factory=dict)

    def threshold(self, phases: int) -> Amperes | None:
        """Return the figure above which to ask, for a supply of so many phases."""
        return self.threshold_a if phases == 1 else self.threshold_each_line_a


@dataclass(frozen=True, slots=True)
class InForce:
    """The day from which a row holds."""

    valid_from: date = column(says="first day")


HEADER = (
    "profile", "valid_from", "name", "value", "document", "edition", "at", "trust", "doubtful",
)  # fmt: skip
NOT_KNOWN = "not known"
NO_FIGURE = "none"


def read_operators(name: str, text: str, on: date) -> tuple[OperatorProfile, ...]:
    """Return every operator profile as it stands on a day, in the order of the file.

    Of the rows for one value the latest that is in force on that day stands. ``none`` is no
    figure and ``not known`` no answer. Raises ``BadFileError``.
    """
    values: dict[str, dict[str, Any]] = {}
    sources: dict[str, dict[str, Source]] = {}
    problems: list[Problem] = []
    rows = cells_of(name, text, HEADER)
    for cells in sorted(rows, key=lambda each: each["valid_from"]):
        try:
            starts, value = _read(cells)
            place = place_in(cells)
        except BadCell as bad:
            problems.append(Problem(int(cells["line"]), bad.column, bad.cell, bad.expected))
            continue
        if starts <= on:
            values.setdefault(cells["profile"], {})[cells["name"]] = value
            sources.setdefault(cells["profile"], {})[cells["name"]] = place
    if problems:
        raise BadFileError(name, problems)
    order = dict.fromkeys(cells["profile"] for cells in rows)
    return tuple(
        _profile(name, each, values[each], sources[each]) for each in order if each in values
    )


def _read(cells: Mapping[str, str]) -> tuple[date, object]:
    """Return the first day of a row and its value; raises ``BadCell``."""
    columns = {each.name: each for each in columns_of(OperatorProfile)}
    wanted = columns.get(cells["name"])
    if wanted is None:
        raise BadCell("name", cells["name"], f"one of {', '.join(columns)}")
    no_value = NO_FIGURE if wanted.is_number else NOT_KNOWN
    said = "" if cells["value"] == no_value else cells["value"]
    starts = read_cells(columns_of(InForce), cells)["valid_from"]
    return starts, read_cells([wanted], {wanted.name: said})[wanted.name]


def _profile(
    file: str, id_: str, values: Mapping[str, Any], sources: Mapping[str, Source]
) -> OperatorProfile:
    """Return one profile; raises ``BadFileError`` when a value has no row."""
    wanted = [each.name for each in columns_of(OperatorProfile)][1:]
    lacking = [each for each in wanted if each not in values]
    if lacking:
        raise BadFileError(file, [Problem(1, id_, "", f"also rows for {', '.join(lacking)}")])
    return OperatorProfile(id=id_, **values, sources=sources)
