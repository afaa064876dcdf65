"""Sizes of protective conductors chosen by rule instead of reckoned."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from ampwright.foundations.quantity import SquareMm
from ampwright.foundations.rulings import Row, Ruling

from ..places import wiring

TABLE = wiring("Table 54.7", "a textbook of electrical installation work, p. 250")


class ByRule(Enum):
    """What the protective conductor is made by; of another metal, its equivalent."""

    SAME = "the same size"
    MIDDLE = "the size up to which it is the same"
    HALF = "half the size"


@dataclass(frozen=True, slots=True, kw_only=True)
class LineConductor:
    """A line conductor and the two sizes at which the rule changes."""

    line_mm2: SquareMm
    small_mm2: SquareMm
    large_mm2: SquareMm


PROTECTIVE_SIZE: Ruling[LineConductor, ByRule] = Ruling(
    "How large a protective conductor is by rule",
    (
        Row(
            "a line conductor up to the smaller size",
            lambda line: line.line_mm2 <= line.small_mm2,
            ByRule.SAME,
            TABLE,
        ),
        Row(
            "a line conductor up to the larger size",
            lambda line: line.line_mm2 <= line.large_mm2,
            ByRule.MIDDLE,
            TABLE,
        ),
        Row("a larger one", lambda _: True, ByRule.HALF, TABLE),
    ),
)
"""Where the lines were sized for their load; the adiabatic sum may allow less."""
