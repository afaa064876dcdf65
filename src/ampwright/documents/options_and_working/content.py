"""What the paper "Options and working" says: ready words and rows, in the order they are read.

Nothing here computes or decides. Money, units, dates and the sureness of a heading are settled
by whoever fills this in; the template only sets it. Every tuple may be empty, and an empty part
leaves no heading behind.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from ampwright.documents.symbols import Drawn
from ampwright.foundations.errors import InputError

Sign = Literal["tell_after", "tell_after_limit", "ask_first", "stop_until", "tell_or_ask"]
"""The five signs of a job's decision, each with its own drawing and colour."""

Known = Literal["assumed", "told", "seen", "measured", "not asked"]
"""How a fact is known, or that nobody was asked."""

Mark = Literal["pass", "fail", "undetermined", "not applicable"]
"""What a check found."""

Why = Literal["open", "assumed", "memory", "doubtful", "memory and doubtful", "told"]
"""Why something has to be confirmed before anyone relies on it."""


@dataclass(frozen=True, slots=True)
class DecisionBlock:
    """The heading: the firm's words, one sentence no surer than the engine, the customer's words.

    For example ``Fit, then tell``, ``Fit a 7.4 kW point after …``, ``You do not have to wait``.
    """

    sign: Sign
    firm_words: str
    sentence: str
    customer_words: str


@dataclass(frozen=True, slots=True)
class HomeBlock:
    """Whose home, and who stands behind the paper.

    ``designer`` is the named person who has checked the design; empty prints that it is not
    final, and marks the paper as a draft. ``reference`` is the firm's own name for the job;
    ``reached_by`` are the customer's telephone, e-mail and best time to ring.
    """

    customer: str
    address: str
    postcode: str
    date: str
    firm: str
    prepared_by: str
    designer: str = ""
    reference: str = ""
    reached_by: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class FoundLine:
    """One fact: what it is, the answer, how it is known, and on what (``photo 2``).

    ``overruled`` is a weaker answer that did not stand; it prints struck through.
    """

    what: str
    answer: str
    known: Known
    how: str = ""
    overruled: str = ""


@dataclass(frozen=True, slots=True)
class OptionColumn:
    """One option of the comparison: its letter, a short name and its lasting id."""

    letter: str
    name: str
    id: str = ""


@dataclass(frozen=True, slots=True)
class CompareRow:
    """One question and the answer of each option, in the order of the columns."""

    question: str
    answers: tuple[str, ...]
    leads: bool = False

    @property
    def shared(self) -> tuple[tuple[str, int], ...]:
        """Each answer once, with how many neighbouring columns give it.

        Examples
        --------
        >>> CompareRow("wait", ("none", "2 weeks", "2 weeks")).shared
        (('none', 1), ('2 weeks', 2))
        """
        cells: list[tuple[str, int]] = []
        for answer in self.answers:
            if cells and cells[-1][0] == answer:
                cells[-1] = (answer, cells[-1][1] + 1)
            else:
                cells.append((answer, 1))
        return tuple(cells)


@dataclass(frozen=True, slots=True)
class Recommendation:
    """Which option, in two sentences for the customer and two for the electrician.

    ``would_change`` names what would change it, each with the figure at which it flips;
    ``heading`` and ``standing`` are no surer than the decision.
    """

    letter: str
    name: str
    to_customer: str
    to_electrician: str
    would_change: tuple[str, ...] = ()
    heading: str = "What we would choose"
    standing: str = "what we would choose"


@dataclass(frozen=True, slots=True)
class WorkItem:
    """One piece of work of the recommended option; remedies come first.

    ``parts`` are ready words ("10 mm² bond conductor, 9 m"); ``time`` is "50 to 70 min";
    ``by`` names an outside body that must do it; ``steps`` tell in order how it is done,
    ``chart`` what it leaves, heads first.
    """

    does: str
    because: str = ""
    parts: tuple[str, ...] = ()
    time: str = ""
    price: str = ""
    by: str = ""
    remedy: bool = False
    steps: tuple[str, ...] = ()
    chart: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class ConfirmLine:
    """Something to confirm, and why it is on the list."""

    what: str
    why: Why


@dataclass(frozen=True, slots=True)
class ProveLine:
    """Something an instrument proves on the day: what, at what limit, how, by which place."""

    what: str
    limit: str
    how: str
    place: str


@dataclass(frozen=True, slots=True)
class RejectedRow:
    """A reason, how many choices it ruled out, and where the reason is written.

    ``loses_to`` names the option that beat them, when they were sound but worse.
    """

    reason: str
    count: str
    place: str = ""
    loses_to: str = ""


@dataclass(frozen=True, slots=True)
class WorkingLine:
    """One line of a working: a starting figure, or a formula with its numbers.

    ``number`` is its number in the paper; ``alone`` is the whole line as plain text. The drawn
    pieces come from ``formulas``; ``formula`` and ``numbers`` are empty for a starting figure.
    """

    number: str
    symbol: Drawn
    formula: Drawn
    numbers: Drawn
    result: str
    source: str
    alone: str
    known: Known | Literal[""] = ""


@dataclass(frozen=True, slots=True)
class CheckLine:
    """One check with both its numbers, where it is written, and the working of the numbers.

    ``carried`` names figures worked out further up ("Ib from line 4"); ``mended_by`` what would
    mend a failure.
    """

    mark: Mark
    says: Drawn
    numbers: str
    place: str
    why: str = ""
    caution: str = ""
    lines: tuple[WorkingLine, ...] = ()
    carried: Drawn = ""
    mended_by: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class NoteLine:
    """What is only told, where it is written, and the working of its numbers.

    ``caution`` marks what somebody must see to.
    """

    caution: bool
    says: str
    place: str
    lines: tuple[WorkingLine, ...] = ()
    carried: Drawn = ""


@dataclass(frozen=True, slots=True)
class FigureLine:
    """A figure that is worked out but held to no limit, with its working."""

    what: str
    result: str
    lines: tuple[WorkingLine, ...] = ()
    carried: Drawn = ""


@dataclass(frozen=True, slots=True)
class RulingRow:
    """One row of a clause that decides: the case in words, what follows, and where it stands."""

    words: str
    follows: str
    place: str
    state: Literal["did not apply", "decided", "not reached"]


@dataclass(frozen=True, slots=True)
class RulingLine:
    """A clause that decides, printed row by row with the one that did."""

    name: str
    rows: tuple[RulingRow, ...]


@dataclass(frozen=True, slots=True)
class WorkingGroup:
    """The working of one stage; ``rests_on`` are the plain facts it read, with their evidence."""

    title: str
    rests_on: tuple[str, ...] = ()
    figures: tuple[FigureLine, ...] = ()
    rulings: tuple[RulingLine, ...] = ()
    checks: tuple[CheckLine, ...] = ()
    notes: tuple[NoteLine, ...] = ()


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing handed to the renderer under this name; ``says`` describes it to who cannot see."""

    name: str
    title: str
    says: str
    width_mm: int = 170


@dataclass(frozen=True, slots=True)
class OptionsPaper:
    """The whole paper. ``edition`` says which edition the figures are from, on every page.

    ``rests_on`` are the facts behind the design, ``also_held`` the others that are known.
    ``stages`` says how the job may be done in two visits and where the setting changes the
    answer; ``in_hand`` is what to have before a day is booked, beside what the network says.
    ``not_known`` names the questions of the comparison that no option has an answer to yet.
    Raises ``InputError`` when a row of the comparison has not one answer for each option.
    """

    decision: DecisionBlock
    home: HomeBlock
    found: tuple[FoundLine, ...]
    options: tuple[OptionColumn, ...]
    rows: tuple[CompareRow, ...]
    recommended: Recommendation | None
    work: tuple[WorkItem, ...]
    confirm: tuple[ConfirmLine, ...]
    cautions: tuple[str, ...]
    rejected: tuple[RejectedRow, ...]
    working: tuple[WorkingGroup, ...]
    edition: str
    pictures: tuple[Picture, ...] = ()
    rests_on: tuple[FoundLine, ...] = ()
    also_held: tuple[FoundLine, ...] = ()
    stages: tuple[str, ...] = ()
    prove: tuple[ProveLine, ...] = ()
    in_hand: tuple[str, ...] = ()
    not_known: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        """Hold the comparison to its columns and the paper to its edition line."""
        for row in self.rows:
            if len(row.answers) != len(self.options):
                raise InputError(
                    f"the row {row.question!r}", row.answers,
                    f"{len(self.options)} answers, one for each option",
                )  # fmt: skip
        if not self.edition:
            raise InputError("edition", self.edition, "the edition the figures were taken from")

    @property
    def title(self) -> str:
        """What the paper is called in a list of files."""
        return f"Options and working: {self.home.address}"

    @property
    def author(self) -> str:
        """Whose paper it is."""
        return self.home.firm
