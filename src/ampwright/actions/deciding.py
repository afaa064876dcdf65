"""The decision of a job in words, no surer than the facts; what is certain, what is open."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any, Final, cast

from ampwright.foundations.answers import Value
from ampwright.options.choices import Choice
from ampwright.options.held import known_values
from ampwright.options.outlook import Outlook
from ampwright.options.search import Option
from ampwright.options.supply_side import Decision
from ampwright.options.work import Design

from .facts import fact_name, question, words_of
from .heads import EARTHS, power, spot
from .seeing import Seen
from .shapes import CouldBe, Decided, OpenFact, Sign
from .words import all_of, amount, brief, capital, count, small

CHANCES: Final = (
    (0.9, "very likely"), (0.6, "likely"), (0.4, "about even"), (0.1, "less likely"),
    (0.0, "unlikely"),
)  # fmt: skip
"""Words for how likely something is, from how common each answer is among homes."""


def chance_words(chance: float) -> str:
    """Return the word for how likely something is.

    Examples
    --------
    >>> chance_words(0.95), chance_words(0.5), chance_words(0.01)
    ('very likely', 'about even', 'unlikely')
    """
    return next(words for least, words in CHANCES if chance >= least)


def decided(seen: Seen) -> Decided:
    """Return the decision with the sentence that says what to do."""
    outlook = seen.outlook
    decision = outlook.decision
    filling = blank_of(outlook, decision)
    likeliest = sorted(outlook.decisions.items(), key=lambda each: -each[1])
    return Decided(
        value=cast(Sign, decision.file_value),
        words=filled(decision.words, filling),
        customer_words=filled(decision.customer_words, filling),
        sentence=sentence(seen, decision),
        could_be=tuple(
            CouldBe(cast(Sign, each.file_value), each.words.rstrip(" …"), chance_words(chance))
            for each, chance in likeliest
        ),
        turns_on=outlook.deciding,
        lacking=outlook.lacking,
    )


def filled(words: str, filling: str) -> str:
    """Put what it is about where the words leave it open.

    Examples
    --------
    >>> filled("Stop until …", "the fuse is mended"), filled("Ask first", "x")
    ('Stop until the fuse is mended', 'Ask first')
    """
    return words.replace("…", filling) if filling else words.rstrip(" …:")


def blank_of(outlook: Outlook, decision: Decision) -> str:
    """Return what a decision's words leave open: the question, or what stands in the way."""
    if decision is Decision.UNDETERMINED:
        keys = outlook.deciding or outlook.lacking
        return question(keys[0]) if keys else ""
    if decision is Decision.STOP_UNTIL:
        return in_the_way(outlook)
    return ""


def in_the_way(outlook: Outlook) -> str:
    """Say what stops the job: what the network's tests say, else what ruled most choices out."""
    if outlook.ranking.options:
        option = outlook.ranking.options[0]
        tests = known_values(option, cast(Any, option.design.connection))
        return f"this is put right: {all_of(reasons_in(tests))}"
    return f"this holds: {outlook.reasons[0].requirement.says}" if outlook.reasons else ""


def sentence(seen: Seen, decision: Decision) -> str:
    """Say what to do next in one sentence."""
    best = seen.best
    if decision is Decision.UNDETERMINED or best is None:
        return undecided(seen.outlook)
    act = to_fit(seen, best.choice)
    connection: Any = best.design.connection
    tests = known_values(best, connection)
    if decision is Decision.STOP_UNTIL:
        return f"Nothing may be fitted yet: {all_of(reasons_in(tests))}."
    if decision is Decision.ASK_FIRST:
        return f"Ask the network operator before fitting: {all_of(reasons_in(tests))}. Then {act}."
    days = sorted({int(each.notice_days) for each in tests})
    within = f" within {days[0]} days" if len(days) == 1 else ""
    return f"{capital(act)}; then tell the network operator{within}."


def reasons_in(tests: Sequence[Any]) -> tuple[str, ...]:
    """Return what the network's tests say, each once."""
    return tuple(dict.fromkeys(each.words for each in tests))


def to_fit(seen: Seen, choice: Choice) -> str:
    """Say what is fitted, with the work that comes first."""
    where = spot(seen.home.folded, choice.place)
    said = f"fit a {power(choice)} point {where}, set to {amount(choice.setting_a, 'A')}"
    if choice.house_limit:
        said += ", the whole house held to a limit"
    if choice.remedies:
        first = all_of([small(brief(each.does)) for each in choice.remedies])
        said += f", after this work: {first}"
    return said


def undecided(outlook: Outlook) -> str:
    """Say why nothing can be decided yet, and what would decide it."""
    if outlook.deciding:
        turning = f"{count(len(outlook.deciding), 'fact')}: {names_of(outlook.deciding)}"
        return f"We cannot say yet. It turns on {turning}."
    if outlook.lacking:
        return f"We cannot say yet. Nobody has said: {names_of(outlook.lacking)}."
    reasons = [reason.requirement.says for reason in outlook.reasons[:3]]
    return f"Nothing we can fit here is sound. Most often in the way: {'; '.join(reasons)}."


def names_of(keys: Sequence[str]) -> str:
    """Return what some facts are called, as a list."""
    return all_of([fact_name(key) for key in keys])


def certain(outlook: Outlook) -> tuple[str, ...]:
    """Return what holds for every sound option in every home the facts allow."""
    options = outlook.ranking.options
    return tuple(certainties(outlook, options)) if options else ()


def certainties(outlook: Outlook, options: Sequence[Option[Design]]) -> Iterator[str]:
    """Yield what all options share."""
    if len(outlook.decisions) > 1 and Decision.STOP_UNTIL not in outlook.decisions:
        yield "nothing that is still open stops the work"
    powers = [
        float(value)
        for option in options
        for value in known_values(option, cast(Any, option.design.use.charging.offered_kw))
    ]
    if powers:
        yield f"{amount(max(powers), 'kW', 1)} is the most that can be had here"
    choices = [option.choice for option in options]
    for remedy in choices[0].remedies:
        if all(remedy in choice.remedies for choice in choices):
            yield f"needed whatever is chosen: {small(brief(remedy.does))}"
    if all(choice.house_limit for choice in choices):
        yield "the whole house must be held to a limit"
    earths = {choice.earthing for choice in choices}
    if len(earths) == 1:
        yield f"the point is earthed to {EARTHS[earths.pop()]}"
    taps = {choice.tap for choice in choices}
    if len(taps) == 1:
        tap = taps.pop()
        yield (
            "it has a feed of its own from the meter"
            if tap == "meter"
            else f"it is fed from board {tap}"
        )


def open_facts(seen: Seen) -> tuple[OpenFact, ...]:
    """Return the questions that are left, those that decide first."""
    outlook = seen.outlook
    bearing = [fact for option in seen.offered.values() for fact in option.sound.facts]
    keys = dict.fromkeys((*outlook.deciding, *outlook.lacking, *bearing))
    homes = outlook.homes
    return tuple(
        OpenFact(
            key,
            fact_name(key),
            question(key),
            may_be(key, homes.open.get(key, ())),
            decides=key in outlook.deciding or key in outlook.lacking,
        )
        for key in keys
    )


def may_be(key: str, values: Sequence[Value]) -> tuple[str, ...]:
    """Write the values an open fact may have; of many, the first and the last."""
    written = tuple(words_of(key, value) for value in values)
    return written if len(written) <= 6 else (f"{written[0]} to {written[-1]}",)
