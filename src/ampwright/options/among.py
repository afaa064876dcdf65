"""What an answer leaves: options gone through before, among the homes that remain.

What an option comes to in a home hangs on that home alone. An answer that only takes homes away
therefore needs no stage run again: of every spread the part over the homes that are left stands.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import is_dataclass, replace
from typing import Any, cast, overload

import numpy as np

from ampwright.foundations.answers import Value

from .choices import DIMENSIONS, Choice, Menu
from .criteria import Criteria
from .homes import Homes
from .ranking import Ranking, rank
from .runs import Ran, outcome_of
from .search import Option, usual_work
from .spread import Spread, trimmed
from .truth import Truth, truth_from


def ranked_among(before: Ranking, homes: Homes, menu: Menu) -> Ranking:
    """Return options ranked before, ranked among some of those homes.

    ``menu`` is what there is to choose from among the homes that are left; all of it must have
    been gone through before.
    """
    left = Among(before.cells.homes, homes)
    return rank(homes, tuple(left.options(before.options, menu)))


def are_some(homes: Homes, of: Homes) -> bool:
    """Say whether homes are some of others: answers only fixed facts or struck out values.

    Not where the points of a range that is still open are others: it may have to be cut anew.
    """

    def fits(key: str) -> bool:
        if key in of.known:
            return key in homes.known and homes.known[key] == of.known[key]
        if key in homes.known:
            return homes.known[key] in of.open.get(key, ())
        return key in of.open and shares(homes, key).items() <= shares(of, key).items()

    cut = any(homes.open[key] != of.open.get(key) for key in homes.steps if key in homes.open)
    gone = {*of.known, *of.open} - {*homes.known, *homes.open}
    return not cut and not gone and all(fits(key) for key in (*homes.known, *homes.open))


def shares(homes: Homes, key: str) -> dict[Value, float]:
    """Return how common each value of an open fact is."""
    return dict(zip(homes.open[key], homes.chances[key], strict=True))


def offers(menu: Menu, now: Menu) -> bool:
    """Say whether a menu holds everything of another."""
    return all(set(now[name]) <= set(menu[name]) for name in DIMENSIONS)


class Among:
    """Spreads over some homes, as they are over those of them that are left."""

    def __init__(self, before: Homes, homes: Homes) -> None:
        self.homes = homes
        self._left = {
            fact: [i for i, value in enumerate(values) if value in homes.answers(fact)]
            for fact, values in before.open.items()
        }
        self._made: dict[Spread[Any], Spread[Any]] = {}

    def options(self, options: Iterable[Option[Any]], menu: Menu) -> Iterator[Option[Any]]:
        """Yield those of some options that are on a menu and hold in a home that is left."""
        for option in options:
            if all(getattr(option.choice, name) in menu[name] for name in DIMENSIONS):
                sound = self.truth(option.sound)
                if not sound.never:
                    yield self._option(option, sound)

    def _option(self, option: Option[Any], sound: Truth) -> Option[Any]:
        laid = self.spread(option.laid)
        choice: Choice = replace(option.choice, remedies=usual_work(laid, sound))
        return Option(
            choice, PartAmong(self, option.design), StepsAmong(self, option.ran), sound, laid
        )

    def truth(self, truth: Truth) -> Truth:
        """Return in which of the homes that are left something holds."""
        return truth_from(self.homes, truth.plain, (self.spread(part) for part in truth.parts))

    def spread(self, spread: Spread[Any]) -> Spread[Any]:
        """Return a spread over the homes that are left, with no value that none of them has."""
        made = self._made.get(spread)
        if made is None:
            made = self._made[spread] = self._spread(spread)
        return made

    def _spread(self, spread: Spread[Any]) -> Spread[Any]:
        index = spread.index
        for axis, fact in enumerate(spread.facts):
            if len(self._left[fact]) < index.shape[axis]:
                index = index.take(self._left[fact], axis)
        used, numbers = np.unique(index, return_inverse=True)
        values = tuple(spread.values[i] for i in used.tolist())
        return trimmed(self.homes, spread.facts, numbers.reshape(index.shape), values)


class StepsAmong(Sequence[Ran]):
    """The stages of an option, each among the homes that are left when it is looked at."""

    def __init__(self, among: Among, steps: Sequence[Ran]) -> None:
        self._among, self._steps = among, steps

    def __len__(self) -> int:
        """Return how many stages there are."""
        return len(self._steps)

    @overload
    def __getitem__(self, at: int) -> Ran: ...
    @overload
    def __getitem__(self, at: slice) -> Sequence[Ran]: ...
    def __getitem__(self, at: int | slice) -> Ran | Sequence[Ran]:
        """Return one stage, or some."""
        if isinstance(at, slice):
            return StepsAmong(self._among, self._steps[at])
        step = self._steps[at]
        made = self._among.spread(step.made)
        return step._replace(made=made, outcome=made.part("(outcome)", outcome_of))


class PartAmong:
    """What an option comes to, part by part, each among the homes that are left when asked for."""

    def __init__(self, among: Among, whole: Any) -> None:
        self._among, self._whole = among, whole

    def __getattr__(self, name: str) -> Any:
        """Return one part of what the option comes to."""
        found = getattr(self._whole, name)
        if isinstance(found, Spread):
            found = self._among.spread(found)
        elif isinstance(found, PartAmong) or is_dataclass(found) or isinstance(found, Criteria):
            found = PartAmong(self._among, found)
        setattr(self, name, found)
        return cast(Any, found)
