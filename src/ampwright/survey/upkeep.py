"""What the known facts are good for: which gate they pass, when they age, whom they outlive."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta

from ampwright.foundations.source import Evidence, Said

from .layout import slot
from .records import Record
from .register import Gate
from .states import State


@dataclass(frozen=True, slots=True)
class Short:
    """A fact that is not known well enough for a gate; ``has`` is nothing when it is blank."""

    key: str
    trade: str
    has: Evidence | None
    needs: Evidence


def short_of(
    states: Mapping[str, State], gate: Gate, keys: Iterable[str] | None = None
) -> tuple[Short, ...]:
    """Return the facts, among some keys or all, that fall short of what a gate asks.

    A fact still open falls short however well the choice between its values is known. Facts
    of things that are absent, and of standard things nobody called present, are not asked for.
    """
    found = []
    for key in states if keys is None else keys:
        state = states[key]
        needed = state.fact.needs.get(gate)
        if needed is None or not _applies(key, states):
            continue
        has = state.said.evidence if state.said and state.is_known else None
        if has is None or has < needed:
            found.append(Short(key, state.fact.trade, has, needed))
    return tuple(found)


def _applies(key: str, states: Mapping[str, State]) -> bool:
    presence = states.get(f"{slot(key).thing}.present")
    return presence is None or presence.values == (True,)


def aged(states: Mapping[str, State], today: date) -> tuple[Said, ...]:
    """Return what known facts rest on that should be asked for again by now."""
    return tuple(
        state.said
        for state in states.values()
        if state.said and state.said.on and state.fact.ages_after is not None
        and state.said.on + timedelta(days=state.fact.ages_after) < today
    )  # fmt: skip


def of_the_building(records: Iterable[Record]) -> tuple[Record, ...]:
    """Return the records that a new owner inherits: none of the last person's."""
    return tuple(row for row in records if not slot(row.key).part.OF_THE_PERSON)
