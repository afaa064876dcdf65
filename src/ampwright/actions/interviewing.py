"""Asking and keeping by turns: one question, its answer into the file at once, the range again."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path
from typing import Final, Literal

from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Answer, Is, OneOf
from ampwright.foundations.errors import InputError
from ampwright.foundations.source import Evidence
from ampwright.options.asking.asked import Asked, asked
from ampwright.survey.danger import tells_of_danger
from ampwright.survey.wording import as_words

from .answering import FactNow, Telling, answer, keep
from .asking import answer_from, channel_of
from .asking_shapes import AskAnswer, ErrandLine, Question
from .homes import read_home
from .seeing import Terms, basis_of, firm_of
from .words import any_of, money

Became = Literal["kept", "left out", "not understood", "danger"]
LATER: Final = ("later", "skip", "pass")
NOT_KNOWN: Final = ("?", "not sure", "don't know", "do not know", "no idea", "cannot say")
AT_THE_INTAKE: Final = ("supply", "earthing")
"""Where danger told of puts the supply itself in doubt."""
LEAST_P: Final = 1000
"""A range that moves by less than this is left as it was said."""


@dataclass(frozen=True, slots=True)
class Heard:
    """What became of one answer: kept, left out, not understood, or a sign of danger.

    ``says`` is what was wrong or what was kept; ``moved`` what it did to the range, in words;
    ``list_short`` says that things are missing from a list, which go in by themselves.
    """

    became: Became
    says: str = ""
    fact: FactNow | None = None
    moved: str = ""
    list_short: bool = False


@dataclass(slots=True)
class Interview:
    """A walk through the questions that decide, through one channel.

    Each answer is in the file before the next question is put.
    """

    path: Path
    terms: Terms
    channel: str
    known_by: Telling
    now: AskAnswer = field(init=False)
    left_out: set[str] = field(default_factory=set)
    _firm: Basis | None = field(default=None, init=False)
    _found: Asked | None = field(default=None, init=False)

    def __post_init__(self) -> None:
        """Work out where things stand; raises like ``ask``."""
        self.now = self._work_out()

    def _work_out(self) -> AskAnswer:
        """Work out where things stand; what an answer leaves as it was is not worked out anew.

        The firm's data are read once for the whole walk.
        """
        home, before = read_home(self.path), self._found
        if self._firm is None:
            self._firm = firm_of(self.terms)
        basis = basis_of(home, self._firm, self.terms)
        if before is not None and before.basis.profile == basis.profile:
            basis = before.basis
        self._found = asked(home.folded, basis, channel_of(self.channel), before)
        return answer_from(home, self._found)

    @property
    def next(self) -> tuple[ErrandLine, Question] | None:
        """The question to put now, with its errand; none when nothing is left that decides."""
        for errand in self.now.errands:
            for question in errand.questions:
                if question.key not in self.left_out:
                    return errand, question
        return None

    def hear(self, words: str) -> Heard:
        """Keep the answer to the question that was put; what is wrong with it is said."""
        if self.next is None:
            return Heard("left out")
        key, said = self.next[1].key, " ".join(words.split())
        if tells_of_danger(said) and said not in self.next[1].choices:
            return self._danger(key, said)
        if said.casefold() in LATER:
            self.left_out.add(key)
            return Heard("left out")
        if said.casefold() in NOT_KNOWN:
            said = "cannot say"
        try:
            kept = answer(self.path, key, said, self.known_by)
        except InputError as error:
            return Heard("not understood", wrong_with(self.next[1], error))
        before, self.now = self.now, self._work_out()
        self.left_out.add(key)  # not twice in one walk, whatever was said
        short = key.endswith(".all_listed") and kept.said == as_words(False)
        return Heard("kept", kept.said, kept.fact, moved(before, self.now), short)

    def _danger(self, key: str, said: str) -> Heard:
        """Keep what was said of danger, beside the fact it was said at, and stop."""
        notes = read_home(self.path).folded.ids.get("notes", ())
        number = sum(each.startswith("danger") for each in notes) + 1
        note = f"notes.danger-{number}"
        told = Telling(Evidence.TOLD, "interview", self.known_by.by, self.known_by.on)
        answers: dict[str, Answer] = {f"{note}.text": Is(said), f"{note}.about": Is(key)}
        if key.partition(".")[0] in AT_THE_INTAKE:
            answers["supply.condition"] = OneOf(("doubtful", "dangerous"))
        for each, value in answers.items():
            keep(self.path, each, value, told)
        return Heard("danger")


def wrong_with(question: Question, error: InputError) -> str:
    """Say what is wrong with an answer, and what may be answered."""
    if question.choices:
        return f"The answers are {any_of(question.choices)}, or cannot say."
    return f"Expected {error.expected}. {error.do}".strip()


def change(less_p: int, drawn: int) -> str:
    """Say by how much a range narrowed; one over drawn homes may grow only for being drawn anew.

    Examples
    --------
    >>> change(36000, 48), change(-37000, 48), change(-37000, 0), change(100, 0)
    (', £360 narrower', ', homes drawn anew', ', £370 wider', '')
    """
    if abs(less_p) < LEAST_P:
        return ""
    if less_p < 0 and drawn:
        return ", homes drawn anew"
    return f", {money(abs(less_p))} {'narrower' if less_p > 0 else 'wider'}"


def moved(before: AskAnswer, after: AskAnswer) -> str:
    """Say what an answer did to the decision and to the range.

    A range may also grow: a thing that nobody had reckoned with is reckoned with now.
    """
    parts = []
    if before.now.words != after.now.words:
        parts.append(f"{before.now.words} → {after.now.words}")
    one, other = before.now.usual, after.now.usual
    if one and other and one != other:
        less = (one.high_pence - one.low_pence) - (other.high_pence - other.low_pence)
        parts.append(f"{one.words} → {other.words}{change(less, after.now.drawn)}")
    return "; ".join(parts)
