"""What can be said of a home now, and the one question to ask next."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Final

from ampwright.firm.asking import Channel
from ampwright.foundations.answers import Value
from ampwright.foundations.errors import NotFoundError
from ampwright.options.asking.asked import Asked, asked
from ampwright.options.asking.errands import Errand
from ampwright.survey.folding import FoldedHome
from ampwright.survey.layout import slot

from .asking_shapes import AskAnswer, ErrandLine, Usual, Way
from .facts import called, words_of
from .heads import basis_head, spot, text_at
from .homes import HomeRead, read_home
from .questions import question_of, way
from .seeing import Terms, basis_for
from .standing import sayings, standing
from .words import number

CHANNELS: Final = {each.value: each for each in Channel}
PLACES: Final = {
    "meter": "At the meter and the big fuse",
    "boards": "At the fuse board",
    "legs": "Along the way of the cable",
    "property": "At the house",
    "services": "Where pipes come in",
    "sources": "At what makes electricity",
    "cars": "At the car",
    "laid": "At the cable that lies there",
    "loads": "At the things that use electricity",
    "places": "Where the point will be",
}
ONE_QUESTION: Final = "One question"


def channel_of(word: str) -> Channel | None:
    """Return the channel with a name, none for no name; raises ``NotFoundError``."""
    if word and word not in CHANNELS:
        raise NotFoundError("channel", word, tuple(CHANNELS))
    return CHANNELS[word] if word else None


def ask(path: Path, terms: Terms, channel: str = "") -> AskAnswer:
    """Return what can be said of a home now and what to ask; raises like ``read_home``.

    Through a channel, phone, photo or site, only what it can answer.
    """
    home = read_home(path)
    basis = basis_for(home, terms)
    return answer_from(home, asked(home.folded, basis, channel_of(channel)))


def answer_from(home: HomeRead, found: Asked) -> AskAnswer:
    """Return in plain pieces what was found of a home."""
    basis = found.basis
    now = standing(found.holds, basis)
    lines = tuple(errand_line(each, home.folded, found) for each in found.errands)
    first = lines[0] if lines else None
    return AskAnswer(
        home=home.head,
        basis=basis_head(basis),
        say=tuple(sayings(found.holds, now)),
        now=now,
        turns_most_on=turns_most_on(found),
        next=first.questions[0] if first else None,
        next_errand=first,
        errands=lines,
        left_to=tuple(left_to(found)),
        usual=tuple(usual_of(found)),
    )


def turns_most_on(found: Asked) -> str:
    """Return what a decision turns on most, as the trade calls it; nothing where it is certain."""
    turning = [each for each in found.deciding if each.changes > 0]
    return called(max(turning, key=lambda each: each.changes).key) if turning else ""


def left_to(found: Asked) -> Iterator[Way]:
    """Yield by what else facts that decide can be found out, where none can be here."""
    if not found.errands:
        yield from dict.fromkeys(way(each.key, each.channel) for each in found.deciding)


def errand_line(errand: Errand, home: FoldedHome, found: Asked) -> ErrandLine:
    """Return one errand in plain pieces."""
    return ErrandLine(
        place=place_words(errand, home),
        answered_by=way(errand.facts[0].key, errand.channel),
        minutes=float(errand.minutes),
        time=minutes_words(float(errand.minutes)),
        caution=errand.caution,
        questions=tuple(
            question_of(each, home, found.taken, errand.channel) for each in errand.facts
        ),
    )


def place_words(errand: Errand, home: FoldedHome) -> str:
    """Return where an errand leads, in words."""
    if errand.channel is Channel.PHONE:
        return ONE_QUESTION
    if errand.channel is Channel.SITE:
        return "One visit"
    head, _, thing = errand.place.partition(".")
    if head == "places" and thing:
        return f"Where the point will be: {spot(home, thing)}"
    if head == "services" and thing:
        return f"Where the {thing} pipe comes in"
    if head == "boards" and len(home.ids.get("boards", ())) > 1:
        return f"At fuse board {thing}"
    if head in ("loads", "sources", "laid") and thing:
        return f"At the {text_at(home, f'{errand.place}.name') or thing.replace('-', ' ')}"
    return PLACES.get(head, errand.place)


def minutes_words(minutes: float) -> str:
    """Write how long an errand takes, as people say it.

    Examples
    --------
    >>> minutes_words(0.4), minutes_words(2.2), minutes_words(15.0)
    ('under a minute', 'about 2 min', 'about 15 min')
    """
    if minutes < 1:
        return "under a minute"
    return f"about {number(max(1, round(minutes)), 0)} min"


def usual_of(found: Asked) -> Iterator[Usual]:
    """Yield what was taken as usual of facts that nobody has said."""
    for key, shares in found.taken.items():
        whole = key.endswith(".all_listed") and tuple(shares) == (True,)
        if not whole and slot(key).fact.name not in ("from_place", "to_place"):
            yield Usual(key, called(key), taken_words(key, shares))


def taken_words(key: str, shares: Mapping[Value, float]) -> str:
    """Write the values taken of one fact."""
    return " or ".join(words_of(key, value) for value in shares)
