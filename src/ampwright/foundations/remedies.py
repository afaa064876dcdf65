"""Work that mends what a check found: what it changes, what it takes and who must do it."""

from __future__ import annotations

from dataclasses import dataclass

from .answers import Value


@dataclass(frozen=True, slots=True)
class Part:
    """So much of something, described by what it is able to do."""

    what: str
    quantity: float
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Remedy:
    """A work item, laid over a home as facts it would change.

    ``slug`` names it in an option's id; ``minutes`` are low, usual and high; ``by`` names the
    outside body that must do it, and is empty when the firm does it. ``steps`` tell in order how
    it is done where that matters, and ``chart`` what it leaves, its first row the heads.
    """

    slug: str
    does: str
    changes: tuple[tuple[str, Value], ...]
    parts: tuple[Part, ...] = ()
    minutes: tuple[float, float, float] = (0.0, 0.0, 0.0)
    by: str = ""
    steps: tuple[str, ...] = ()
    chart: tuple[tuple[str, ...], ...] = ()
