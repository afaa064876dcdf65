"""What stages made before, by what they were handed and what they then read of a home.

A stage is pure: handed the same, it reads the same first fact; by its value the same next one;
and so on to the same result. What was run once is found again that way for any other homes of
the same parts, whichever facts of them have been answered since.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final, NamedTuple, Protocol, cast

from ampwright.foundations.answers import Unanswered, Value

MOST: Final = 1 << 18
"""So many results are held; past that all are let go."""


class Blank:
    """Stands for the value of a fact that has none."""


BLANK: Final = Blank()


class Reading(Protocol):
    """Reads facts, and notes each in ``seen`` with its value, in order."""

    seen: dict[str, Any]

    def read(self, key: str, /) -> Any:
        """Return the value of a fact."""
        ...


class Reads(NamedTuple):
    """The fact a stage reads next, and what follows for each value of it."""

    fact: str
    then: dict[Value | Blank, Any]


class Ended(NamedTuple):
    """What a stage came to; ``lacking`` is the blank fact it ended at, if it did."""

    result: Any
    lacking: str | None


class Once(NamedTuple):
    """A stage that was run once only on what it was handed: all that it read, and its end."""

    seen: dict[str, Any]
    ended: Ended


class Memory:
    """Results of stages, kept from one set of facts to the next."""

    def __init__(self) -> None:
        self._kept: dict[Any, Any] = {}
        self.calls = 0

    def made(
        self, stage: Callable[..., Any], view: Any, reader: Reading, args: tuple[object, ...]
    ) -> Any:
        """Return what a stage makes, run only where what it reads was not met before.

        Raises what the stage raises: ``Unanswered``, and whatever the reader does.
        """
        key = (stage, *args)
        node = self._kept.get(key)
        if type(node) is Once:
            del self._kept[key]
            node = self._noted(key, node)
        while type(node) is Reads:
            try:
                value = reader.read(node.fact)
            except Unanswered:
                value = BLANK
            node = node.then.get(value)
        if node is None:
            node = self._afresh(key, stage, view, reader, args)
        if node.lacking is not None:
            raise Unanswered(node.lacking)
        return node.result

    def _afresh(
        self,
        key: tuple[Any, ...],
        stage: Callable[..., Any],
        view: Any,
        reader: Reading,
        args: tuple[object, ...],
    ) -> Ended:
        """Run a stage and note what it came to under all that it read, in order."""
        try:
            ended = Ended(stage(view, *args), None)
        except Unanswered as blank:
            ended = Ended(None, blank.key)
        if self.calls % MOST == 0:
            self._kept.clear()
        self.calls += 1
        if key in self._kept:
            self._noted(key, Once(reader.seen, ended))
        else:
            self._kept[key] = Once(reader.seen, ended)
        return ended

    def _noted(self, key: tuple[Any, ...], once: Once) -> Reads | Ended:
        """Note a run under all that it read, in order; return what follows from the key now."""
        then, value = self._kept, cast(Any, key)
        for fact, read in once.seen.items():
            further = then.get(value)
            if further is None:
                further = then[value] = Reads(fact, {})
            then, value = further.then, read
        then[value] = once.ended
        return cast(Reads | Ended, self._kept[key])
