"""Whether it would matter if the weaker of two sayings were right after all.

What is overruled stands in no design. It is asked about only where price or decision would turn
on it; then somebody looks again.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Is, Value
from ampwright.survey.folding import FoldedHome

from ..chances import most_usual
from ..homes import Homes
from .drawing import Same, beside
from .leading import found_in
from .trying import remaining_of
from .worth import Turns, turns_beside


def turns_if_right(
    folded: FoldedHome, homes: Homes, basis: Basis, same: Same
) -> Iterator[tuple[str, Turns]]:
    """Yield each fact with an overruled saying on which the most usual home would turn.

    Both sayings count alike, beside what else is known of the home: somebody said each of them.
    """
    for key, values in said_otherwise(folded, homes).items():
        known = {other: value for other, value in homes.known.items() if other != key}
        opened = replace(
            homes,
            known=known,
            open={**homes.open, key: values},
            chances={**homes.chances, key: (1 / len(values),) * len(values)},
            pool={},
        )
        usual = {each: opened.at[each][v] for each, v in most_usual(opened, {}).items()}
        set_beside = beside(opened, [usual], [key], same)
        found = remaining_of(set_beside.homes, found_in(set_beside.homes, basis))
        turns = turns_beside(found, opened, key, set_beside.at[key])
        if turns.any:
            yield key, turns


def said_otherwise(folded: FoldedHome, homes: Homes) -> dict[str, tuple[Value, ...]]:
    """Return, for each fact of which weaker evidence says otherwise, what stands and what it says.

    Only values count; a range that is overruled names none.
    """
    found = {}
    for key, said in folded.facts.items():
        if said.overruled and key in homes.known:
            weaker = (row.answer.value for row in said.overruled if isinstance(row.answer, Is))
            values = tuple(dict.fromkeys((homes.known[key], *weaker)))
            if len(values) > 1:
                found[key] = values
    return found
