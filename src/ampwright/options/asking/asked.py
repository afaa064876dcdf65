"""Everything that can be said of a home while facts are open, and what to ask next."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from math import prod
from typing import Final

from ampwright.firm.asking import Channel
from ampwright.firm.basis import Basis
from ampwright.foundations.source import Evidence
from ampwright.survey.folding import FoldedHome
from ampwright.survey.layout import Ids, same_things, slot

from ..among import are_some, offers, ranked_among
from ..chances import most_usual
from ..choices import Menu
from ..homes import Homes
from ..lifting import Lifter
from ..menu import menu_of
from ..outlook import outlook
from ..ranking import Ranking
from .drawing import Same, beside, draw, first
from .drawn import HOME, DrawnHomes
from .errands import Errand, errands, taken
from .leading import always, found_in
from .overruled import turns_if_right
from .possible_homes import Holds, holds
from .remaining import Remaining, whole
from .supposing import Shares, homes_supposed, supposing
from .trying import remaining_of
from .worth import Turns, Worth, turns_beside, turns_on

MOST_WHOLE: Final = 1 << 15
"""Up to so many homes all are gone through, if no stage tells too many of them apart."""
MOST_RUNS: Final = 1 << 10
"""How often the stages may have to be run for what they read themselves."""
PROBES: Final = 4
"""How many are drawn to see which facts are read at all."""
DRAWS: Final = 48
BASES: Final = 2
"""Beside how many of the drawn homes, and the most usual one, each fact is changed alone.

Other ones with each fact that becomes known, so that in the course of a call more is seen.
"""
SEED: Final = 9
"""Of the first 24 one of the three whose homes come nearest to what many more come to, and the one
whose ranges lean least to one side; ``benchmarks/bench_asking.py`` shows how near they come."""
LIST: Final = ".all_listed"
NEAREST: Final = (Channel.PHONE, Channel.PHOTO, Channel.SITE)
BETTER: Final = {Evidence.SEEN: Channel.PHOTO, Evidence.MEASURED: Channel.SITE}
"""By what channel a thing is looked at again that was seen or measured, at the nearest."""


@dataclass(frozen=True, slots=True, eq=False)
class Asked:
    """What can be said of a home now, and what to ask.

    ``explored`` is what the home comes to with what is usual taken for the rest; ``taken`` holds
    what was taken so, by key, which stands in no design. ``deciding`` are the facts that some home
    turns on, what settles most a minute first, ``errands`` the same as they are best asked, and
    ``next`` the one to ask now; nothing where nothing decides. ``ids`` and ``basis`` say of what
    home it is and to what it was worked.
    """

    ids: Ids
    basis: Basis
    explored: Explored
    taken: Mapping[str, Shares]
    deciding: tuple[Worth, ...]
    errands: tuple[Errand, ...]
    next: Worth | None

    @property
    def holds(self) -> Holds:
        """What can be said of the home."""
        return self.explored.holds

    @property
    def ranking(self) -> Ranking | None:
        """The options of all homes; nothing where homes were drawn."""
        return self.explored.ranking


def asked(
    folded: FoldedHome, basis: Basis, channel: Channel | None = None, before: Asked | None = None
) -> Asked:
    """Return what holds of a home in every home it may be, and what to ask, through a channel.

    Where all homes are too many they are drawn, always the same ones. ``before`` is what was
    said of the same home when less of it was known: it saves work and changes nothing.
    """
    supposed = supposing(folded, basis.asking)
    homes = homes_supposed(supposed, basis)
    earlier = None
    same = before is not None and same_things(before.ids, supposed.folded.ids)
    if before is not None and same and before.basis is basis:
        earlier = before.explored
        homes = replace(homes, memory=earlier.homes.memory)
    explored = explore(homes, basis, supposed.same, earlier)
    if_right = dict(turns_if_right(folded, homes, basis, supposed.same))
    deciding = sorted(worths({**if_right, **explored.turns}, folded, basis), key=order_of)
    walks = errands(deciding, basis.asking, channel)
    return Asked(
        ids=supposed.folded.ids,
        basis=basis,
        explored=explored,
        taken=supposed.taken,
        deciding=tuple(deciding),
        errands=walks,
        next=walks[0].facts[0] if walks else None,
    )


def order_of(each: Worth) -> tuple[float, float, str]:
    """Return where a question stands: what settles most a minute first, then what is worth most."""
    return (-round(each.settles_a_minute, 9), -round(each.per_minute_p, 6), each.key)


@dataclass(frozen=True, slots=True, eq=False)
class Explored:
    """What some homes come to, and how far they turn on each fact that decides.

    ``ranking`` is that of their options and ``menu`` what there was to choose from; nothing of
    either where homes were drawn.
    """

    homes: Homes
    ranking: Ranking | None
    menu: Menu
    holds: Holds
    turns: Mapping[str, Turns]


def explore(homes: Homes, basis: Basis, same: Same, before: Explored | None = None) -> Explored:
    """Go through homes whole where they are few enough, else through drawn ones.

    ``same`` names, for a fact that was taken, another that it is always the same as. Homes that
    are some of those gone through ``before`` are not gone through again.
    """
    if before is not None and before.ranking is not None and are_some(homes, before.homes):
        now = menu_of(Lifter(homes), basis)
        if offers(before.menu, now):
            return explored_whole(ranked_among(before.ranking, homes, now), now)
    listed, longer = lists_closed(homes)
    sample = draw(listed, DRAWS, SEED, same)
    probe = first(listed, sample, PROBES, same)
    found_in(probe, basis)
    if few_enough(homes, probe):
        seen = outlook(homes, basis)
        return explored_whole(seen.ranking, seen.searched.menu)
    found = found_in(sample, basis)
    remaining = remaining_of(sample, found)
    read = [key for key in listed.open if key in sample.read and key not in same]
    turns = turns_of(listed, sample, read, same, basis)
    turns |= blanks(remaining)
    lists = {key: share for key, share in longer.items() if key in sample.read}
    turns |= {key: one_of_two(share) for key, share in lists.items()}
    unlisted = 1.0 - prod(1.0 - share for share in lists.values())
    sound = always(sample, basis, found)
    return Explored(homes, None, {}, holds(remaining, sound, unlisted), deciding_of(turns))


def explored_whole(ranking: Ranking, menu: Menu) -> Explored:
    """Return what every home comes to by the options of all, each fact changed in each of them."""
    remaining = whole(ranking)
    sound = tuple(option.id for option in ranking.front if option.sound.always)
    turns = {fact: turns_on(remaining, fact) for fact in remaining.numbers}
    turns |= blanks(remaining)
    homes = ranking.cells.homes
    return Explored(homes, ranking, menu, holds(remaining, sound), deciding_of(turns))


def few_enough(homes: Homes, probe: DrawnHomes) -> bool:
    """Say whether all homes can be gone through, from what the stages read in a few of them."""

    def count(keys: Iterable[str]) -> int:
        return prod(len(homes.open[key]) for key in keys if key in homes.open)

    runs = sum(count(keys) for _, keys in probe.reads)
    return count(probe.read) <= MOST_WHOLE and runs - len(probe.reads) <= MOST_RUNS


def turns_of(
    homes: Homes, sample: DrawnHomes, facts: list[str], same: Same, basis: Basis
) -> dict[str, Turns]:
    """Change each fact beside the most usual home and a few of the drawn ones."""
    passed = BASES * len(homes.known)
    at = [(passed + i) % len(sample.open[HOME]) for i in range(BASES)]
    drawn = [{key: int(each[n]) for key, each in sample.numbers.items()} for n in at]
    usual = {key: homes.at[key][value] for key, value in most_usual(homes, {}).items()}
    set_beside = beside(homes, [usual, *drawn], facts, same)
    found = remaining_of(set_beside.homes, found_in(set_beside.homes, basis))
    return {fact: turns_beside(found, homes, fact, set_beside.at[fact]) for fact in facts}


def one_of_two(share: float) -> Turns:
    """Return how far a home turns on whether a list is whole: longer, nothing of it is certain."""
    differ = 2 * share * (1 - share)
    return Turns(0.0, differ, 0.0, differ, any=share > 0)


def blanks(homes: Remaining) -> dict[str, Turns]:
    """Return the blank facts in the way: without them a decision cannot be said in some homes."""
    return {
        key: Turns(0.0, share, 0.0, share, any=share > 0)
        for key, share in homes.lacking.items()
        if not key.endswith(LIST)
    }


def deciding_of(turns: Mapping[str, Turns]) -> dict[str, Turns]:
    """Return the facts on which some home turns."""
    return {fact: each for fact, each in turns.items() if each.any}


def lists_closed(homes: Homes) -> tuple[Homes, dict[str, float]]:
    """Return homes whose lists are whole as told, and how likely each is to be longer."""
    lists = [key for key in homes.open if key.endswith(LIST)]
    longer = {key: homes.chances[key][homes.open[key].index(False)] for key in lists}
    return homes.knowing(dict.fromkeys(lists, True)), longer


def worths(turns: Mapping[str, Turns], folded: FoldedHome, basis: Basis) -> Iterator[Worth]:
    """Yield what each fact is worth, with who can answer; not one that nobody is left to ask."""
    for key, each in turns.items():
        place, said = slot(key), folded.at(key)
        channel = Channel(place.fact.who)
        if said.overruled:
            channel = max(
                channel, BETTER.get(said.evidence or Evidence.TOLD, channel), key=NEAREST.index
            )
        if said.cannot_say:
            if channel is Channel.SITE:
                continue
            channel = Channel.SITE
        yield Worth(
            key=key,
            turns=each,
            worth_p=each.moves_p + each.changes * visit_p(basis),
            channel=channel,
            minutes=taken((key,), channel, basis.asking),
            ask=place.ask,
            look=place.look,
            disputed=bool(said.disputed),
            overruled=bool(said.overruled),
        )


def visit_p(basis: Basis) -> float:
    """Return what a visit for nothing costs: the drive and the time kept for it, at labour."""
    hours = float(basis.asking.minutes("travel") + basis.asking.minutes("lost-slot")) / 60
    return hours * float(basis.rates.card.labour_p_per_h.usual)
