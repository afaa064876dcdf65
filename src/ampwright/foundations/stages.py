"""What a stage of the work hands on: its result and the checks it made."""

from __future__ import annotations

from typing import Generic, NamedTuple, TypeVar

from .checks import Check
from .remedies import Remedy

T = TypeVar("T")


class Made(NamedTuple, Generic[T]):
    """A stage's frozen, hashable result and its checks, in the order of the work.

    ``offers`` are work items that nothing failed for but that would make the result a better
    one; each must do so by itself. What a failed check needs stands at the check.
    """

    out: T
    checks: tuple[Check, ...] = ()
    offers: tuple[Remedy, ...] = ()
