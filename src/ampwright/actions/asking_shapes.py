"""What ``ask`` answers, in plain pieces; its JSON and schema come from these declarations alone.

How likely something is stands in words, never as a figure: it comes from how common answers are
among homes, not from this home.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from .shapes import BasisHead, HomeHead, StandsNow

Way = Literal["phone", "photo", "site", "operator"]


@dataclass(frozen=True, slots=True)
class Question:
    """One question in the customer's words, and why it is worth asking.

    ``about`` says of what, where that is not plain; ``choices`` are the answers to choose from, and
    ``form`` says what else an answer is; ``look`` what a good photograph shows. ``turns`` says
    how often the decision turns on it, in words; ``moves_pence`` how far prices lie apart by it
    and ``narrows_pence`` by how much the range narrows with the answer, both on the average.
    """

    key: str
    what: str
    about: str
    ask: str
    choices: tuple[str, ...]
    form: str
    unit: str
    look: str
    answered_by: Way
    minutes: float
    turns: str
    moves_pence: int
    narrows_pence: int
    why: str
    disputed: bool
    overruled: bool


@dataclass(frozen=True, slots=True)
class ErrandLine:
    """Questions that are settled by one act in one place; ``caution`` is said before it."""

    place: str
    answered_by: Way
    minutes: float
    time: str
    caution: str
    questions: tuple[Question, ...]


@dataclass(frozen=True, slots=True)
class Usual:
    """A fact nobody has said, and what was taken to be usual; it stands in no design."""

    key: str
    what: str
    taken: str


@dataclass(frozen=True, slots=True)
class AskAnswer:
    """What can be said to the customer now, and what to ask next.

    ``say`` are sentences for the customer, no surer than the facts. Without ``next`` nothing that
    this channel can answer decides anything. ``turns_most_on`` names what the decision turns on
    most, whoever can answer it, and ``left_to`` says what can settle the rest.
    """

    home: HomeHead
    basis: BasisHead
    say: tuple[str, ...]
    now: StandsNow
    turns_most_on: str
    next: Question | None
    next_errand: ErrandLine | None
    errands: tuple[ErrandLine, ...]
    left_to: tuple[Way, ...]
    usual: tuple[Usual, ...]
