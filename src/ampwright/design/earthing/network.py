"""The network's earth: whether it is still one, and who mends it if not."""

from __future__ import annotations

from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.outside import NETWORK
from ampwright.foundations.checks import Check, Finding, at_most, requires
from ampwright.foundations.quantity import Ohms, Share
from ampwright.foundations.remedies import Remedy
from ampwright.standards.places import wiring
from ampwright.standards.wiring.fault import breaker_loop_limit
from ampwright.survey.home import Home
from ampwright.tables.devices import standard_ratings, trip_multiple
from ampwright.tables.supply_limits import cmin, declared_ze_ohm, nominal_v

CURVE: Final = "B"


@requires("loop of the house's earth ≤ what opens its least breaker", unit="Ω",
          place=wiring("411.4.4"))  # fmt: skip
def house_earth_there(Ze: Ohms, limit: Ohms) -> Finding:  # noqa: N803 - as in the clause
    """An earth that opens not even the least breaker of a house has been lost.

    For houses on the network's earth; one on a rod leans on residual current devices.

    Examples
    --------
    >>> house_earth_there(Ohms(20.0), Ohms(7.28)).outcome.value
    'fail'
    """
    return at_most(Ze, limit)


def house_earth(home: Home, basis: Basis) -> Check:
    """Return whether the network still gives the house an earth, with who must mend it if not."""
    book = basis.book
    limit_ohm = breaker_loop_limit(
        cmin(book), nominal_v(book), Share(trip_multiple(book, CURVE)),
        standard_ratings(book, "breaker")[0],
    )  # fmt: skip
    check = house_earth_there(home.supply.ze_ohm, limit_ohm)
    return check.mended_by(*network_earth(home, basis))


def network_earth(home: Home, basis: Basis) -> tuple[Remedy, ...]:
    """Return who must mend an earth whose loop is larger than its operator declares; else none."""
    system = home.supply.earthing
    declared_ohm = declared_ze_ohm(basis.book, system)
    if home.supply.ze_ohm <= declared_ohm:
        return ()
    return (
        Remedy(
            slug="network-earth",
            does=f"Have the operator mend the {system} earth of the house; nothing new is "
            "connected before its loop is read again",
            changes=(("supply.ze_ohm", float(declared_ohm)),),
            by=NETWORK,
        ),
    )
