"""What a stage of the work hands on: its result and the checks it made."""

from __future__ import annotations

from typing import Generic, NamedTuple, TypeVar

from .checks import Check

T = TypeVar("T")


class Made(NamedTuple, Generic[T]):
    """A stage's frozen, hashable result and its checks, in the order of the work."""

    out: T
    checks: tuple[Check, ...] = ()
