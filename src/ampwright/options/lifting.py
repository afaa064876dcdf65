"""Plain stages run over all homes at once.

``lift`` runs a plain scalar stage once for each distinct thing it could be given and reads of a
home, parting at each fact that is still open. Nothing declares what it reads and nothing is
written twice for arrays.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import Any, TypeVar, cast

import numpy as np

from ampwright.foundations.answers import Missing

from .handed import Handed
from .homes import Homes
from .memory import Ended, Reads
from .spread import NOWHERE, Changes, Index, Spread, in_order, trimmed
from .values import Fixed, Forking, H, HomeReader, Values

T = TypeVar("T")
Leaf = tuple[Fixed, Any]
"""The open facts a stage looked at with their values, and what it came to."""


def unlike(one: Changes, other: Changes) -> frozenset[str]:
    """Return the facts that two sets of changes do not leave alike in every home."""
    return frozenset(key for key in {**one, **other} if one.get(key) is not other.get(key))


class Lifter:
    """Runs plain stages over all homes at once; keeps each distinct piece of work.

    ``changes`` are the facts that were laid over the homes, and ``near`` other lifters of the
    same homes with other changes: work that read none of the facts in which two differ is
    taken over.
    """

    def __init__(
        self,
        homes: Homes,
        changes: Changes | None = None,
        near: Iterable[Lifter] = (),
    ) -> None:
        self.homes, self.changes = homes, changes or {}
        self.calls = 0
        self._values = Forking(homes.known, homes.open, self.changes)
        self._reader: HomeReader[Any] = HomeReader(self._values, {})
        self.view = homes.build(self._reader)
        self._kept: dict[tuple[Any, ...], tuple[Spread[Any], frozenset[str]]] = {}
        self._reads: set[str] = set()
        self._near = [(other, unlike(self.changes, other.changes)) for other in near]

    def like(self, changes: Changes, near: Iterable[Lifter]) -> Lifter:
        """Return a lifter of the same kind and homes with other changes."""
        return type(self)(self.homes, changes, near)

    def lift(self, stage: Callable[..., T], *args: object) -> Spread[T]:
        """Return the spread of a stage over one value of each spread among its arguments.

        Arguments that are not spreads are handed on as they are. The same call is made once.
        """
        key = (stage, *args)
        kept = self._kept.get(key)
        if kept is None:
            kept = self._from_near(key) or self._afresh(stage, args)
            self._kept[key] = kept
        return kept[0]

    def _afresh(
        self, stage: Callable[..., T], args: tuple[object, ...]
    ) -> tuple[Spread[T], frozenset[str]]:
        """Return the spread of a stage, and every fact that it read."""
        self._reads = set()
        self.homes.memory.let_go()
        return self._lift(stage, args), frozenset(self._reads)

    def _from_near(self, key: tuple[Any, ...]) -> tuple[Spread[Any], frozenset[str]] | None:
        """Return the same work done by a near lifter, if no fact it read is another here."""
        for other, differing in self._near:
            kept = other._kept.get(key)
            if kept is not None and kept[1].isdisjoint(differing):
                return kept
        return None

    def _lift(self, stage: Callable[..., T], args: tuple[object, ...]) -> Spread[T]:
        spreads = [arg for arg in args if isinstance(arg, Spread)]
        facts = in_order(self.homes, (fact for s in spreads for fact in s.facts))
        if not facts:
            only = filled(args, tuple(spread.values[0] for spread in spreads))
            leaves: list[Leaf] = list(self._ends(stage, only, self._values, {}))
            if not any(fixed for fixed, _ in leaves):
                return Spread.of(self.homes, (), NOWHERE, (cast(T, leaves[0][1]),))
            return self._joined(facts, NOWHERE, [leaves])
        inverse, combinations = self._combinations(spreads, facts)
        handed = Handed(self.homes, facts, inverse, len(combinations))
        trees: list[list[Leaf]] = [
            list(self._ends(stage, filled(args, each), self._values.where(handed.of(number)), {}))
            for number, each in enumerate(combinations)
        ]
        return self._joined(facts, inverse, trees)

    def _combinations(
        self, spreads: list[Spread[Any]], facts: tuple[str, ...]
    ) -> tuple[Index, list[tuple[Any, ...]]]:
        """Return each distinct combination of values, and where in the homes it occurs."""
        sizes = [len(s.values) for s in spreads]
        code = np.zeros((1,) * len(facts), np.int64)
        for spread, size in zip(spreads, sizes, strict=True):
            code = code * size + spread.over(facts)
        used, inverse = np.unique(code, return_inverse=True)
        found = []
        for number in used.tolist():
            parts: list[Any] = []
            rest = number
            for spread, size in zip(reversed(spreads), reversed(sizes), strict=True):
                rest, which = divmod(rest, size)
                parts.append(spread.values[which])
            found.append(tuple(reversed(parts)))
        return inverse.reshape(code.shape), found

    def _ends(
        self,
        stage: Callable[..., T],
        args: tuple[object, ...],
        values: Values[H, Any],
        here: H,
    ) -> Iterator[tuple[H, T | Missing]]:
        """Yield what a stage comes to in some homes, once for all those in which it reads the same.

        It is followed along what it read before, and run where nobody has come yet: what a run
        does not look at does not count.
        """
        lacking = tuple(key for arg in args if isinstance(arg, Missing) for key in arg.keys)
        if lacking:
            yield here, Missing(tuple(dict.fromkeys(lacking)))
            return
        then, at = self.homes.memory.start(stage, args)
        waiting = [(then, at, here)]
        while waiting:
            then, at, here = waiting.pop()
            node = then.get(at)
            if node is None:
                ended, alike = self._run(stage, args, values, here)
                if alike:
                    yield here, ended.result
                    continue
                node = then[at]
            if type(node) is Reads:
                self._reads.add(node.fact)
                waiting += [(node.then, *each) for each in values.of(node.fact, here)]
            else:
                yield here, node.result

    def _run(
        self,
        stage: Callable[..., T],
        args: tuple[object, ...],
        values: Values[H, Any],
        here: H,
    ) -> tuple[Ended, bool]:
        """Run a stage in the first of some homes; also say whether it is the same in all."""
        reader, homes = self._reader, self.homes
        reader.begin(values, here)
        self.calls += 1
        ended = homes.memory.run(stage, args, self.view, reader, once=not homes.open)
        self._reads.update(reader.seen)
        return ended, reader.here == here

    def _joined(
        self, facts: tuple[str, ...], inverse: Index, trees: list[list[Leaf]]
    ) -> Spread[Any]:
        """Lay the results of each combination over its own facts and those it came with."""
        own = in_order(self.homes, (f for tree in trees for fixed, _ in tree for f in fixed))
        table, values = self._table(own, trees)
        if not own:
            return trimmed(self.homes, facts, table[inverse], values)
        both = in_order(self.homes, (*facts, *own))
        shape = tuple(len(self.homes.open[f]) if f in facts else 1 for f in both)
        pick: list[Index] = [inverse.reshape(shape)]
        for fact in own:
            axis = tuple(-1 if other == fact else 1 for other in both)
            pick.append(np.arange(len(self.homes.open[fact])).reshape(axis))
        return trimmed(self.homes, both, table[tuple(pick)], values)

    def _table(
        self, own: tuple[str, ...], trees: list[list[Leaf]]
    ) -> tuple[Index, tuple[Any, ...]]:
        """Return which result each combination has for each value of its own facts."""
        values: dict[Any, int] = {}
        if not own:
            found = [values.setdefault(tree[0][1], len(values)) for tree in trees]
            return np.asarray(found, np.int64), tuple(values)
        table = np.zeros((len(trees), *(len(self.homes.open[f]) for f in own)), np.int64)
        for i, tree in enumerate(trees):
            for fixed, result in tree:
                number = values.setdefault(result, len(values))
                where = (self.homes.at[f][fixed[f]] if f in fixed else slice(None) for f in own)
                table[(i, *where)] = number
        return table, tuple(values)


def filled(args: tuple[object, ...], values: tuple[Any, ...]) -> tuple[object, ...]:
    """Put one value of each spread in its place among the arguments."""
    rest = iter(values)
    return tuple(next(rest) if isinstance(arg, Spread) else arg for arg in args)
