"""Who runs the network of a home: whom the work is told to, and whose rules it was judged by."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.errors import InputError
from ampwright.foundations.notes import Note, tells
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


@tells(DISTRIBUTORS)
def notice_addressed(words: str) -> str:
    """Say who runs the network, by the first two digits of the meter point.

    Of Great Britain; by the list of distributors, which grows.
    """
    return words


@tells(DISTRIBUTORS, caution=True)
def notice_to_address(words: str) -> str:
    """Ask who runs the network, or say that it is not the operator of the area.

    Digits on no list are no mistake: new networks are added.
    """
    return words


@tells(METHOD, caution=True)
def another_operators_rules(profile: str) -> str:
    """Say by whose rules a home was judged that names no operator whose rules are held.

    Examples
    --------
    >>> another_operators_rules("neutral").caution[:40]
    'judged by the operator profile neutral: '
    """
    return (
        f"judged by the operator profile {profile}: confirm the figures with the home's own "
        "operator"
    )


@tells(PASSED_ON)
def feeder_known(fed_by: str) -> str:
    """Say which network an independent one hangs on.

    The notice goes to the independent; a larger demand it must ask for in turn, which takes the
    longer of both their times.

    Examples
    --------
    >>> feeder_known("the area's operator").says
    "the independent network is fed by the area's operator"
    """
    return f"the independent network is fed by {fed_by}"


@tells(PASSED_ON, caution=True)
def feeder_asked() -> str:
    """Ask which network an independent one hangs on."""
    return (
        "ask the independent operator which area's operator feeds its network: a larger demand "
        "is passed on to it, and takes the longer of both their times"
    )


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
    return Made(out, notes=tuple(_notes(out, own)))


def _notes(told: Told, own: bool) -> Iterator[Note]:
    """Yield whom the notice goes to, who feeds an independent network, by whose rules it is."""
    yield notice_addressed(told.words) if told.kind == AREA else notice_to_address(told.words)
    if own:
        yield feeder_known(told.fed_by) if told.fed_by else feeder_asked()
    if told.named != told.profile:
        yield another_operators_rules(told.profile)


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
