"""Which current sensors there are and will be: on what, which way round, and what each sees."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from ampwright.demand.household import ALL_LINES, LINES
from ampwright.foundations.notes import tells
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.survey.home import Home
from ampwright.survey.home_loads import Source
from ampwright.survey.if_said import if_said

PRACTICE: Final = Place(
    "usual practice with current sensors", at="what a sensor sees", trust=Trust.COMMON_PRACTICE
)
METER: Final = "meter"
POINT: Final = "the point"
HOUSE: Final = "the house"
AT_METER: Final = "at the meter"
SIDES: Final = {
    AT_METER: "between the meter and everything else",
    "on the tails": "on the tail to the fuse board, behind a tap at the meter",
    "in the board": "in the fuse board",
    "none": "nowhere: it has none",
    "": "nobody has noted where",
}
ARROW: Final = "arrow from the network to the house, proved with a known load"
FUSE_ONLY: Final = "guards the service fuse, not the board: what sources give flows past it unseen"
EVERYTHING: Final = "guards the service fuse and the board behind it"


@dataclass(frozen=True, slots=True)
class Sensor:
    """One sensor: whose it is, on which conductor and side, what it sees and what it misses."""

    of: str
    conductor: str
    side: str
    arrow: str
    sees: tuple[str, ...]
    net_of: tuple[str, ...]
    words: str

    @property
    def line(self) -> str:
        """The sensor in words, as a fitter reads them."""
        less = f", less what comes from {' and '.join(self.net_of)}" if self.net_of else ""
        return (
            f"sensor of {self.of} on {self.conductor}, {self.side}; {self.arrow}; sees "
            f"{' and '.join(self.sees)}{less}: {self.words}"
        )


@tells(PRACTICE)
def sensor_placed(sensor: Sensor) -> str:
    """Say where a sensor sits and what it sees, for the one who fits and proves it.

    One conductor through each, the arrow the right way, and nothing it must see behind it. A
    battery that takes the car for the house is judged by itself.
    """
    return sensor.line


@dataclass(frozen=True, slots=True)
class Sensing:
    """Every sensor of a home with its point, those of the point first."""

    sensors: tuple[Sensor, ...]


def sensors(home: Home, lines: tuple[bool, ...], limited: bool, tap: str) -> Made[Sensing]:
    """Return where each sensor sits and what it sees, for a drawing and a sheet.

    ``lines`` are those the point charges on; ``limited`` says that it holds the house to a limit
    by sensors of its own, one on each of those lines, ahead of every load and of its own tap.
    One sensor never serves two devices. Raises ``Unanswered`` while not every source is listed.
    """
    sources = tuple(home.sources.listed())
    phases = int(home.supply.phases)
    found: list[Sensor] = []
    if limited:
        found.extend(
            _of_point(line, tuple(_giving(sources, line, phases)))
            for line, on in zip(LINES, lines, strict=False)
            if on
        )
    for id_, each in sources:
        where = str(if_said(lambda each=each: each.sensor_at, ""))  # type: ignore[misc]
        found.extend(
            _of_source(id_, line, where, tap)
            for line in LINES[:phases]
            if where != "none" and (phases == 1 or each.phase in (line, ALL_LINES))
        )
    return Made(Sensing(tuple(found)), notes=tuple(map(sensor_placed, found)))


def _giving(sources: tuple[tuple[str, Source], ...], line: str, phases: int) -> Iterator[str]:
    """Yield the sources that give to a line."""
    for id_, each in sources:
        if phases == 1 or each.phase in (line, ALL_LINES):
            yield id_


def _of_point(line: str, giving: tuple[str, ...]) -> Sensor:
    """Return the point's own sensor on one line."""
    return Sensor(
        of=POINT,
        conductor=f"the {line} tail",
        side=SIDES[AT_METER],
        arrow=ARROW,
        sees=(HOUSE, POINT),
        net_of=giving,
        words=FUSE_ONLY if giving else EVERYTHING,
    )


def _of_source(id_: str, line: str, where: str, tap: str) -> Sensor:
    """Return the sensor of a source that is there, and whether it takes the car for the house."""
    sees_point = sees(where, tap)
    words = "takes the car for house load" if sees_point else "does not see the car"
    return Sensor(
        of=id_,
        conductor=f"the {line} tail" if where != "in the board" else f"{line} in the board",
        side=SIDES[where],
        arrow=ARROW,
        sees=(HOUSE, POINT) if sees_point else (HOUSE,),
        net_of=(),
        words=words if where else "see where it sits before the tap is chosen",
    )


def sees(where: str, tap: str) -> bool:
    """Say whether a sensor sees a point that is fed at a tap.

    Examples
    --------
    >>> sees("on the tails", "meter"), sees("on the tails", "main"), sees("at the meter", "meter")
    (False, True, True)
    """
    return where == AT_METER or (tap != METER and where in ("on the tails", "in the board"))
