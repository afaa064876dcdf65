"""The equipment a firm fits, described by what it is able to do; a row may be a choice."""

from __future__ import annotations

import difflib
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import Final, Protocol, TypeVar

from ampwright.foundations.errors import NotFoundError
from ampwright.foundations.quantity import (
    Amperes,
    Celsius,
    Count,
    Hours,
    Kiloamperes,
    Metres,
    Milliamperes,
    Millimetres,
    Seconds,
    SquareMm,
    Volts,
)
from ampwright.tables.capacity import CableFamily

from .rows import column


class Detection(StrEnum):
    """How an open neutral of the supply is noticed."""

    VOLTS_WINDOW = "volts window"
    EARTH_POTENTIAL = "earth potential"
    NONE = "none"


class RcdType(StrEnum):
    """Kinds of residual current device, by the faults they see; ``none`` where there is none."""

    NONE = "none"
    AC = "AC"
    A = "A"
    F = "F"
    B = "B"


class Lead(StrEnum):
    """What the car is plugged into."""

    TETHERED = "tethered"
    SOCKET = "socket"


@dataclass(frozen=True, slots=True)
class ChargePoint:
    """A charge point; a limit on the whole house is a matter of its own sensor input."""

    id: str = column(says="id")
    does: str = column(says="what it is, in the words of a quotation")
    phases: Count = column(says="lines it charges on")
    least_a: Amperes = column("Imin", "least current it can be set to, on each line")
    max_a: Amperes = column("Imax", "most current it can be set to, on each line")
    detection: Detection = column(says="how it notices an open neutral")
    lines_watched: Count = column(says="lines whose volts to neutral it watches; 0 for none")
    detects_three_phase: bool = column(says="the detection is made for a three-phase home")
    dc_6ma: bool = column(says="trips at 6 mA of smooth direct current")
    built_in_rcd: RcdType = column(says="kind of 30 mA RCD built in")
    lead: Lead = column(says="own lead or a socket")
    lead_m: Metres = column("Llead", "length of its own lead; 0 for a socket")
    sensor_input: bool = column(says="can hold the whole house to a limit by a sensor")
    falls_to_a: Amperes = column(
        "Ilost", "most it still gives when sensor, link or sensor power is lost; 0 where it stops"
    )
    setting_locked: bool = column(says="the current setting and the limit can be locked")
    terminal_mm2: SquareMm = column("Sterm", "largest conductor its terminals take")
    terminal_c: Celsius = column("tterm", "temperature its terminals are rated for")
    gland_least_mm: Millimetres = column(
        "Dleast", "thinnest cable its entry still holds, over the sheath"
    )
    gland_mm: Millimetres = column("Dgland", "largest cable its entry takes, over the sheath")
    ip: str = column(says="protection against water and dust")
    smart: bool = column(says="meets the smart charge point regulations")
    unconditional: bool = column(says="meets the standards for harmonics and flicker anywhere")
    gives_back_a: Amperes = column(
        "Iback", "most it can feed back from the car, on each line; 0 where it cannot"
    )
    pen_opens_within_s: Seconds = column(
        "tPEN", "longest until its open-neutral detection has opened; 0 without one"
    )
    pen_ignores_s: Seconds = column(
        "tdip", "shortest dip or rise that opens its open-neutral detection; 0 without one"
    )
    pen_opens_live: bool = column(says="that detection opens every live conductor")
    pen_opens_earth: bool = column(says="that detection opens the earth as well")
    pen_closes_on_fault: bool = column(says="it closes again by itself while the neutral is lost")
    limits_within_s: Seconds = column(
        "tback", "longest until the house is back within its limit; 0 where it holds none"
    )
    leaks_ma: Milliamperes = column("Ileak", "most that flows to earth in normal service")
    default_from_h: Hours = column("tfrom", "hour at which it charges by default from")
    default_h: Hours = column("tdefault", "how many hours it charges by default, every day")
    delay_to_s: Seconds = column("tdelay", "longest random delay it can be told to keep")
    statement: bool = column(says="comes with a statement of compliance for its buyer")

    def __hash__(self) -> int:
        """Return the hash of its id: a point is a choice and is looked up at every stage."""
        return hash(self.id)


class DeviceKind(StrEnum):
    """What a protective device protects against: overcurrent, residual current or both."""

    BREAKER = "breaker"
    RCBO = "RCBO"
    RCD = "RCD"


@dataclass(frozen=True, slots=True)
class Device:
    """A protective device for the circuit of a point."""

    id: str = column(says="id")
    does: str = column(says="what it is, in words")
    kind: DeviceKind = column(says="breaker, RCBO or RCD")
    rating_a: Amperes = column("In", "rated current")
    curve: str = column(says="tripping curve; - for an RCD alone")
    phases: Count = column(says="lines it breaks")
    breaks_neutral: bool = column(says="breaks the neutral as well")
    rcd_type: RcdType = column(says="kind of residual current detection")
    rcd_ma: Milliamperes = column("I_dn", "rated residual operating current; 0 for none")
    breaking_ka: Kiloamperes = column("Icn", "rated breaking capacity")
    positions: Count = column(says="positions it takes on the rail")


@dataclass(frozen=True, slots=True)
class SmallBoard:
    """A small board of the point's own, for the meter end."""

    id: str = column(says="id")
    does: str = column(says="what it is, in words")
    phases: Count = column(says="lines it carries")
    rating_a: Amperes = column("Iboard", "rated current of the board")
    switch_a: Amperes = column("Iswitch", "rated current of its main switch")
    positions: Count = column(says="positions free for devices")
    surge_protection: bool = column(says="surge protection is fitted in it")
    case: str = column(says="what its case is made of")


@dataclass(frozen=True, slots=True)
class OriginDevice:
    """A device at the origin that opens all conductors when the supply neutral is lost."""

    id: str = column(says="id")
    does: str = column(says="what it is, in words")
    phases: Count = column(says="lines it serves")
    rating_a: Amperes = column("Iopen", "rated current")
    detection: Detection = column(says="how it notices an open neutral")
    lines_watched: Count = column(says="lines whose volts to neutral it watches; 0 for none")
    detects_three_phase: bool = column(says="the detection is made for a three-phase home")


@dataclass(frozen=True, slots=True)
class Cable:
    """A cable, by family, cores and size."""

    id: str = column(says="id")
    does: str = column(says="what it is, in words")
    family: CableFamily = column(says="family, as the capacity tables know it")
    cores: Count = column(says="power cores, the earth core among them")
    size_mm2: SquareMm = column("S", "size of a line core")
    conductor_c: Celsius = column("tmax", "temperature its insulation is rated for")
    overall_mm: Millimetres = column("D", "over the sheath, for glands and holes")
    data_cores: bool = column(says="has cores for the sensor beside the power cores")
    data_core_v: Volts = column("Udata", "voltage its data cores are insulated for; 0 for none")
    outdoors: bool = column(says="may run outdoors in sunlight")
    buried: bool = column(says="may be buried")


class WorkedBy(StrEnum):
    """What the minutes of a task are counted by."""

    JOB = "job"
    EACH = "each"
    METRE = "metre"


class Hands(StrEnum):
    """Who does a task: the electrician, a second person alone, or both together."""

    ELECTRICIAN = "electrician"
    MATE = "mate"
    BOTH = "both"


ISOLATOR_BY_POINT: Final = "isolator-by-point"
"""The task of an isolator beside the point, and the kit that it takes."""


@dataclass(frozen=True, slots=True)
class Task:
    """A task, who does it, and the hours it usually takes each of them."""

    id: str = column(says="id")
    does: str = column(says="what is done, in words")
    by: WorkedBy = column(says="what the hours are counted by")
    hands: Hands = column(says="who does it")
    low_h: Hours = column("tlow", "when all goes well")
    usual_h: Hours = column("t", "usually")
    high_h: Hours = column("thigh", "when it does not")

    @property
    def minutes(self) -> tuple[float, float, float]:
        """Minutes when all goes well, usually, and when it does not."""
        return (self.low_h * 60, self.usual_h * 60, self.high_h * 60)


class HasId(Protocol):
    """A row with an id."""

    @property
    def id(self) -> str:
        """The id of the row."""
        ...


T = TypeVar("T", bound=HasId)


@dataclass(frozen=True, eq=False)
class Catalogue:
    """All the firm fits, by kind; compared by identity."""

    points: tuple[ChargePoint, ...]
    devices: tuple[Device, ...]
    boards: tuple[SmallBoard, ...]
    origin_devices: tuple[OriginDevice, ...]
    cables: tuple[Cable, ...]

    def point(self, id_: str) -> ChargePoint:
        """Return a charge point; raises ``NotFoundError``."""
        return by_id("charge point", self.points, id_)

    def cable(self, family: CableFamily, cores: int, size_mm2: float, *, data_cores: bool) -> Cable:
        """Return the cable of a family, cores and size; raises ``NotFoundError``."""
        for each in self.cables:
            same = each.family is family and each.cores == cores and each.size_mm2 == size_mm2
            if same and each.data_cores is data_cores:
                return each
        asked = f"{family.value} {cores} × {size_mm2:g} mm²"
        raise NotFoundError("cable", asked, [each.id for each in self.cables])


def by_id(kind: str, rows: Iterable[T], id_: str) -> T:
    """Return the row with an id; raises ``NotFoundError`` with the nearest that exists."""
    known = {row.id: row for row in rows}
    if id_ in known:
        return known[id_]
    near = difflib.get_close_matches(id_, known, n=1)
    raise NotFoundError(kind, id_, tuple(known), near[0] if near else "")
