"""Who runs the network of a home: whom the work is told to, and whose rules it was judged by."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Finding, holds, not_applicable, requires
from ampwright.foundations.errors import InputError
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said
from ampwright.tables.network import NetworkArea, operator_of

METHOD: Final = Place("Ampwright", at="method, operator of a home", trust=Trust.DERIVED)
DISTRIBUTORS: Final = Place("lists of distributor ids", "two copies agree", "meter point numbers")
INDEPENDENT: Final = "independent operator"
NEWER: Final = "operator newer than the list"
AREA: Final = "area operator"
CORE_DIGITS: Final = 13
FIRST_NEWER: Final = "39"
"""The list ends before it; later numbers went to independents, as far as anybody knows."""
PASSED_ON: Final = Place(
    "independent network operators' practice", "", "larger demands passed on", Trust.MEMORY
)


@requires("the notice goes to whoever runs this network", place=DISTRIBUTORS)
def notice_addressed(meter_point: str, kind: str) -> Finding:
    """The first two digits of the meter point name who runs the network behind it.

    Of Great Britain; by the list of distributors, which grows.

    Examples
    --------
    >>> notice_addressed("2412345678905", "independent operator").why
    'the meter point begins with 24: an independent operator'
    """
    if not meter_point:
        return holds(True, "the meter point number is not known yet")
    article = "an" if kind[:1] in "aeiou" else "a"
    return holds(True, f"the meter point begins with {meter_point[:2]}: {article} {kind}")


@requires("judged by the rules of the home's own operator", place=METHOD)
def own_operators_rules(named: str, used: str) -> Finding:
    """The answer holds for the operator whose profile it was worked out by.

    Where the home names no operator whose rules are held, it is a usual one's.

    Examples
    --------
    >>> own_operators_rules("demo", "neutral").why
    'the home names demo; worked out by neutral'
    """
    if not named:
        return holds(True, f"the home names no operator; worked out by {used}")
    return holds(True, "" if named == used else f"the home names {named}; worked out by {used}")


@requires("the distributor behind an independent network is known", place=PASSED_ON)
def feeder_known(kind: str, fed_by: str) -> Finding:
    """An independent network hangs on the network of an area's operator.

    The notice goes to the independent; a larger demand it must ask for in turn, which takes the
    longer of both their times.

    Examples
    --------
    >>> feeder_known("area operator", "").outcome.value
    'not applicable'
    >>> feeder_known("independent operator", "").why
    'nobody has said whose network feeds it'
    """
    if kind not in (INDEPENDENT, NEWER):
        return not_applicable("no independent network")
    return holds(True, f"fed by {fed_by}" if fed_by else "nobody has said whose network feeds it")


@dataclass(frozen=True, slots=True)
class Told:
    """Whom the work is told to.

    ``profile`` is the operator profile it was judged by, ``named`` what the home says of its
    operator, ``area`` and ``kind`` what the meter point says, ``fed_by`` whose network an
    independent one hangs on; each empty while nobody knows.
    """

    profile: str
    named: str
    area: str
    kind: str
    fed_by: str
    words: str


def operator_told(home: Home, basis: Basis) -> Made[Told]:
    """Return who runs the network of a home, from its meter point and from what was said.

    An independent network is told itself, not the operator of the area around it, and whose
    network it hangs on is asked. Digits on no list are no mistake: new networks are added. The
    operators' names are left to the bill. Nothing here makes an option unsound.
    """
    meter_point = if_said(lambda: home.supply.meter_point, "").replace(" ", "")
    named = if_said(lambda: home.supply.operator, "")
    found = _area(meter_point, basis)
    kind = found.kind if found else ""
    own = kind in (INDEPENDENT, NEWER)
    out = Told(
        profile=basis.profile.id,
        named=named,
        area=found.area if found else "",
        kind=kind,
        fed_by=if_said(lambda: home.supply.fed_by, "") if own else "",
        words=_words(found, named),
    )
    addressed = notice_addressed(meter_point, found.kind if found else "number on no list")
    if found is None or found.kind != AREA:
        addressed = addressed.with_caution(out.words)
    feeder = feeder_known(kind, out.fed_by)
    if own and not out.fed_by:
        feeder = feeder.with_caution(
            "ask the independent operator which area's operator feeds its network: a larger "
            "demand is passed on to it, and takes the longer of both their times"
        )
    rules = own_operators_rules(named, basis.profile.id)
    if named != basis.profile.id:
        rules = rules.with_caution(
            f"judged by the operator profile {basis.profile.id}: confirm the figures with the "
            "home's own operator"
        )
    return Made(out, (addressed, feeder, rules))


def _area(meter_point: str, basis: Basis) -> NetworkArea | None:
    """Return whose network a meter point is on; none while the number is lacking or is no such."""
    if not meter_point:
        return None
    try:
        return operator_of(meter_point, basis.book)
    except InputError:
        first = meter_point[:2]
        whole = len(meter_point) == CORE_DIGITS and meter_point.isdigit()
        return NetworkArea(first, "", NEWER) if whole and first >= FIRST_NEWER else None


def _words(found: NetworkArea | None, named: str) -> str:
    """Return in words whom to tell."""
    if found is None:
        who = f"{named}, as the home says" if named else "not known"
        return f"whom to tell: {who}; the first two digits of the meter point settle it"
    if found.kind == INDEPENDENT:
        return (
            f"an independent operator, number {found.id}, runs the wires of this estate or "
            "building: tell it, not the operator of the area; its name stands on the bill, beside "
            "the number for power cuts"
        )
    if found.kind == NEWER:
        return (
            f"number {found.id} is newer than the list of operators, most likely an independent "
            "one: ask the supplier who runs this network, and tell that operator"
        )
    if found.kind == AREA:
        return f"tell the operator of {found.area}, number {found.id}"
    return f"number {found.id} is {found.kind}: ask the supplier who runs this network"
