"""What ``sums`` answers, in plain pieces: each sum in words for the customer, with its working."""

from __future__ import annotations

from dataclasses import dataclass

from .shapes import BasisHead, HomeHead
from .working_shapes import FigureAnswer, Taken


@dataclass(frozen=True, slots=True)
class CustomerSum:
    """One sum: what is asked, what to say, the figures with their working.

    ``lacking`` are the facts without which it cannot be done; then it says nothing else.
    """

    slug: str
    asks: str
    says: tuple[str, ...]
    figures: tuple[FigureAnswer, ...]
    lacking: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SumsAnswer:
    """The sums of one option in the most usual of the homes in which it holds."""

    home: HomeHead
    basis: BasisHead
    letter: str
    id: str
    name: str
    taken: tuple[Taken, ...]
    sums: tuple[CustomerSum, ...]
