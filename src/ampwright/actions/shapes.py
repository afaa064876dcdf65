"""What ``options`` answers, in plain pieces: words for people beside numbers for programs.

The JSON of an answer and its schema come from these declarations alone.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Literal

Sign = Literal["tell_after", "tell_after_with_limit", "ask_first", "stop_until", "undetermined"]
Known = Literal["assumed", "told", "seen", "measured", "not asked"]
Sure = Literal["in every home", "in some homes", "not certain yet"]
Source = Literal["phone", "photo", "site", "operator"]
Why = Literal["open", "assumed", "operator", "see first", "memory", "doubtful"]


@dataclass(frozen=True, slots=True)
class HomeHead:
    """Whose home it is, as far as anyone said."""

    customer: str
    address: str
    postcode: str
    telephone: str = ""
    email: str = ""
    best_time: str = ""


@dataclass(frozen=True, slots=True)
class CouldBe:
    """A decision that some of the possible homes lead to, and how likely that is, in words."""

    value: Sign
    words: str
    chance: str


@dataclass(frozen=True, slots=True)
class Decided:
    """The decision of the job, no surer than the facts.

    ``turns_on`` are the keys of the facts on which it turns; ``lacking`` those of the blank
    facts in the way.
    """

    value: Sign
    words: str
    customer_words: str
    sentence: str
    could_be: tuple[CouldBe, ...]
    turns_on: tuple[str, ...]
    lacking: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FoundFact:
    """One fact as it stands: the answer, how it is known and on what.

    ``overruled`` is what weaker evidence said otherwise.
    """

    key: str
    what: str
    answer: str
    known: Known
    how: str
    overruled: str


@dataclass(frozen=True, slots=True)
class OpenFact:
    """A fact that may still be several things, or that nobody was asked: the question to put.

    ``answered_by`` says how it is found out; ``decides`` that the decision turns on it.
    """

    key: str
    what: str
    ask: str
    answered_by: Source
    may_be: tuple[str, ...]
    decides: bool


@dataclass(frozen=True, slots=True)
class Figure:
    """A number, or the range of it over the possible homes, with its words."""

    low: float
    high: float
    unit: str
    words: str


@dataclass(frozen=True, slots=True)
class Chosen:
    """What was chosen in an option.

    ``earthing`` is ``pme``, ``rod`` or ``house rod``; ``hours`` is ``any``, or ``night`` for a
    point locked to the cheap hours.
    """

    place: str
    tap: str
    point: str
    phases: int
    setting_a: float
    house_limit: bool
    hours: str
    family: str
    earthing: str


@dataclass(frozen=True, slots=True)
class Work:
    """One piece of work that an option needs first, with its parts and minutes.

    ``by`` names the outside body that must do it; empty when the firm does. ``steps`` tell in
    order how it is done where that matters; ``chart`` is what it leaves, heads first.
    """

    slug: str
    does: str
    parts: tuple[str, ...]
    minutes_low: float
    minutes_usual: float
    minutes_high: float
    time: str
    by: str
    steps: tuple[str, ...] = ()
    chart: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class OptionLine:
    """One option: its choices, what it comes to and the work it needs first.

    ``behind`` says in what a beaten one is worse than the one that beats it, in words;
    ``sure`` says in which of the possible homes it holds; ``figures`` are named numbers, left
    out where they cannot be worked out yet; ``may_need`` is work that only some of the possible
    homes need.
    """

    letter: str
    id: str
    name: str
    recommended: bool
    behind: tuple[str, ...]
    sure: Sure
    decision: tuple[Sign, ...]
    chosen: Chosen
    figures: Mapping[str, Figure]
    work: tuple[Work, ...]
    may_need: tuple[Work, ...]
    rests_on: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Row:
    """One question of the comparison, with the answer of each option in order."""

    question: str
    answers: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Advice:
    """The option that leads, why, and what would change it; ``heading`` says how surely."""

    heading: str
    letter: str
    id: str
    to_electrician: str
    to_customer: str
    would_change: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class InHand:
    """Something to have in hand before a day is booked, and from whom.

    ``certain`` says that it is needed whatever is still open. It stands beside what the network
    says and is never mixed with it.
    """

    slug: str
    says: str
    from_whom: str
    place: str
    certain: bool


@dataclass(frozen=True, slots=True)
class TwoVisits:
    """Fit now at a setting that may be told after, turn up when the network has answered."""

    id: str
    now: str
    later: str
    words: str


@dataclass(frozen=True, slots=True)
class Turn:
    """A place along the settings of the leading point where the answer changes.

    ``up_to_a`` is the highest setting of one answer and ``from_a`` the lowest of the next.
    """

    up_to_a: float
    up_to: tuple[Sign, ...]
    from_a: float
    beyond: tuple[Sign, ...]
    words: str


@dataclass(frozen=True, slots=True)
class Prove:
    """Something an instrument proves on the day: what, at what limit, how, and by which place."""

    what: str
    limit: str
    how: str
    place: str


@dataclass(frozen=True, slots=True)
class Confirm:
    """Something to confirm before it is relied on, and why it is on the list.

    *see first* is a fact not yet known as well as the register asks before fitting; *memory* and
    *doubtful* are values of published tables.
    """

    what: str
    why: Why


@dataclass(frozen=True, slots=True)
class Ruled:
    """A requirement that ruled choices out: how many, one case with both numbers, its place.

    ``mended_by`` is work that makes good such a failure; the choice with it is another choice.
    """

    requirement: str
    says: str
    case: str
    place: str
    choices: int
    mended_by: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Beaten:
    """A sound option that loses to another, and in what."""

    id: str
    loses_to: str
    in_what: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Counts:
    """How many full choices were looked at, ruled out, beaten and left."""

    considered: int
    ruled_out: int
    beaten: int
    left: int


@dataclass(frozen=True, slots=True)
class BasisHead:
    """What the answer was worked to: day, operator profile, edition, data."""

    design_date: date
    profile: str
    profile_words: str
    edition: str
    digest: str


@dataclass(frozen=True, slots=True)
class MayBe:
    """One thing a home may come to, and how likely that is, in words."""

    what: str
    chance: str


@dataclass(frozen=True, slots=True)
class PriceSpan:
    """A range of the price with tax, whole pounds outward, in pence beside the words."""

    low_pence: int
    high_pence: int
    words: str


@dataclass(frozen=True, slots=True)
class StandsNow:
    """What can be said of a home in every home it may be, and what in some.

    ``certain`` holds in all of them; ``network``, ``earthing`` and ``cable`` list what each may
    be where it is not certain. ``price`` is over all of them at low and high rates, ``usual``
    holds nine in ten of them at the usual rates. ``sound`` names options that hold whatever the
    answers are. ``wasted_visit`` says how likely a visit planned for the likeliest decision would
    be in vain and ``longer`` that some list is longer than told. ``drawn`` is nought where
    every home was gone through; else ``rough`` says what the sample is worth.
    """

    decision: Sign
    words: str
    customer_words: str
    could_be: tuple[CouldBe, ...]
    certain: tuple[str, ...]
    may_be: Mapping[str, tuple[MayBe, ...]]
    price: PriceSpan | None
    usual: PriceSpan | None
    no_wait: str
    wasted_visit: str
    longer: str
    sound: tuple[str, ...]
    homes: int
    drawn: int
    rough: str


@dataclass(frozen=True, slots=True)
class OptionsAnswer:
    """Everything that follows from the facts of a home: decision, options, rejections, doubts.

    ``now`` says what is certain and what may be while facts are open that the options turn on.
    Not a certificate and not an instruction to start: a competent, licensed person decides.
    """

    home: HomeHead
    basis: BasisHead
    decision: Decided
    certain: tuple[str, ...]
    now: StandsNow | None
    open: tuple[OpenFact, ...]
    options: tuple[OptionLine, ...]
    rows: tuple[Row, ...]
    recommended: Advice | None
    two_visits: TwoVisits | None
    turns: tuple[Turn, ...]
    in_hand: tuple[InHand, ...]
    confirm: tuple[Confirm, ...]
    prove: tuple[Prove, ...]
    cautions: tuple[str, ...]
    counts: Counts
    ruled_out: tuple[Ruled, ...]
    beaten: tuple[Beaten, ...]
    found: tuple[FoundFact, ...]
