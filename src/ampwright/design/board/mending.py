"""What would mend an existing board: a new one, a front device, surge protection, a lock."""

from __future__ import annotations

from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ISOLATOR_BY_POINT, RcdType
from ampwright.foundations.answers import Value
from ampwright.foundations.quantity import Amperes, Milliamperes
from ampwright.foundations.remedies import Part, Remedy
from ampwright.survey.home import Home
from ampwright.tables.charging import point_distance
from ampwright.tables.devices import rcd_time_ms

from ..residual import in_seconds
from .extra import chart_gone
from .front import DELAYED

FRONT_MA: Final = Milliamperes(100.0)
NEW_BOARD_A: Final = Amperes(125.0)
"""A delayed device and a board as they are sold: *common practice*."""


def new_board(home: Home, basis: Basis, tap: str) -> Remedy:
    """Return the work of a new board in the place of one that cannot serve."""
    key = f"boards.{tap}"
    return Remedy(
        slug=f"new-board-{tap}",
        does=f"Put a new board rated {NEW_BOARD_A:g} A in the place of {tap}, every circuit on a "
        "device of its own that sees residual current, with surge protection",
        changes=(
            (f"{key}.protection", "RCBOs"),
            (f"{key}.parts_sold", True),
            (f"{key}.spare_ways", 4),
            (f"{key}.spare_behind_rcd", "none"),
            (f"{key}.surge_protection", True),
            (f"{key}.surge_leads_m", new_leads_m(basis)),
            (f"{key}.lock_fits", True),
            (f"{key}.case", "metal"),
            (f"{key}.rated_a", float(NEW_BOARD_A)),
            (f"{key}.main_switch_a", float(NEW_BOARD_A)),
            *(_three_phase(key) if home.boards[tap].phases > 1 else ()),
            *(
                (f"sources.{id_}.way_both_ways", True)
                for id_, each in home.sources.listed()
                if each.board == tap
            ),
            *chart_gone(home, tap),
        ),
        parts=(Part(f"metal board of ten to twelve ways, {NEW_BOARD_A:g} A, with devices", 1.0),),
        minutes=basis.task("new-board").minutes,
    )


def _three_phase(key: str) -> tuple[tuple[str, Value], ...]:
    """Return what is so of a new three-phase board besides."""
    return ((f"{key}.whole_ways_spare", 1), (f"{key}.parts_three_phase_rcbo", True))


def front_rcd(basis: Basis, tap: str) -> Remedy:
    """Return the work of a front device that sees pulses and waits for those behind it.

    It takes about as long as landing a circuit on a free way, and is taken to open no sooner than
    it must until it is read.
    """
    return Remedy(
        slug=f"front-rcd-{tap}",
        does=f"Change the device in front of {tap} for a 100 mA Type A one that waits, in an "
        "insulating case",
        changes=(
            (f"boards.{tap}.front_rcd", RcdType.A.value),
            (f"boards.{tap}.front_rcd_ma", float(FRONT_MA)),
            (f"boards.{tap}.front_delayed", True),
            (f"boards.{tap}.front_trips_in_s", float(in_seconds(rcd_time_ms(basis.book, DELAYED)))),
        ),
        parts=(Part("100 mA Type A time-delayed RCD in an insulating case", 1.0),),
        minutes=basis.task("land-on-way").minutes,
    )


def new_leads_m(basis: Basis) -> float:
    """Return the leads of a surge device that is put in now."""
    return float(point_distance(basis.book, "surge device leads preferred"))


def surge(basis: Basis, tap: str) -> Remedy:
    """Return the work of adding surge protection to a board."""
    return Remedy(
        slug=f"surge-{tap}",
        does=f"Add a surge protective device to {tap}",
        changes=(
            (f"boards.{tap}.surge_protection", True),
            (f"boards.{tap}.surge_leads_m", new_leads_m(basis)),
        ),
        parts=(Part("surge protective device with its own breaker", 1.0),),
        minutes=basis.task("surge-device").minutes,
    )


def shorter_leads(basis: Basis, tap: str) -> Remedy:
    """Return the work of wiring a surge device anew, beside its bars.

    It takes about as long as adding one; its leads come to what is asked of a new one.
    """
    leads_m = new_leads_m(basis)
    return Remedy(
        slug=f"surge-leads-{tap}",
        does=f"Move the surge protective device of {tap} beside its bars, its leads no longer "
        f"than {leads_m:g} m together",
        changes=((f"boards.{tap}.surge_leads_m", leads_m),),
        minutes=basis.task("surge-device").minutes,
    )


def isolator_by_point(basis: Basis, tap: str, phases: int) -> Remedy:
    """Return the work of an isolator that takes a lock, where the board's devices take none."""
    poles = "two-pole" if phases == 1 else "four-pole"
    return Remedy(
        slug=f"lock-{tap}",
        does=f"Put a {poles} isolator that takes a lock beside the point, for nothing in {tap} "
        "takes one",
        changes=((f"boards.{tap}.lock_fits", True),),
        parts=(Part(f"{poles} isolator in a case", 1.0),),
        minutes=basis.task(ISOLATOR_BY_POINT).minutes,
    )
