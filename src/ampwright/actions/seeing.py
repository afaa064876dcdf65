"""A home read and worked out: what every answer about its options starts from."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Final

from ampwright.firm.basis import Basis, load_basis
from ampwright.options.choices import Choice
from ampwright.options.outlook import Outlook, outlook
from ampwright.options.search import Option
from ampwright.options.work import Design

from .heads import feed, option_name, text_at
from .homes import HomeRead, read_home
from .naming import letters, shown

NEUTRAL: Final = "neutral"


@dataclass(frozen=True, eq=False)
class Seen:
    """A home, what it was worked to, all that follows, and the options to show, by letter."""

    home: HomeRead
    basis: Basis
    outlook: Outlook
    offered: dict[str, Option[Design]]

    @property
    def best(self) -> Option[Design] | None:
        """The option shown first, or none."""
        return next(iter(self.offered.values()), None)

    def name(self, choice: Choice) -> str:
        """Return what an option of this home is called, with its feed where two differ in it."""
        name = option_name(self.home.folded, choice)
        others = (each.choice for each in self.offered.values())
        taps = {each.tap for each in others if option_name(self.home.folded, each) == name}
        return f"{name}, from {feed(choice.tap)}" if taps - {choice.tap} else name

    def letter(self, option_id: str) -> str:
        """Return the letter of an option, or nothing when it is not shown."""
        known = {option.id: letter for letter, option in self.offered.items()}
        return known.get(option_id, "")


@dataclass(frozen=True, slots=True)
class Terms:
    """What to work to: the day, the operator's profile, the folder of a firm's own data.

    Without a profile the one that the home's file names stands, and *neutral* if it names none
    that is known.
    """

    design_date: date
    profile: str = ""
    folder: Path | None = None


def basis_for(home: HomeRead, terms: Terms) -> Basis:
    """Return the basis to work to; raises ``NotFoundError`` for a profile nobody has written."""
    return basis_of(home, firm_of(terms), terms)


def firm_of(terms: Terms) -> Basis:
    """Return the firm's data on a day, whatever the operator; raises like ``load_basis``."""
    return load_basis(
        design_date=terms.design_date, profile=terms.profile or NEUTRAL, folder=terms.folder
    )


def basis_of(home: HomeRead, firm: Basis, terms: Terms) -> Basis:
    """Return the firm's data by the profile of the home's own operator, unless one was given."""
    named = text_at(home.folded, "supply.operator")
    return firm if terms.profile else firm.for_operator(named)


def see(path: Path, terms: Terms) -> Seen:
    """Read a home's file and work out all that follows; raises like ``read_home``."""
    home = read_home(path)
    basis = basis_for(home, terms)
    found = outlook(home.homes(basis), basis)
    return Seen(home, basis, found, dict(zip(letters(), shown(found), strict=False)))
