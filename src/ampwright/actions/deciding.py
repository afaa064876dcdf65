"""The decision of a job in words, no surer than the facts; what is certain, what is open."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from typing import Any, Final, cast

from ampwright.foundations.answers import Is, Value
from ampwright.foundations.quantity import Count
from ampwright.foundations.remedies import Remedy
from ampwright.network.stops import Until, asked_of, held_up_by
from ampwright.options.choices import Choice
from ampwright.options.gates import held_by_others
from ampwright.options.held import known_values
from ampwright.options.outlook import Outlook
from ampwright.options.search import Option
from ampwright.options.supply_side import Decision
from ampwright.options.work import Design
from ampwright.standards.network.connection import Step
from ampwright.standards.network.deadlines import last_day
from ampwright.supply.hours import ANY
from ampwright.supply.larger import FUSE
from ampwright.survey.layout import slot

from .facts import PRESENT, as_heard, fact_name
from .heads import EARTHS, power, spot, text_at
from .naming import may_need
from .questions import question
from .seeing import Seen
from .shapes import CouldBe, Decided, OpenFact, Sign, Source
from .words import all_of, amount, brief, capital, count, day, small, with_article

CHANCES: Final = (
    (0.9, "very likely"), (0.6, "likely"), (0.4, "about even"), (0.1, "less likely"),
    (0.0, "unlikely"),
)  # fmt: skip
"""Words for how likely something is, from how common each answer is among homes."""
LACKS: Final = {
    "places.all_listed": "a place for the point", "boards.all_listed": "a fuse board",
}  # fmt: skip
"""Without these on the list there is nothing to choose from."""
FEW = 6
NAMED: Final = 3
"""So many of the facts that nobody has said anything of are named in the sentence."""


def chance_words(chance: float) -> str:
    """Return the word for how likely something is.

    Examples
    --------
    >>> chance_words(0.95), chance_words(0.5), chance_words(0.01)
    ('very likely', 'about even', 'unlikely')
    """
    return next(words for least, words in CHANCES if max(chance, 0.0) >= least)  # sums leave dust


def decided(seen: Seen) -> Decided:
    """Return the decision with the sentence that says what to do."""
    outlook, decision = seen.outlook, decision_of(seen)
    firm, customer = blanks_of(seen, decision)
    undecided_by = (*outlook.deciding, *lacking_in(seen))
    likeliest = sorted(outlook.decisions.items(), key=lambda each: -each[1])
    return Decided(
        value=cast(Sign, decision.file_value),
        words=filled(decision.words, firm),
        customer_words=filled(how_many(decision.customer_words, undecided_by), customer),
        sentence=sentence(seen, decision),
        could_be=tuple(
            CouldBe(cast(Sign, each.file_value), plain(each), chance_words(chance))
            for each, chance in likeliest
            if decision is Decision.UNDETERMINED and each is not decision
        ),
        turns_on=outlook.deciding,
        lacking=lacking_in(seen),
    )


def how_many(words: str, deciding: Sequence[str]) -> str:
    """Say how many things decide, where it is more than one.

    Examples
    --------
    >>> how_many("One thing decides it: …", ("a", "b"))
    'Two things decide it, first: …'
    """
    if len(deciding) < 2:
        return words
    several = {2: "Two", 3: "Three"}.get(len(deciding), "Several")
    return words.replace("One thing decides it", f"{several} things decide it, first")


def decision_of(seen: Seen) -> Decision:
    """Return the decision; where there is nothing to choose from yet, none can be taken."""
    nothing_to_choose = not seen.outlook.searched.considered
    return Decision.UNDETERMINED if nothing_to_choose else seen.outlook.decision


def lacking_in(seen: Seen) -> tuple[str, ...]:
    """Return the blank facts in the way; without a place or a board nothing is looked at."""
    if seen.outlook.searched.considered:
        return seen.outlook.lacking
    return tuple(key for key in LACKS if key.rpartition(".")[0] not in seen.home.folded.ids)


def plain(decision: Decision) -> str:
    """Return the firm's words for a decision, without the blank at their end."""
    return filled(decision.words, "")


def either_of(decisions: Sequence[Decision]) -> str:
    """Return the firm's words for decisions of which one is meant; several stand in quotes.

    Examples
    --------
    >>> either_of([Decision.ASK_FIRST]), either_of([Decision.FIT_THEN_TELL, Decision.ASK_FIRST])
    ('Ask first', '“Fit, then tell” or “Ask first”')
    """
    written = [plain(each) for each in decisions]
    return " or ".join(f"“{each}”" for each in written) if len(written) > 1 else "".join(written)


def filled(words: str, filling: str) -> str:
    """Put what it is about where the words leave it open.

    Examples
    --------
    >>> filled("Stop until …", "the fuse is mended"), filled("Stop until …", "")
    ('Stop until the fuse is mended', 'Stop')
    """
    return words.replace("…", filling) if filling else words.rstrip(" …:").removesuffix(" until")


def blanks_of(seen: Seen, decision: Decision) -> tuple[str, str]:
    """Return what the firm's and the customer's words leave open."""
    if decision is Decision.UNDETERMINED:
        keys = seen.outlook.deciding or lacking_in(seen)
        return "", what_decides(seen, keys)
    if decision is Decision.STOP_UNTIL:
        outside = who_first(seen)
        if outside:
            return outside[0].firm, outside[0].customer
        what = all_of(in_the_way(seen))
        return f"this is put right: {what}", f"this must be put right: {what}"
    return "", ""


def what_decides(seen: Seen, keys: Sequence[str]) -> str:
    """Return the question that decides, as far as a customer can do something about it."""
    if not keys:
        return ""
    theirs = [key for key in keys if answered_by(key) != "operator"]
    if not theirs:
        return "what the network operator answers us"
    return question(theirs[0], seen.home.folded)


def answered_by(key: str) -> Source:
    """Say how a fact is found out."""
    return "operator" if key.startswith("operator.") else slot(key).fact.who


def who_first(seen: Seen) -> tuple[Until, ...]:
    """Return who outside the firm must act before anything is fitted, the first to act first."""
    holds = text_at(seen.home.folded, "customer.holds")
    if seen.best is None:
        failed = [reason.example for reason in seen.outlook.reasons]
        return held_up_by(Step.TELL_AFTER, failed, holds)
    outcomes = known_values(seen.best, cast(Any, seen.best.design.supply.outcome))
    unsafe = held_up_by(Step.STOP, (), holds) if Step.STOP in outcomes else ()
    return (*unsafe, *map(asked_of, held_by_others(seen.best.choice.remedies)))


def in_the_way(seen: Seen) -> tuple[str, ...]:
    """Say what stops the job: the network's tests, else what ruled most choices out."""
    if seen.best is not None:
        return reasons_in(tests_of(seen.best))
    return tuple(reason.requirement.says for reason in seen.outlook.reasons[:1])


def tests_of(option: Option[Design]) -> tuple[Any, ...]:
    """Return what the network's tests come to for an option, in the homes where it holds."""
    return known_values(option, cast(Any, option.design.connection))


def sentence(seen: Seen, decision: Decision) -> str:
    """Say what to do next in one sentence."""
    best = seen.best
    if decision is Decision.UNDETERMINED or best is None:
        return undecided(seen)
    act, tests = to_fit(seen, best.choice), tests_of(best)
    if decision is Decision.STOP_UNTIL:
        outside = held_by_others(best.choice.remedies)
        if outside and Step.STOP not in {each.outcome for each in tests}:
            first = all_of([asked_of(each).firm for each in outside])
            then = to_fit(seen, best.choice, outside)
            return f"Nothing may be fitted until {first}. Then {then}."
        return f"Nothing may be fitted yet: {all_of(reasons_in(tests))}."
    if decision is Decision.ASK_FIRST:
        asked = all_of(reasons_in(asking_tests(tests)))
        why = "; ".join(part for part in (*fuses_asked_for(best.choice), asked) if part)
        return f"Ask the network operator before fitting: {why}. Then {act}."
    days = sorted({Count(int(each.notice_days)) for each in tests})
    within = f" within {count(days[0], 'day')}" if len(days) == 1 else ""
    said = f"{capital(act)}; then tell the network operator{within}."
    return f"{said} {in_time(seen.basis.design_date, days[0])}" if len(days) == 1 else said


def asking_tests(tests: Sequence[Any]) -> tuple[Any, ...]:
    """Return the tests of the network by which it must be asked."""
    return tuple(each for each in tests if each.outcome is not Step.TELL_AFTER)


def fuses_asked_for(choice: Choice) -> tuple[str, ...]:
    """Say of each larger fuse that is asked for why it is."""
    return tuple(
        "the house alone leaves the service fuse no room for a car"
        for each in choice.remedies
        if each.slug.startswith(FUSE)
    )


def in_time(on: date, days: Count) -> str:
    """Say until when a notice must be in, of work that goes live on a day.

    The day of the design stands in for the day of the work, which is not booked yet.

    Examples
    --------
    >>> in_time(date(2026, 11, 25), Count(28))
    'If it goes live on Wed 25 Nov 2026, that is by Wed 23 Dec 2026.'
    """
    latest = last_day(on, days)
    return f"If it goes live on {day(on)}, that is by {day(latest)}."


def reasons_in(tests: Sequence[Any]) -> tuple[str, ...]:
    """Return what the network's tests say, each once."""
    return tuple(dict.fromkeys(each.words for each in tests))


def to_fit(seen: Seen, choice: Choice, said: Sequence[Remedy] = ()) -> str:
    """Say what is fitted, with the work that comes first, but for what is said already."""
    where = spot(seen.home.folded, choice.place)
    point = with_article(f"{power(choice)} point")
    act = f"fit {point} {where}, set to {amount(choice.setting_a, 'A')}"
    if choice.house_limit:
        act += ", the whole house held to a limit"
    if choice.hours != ANY:
        act += ", charging in the cheap hours only"
    if first := [small(brief(each.does)) for each in choice.remedies if each not in said]:
        act += f", after this work: {all_of(first)}"
    if seen.best is not None and may_need(seen.outlook, seen.best):
        act += ", perhaps after more work"
    return act


def undecided(seen: Seen) -> str:
    """Say why nothing can be decided yet, and what would decide it."""
    turning, lacking = seen.outlook.deciding, lacking_in(seen)
    if not seen.outlook.searched.considered:
        return f"We cannot say yet. Not on the list so far: {all_of([LACKS[k] for k in lacking])}."
    if turning or lacking:
        return " ".join(("We cannot say yet.", *unsaid(lacking), *turned_on(turning, lacking)))
    reasons = [reason.requirement.says for reason in seen.outlook.reasons[:3]]
    return f"Nothing we can fit here is sound. Most often in the way: {'; '.join(reasons)}."


def unsaid(lacking: Sequence[str]) -> Iterator[str]:
    """Say what nobody has said anything of, the first few by name."""
    if lacking:
        named, more = lacking[:NAMED], len(lacking) - NAMED
        rest = f", and {more:,} more" if more > 0 else ""
        yield f"Nobody has said: {names_of(named, end=not rest)}{rest}."


def turned_on(turning: Sequence[str], lacking: Sequence[str]) -> Iterator[str]:
    """Say which answers make it another decision."""
    if turning:
        several = "one fact" if len(turning) == 1 else count(len(turning), "fact")
        also = " also" if lacking else ""
        yield f"It{also} turns on {several}: {names_of(turning)}."


def names_of(keys: Sequence[str], end: bool = True) -> str:
    """Return what some facts are called, as a list that ends with the last of them, or goes on."""
    names = [small(listed_name(key)) for key in keys]
    return all_of(names) if end else ", ".join(names)


def listed_name(key: str) -> str:
    """Return what a fact is called in a list of what is not known.

    Examples
    --------
    >>> listed_name("boards.main.present"), listed_name("loads.heat-pump.present")
    ('whether main is there', 'whether heat pump is there')
    """
    found = slot(key)
    if found.fact.name != PRESENT:
        return fact_name(key)
    thing = found.asked_after.trade if found.asked_after else found.thing.rpartition(".")[2]
    return f"whether {small(thing)} is there"


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
    lacking = lacking_in(seen)
    keys = dict.fromkeys((*outlook.deciding, *lacking, *bearing))
    homes = outlook.homes
    unsure = decision_of(seen) is Decision.UNDETERMINED
    return tuple(
        OpenFact(
            key,
            fact_name(key),
            question(key, seen.home.folded),
            answered_by(key),
            may_be(key, homes.open.get(key, ())),
            decides=key in outlook.deciding or (unsure and key in lacking),
        )
        for key in keys
    )


def may_be(key: str, values: Sequence[Value]) -> tuple[str, ...]:
    """Write the values an open fact may have as a customer says them; of many, both ends."""
    written = tuple(as_heard(key, Is(value)) for value in values)
    return written if len(written) <= FEW else (f"{written[0]} to {written[-1]}",)
