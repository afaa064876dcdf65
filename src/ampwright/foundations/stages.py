"""What a stage of the work hands on: its result and the checks it made."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Generic, NamedTuple, TypeVar

from .checks import Check
from .notes import Note
from .remedies import Remedy

T = TypeVar("T")


class Made(NamedTuple, Generic[T]):
    """A stage's frozen, hashable result and its checks, in the order of the work.

    ``notes`` are what is only told beside them: nothing is judged by a note. ``offers`` are work
    items that nothing failed for but that would make the result a better one; each must do so by
    itself. What a failed check needs stands at the check.
    """

    out: T
    checks: tuple[Check, ...] = ()
    offers: tuple[Remedy, ...] = ()
    notes: tuple[Note, ...] = ()


def made_of(out: T, found: Iterable[Check | Note]) -> Made[T]:
    """Return a result with what was found beside it: what judges apart from what is told."""
    checks: list[Check] = []
    notes: list[Note] = []
    for each in found:
        if isinstance(each, Check):
            checks.append(each)
        else:
            notes.append(each)
    return Made(out, tuple(checks), notes=tuple(notes))


def cautions(checks: Iterable[Check], notes: Iterable[Note]) -> Iterator[str]:
    """Yield what somebody must see to, by a check that passed or by a note."""
    yield from (check.caution for check in checks if check.caution)
    yield from (note.says for note in notes if note.telling.caution)
