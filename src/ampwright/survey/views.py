"""How the engines see a home: plain values that may be open, or numbers with their source.

The same typed ``Home`` serves both; only the reader behind it differs. A reader has
``read(key)`` and raises ``Unanswered`` for a fact that is blank.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, NamedTuple

from ampwright.foundations.answers import Unanswered, Value
from ampwright.foundations.source import Said, SetBy
from ampwright.foundations.working import given

from .folding import FoldedHome
from .home import Home
from .layout import Ids, build_home
from .states import State, states, step_of
from .wording import as_words, either


class Domain(NamedTuple):
    """The values an open fact may have and, beside each, how likely it is.

    ``span`` gives the ends of a range of which the values are only points, ``step`` how near
    they may come to each other, if they may come nearer at all.
    """

    values: tuple[Value, ...]
    chances: tuple[float, ...]
    span: tuple[float, float] | None = None
    step: float | None = None


class Possible(NamedTuple):
    """What is known of a home and what is open, by key; a key in neither is blank."""

    known: dict[str, Value]
    open: dict[str, Domain]


def possible(folded: FoldedHome) -> Possible:
    """Return the facts of a home, those known and those open, in the order of the register."""
    known: dict[str, Value] = {}
    still: dict[str, Domain] = {}
    for key, state in states(folded).items():
        if state.is_known:
            known[key] = state.values[0]
        elif state.is_open:
            step = step_of(state.fact) if state.span else None
            still[key] = Domain(state.values, state.chances, state.span, step)
    return Possible(known, still)


class PlainReader:
    """Gives the values of a home whose facts are fixed, as plain as they are."""

    __slots__ = ("values",)

    def __init__(self, values: Mapping[str, Value]) -> None:
        self.values = values

    def read(self, key: str) -> Any:
        """Return the value of a fact; ``Unanswered`` when it has none."""
        try:
            return self.values[key]
        except KeyError:
            raise Unanswered(key) from None


@dataclass(frozen=True, slots=True)
class Rest:
    """A fact that was read: its value, and what that rests on.

    Examples
    --------
    >>> from ampwright.foundations.source import Evidence
    >>> said = Said("supply.earthing", Evidence.SEEN, "photo 3", "Ro")
    >>> print(Rest("supply.earthing", "Earthing arrangement", "TN-C-S", said))
    Earthing arrangement: TN-C-S (seen, photo 3)
    """

    key: str
    trade: str
    value: Value
    source: Said | SetBy

    def __str__(self) -> str:
        """Render name and value, then how it is known."""
        source = self.source
        if isinstance(source, Said):
            known = f"{source.evidence.word}, {source.how}" if source.how else source.evidence.word
        else:
            known = str(source)
        return f"{self.trade}: {as_words(self.value)} ({known})"


class DocumentedReader:
    """Gives numbers with their working and notes every read, in order.

    ``fixed`` settles facts that are open; ``changes`` are facts as somebody else settles them,
    work in the option or an operator's profile, each with whose doing that is. Counts and
    years stay plain, as text and yes or no do: they print as what the answer rests on.
    """

    __slots__ = ("_changes", "_fixed", "_given", "_states", "reads")

    def __init__(
        self,
        states: Mapping[str, State],
        fixed: Mapping[str, Value] | None = None,
        changes: Mapping[str, tuple[Value, SetBy]] | None = None,
    ) -> None:
        self._states, self._fixed, self._changes = states, fixed or {}, changes or {}
        self._given: dict[str, Any] = {}
        self.reads: dict[str, Rest] = {}

    def read(self, key: str) -> Any:
        """Return the value of a fact, a number as a leaf of a working; notes the read.

        Raises ``Unanswered`` when the fact is blank, or still open.
        """
        if key in self._given:
            return self._given[key]
        state = self._states.get(key)
        if state is None:
            raise Unanswered(key)
        value, source = self._value(state)
        self.reads[key] = Rest(key, state.fact.trade, value, source)
        if state.fact.kind is float:
            symbol = state.fact.symbol or state.fact.trade
            self._given[key] = given(symbol, float(value), state.fact.unit, source)
        else:
            self._given[key] = value
        return self._given[key]

    def _value(self, state: State) -> tuple[Value, Said | SetBy]:
        key = state.key
        if key in self._changes:
            return self._changes[key]
        if state.said is None:
            raise Unanswered(key)
        if state.is_known:
            return state.values[0], state.said
        if key not in self._fixed:
            raise Unanswered(key)
        return self._fixed[key], supposed(state, state.said)


def supposed(state: State, said: Said) -> Said:
    """Return what one of several possible values rests on: an open fact, taken one way."""
    if state.span:
        of = f"between {state.span[0]:g} and {state.span[1]:g}"
    else:
        of = f"one of {either(state.values)}"
    return replace(said, how=f"taken, {of}; {said.how}" if said.how else f"taken, {of}")


def plain_home(values: Mapping[str, Value], ids: Ids) -> Home:
    """Return the typed view of a home whose facts are all fixed."""
    return build_home(PlainReader(values), ids)


def documented(
    folded: FoldedHome,
    fixed: Mapping[str, Value] | None = None,
    changes: Mapping[str, tuple[Value, SetBy]] | None = None,
) -> tuple[Home, DocumentedReader]:
    """Return the view whose numbers keep their working, and its reader with what was read."""
    reader = DocumentedReader(states(folded), fixed, changes)
    return build_home(reader, folded.ids), reader
