"""What stages made before, by what they were handed and what they then read of a home.

A stage is pure: handed the same, it reads the same first fact; by its value the same next one;
and so on to the same result. What was run once is found again that way for any other homes of
the same things, whichever facts of them have been answered since.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final, NamedTuple, Protocol, cast

from ampwright.foundations.answers import Missing, Unanswered, Value

MOST: Final = 1 << 17
"""What came of so many things handed to stages is held; past that all is let go."""


class Blank:
    """Stands for the value of a fact that has none."""


BLANK: Final = Blank()


class Reading(Protocol):
    """Reads facts, and notes each in ``seen`` with its value, in order."""

    seen: dict[str, Any]


class Reads(NamedTuple):
    """The fact a stage reads next, and what follows for each value of it."""

    fact: str
    then: dict[Value | Blank, Any]


class Ended(NamedTuple):
    """What a stage came to; missing, where it ended at a blank fact."""

    result: Any


class Once(NamedTuple):
    """A stage that was run once only on what it was handed: all that it read, and its end."""

    seen: dict[str, Any]
    ended: Ended


Place = tuple[dict[Any, Any], Any]
"""Where a stage has come to: what follows there, and for which value."""


class Memory:
    """Results of stages, kept from one set of facts to the next; ``calls`` counts their runs."""

    def __init__(self) -> None:
        self._kept: dict[Any, Any] = {}
        self.calls = 0

    def start(self, stage: Callable[..., Any], args: tuple[object, ...]) -> Place:
        """Return where a stage begins that is handed something."""
        key = (stage, *args)
        once = self._kept.get(key)
        if type(once) is Once:
            del self._kept[key]
            self._note(key, once)
        return self._kept, key

    def let_go(self) -> None:
        """Let go of everything where too much is kept; no place found before stands then."""
        if len(self._kept) > MOST:
            self._kept.clear()

    def run(
        self,
        stage: Callable[..., Any],
        args: tuple[object, ...],
        view: Any,
        reader: Reading,
        *,
        once: bool,
    ) -> Ended:
        """Run a stage and note what it comes to under all that it reads, in order.

        ``once`` puts off the noting until the same is asked for again.
        """
        self.calls += 1
        try:
            ended = Ended(stage(view, *args))
        except Unanswered as blank:
            ended = Ended(Missing((blank.key,)))
        key, ran = (stage, *args), Once(reader.seen, ended)
        if once and key not in self._kept:
            self._kept[key] = ran
        else:
            self._note(key, ran)
        return ended

    def _note(self, key: tuple[Any, ...], once: Once) -> None:
        then, value = self._kept, cast(Any, key)
        for fact, read in once.seen.items():
            further = then.get(value)
            if further is None:
                further = then[value] = Reads(fact, {})
            then, value = further.then, read
        then[value] = once.ended
