"""The way of the cable: the surveyed legs from the tap to the point, the shortest in metres."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Unanswered
from ampwright.foundations.checks import Finding, holds, requires, undetermined
from ampwright.foundations.notes import tells
from ampwright.foundations.quantity import Celsius, Count, Metres, Millimetres, SquareMm
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.standards.building.notice import certificate_given
from ampwright.standards.wiring.charging import own_circuit
from ampwright.survey.home import Home
from ampwright.survey.home_legs import Leg
from ampwright.survey.if_said import if_said

METHOD: Final = Place("Ampwright", at="method, the way of the cable", trust=Trust.DERIVED)
IN_WALL: Final = frozenset({"stud wall"})
"""Ways of running that hide a cable where somebody may drive a nail."""
MAY_TOUCH_INSULATION: Final = frozenset({"through wall", "loft void", "under floor", "stud wall"})
"""Ways of running along which part of a cable may lie in insulation; nobody asks how much of a
leg that runs wholly in it."""
IN_GROUND: Final = frozenset({"buried", "duct"})
CLIPPED: Final = frozenset({"clipped inside", "clipped outside"})


@dataclass(frozen=True, slots=True)
class LegRun:
    """One leg of the way as it will be run.

    ``insulation_mm`` is how much of it lies in thermal insulation: ``None`` where the way of
    running leaves no room for it and nobody is asked. ``ambient_c`` is ``None`` in the ground,
    whose temperature is its own, and where nobody is asked and the usual one of the air holds.
    """

    id: str
    how: str
    length_m: Metres
    insulation_mm: Millimetres | None
    ambient_c: Celsius | None
    grouped_with: Count


@dataclass(frozen=True, slots=True)
class Laid:
    """A cable that lies there already and is to be used: its kind and the size of a line core."""

    cable: str
    kind: str
    size_mm2: SquareMm


@dataclass(frozen=True, slots=True)
class Route:
    """The legs from tap to point, in order; none of them where no way has been paced.

    ``laid`` is the cable that lies there already, if it is to be used; its one leg is as its
    worst stretch lies.
    """

    legs: tuple[LegRun, ...]
    length_m: Metres
    laid: Laid | None = None

    @property
    def new_legs(self) -> tuple[LegRun, ...]:
        """The legs along which a cable is still to be run."""
        return () if self.laid else self.legs

    @property
    def hidden(self) -> bool:
        """Whether a leg runs inside a wall, where it may be struck unseen."""
        return any(leg.how in IN_WALL for leg in self.legs)


@requires("a way from the tap to the point has been paced", place=METHOD)
def way_paced(tap: str, place: str, legs: int, all_listed: bool) -> Finding:
    """There are surveyed legs that lead from one to the other.

    Counts the legs of the shortest way; says nothing of whether a shorter one was missed. Where
    the list is whole and none leads there, there is no such way to design with.

    Examples
    --------
    >>> way_paced("main", "drive", 0, False).why
    'nobody has paced the way from main to drive: note each leg, how it runs and its metres'
    >>> way_paced("main", "drive", 0, True).why
    'no leg of the whole list leads from main to drive; pace one if this way is wanted'
    """
    if legs:
        return holds(True)
    if all_listed:
        return holds(False, f"no leg of the whole list leads from {tap} to {place}; pace one if "
                     "this way is wanted")  # fmt: skip
    return undetermined(
        f"nobody has paced the way from {tap} to {place}: note each leg, how it runs and its metres"
    )


@computes("L", "m", formula="sum(legs)", place=METHOD)
def way_length(legs: tuple[Metres, ...]) -> Metres:
    """Return the metres of all legs together.

    Examples
    --------
    >>> way_length((Metres(7.0), Metres(1.0)))
    8.0
    """
    return Metres(float(sum(legs)))


@tells(METHOD, caution=True)
def certificate_to_see(cable: str) -> str:
    """Ask for the certificate of a cable that others left.

    Examples
    --------
    >>> certificate_to_see("builders").caution
    'ask for the certificate of the cable builders: without one all of it is certified as new'
    """
    return (
        f"ask for the certificate of the cable {cable}: without one all of it is certified as new"
    )


def route(home: Home, basis: Basis, tap: str, place: str) -> Made[Route]:
    """Return the shortest surveyed way from a tap, ``meter`` or the id of a board, to a place.

    Legs serve in both directions. Their lengths are read only where two ways must be compared,
    and of the legs on the way. All ways are listed, which suits a dozen legs, not a hundred. A
    cable that lies there already is offered; where it is to be used, it is the way.
    """
    joining = tuple(cables_laid(home, tap, place))
    for id_ in joining:
        if if_said(lambda id_=id_: home.laid[id_].used, False):  # type: ignore[misc]
            return along_laid(home, basis, id_)
    ways = tuple(ways_between(tap, place, ends(home)))
    shortest = _shortest(home, ways)
    legs = tuple(_run(id_, home.legs[id_]) for id_ in shortest)
    length_m = way_length(tuple(leg.length_m for leg in legs))
    whole = not legs and if_said(lambda: home.legs.all_listed, False)
    return Made(
        Route(legs, length_m),
        (way_paced(tap, place, len(legs), whole),),
        tuple(_used(home, id_) for id_ in joining),
    )


def cables_laid(home: Home, tap: str, place: str) -> Iterator[str]:
    """Yield the ids of the cables already laid that join a tap and a place."""
    for id_, cable in home.laid.so_far():
        if {cable.from_place, cable.to_place} == {tap, place}:
            yield id_


def along_laid(home: Home, basis: Basis, id_: str) -> Made[Route]:
    """Return the way of a cable that lies there already, and whether it feeds the point alone."""
    cable = home.laid[id_]
    leg = LegRun(
        id=id_,
        how=cable.how,
        length_m=cable.length_m,
        insulation_mm=None,
        ambient_c=None,
        grouped_with=Count(0),
    )
    out = Route((leg,), cable.length_m, Laid(id_, cable.kind, cable.size_mm2))
    alone = own_circuit(cable.feeds_only).with_caution(
        f"left by {cable.left_by}: prove it from end to end before it is used, as if it "
        "were our own; the certificate covers all of it"
    )
    certified = if_said(lambda: cable.certificate, None)
    if certified is None:
        return Made(out, (alone,), notes=(certificate_to_see(id_),))
    given = certificate_given(cable.feeds_only, certified).mended_by(_certified(basis, id_))
    return Made(out, (alone, given))


def _certified(basis: Basis, id_: str) -> Remedy:
    """Return the work of certifying what somebody else laid."""
    return Remedy(
        slug=f"certify-{id_}",
        does=f"Inspect and test the cable {id_} as new before it is used, and certify it",
        changes=((f"laid.{id_}.certificate", True),),
        minutes=basis.task("prove-laid").minutes,
    )


def _used(home: Home, id_: str) -> Remedy:
    """Return the work of using a cable that lies there already; an old point on it goes."""
    load = if_said(lambda: home.laid[id_].of_load, "")
    gone = ((f"loads.{load}.present", False),) if load else ()
    return Remedy(
        slug=f"use-{id_}",
        does=f"Use the cable {id_} that lies there already, proved from end to end",
        changes=((f"laid.{id_}.used", True), *gone),
    )


def paced(way: Route) -> Route:
    """Return a way that leads somewhere; raises ``Unanswered`` where none has been paced."""
    if not way.legs:
        raise Unanswered("legs.all_listed")
    return way


def ends(home: Home) -> dict[str, tuple[str, str]]:
    """Return the two ends of every leg that is there, by its id."""
    return {id_: (leg.from_place, leg.to_place) for id_, leg in home.legs.so_far()}


def ways_between(
    start: str, goal: str, legs: Mapping[str, tuple[str, str]]
) -> Iterator[tuple[str, ...]]:
    """Yield every way from start to goal that passes no place twice, as ids of legs.

    Examples
    --------
    >>> legs = {"a": ("main", "wall"), "b": ("drive", "wall"), "c": ("main", "drive")}
    >>> list(ways_between("main", "drive", legs))
    [('a', 'b'), ('c',)]
    """
    waiting: list[tuple[str, tuple[str, ...], frozenset[str]]] = [(start, (), frozenset())]
    while waiting:
        here, way, passed = waiting.pop()
        if here == goal:
            yield way
            continue
        onward = [
            (far, (*way, id_), passed | {here})
            for id_, pair in legs.items()
            if here in pair and (far := _other(pair, here)) not in passed and far != here
        ]
        waiting.extend(reversed(onward))


def _other(pair: tuple[str, str], here: str) -> str:
    """Return the far end of a leg."""
    return pair[1] if pair[0] == here else pair[0]


def _shortest(home: Home, ways: Sequence[tuple[str, ...]]) -> tuple[str, ...]:
    """Return the way with the fewest metres; of equals the first found."""
    if len(ways) < 2:
        return ways[0] if ways else ()
    return min(ways, key=lambda way: way_length(tuple(home.legs[id_].length_m for id_ in way)))


def _run(id_: str, leg: Leg) -> LegRun:
    """Return one leg, reading only the facts that its way of running makes matter."""
    how = leg.how
    return LegRun(
        id=id_,
        how=how,
        length_m=leg.length_m,
        insulation_mm=leg.insulation_mm if how in MAY_TOUCH_INSULATION else None,
        ambient_c=None if how in IN_GROUND else leg.ambient_c,
        grouped_with=leg.grouped_with,
    )
