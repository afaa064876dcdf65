"""A question as it is put: in the customer's words, about which thing, and why it is worth it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from ampwright.firm.asking import Channel
from ampwright.foundations.answers import Value
from ampwright.options.asking.worth import Worth
from ampwright.survey.folding import FoldedHome
from ampwright.survey.layout import slot, things_in
from ampwright.survey.spoken import choices

from .asking_shapes import Question, Way
from .facts import called
from .heads import PREPOSITIONS, text_at
from .words import capital, money

Taken = Mapping[str, Mapping[Value, float]]

MANY: Final = 13
"""From so many answers on they are not listed; the question says what is wanted."""
OFTEN: Final = (
    (0.4, "as often as not"), (0.15, "often"), (0.05, "now and then"), (0.0, "seldom"),
)  # fmt: skip
"""Words for how often a decision turns on a fact."""
LEAST_TOLD_P: Final = 1000
"""By less than this a price does not turn."""
METER: Final = "meter"
FORMS: Final = {
    "date": "a day, as 2026-12-19", "time": "a time, as 18:30", "id": "a name of the list",
    "postcode": "a postcode", "meter point": "thirteen digits",
}  # fmt: skip
"""What an answer in words looks like, where it has a form."""


def question_of(worth: Worth, home: FoldedHome, taken: Taken, by: Channel) -> Question:
    """Return a deciding fact as the question to put through a channel."""
    fact = slot(worth.key).fact
    listed = choices(fact)
    return Question(
        key=worth.key,
        what=called(worth.key) if fact.name == "present" else fact.trade,
        about=about(worth.key, home, taken),
        ask=worth.ask,
        choices=listed if len(listed) < MANY else (),
        form=FORMS.get(fact.form, "in words") if fact.kind is str else "a number",
        unit=fact.unit,
        look=worth.look,
        answered_by=way(worth.key, by),
        minutes=float(worth.minutes),
        turns=often(worth.changes),
        moves_pence=round(worth.turns.moves_p),
        narrows_pence=round(worth.narrows_p),
        why=why(worth),
        disputed=worth.disputed,
        overruled=worth.overruled,
    )


def question(key: str, home: FoldedHome) -> str:
    """Return the question to ask for a fact, with the thing it is about.

    Examples
    --------
    >>> question("loads.kiln.amps_a", FoldedHome({}, {}))
    'Kiln: What does its plate say, in kilowatts or amps?'
    >>> question("loads.shower.present", FoldedHome({}, {}))
    'Is there an electric shower anywhere, even one you never use?'
    """
    of = about(key, home, {})
    return f"{of}: {slot(key).ask}" if of else slot(key).ask


def way(key: str, by: Channel) -> Way:
    """Return by what a fact is found out; the network operator answers for itself."""
    return "operator" if key.startswith("operator.") else by.value


def often(share: float) -> str:
    """Return the word for how often something turns; nothing where it never does.

    Examples
    --------
    >>> often(0.5), often(0.02), often(0.0)
    ('as often as not', 'seldom', '')
    """
    return next(words for least, words in OFTEN if share >= least) if share > 0 else ""


def why(worth: Worth) -> str:
    """Say what an answer decides and what it does to the price."""
    parts = []
    if worth.key.endswith(".all_listed"):
        parts.append("what is missing from the list may undo the rest")
    elif worth.changes > 0:
        parts.append(f"the decision turns on it {often(worth.changes)}")
    if worth.turns.moves_p >= LEAST_TOLD_P:
        parts.append(f"it moves the price by about {money(worth.turns.moves_p)}")
    if worth.narrows_p >= LEAST_TOLD_P:
        parts.append(f"knowing it narrows the range by about {money(worth.narrows_p)}")
    if worth.disputed:
        parts.append("people have answered it differently")
    if worth.overruled:
        parts.append("somebody said otherwise, on weaker evidence: look again")
    return f"{capital('; '.join(parts) or 'some homes turn on it')}."


def about(key: str, home: FoldedHome, taken: Taken) -> str:
    """Return of which thing a question is asked; nothing where that is plain.

    Examples
    --------
    >>> about("services.gas.bond_mm2", FoldedHome({}, {}), {})
    'The gas pipe'
    """
    things = things_in(key)
    if not things or slot(key).asked_after:
        return ""
    path, thing = things[-1]
    collection = path.rpartition(".")[2]
    if collection == "legs":
        ends = [end_of(f"legs.{thing}.{name}", home, taken) for name in ("from_place", "to_place")]
        return f"From {ends[0]} to {ends[1]}"
    if collection == "services":
        return f"The {thing.replace('-', ' ')} pipe"
    alone = len(home.ids.get(path, ())) < 2
    if collection in ("boards", "cars") and alone:
        return ""
    name = text_at(home, f"{path}.{thing}.name") or thing.replace("-", " ")
    return capital(f"the point {spot_words(name)}" if collection == "places" else name)


def end_of(key: str, home: FoldedHome, taken: Taken) -> str:
    """Return where a leg begins or ends, as people of the house say it."""
    told = text_at(home, key) or next(map(str, taken.get(key, ())), "")
    if told == METER or not told:
        return "the meter" if told else "one end"
    if told in home.ids.get("places", ()) or f"places.{told}.present" in taken:
        name = text_at(home, f"places.{told}.name")
        return f"the point {spot_words(name)}" if name else "the point"
    boards = home.ids.get("boards", ())
    return "the fuse board" if len(boards) < 2 else f"board {told}"


def spot_words(name: str) -> str:
    """Return where a place is, after *the point*."""
    return name if name.split()[0].casefold() in PREPOSITIONS else f"at {name}"
