"""Who is told of new electrical work in a home, when, and what the owner is given."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from ampwright.foundations.checks import Finding, at_least, holds, requires
from ampwright.foundations.quantity import Kilowatts
from ampwright.foundations.rulings import Row, Ruling
from ampwright.foundations.source import Place, Trust

ENGLAND = Place("Building Regulations 2010", "", "regulation 12(6A), as told on a guidance page")
BY_SCHEME = Place("Building Regulations 2010", "", "regulation 20(3), as told on a guidance page")
BEFORE = Place("Building Regulations 2010", "", "regulation 12, as told by a council's page")
WALES = Place("Building Regulations 2010", "", "as in force in Wales", Trust.MEMORY, doubtful=True)
SCOTLAND = Place("building standards of Scotland", "", "electrical work", Trust.MEMORY)
NORTH = Place("building rules of Northern Ireland", "", "electrical work", Trust.MEMORY, True)
NEW_HOMES = Place("Approved Document S", "2021", "regulation 44D, as told on a guidance page")


class Told(Enum):
    """What follows for the council, or the body that stands for it."""

    NOTHING = "nothing to tell"
    AFTER = "the scheme tells, after"
    BEFORE = "the council is told before"
    WARRANT = "building standards decide"


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkCase:
    """Electrical work in a home as the building regulations look at it."""

    country: str
    new_circuit: bool
    new_board: bool
    special_location: bool
    registered: bool


def _told_of(work: WorkCase) -> bool:
    """Say whether the work is of the kind that is told of."""
    return work.new_circuit or work.new_board or work.special_location


COUNCIL: Ruling[WorkCase, Told] = Ruling(
    "Whether the council is told of the work",
    (
        Row(
            "Northern Ireland",
            lambda work: work.country == "Northern Ireland",
            Told.NOTHING,
            NORTH,
        ),
        Row("Scotland", lambda work: work.country == "Scotland", Told.WARRANT, SCOTLAND),
        Row(
            "England: no new circuit or board, and no bath, shower, pool or sauna",
            lambda work: work.country == "England" and not _told_of(work),
            Told.NOTHING,
            ENGLAND,
        ),
        Row(
            "by a person registered to certify their own work",
            lambda work: work.registered,
            Told.AFTER,
            BY_SCHEME,
        ),
        Row(
            "Wales, by anybody else: the list there may be longer",
            lambda work: work.country == "Wales",
            Told.BEFORE,
            WALES,
        ),
        Row("by anybody else", lambda _: True, Told.BEFORE, BEFORE),
    ),
)
"""A charge point at home is a new circuit."""


@requires(
    "installation certificate given for a new circuit",
    place=Place("BS 7671", "2018+A2:2022", "644.1, as told by a Scottish guide"),
)
def certificate_given(new_circuit: bool, installation_certificate: bool) -> Finding:
    """Work that adds a circuit is certified with its schedules, not as minor works.

    The original to whoever ordered the work, a copy to the user.

    Examples
    --------
    >>> certificate_given(True, False).outcome.value
    'fail'
    """
    if not new_circuit:
        return holds(True, "minor works may be certified on their own form")
    return holds(installation_certificate, "a new circuit")


@requires("a new home's point gives its least power", unit="kW", place=NEW_HOMES)
def new_home_point_large_enough(kw: Kilowatts, least: Kilowatts) -> Finding:
    """A point that comes with a new home in England charges no slower than the rule asks.

    For new buildings with parking of their own; not for a point added to a home that stands.

    Examples
    --------
    >>> new_home_point_large_enough(Kilowatts(7.0), Kilowatts(7.0)).outcome.value
    'pass'
    """
    return at_least(kw, least)
