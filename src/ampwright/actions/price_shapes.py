"""What ``price`` answers, in plain pieces: every line of a price, and what it stands on."""

from __future__ import annotations

from dataclasses import dataclass

from .shapes import BasisHead, Figure, HomeHead
from .working_shapes import LineAnswer, Taken


@dataclass(frozen=True, slots=True)
class Span:
    """Whole pence when all goes well, usually, and when it does not."""

    low_p: int
    usual_p: int
    high_p: int


@dataclass(frozen=True, slots=True)
class PriceLine:
    """One line of a price before tax: what, how much, at what each, and why it is there.

    ``unit`` is empty for apiece. ``working`` opens the amount down to facts, tables and rates.
    """

    id: str
    what: str
    quantity: float
    unit: str
    unit_p: int
    amount: Span
    why: str
    working: tuple[LineAnswer, ...]


@dataclass(frozen=True, slots=True)
class PriceGroup:
    """Lines that are read together, and what they come to before tax.

    What others charge stands apart from the firm's own bill, as they ask it, any tax within.
    """

    name: str
    charged_by_others: bool
    amount: Span
    lines: tuple[PriceLine, ...]


@dataclass(frozen=True, slots=True)
class TaxLine:
    """The tax on all that is sold as one thing: its rate, what it is on, what it comes to."""

    sold: str
    rate: float
    net: Span
    tax: Span
    working: tuple[LineAnswer, ...]


@dataclass(frozen=True, slots=True)
class Bill:
    """All that is on one bill; ``total`` is what the customer pays, tax within.

    ``unpriced`` is not in it because nobody has priced it, ``by_others`` because nobody has said
    what others charge for it.
    """

    groups: tuple[PriceGroup, ...]
    net: Span
    taxes: tuple[TaxLine, ...]
    tax: Span
    total: Span
    unpriced: tuple[str, ...]
    by_others: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class GrantLine:
    """A grant the customer may ask for: the most it pays, never taken off the price."""

    may: bool
    most_p: int
    words: str
    working: tuple[LineAnswer, ...]


@dataclass(frozen=True, slots=True)
class PriceChange:
    """Something that would change the price: an open fact's other value, or what is not known.

    ``by_p`` is the change of the usual price, or null where it cannot be said.
    """

    key: str
    words: str
    by_p: int | None


@dataclass(frozen=True, slots=True)
class TwoBills:
    """Fit now and turn up later: the second visit's own bill, and both together.

    The first bill is the price of the option it is turned up to, with all its goods.
    """

    now: str
    later: str
    first: Span
    second: Bill
    total: Span


@dataclass(frozen=True, slots=True)
class PriceAnswer:
    """One option priced line by line in the most usual of the homes in which it holds.

    ``over_homes`` are the usual price and its ends over every home still possible; ``lacking``
    the facts without which there is no price. Not an offer: a named person in the firm makes it.
    """

    home: HomeHead
    basis: BasisHead
    letter: str
    id: str
    name: str
    taken: tuple[Taken, ...]
    bill: Bill | None
    lacking: tuple[str, ...]
    grant: GrantLine | None
    over_homes: Figure | None
    would_change: tuple[PriceChange, ...]
    two_visits: TwoBills | None
