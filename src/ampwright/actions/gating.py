"""What is missing before each stage of a job: facts not known well enough, things to have in hand.

Only facts that bear on this home count: those that a design on offer reads, those in the way of
one, and those that stand on papers. Where nothing is on offer yet, all count.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final, Literal, cast

from ampwright.foundations.source import Evidence
from ampwright.survey.layout import slot
from ampwright.survey.register import Gate, Who
from ampwright.survey.states import State, states
from ampwright.survey.upkeep import Short, aged, short_of

from .along import in_hand
from .deciding import lacking_in
from .design_run import run_design
from .facts import answer_to, fact_name, how
from .heads import basis_head
from .questions import question
from .seeing import Seen, Terms, see
from .shapes import BasisHead, HomeHead, InHand, Known

Stage = Literal["quote", "book", "fit", "certify"]
GATES: Final[tuple[Gate, ...]] = ("quote", "fit", "certify")
CHANNELS: Final[tuple[Who, ...]] = ("phone", "photo", "site")
AT_LEAST: Final[dict[Evidence, Who]] = {
    Evidence.ASSUMED: "phone", Evidence.TOLD: "phone", Evidence.SEEN: "photo",
    Evidence.MEASURED: "site",
}  # fmt: skip
"""By what the nearest to hand can give each evidence."""


@dataclass(frozen=True, slots=True)
class ShortFact:
    """A fact that is not known well enough for some stage.

    ``answer`` is what is held so far, empty when nothing is; ``needs`` says how it must be known
    before each stage that asks for more; ``answered_by`` what can give that.
    """

    key: str
    what: str
    ask: str
    look: str
    answered_by: Who
    answer: str
    known: Known
    needs: Mapping[str, Known]


@dataclass(frozen=True, slots=True)
class StageGate:
    """One stage of a job: whether the way is clear, and how many facts are in it."""

    before: Stage
    clear: bool
    facts_short: int


@dataclass(frozen=True, slots=True)
class OldFact:
    """A fact that was last asked so long ago that it should be asked again."""

    key: str
    what: str
    answer: str
    how: str


@dataclass(frozen=True, slots=True)
class GatesAnswer:
    """What is missing before a job is quoted, booked, fitted and certified."""

    home: HomeHead
    basis: BasisHead
    stages: tuple[StageGate, ...]
    facts: tuple[ShortFact, ...]
    in_hand: tuple[InHand, ...]
    ask_again: tuple[OldFact, ...]


def gates(path: Path, terms: Terms) -> GatesAnswer:
    """Return what is missing before each stage; raises like ``read_home``."""
    seen = see(path, terms)
    known_now = states(seen.home.folded)
    wanted = bearing(seen, known_now)
    short = {gate: short_of(known_now, gate, wanted) for gate in GATES}
    hand = in_hand(seen.best) if seen.best else ()
    return GatesAnswer(
        home=seen.home.head,
        basis=basis_head(seen.basis),
        stages=tuple(stage_gates(short, hand, can_be_booked=seen.best is not None)),
        facts=tuple(short_facts(seen, known_now, short)),
        in_hand=hand,
        ask_again=tuple(
            OldFact(each.key, fact_name(each.key), held(seen, each.key), how(each))
            for each in aged(known_now, seen.basis.design_date)
        ),
    )


def bearing(seen: Seen, known_now: Mapping[str, State]) -> list[str]:
    """Return the facts that bear on a home, in the order of the register; all, if none is known."""
    if seen.best is None:
        return list(known_now)
    read = {key for option in seen.offered.values() for key in option.sound.facts}
    read.update(lacking_in(seen))
    for option in seen.offered.values():
        read.update(run_design(seen.home.folded, seen.basis, option).reads)
    return [key for key, state in known_now.items() if key in read or state.fact.on_papers]


def stage_gates(
    short: Mapping[Gate, Sequence[Short]], hand: Collection[InHand], *, can_be_booked: bool
) -> Iterator[StageGate]:
    """Yield each stage in the order of the work; a day needs an option and all in hand."""
    for gate, facts in short.items():
        yield StageGate(gate, not facts, len(facts))
        if gate == "quote":
            yield StageGate("book", can_be_booked and not hand, 0)


def short_facts(
    seen: Seen, known_now: Mapping[str, State], short: Mapping[Gate, Sequence[Short]]
) -> Iterator[ShortFact]:
    """Yield each fact that falls short, once: those of the telephone first, then photographs."""
    needs: dict[str, dict[Gate, Evidence]] = {}
    for gate, facts in short.items():
        for each in facts:
            needs.setdefault(each.key, {})[gate] = each.needs
    found = [short_fact(seen, key, needs[key]) for key in known_now if key in needs]
    for who in CHANNELS:
        yield from (each for each in found if each.answered_by == who)


def short_fact(seen: Seen, key: str, needs: Mapping[Gate, Evidence]) -> ShortFact:
    """Return one fact that falls short, with how to ask and what to look at."""
    found, answered = slot(key), seen.home.folded.at(key)
    return ShortFact(
        key=key,
        what=fact_name(key),
        ask=question(key, seen.home.folded),
        look=found.look,
        answered_by=max(found.fact.who, AT_LEAST[min(needs.values())], key=CHANNELS.index),
        answer=held(seen, key),
        known=cast(Known, answered.evidence.word) if answered.evidence else "not asked",
        needs={gate: cast(Known, needed.word) for gate, needed in needs.items()},
    )


def held(seen: Seen, key: str) -> str:
    """Return what is held of a fact so far, in words; nothing while nobody answered."""
    said = seen.home.folded.at(key).answer
    return answer_to(key, said) if said is not None else ""
