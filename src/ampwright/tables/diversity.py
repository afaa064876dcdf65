"""How much of each kind of load counts at once in a single household."""

from __future__ import annotations

from dataclasses import dataclass
from typing import cast

from ampwright.foundations.quantity import Amperes, Count, Share

from .book import Book


@dataclass(frozen=True, slots=True)
class Allowance:
    """What counts of one kind of load.

    The first amperes and the ``in_full`` largest loads count whole, ``share`` of what is left,
    and ``extra_a`` for a socket on the switch. Noughts mean that there is no such part.
    """

    first_a: Amperes
    share: Share
    in_full: Count
    extra_a: Amperes
    rule: str


def allowance(book: Book, kind: str) -> Allowance:
    """Return what counts of one kind of load in a single household.

    Guidance, not law. Raises ``OutOfTableError`` for a kind that is not listed. Source: IET
    On-Site Guide as an online electricians' handbook gives it, Table 6.2.

    Examples
    --------
    >>> allowance(Book(), "cooking")
    Allowance(first_a=10.0, share=0.3, in_full=0.0, extra_a=5.0, \
rule='10 A, 30 % of the rest, 5 A if the switch has a socket')
    """
    name = "demand/diversity"
    return Allowance(
        first_a=Amperes(book.number(name, "first_a", kind=kind)),
        share=Share(book.number(name, "share", kind=kind)),
        in_full=cast(Count, book.number(name, "in_full", kind=kind)),
        extra_a=Amperes(book.number(name, "socket_a", kind=kind)),
        rule=book.text(name, "rule", kind=kind),
    )


def kinds_of_load() -> tuple[str, ...]:
    """Return the kinds of load that are listed.

    Examples
    --------
    >>> kinds_of_load()[:3]
    ('lighting', 'sockets', 'cooking')
    """
    return tuple(str(kind) for kind in Book().table("demand/diversity").values_of("kind"))
