"""From the records of one key to the answer now.

A function of the set of records: no order, no clock. The strongest evidence speaks first and
a weaker level may only narrow what it left open.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import cast

from ampwright.foundations.answers import Answer, Between, CannotSay, Is, OneOf, Value
from ampwright.foundations.source import Evidence

from .records import Record, in_order
from .register import Agree, Fact

Records = tuple[Record, ...]


@dataclass(frozen=True, slots=True)
class Folded:
    """What the records of one key come to.

    ``evidence`` is the weakest the answer leans on, ``basis`` the records it rests on.
    ``disputed`` are records of one level that contradict each other, which is a question;
    ``overruled`` say otherwise than better evidence and are kept to be shown.
    """

    answer: Answer | None
    evidence: Evidence | None = None
    basis: Records = ()
    overruled: Records = ()
    disputed: Records = ()
    cannot_say: Records = ()


NOBODY = Folded(None)
"""Nobody has said anything."""


def fold(records: Iterable[Record], fact: Fact | None = None) -> Folded:
    """Return the answer of one key at one moment.

    Within one level of evidence all must hold together; readings as near as the declaration
    allows count as one, and the worse stands. If nothing is left, all stay possible and
    disputed. A weaker level that would leave nothing is overruled.
    """
    agree = fact.agree if fact else None
    rows = current(records)
    said = [(row, each) for row in rows if (each := plain(row.answer, fact)) is not None]
    cannot = tuple(row for row in rows if isinstance(row.answer, CannotSay))
    answer: Answer | None = None
    evidence = None
    basis: list[Record] = []
    overruled: list[Record] = []
    disputed: list[Record] = []
    for level in sorted({row.evidence for row, _ in said}, reverse=True):
        members = [(row, each) for row, each in said if row.evidence is level]
        here, fits = together([each for _, each in members], agree)
        both = here if answer is None else intersection([answer, here])
        if both is None:
            overruled += [row for row, each in members if not _near(each, answer, agree)]
        elif both != answer:
            answer, evidence = both, level
            basis += [row for row, _ in members]
            disputed += [] if fits else [row for row, _ in members]
    overruled += [row for row, each in said if _against(each, answer, agree)]
    settled = [row for row in overruled if row not in disputed]
    return Folded(answer, evidence, _each(basis), _each(settled), _each(disputed), cannot)


def plain(answer: Answer | None, fact: Fact | None) -> Answer | None:
    """Return an answer to reckon with: a range over a short list becomes those within it."""
    if isinstance(answer, CannotSay):
        return None
    if isinstance(answer, Between) and fact and fact.allowed:
        return _chosen(value for value in fact.allowed if _within(value, answer.low, answer.high))
    return answer


def current(records: Iterable[Record]) -> Records:
    """Return the records that speak: neither withdrawn nor history, in a fixed order.

    Withdrawing a withdrawal restores what it took back. A record that has become history
    still keeps as history what it named. Withdrawals that go in a circle take nothing back.
    """
    rows = {row.id: row for row in records}
    gone = withdrawn(rows.values())
    valid = [row for row in rows.values() if row.id not in gone]
    past = {name for row in valid for name in row.since}
    return _each(row for row in valid if row.id not in past)


def withdrawn(records: Collection[Record]) -> frozenset[str]:
    """Return the ids of the records that a standing withdrawal takes back."""
    against: dict[str, set[str]] = {row.id: set() for row in records}
    for row in records:
        for name in row.withdraws:
            if name in against:
                against[name].add(row.id)
    standing: set[str] = set()
    gone: set[str] = set()
    waiting = set(against)
    while waiting:
        stand = {name for name in waiting if against[name] <= gone}
        fall = {name for name in waiting - stand if against[name] & (standing | stand)}
        if not stand and not fall:
            break
        standing |= stand
        gone |= fall
        waiting -= stand | fall
    return frozenset(gone)


def together(answers: Sequence[Answer], agree: Agree | None) -> tuple[Answer, bool]:
    """Return what answers of equal evidence come to, and whether they fit each other."""
    common = intersection(answers)
    if common is None and agree is not None:
        readings = [each.value for each in answers if isinstance(each, Is)]
        worse = worst(readings, agree)
        if worse is not None:
            rest = [each for each in answers if not isinstance(each, Is)]
            common = intersection([Is(worse), *rest])
    return (union(answers), False) if common is None else (common, True)


def worst(readings: Sequence[Value], agree: Agree) -> float | None:
    """Return the worse of readings that agree, or ``None`` when they do not."""
    if not readings or any(isinstance(value, str | bool) for value in readings):
        return None
    numbers = [float(value) for value in readings]
    low, high = min(numbers), max(numbers)
    if high - low > _allowed(high, agree):
        return None
    return high if agree.worse == "higher" else low


def _allowed(reading: float, agree: Agree) -> float:
    # A whisker more, so that 0.19 and 0.17 lie 0.02 apart in binary as well.
    return max(agree.within, agree.share * abs(reading)) * (1 + 1e-9)


def intersection(answers: Sequence[Answer]) -> Answer | None:
    """Return what all the answers allow, or ``None`` when nothing is left."""
    ranges = [each for each in answers if isinstance(each, Between)]
    lists = [_values(each) for each in answers if not isinstance(each, Between)]
    low = max((each.low for each in ranges), default=None)
    high = min((each.high for each in ranges), default=None)
    if not lists:
        if low is None or high is None or low > high:
            return None
        return Is(low) if low == high else Between(low, high)
    common = [value for value in lists[0] if all(value in other for other in lists[1:])]
    if low is not None and high is not None:
        common = [value for value in common if _within(value, low, high)]
    return _chosen(common)


def union(answers: Sequence[Answer]) -> Answer:
    """Return all that any of the answers allows; with a range among them, from end to end."""
    if any(isinstance(each, Between) for each in answers):
        ends = [end for each in answers for end in _ends(each)]
        return Between(min(ends), max(ends))
    chosen = _chosen([value for each in answers for value in _values(each)])
    return cast(Answer, chosen)


def _values(answer: Answer) -> tuple[Value, ...]:
    match answer:
        case Is(value):
            return (value,)
        case OneOf(values):
            return values
        case _:
            raise TypeError(answer)


def _ends(answer: Answer) -> tuple[float, ...]:
    if isinstance(answer, Between):
        return (answer.low, answer.high)
    return tuple(float(value) for value in _values(answer))


def _within(value: Value, low: float, high: float) -> bool:
    return not isinstance(value, str | bool) and low <= value <= high


def _chosen(values: Iterable[Value]) -> Answer | None:
    """Return a list of values as an answer, in a fixed order, each once."""
    kept = in_order(values)
    if not kept:
        return None
    return Is(kept[0]) if len(kept) == 1 else OneOf(kept)


def _near(one: Answer, other: Answer | None, agree: Agree | None) -> bool:
    """Whether two readings count as one, though the stronger stands as it is."""
    if agree is None or not (isinstance(one, Is) and isinstance(other, Is)):
        return False
    return worst([one.value, other.value], agree) is not None


def _against(said: Answer, answer: Answer | None, agree: Agree | None) -> bool:
    """Whether one answer taken alone contradicts what was concluded."""
    if answer is None or intersection([said, answer]) is not None:
        return False
    return not _near(said, answer, agree)


def _each(records: Iterable[Record]) -> Records:
    """Return records in a fixed order, each once."""
    once = {row.id: row for row in records}
    return tuple(sorted(once.values(), key=lambda row: (row.on or date.min, row.id)))
