"""A grant towards a charge point: who may apply and the most it pays; no price is less by it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.errors import OutOfTableError
from ampwright.foundations.money import Pence
from ampwright.foundations.quantity import Share
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes, nearest
from ampwright.survey.home import Home
from ampwright.tables.regulation import grant_pounds, grant_share

GRANT: Final = "charge point"
NONE: Final = Pence(0)
PART_OF_COST: Final = Place(
    "Government grant pages", at="share of the cost, stated for the period before April 2026",
    trust=Trust.PUBLISHED, doubtful=True,
)  # fmt: skip
OWN_HOUSE: Final = (
    "none for the owner of a house with a drive; ask if the car stands in the street and a way "
    "across the pavement is planned"
)
APPLY_FIRST: Final = (
    "apply and have it approved before the work; only firms the scheme has authorised may claim"
)


@dataclass(frozen=True, slots=True)
class Grant:
    """Whether the customer may have a grant, the most it may pay, and what goes with it."""

    may: bool
    most_p: Pence
    words: str


@computes("K", "p", formula="nearest(min(100 * most, share * K))", place=PART_OF_COST)
def most_paid(most: float, share: Share, K: Pence) -> Pence:  # noqa: N803 - as printed
    """Return the most a grant pays towards a cost: its limit, or its share of what is paid.

    Examples
    --------
    >>> most_paid(500.0, Share(0.75), Pence(119852)), most_paid(500.0, Share(0.75), Pence(60000))
    (50000, 45000)
    """
    return Pence(nearest(min(100 * most, share * K)))


def grant(home: Home, basis: Basis, total_p: Pence) -> Made[Grant]:
    """Return the grant that a customer may apply for on the day of the basis, for one outlet.

    For renters and for owners of flats; other households have theirs only with a way across the
    pavement, which is not judged. Whether the scheme takes this customer is the scheme's to say.
    """
    if not for_such(home):
        return Made(Grant(may=False, most_p=NONE, words=OWN_HOUSE))
    most = most_pounds(basis)
    if most is None:
        return Made(Grant(may=False, most_p=NONE, words="no grant is known for this day"))
    share = grant_share(basis.book, GRANT)
    return Made(Grant(may=True, most_p=most_paid(most, share, total_p), words=APPLY_FIRST))


def for_such(home: Home) -> bool:
    """Say whether the scheme is for such a household: a flat's owner, or a renter."""
    return home.customer.holds == "tenant" or home.property.kind == "flat"


def most_pounds(basis: Basis) -> float | None:
    """Return the most a grant pays for one outlet on the day of the basis, or ``None``."""
    try:
        return grant_pounds(basis.book, GRANT, basis.design_date)
    except OutOfTableError:
        return None
