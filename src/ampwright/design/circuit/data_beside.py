"""The data cable of a limiter's sensor: beside the power cable, or as cores within it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Check
from ampwright.foundations.notes import Note, tells
from ampwright.foundations.quantity import Count, Millimetres
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made, made_of
from ampwright.foundations.working import computes
from ampwright.standards.wiring.running import APART, data_apart, data_cores_insulated, data_gap
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said
from ampwright.tables.practice import data_circuits_factor, data_gap_of_class_mm

from ..noted import noted
from ..route import Route
from .feed import nominal

METHOD: Final = Place("Ampwright", at="method, data beside power", trust=Trust.DERIVED)
COUNTED: Final = Place(
    "BS EN 50174-2", "2009 on", "a circuit of 32 A counts as 2 of 20 A, or as 6 on three lines",
    Trust.MEMORY, doubtful=True,
)  # fmt: skip
TWISTED_PAIR: Final = "b"
"""An unscreened twisted pair, as the firm buys it: the class that asks most of those in use."""
CIRCUITS_OF_20A: Final = {1: Count(2), 3: Count(6)}


@computes("A", "mm", formula="min(gaps)", place=METHOD)
def narrowest(gaps: tuple[Millimetres, ...]) -> Millimetres:
    """Return the narrowest of the gaps that the way leaves.

    Examples
    --------
    >>> narrowest((Millimetres(300.0), Millimetres(20.0)))
    20.0
    """
    return Millimetres(min(gaps))


@tells(APART)
def kept_from_power(least: Millimetres) -> str:
    """Say how far a sensor's data cable keeps from power, where nobody says the way is narrower.

    Examples
    --------
    >>> kept_from_power(Millimetres(20.0)).says
    'keep a sensor cable that runs beside it 20 mm away'
    """
    return f"keep a sensor cable that runs beside it {least:g} mm away"


def data_beside(home: Home, basis: Basis, way: Route, cable: str, phases: int) -> Made[None]:
    """Return whether the sensor's data keeps clear of the power beside it.

    Cores within the power cable bear its voltage; a cable of its own keeps a gap, which we keep
    unless somebody has said that the way leaves no room for it. ``cable`` is the id in the
    catalogue.
    """
    within = tuple(_within(basis, cable, phases))
    return made_of(None, within or (_beside(home, basis, way, phases),))


def _within(basis: Basis, cable: str, phases: int) -> Iterator[Check]:
    """Yield whether data cores within the power cable are insulated for it."""
    for each in basis.catalogue.cables:
        if each.id == cable and each.data_cores:
            yield data_cores_insulated(basis.cited(each).data_core_v, nominal(basis.book, phases))


def _beside(home: Home, basis: Basis, way: Route, phases: int) -> Check | Note:
    """Return whether the way leaves room for the gap between data and power."""
    book = basis.book
    circuits = noted(book, "n", CIRCUITS_OF_20A[phases], "", COUNTED)
    least_mm = data_gap(
        data_gap_of_class_mm(book, TWISTED_PAIR), data_circuits_factor(book, circuits)
    )
    room = _room(home, way)
    return data_apart(narrowest(room), least_mm) if room else kept_from_power(least_mm)


def _room(home: Home, way: Route) -> tuple[Millimetres, ...]:
    """Return the gaps that the legs leave, as far as anybody has said."""
    said = (
        if_said(lambda id_=leg.id: home.legs[id_].data_gap_mm, None)  # type: ignore[misc]
        for leg in way.new_legs
    )
    return tuple(each for each in said if each is not None)
