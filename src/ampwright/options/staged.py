"""Fit now at a setting that may be told after, turn up when the network has answered.

Both stages are options that hold by themselves. They share everything that is fitted, so the
second visit changes a setting, or adds a sensor, and nothing in the wall.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

from ampwright.foundations.answers import Missing
from ampwright.foundations.quantity import Amperes
from ampwright.supply.hours import ANY

from .choices import Choice
from .ranking import Ranking, criterion, standing_of, typical
from .search import Option


@dataclass(frozen=True, slots=True, eq=False)
class Staged:
    """Two options that are one job: what is fitted first, and what it is turned up to."""

    now: Option[Any]
    later: Option[Any]

    @property
    def id(self) -> str:
        """The first stage as a slug, then what the second changes."""
        limit = "/house-limit" if self.later.choice.house_limit else ""
        return f"{self.now.id}~{self.later.choice.setting_a:g}a{limit}"


def fitted(choice: Choice) -> Choice:
    """Return what of a choice is in the wall: all but the setting, limits and other work."""
    return replace(choice, setting_a=Amperes(0.0), house_limit=False, hours=ANY, remedies=())


def staged(ranking: Ranking) -> tuple[Staged, ...]:
    """Return each way to fit now and turn up later, the best first.

    Only where the first stage may be told after in some home in which the second must be asked
    for, and the second gives the cars more.
    """
    groups: dict[Choice, list[Option[Any]]] = {}
    for option in ranking.options:
        groups.setdefault(fitted(option.choice), []).append(option)
    found = [pair for options in groups.values() for pair in pairs_in(options)]
    return tuple(sorted(found, key=lambda pair: standing(ranking, pair)))


def pairs_in(options: Sequence[Option[Any]]) -> Iterator[Staged]:
    """Yield the pairs among options that are the same in the wall; options come best first."""
    for now in options:
        later = next((o for o in options if is_later(now, o)), None)
        if later is not None:
            yield Staged(now, later)
            return


def is_later(now: Option[Any], later: Option[Any]) -> bool:
    """Say whether one option is another turned up, for which the network must be asked."""
    same = works(now) == works(later)
    if not same or (now.choice.house_limit and not later.choice.house_limit):
        return False
    if least(now, "wait") > 0 or least(later, "wait") <= 0:
        return False
    return least(later, "slowness_kw") < least(now, "slowness_kw")


def works(option: Option[Any]) -> tuple[str, ...]:
    """Return the slugs of the work that an option needs first."""
    return tuple(remedy.slug for remedy in option.choice.remedies)


def least(option: Option[Any], name: str) -> float:
    """Return the best an option does in a criterion, over the homes."""
    values: tuple[float | Missing, ...] = criterion(option, name).values
    return min((value for value in values if not isinstance(value, Missing)), default=0.0)


def standing(ranking: Ranking, pair: Staged) -> tuple[float, ...]:
    """Return where a pair stands: by its first stage, as options do."""
    return typical(standing_of(ranking.cells, pair.now), ranking.cells, ranking.order)
