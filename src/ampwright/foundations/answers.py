"""What can be said about one fact of a home."""

from __future__ import annotations

from dataclasses import dataclass

Value = bool | int | float | str
"""What a single answer holds."""


@dataclass(frozen=True, slots=True)
class Is:
    """Exactly this."""

    value: Value


@dataclass(frozen=True, slots=True)
class OneOf:
    """One of a few; which one is not known."""

    values: tuple[Value, ...]


@dataclass(frozen=True, slots=True)
class Between:
    """A number somewhere in a range, both ends included."""

    low: float
    high: float


@dataclass(frozen=True, slots=True)
class CannotSay:
    """Asked, and this person could not tell; that person is not asked again."""

    why: str = ""


Answer = Is | OneOf | Between | CannotSay


class Unanswered(Exception):  # noqa: N818 - not an error: it is how a stage says what it lacks
    """A stage read a fact that has no value in this home; carries the key."""

    def __init__(self, key: str) -> None:
        self.key = key
        super().__init__(key)


@dataclass(frozen=True, slots=True)
class Missing:
    """What a stage yields when facts it needs are blank: their keys, in order."""

    keys: tuple[str, ...]
