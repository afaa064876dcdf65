"""Asking and keeping by turns: one question, its answer into the file at once, the range again."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path
from typing import Final, Literal

from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Answer, CannotSay, Is, OneOf
from ampwright.foundations.errors import InputError
from ampwright.foundations.source import Evidence
from ampwright.options.asking.asked import Asked, asked
from ampwright.survey.danger import tells_of_danger
from ampwright.survey.layout import slot
from ampwright.survey.spoken import spoken
from ampwright.survey.wording import as_words

from .answering import Answered, Telling, keep, take_back
from .asking import answer_from, channel_of
from .asking_shapes import AskAnswer, ErrandLine, Question
from .facts import as_heard
from .homes import read_home
from .seeing import Terms, basis_of, firm_of
from .words import any_of, money, small

Became = Literal[
    "kept", "left out", "taken back", "nothing to take back", "not understood", "danger"
]
LATER: Final = ("later", "skip", "pass")
BACK: Final = ("back", "undo")
NOT_KNOWN: Final = (
    "?", "not sure", "don't know", "dont know", "do not know", "dunno", "not known", "no idea",
    "cannot say",
)  # fmt: skip
AS_A_FIGURE: Final = ", as a figure"
AT_THE_INTAKE: Final = ("supply", "earthing")
"""Where danger told of puts the supply itself in doubt."""
LEAST_P: Final = 1000
"""A range that moves by less than this is left as it was said."""


@dataclass(frozen=True, slots=True)
class Heard:
    """What became of one answer: kept, left out, taken back, not understood, a sign of danger.

    ``what`` is what it answers and ``says`` the answer as people say it, or what was wrong with
    it; ``moved`` what it did to the range, in words; ``list_short`` says that things are missing
    from a list, which go in by themselves.
    """

    became: Became
    says: str = ""
    what: str = ""
    kept: Answered | None = None
    moved: str = ""
    list_short: bool = False


@dataclass(frozen=True, slots=True)
class Given:
    """One question that was dealt with; ``record`` is empty where nothing new was kept."""

    key: str
    what: str
    says: str = ""
    record: str = ""


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
    later: set[str] = field(default_factory=set)
    _given: list[Given] = field(default_factory=list, init=False)
    _again: str = field(default="", init=False)
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
        left = [
            (errand, question)
            for errand in self.now.errands
            for question in errand.questions
            if question.key not in self.left_out
        ]
        again = [each for each in left if each[1].key == self._again]
        return next(iter(again or left), None)

    @property
    def can_go_back(self) -> bool:
        """Whether a question was dealt with that can be put again."""
        return bool(self._given)

    def hear(self, words: str) -> Heard:
        """Keep the answer to the question that was put; what is wrong with it is said."""
        said = " ".join(words.split())
        if said.casefold() in BACK:
            return self._back()
        if self.next is None:
            return Heard("left out")
        question = self.next[1]
        key = question.key
        if tells_of_danger(said) and said not in self.next[1].choices:
            return self._danger(key, said)
        if said.casefold() in LATER:
            self._dealt_with(Given(key, named(question)))
            self.later.add(key)
            return Heard("left out")
        try:
            told = CannotSay() if is_unknown(said) else spoken(slot(key).fact, said, key)
            kept = keep(self.path, key, told, self.known_by)
        except InputError as error:
            return Heard("not understood", wrong_with(question, said, error))
        before, self.now = self.now, self._work_out()
        says = as_heard(key, told)
        self._dealt_with(Given(key, named(question), says, kept.record if kept.added else ""))
        short = key.endswith(".all_listed") and kept.said == as_words(False)
        return Heard("kept", says, named(question), kept, moved(before, self.now), short)

    def _dealt_with(self, given: Given) -> None:
        """Note that a question is not put again in this walk, whatever was said."""
        self.left_out.add(given.key)
        self._given.append(given)
        self._again = ""

    def _back(self) -> Heard:
        """Take back what the last question came to, and put it again."""
        if not self._given:
            return Heard("nothing to take back")
        last = self._given.pop()
        self.left_out.discard(last.key)
        self.later.discard(last.key)
        self._again = last.key
        if last.record:
            take_back(self.path, last.key, last.record, self.known_by)
            self.now = self._work_out()
        return Heard("taken back", last.says, last.what)

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


def is_unknown(said: str) -> bool:
    """Say whether somebody does not know.

    Examples
    --------
    >>> is_unknown("Don’t know"), is_unknown("no")
    (True, False)
    """
    return said.casefold().replace("’", "'") in NOT_KNOWN


def named(question: Question) -> str:
    """Return what a question is about, as the trade calls it, and of which thing."""
    return f"{question.what} ({small(question.about)})" if question.about else question.what


def wrong_with(question: Question, said: str, error: InputError) -> str:
    """Say what is wrong with an answer, and what may be answered."""
    if question.choices:
        unit = f" {question.unit}" if question.unit else ""
        expected = f"The answers are {any_of(question.choices)}{unit}, or cannot say."
    else:
        expected = f"The answer is {error.expected.removesuffix(AS_A_FIGURE)}, or cannot say."
    of_a_file = "quotes" in error.do or "Leave" in error.do or "Write true" in error.do
    mend = "" if of_a_file or (question.choices and not question.unit) else error.do
    wrong = "" if mend.startswith(f'"{said}"') else f"“{said}” is not an answer to this."
    return " ".join(part for part in (wrong, expected, mend) if part)


def change(less_p: int, drawn: int) -> str:
    """Say by how much a range narrowed; one over drawn homes may grow only for being drawn anew.

    Examples
    --------
    >>> change(36000, 48), change(-37000, 48), change(-37000, 0), change(100, 0)
    (', £360 narrower', ', by other homes drawn', ', £370 wider', '')
    """
    if abs(less_p) < LEAST_P:
        return ""
    if less_p < 0 and drawn:
        return ", by other homes drawn"
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
