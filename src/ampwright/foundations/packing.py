"""Pieces in a rack: the fewest that must be moved so that a place is free, and in which order.

A piece fills some spots and has places where it may go. Whatever stands where another must go
moves on in its turn, and nothing moves that is in nobody's way: so the search follows who
displaces whom, for one piece, for two, for three, and the first number that suffices is the least.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

Spot = tuple[int, int]
Spots = tuple[Spot, ...]
Moves = Mapping[str, "Place"]
NO_WAY: Final = 10**6
NOWHERE, TOO_FEW, FOUND = range(3)


@dataclass(frozen=True, slots=True)
class Place:
    """Spots where a piece may go, and what that costs: what matters most comes first."""

    spots: Spots
    cost: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece as it sits, with the places that it may go to; one that must stay has none."""

    id: str
    at: Spots
    places: tuple[Place, ...] = ()


@dataclass(frozen=True, slots=True)
class Step:
    """One piece put in its new place; ``hung`` if it has to wait out of the rack before that."""

    id: str
    spots: Spots
    hung: bool = False


@dataclass(frozen=True, slots=True)
class Packed:
    """A place made free, with where each piece goes that had to move, and what was weighed."""

    freed: Spots
    moves: tuple[tuple[str, Place], ...]
    burden: int
    cost: tuple[float, ...]


class Packing:
    """A search for the fewest moves; exact, for racks of a few dozen spots."""

    def __init__(
        self,
        pieces: Iterable[Piece],
        burden: Callable[[Spots, Moves], int | None] = lambda _freed, _moves: 0,
        evenness: Callable[[Moves], float] = lambda _moves: 0.0,
    ) -> None:
        self.pieces = {piece.id: piece for piece in pieces}
        self.sits = {spot: piece.id for piece in self.pieces.values() for spot in piece.at}
        self.burden, self.evenness = burden, evenness
        self._best: tuple[tuple[int, tuple[float, ...], float], Packed] | None = None

    def fewest(
        self, wanted: Sequence[Spots], must: Mapping[str, tuple[Place, ...]] | None = None,
        most: int | None = None,
    ) -> Packed | None:  # fmt: skip
        """Return the fewest moves that free one of the places wanted; ``None`` if none do.

        Pieces in ``must`` go to one of their own places besides. Of as few moves the one with
        the least burden, then the least cost, then the most even; ``most`` bounds their number.
        """
        starts = [start for each in wanted if (start := self._start(each, must or {}))]
        most = len(self.pieces) if most is None else most
        for count in range(most + 1):
            self._best = None
            led = max((start.walk(count) for start in starts), default=NOWHERE)
            if self._best is not None or led == NOWHERE:
                break
        return self._best[1] if self._best else None

    def _start(self, freed: Spots, must: Mapping[str, tuple[Place, ...]]) -> Walk | None:
        """Return where the search for one place begins; nothing if what is there must stay."""
        there = (self.sits[spot] for spot in freed if spot in self.sits)
        leaves = dict.fromkeys([*must, *there])
        places = {id_: piece.places for id_, piece in self.pieces.items()} | dict(must)
        if not all(places[id_] for id_ in leaves) or not self._blanks_suffice(freed, places):
            return None
        return Walk(self, freed, tuple(leaves), places)

    def _blanks_suffice(self, freed: Spots, places: Mapping[str, tuple[Place, ...]]) -> bool:
        """Say whether each line has blanks enough, unless something changes lines."""
        spots = {spot for each in places.values() for place in each for spot in place.spots}
        blank = Counter(spot[1] for spot in spots.union(freed) if spot not in self.sits)
        stays = all(
            lines_of(place.spots) == lines_of(self.pieces[id_].at)
            for id_, each in places.items()
            for place in each
        )
        return not stays or Counter(spot[1] for spot in freed) <= blank

    def worse(self, cost: tuple[float, ...]) -> bool:
        """Say whether a part of some moves already costs more than the best that bear nothing."""
        return self._best is not None and self._best[0][0] == 0 and cost > self._best[0][1]

    def offer(self, freed: Spots, moves: Moves, cost: tuple[float, ...]) -> None:
        """Keep some moves if none kept is better; a burden of ``None`` is not to be borne."""
        burden = self.burden(freed, moves)
        if burden is None or (self._best and (burden, cost) > self._best[0][:2]):
            return
        key = burden, cost, self.evenness(moves)
        if self._best is None or key < self._best[0]:
            self._best = key, Packed(freed, tuple(moves.items()), burden, cost)


def lines_of(spots: Spots) -> list[int]:
    """Return the lines of some spots, in order."""
    return sorted(line for _, line in spots)


class Walk:
    """The search for one place: who leaves it, where to, and who has to leave for that."""

    def __init__(
        self, packing: Packing, freed: Spots, leaves: tuple[str, ...],
        places: Mapping[str, tuple[Place, ...]],
    ) -> None:  # fmt: skip
        self.packing, self.freed, self.leaves, self.places = packing, freed, leaves, places
        self.vacant = {spot for id_ in leaves for spot in packing.pieces[id_].at}
        self.narrow = {id_: (len(each), id_) for id_, each in places.items()}
        self.chain = self._chains()
        self.vain: dict[tuple[Any, ...], int] = {}

    def walk(self, count: int) -> int:
        """Offer every way to free the place with so many moves; say what was found."""
        return self._go(self.leaves, {}, frozenset(self.freed), (), count)

    def _go(
        self, leaving: tuple[str, ...], moves: dict[str, Place], taken: frozenset[Spot],
        cost: tuple[float, ...], left: int,
    ) -> int:  # fmt: skip
        """Give the first of those that are leaving a place, then whoever that displaces.

        Returns whether that led anywhere; what led nowhere is not tried again with as few moves.
        """
        if not leaving:
            self.packing.offer(self.freed, moves, cost)
            return FOUND
        state = leaving, taken, frozenset(moves)
        if self.vain.get(state, -1) >= left:
            return NOWHERE if self.vain[state] == NO_WAY else TOO_FEW
        led = NOWHERE
        for place in self.places[leaving[0]]:
            if not taken.isdisjoint(place.spots):
                continue
            displaced = self._displaced(place, leaving, moves)
            onward = tuple(sorted((*leaving[1:], *displaced), key=self.narrow.__getitem__))
            least = sum(self.chain[each] for each in onward)
            if least > left - 1:
                led = max(led, NOWHERE if least >= NO_WAY else TOO_FEW)
                continue
            dearer = tuple(map(sum, zip(cost, place.cost, strict=True))) if cost else place.cost
            if self.packing.worse(dearer):
                led = FOUND
                continue
            more = {**moves, leaving[0]: place}
            led = max(led, self._go(onward, more, taken.union(place.spots), dearer, left - 1))
        if led != FOUND:
            self.vain[state] = NO_WAY if led == NOWHERE else left
        return led

    def _displaced(self, place: Place, leaving: tuple[str, ...], moves: Moves) -> Iterator[str]:
        """Yield who sits in a place and would stay there otherwise."""
        sits = dict.fromkeys(self.packing.sits[s] for s in place.spots if s in self.packing.sits)
        yield from (each for each in sits if each not in leaving and each not in moves)

    def _chains(self) -> dict[str, int]:
        """Return a number of moves that certainly no fewer than will find each piece a place.

        A piece of one spot is displaced by one other, so those that must go on for two pieces
        are not the same; a wider one may make room for several, and is not counted.
        """
        found = dict.fromkeys(self.places, NO_WAY)
        changed = True
        while changed:
            changed = False
            for id_, places in self.places.items():
                least = 1 + min((self._beyond(each, found) for each in places), default=NO_WAY)
                if least < found[id_]:
                    found[id_], changed = least, True
        return found

    def _beyond(self, place: Place, found: Mapping[str, int]) -> int:
        """Return a number of moves that certainly no fewer than will empty a place."""
        if not set(place.spots).isdisjoint(self.freed):
            return NO_WAY
        sits = (self.packing.sits[s] for s in place.spots
                if s in self.packing.sits and s not in self.vacant)  # fmt: skip
        return sum(found[each] for each in sits if self._counts(each))

    def _counts(self, id_: str) -> bool:
        """Say whether a piece is displaced by one other alone, or stays."""
        return len(self.packing.pieces[id_].at) == 1 or not self.places[id_]


def in_order(pieces: Iterable[Piece], moves: Sequence[tuple[str, Place]]) -> tuple[Step, ...]:
    """Return moves in an order in which every place is empty when its piece comes.

    Where some wait for each other in a ring, one is taken out first and put in last.

    Examples
    --------
    >>> a, b = Piece("a", ((1, 0),)), Piece("b", ((2, 0),))
    >>> swap = [("a", Place(b.at, ())), ("b", Place(a.at, ()))]
    >>> [(step.id, step.hung) for step in in_order([a, b], swap)]
    [('b', False), ('a', True)]
    """
    sits = {piece.id: piece.at for piece in pieces}
    waiting, out, done = dict(moves), set[str](), list[Step]()
    while waiting:
        for id_, place in waiting.items():
            there = {other for other, at in sits.items() if other != id_ and other not in out}
            if all(set(sits[other]).isdisjoint(place.spots) for other in there):
                done.append(Step(id_, place.spots, id_ in out))
                sits[id_] = place.spots
                out.discard(id_)
                del waiting[id_]
                break
        else:
            out.add(next(id_ for id_ in waiting if id_ not in out))
    return tuple(done)
