"""The long feeds of a house: a device of their own at the meter end, an armour that is an earth."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Check, Finding, holds, requires
from ampwright.foundations.errors import OutOfTableError
from ampwright.foundations.notes import Note, tells
from ampwright.foundations.quantity import Amperes, Metres, OhmsPerKm, SquareMm
from ampwright.foundations.remedies import Part, Remedy
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made, made_of
from ampwright.foundations.working import computes
from ampwright.standards.wiring.adequacy import TAILS
from ampwright.standards.wiring.earthing import BONDING
from ampwright.survey.home import Home
from ampwright.survey.home_boards import Board
from ampwright.survey.if_said import if_said
from ampwright.tables.conductors import armour_resistance_20, resistance_20
from ampwright.tables.devices import standard_ratings

from ..circuit.capacity import may_protect
from ..circuit.chain import METER, chain_to, fed_from
from ..circuit.feed import CORES, feed_capacity
from ..earthing.bonding import COMBINED, doubted_earthing, required_bond

HEADS: Final = {"service fuse": "cartridge fuse", "breaker": "breaker"}
"""What may stand at the head of a feed, the likelier first: its row of ratings and its kind."""
METHOD: Final = Place("Ampwright", at="method, an armour as so much copper", trust=Trust.DERIVED)
HERE: Final = Metres(0.0)
ARMOURED: Final = "armoured"


@requires("a long feed from the meter has a device of its own", place=TAILS)
def feed_has_device(board: str, device: Amperes) -> Finding:
    """A feed longer than operators let run behind their fuse begins at a device of its own.

    At the meter end, or at the board that feeds it; a switch alone opens nothing by itself.

    Examples
    --------
    >>> feed_has_device("main", Amperes(0.0)).why
    'nothing of its own stands at the head of the feed of main'
    """
    why = "" if device else f"nothing of its own stands at the head of the feed of {board}"
    return holds(device > 0, why)


@computes("Scu", "mm²", formula="r_1 / r_armour", place=METHOD)
def as_copper(r_1: OhmsPerKm, r_armour: OhmsPerKm) -> SquareMm:
    """Return the copper that conducts as well as an armour; ``r_1`` is that of 1 mm² of copper.

    Examples
    --------
    >>> as_copper(OhmsPerKm(18.1), OhmsPerKm(2.3))
    7.87
    """
    return SquareMm(r_1 / r_armour)


@tells(BONDING)
def armour_as_bond(board: str, copper: SquareMm, bond: SquareMm) -> str:
    """Say what an armour that is the only earth of a board comes to as its main bond.

    Examples
    --------
    >>> armour_as_bond("barn", SquareMm(12.0), SquareMm(10.0)).says
    'the armour of the feed of barn is its earth: 12 mm² of copper, a main bond 10 mm²'
    """
    return (
        f"the armour of the feed of {board} is its earth: {copper:.0f} mm² of copper, a main bond "
        f"{bond:g} mm²"
    )


@tells(BONDING, caution=True)
def armour_measured(board: str, copper: SquareMm, bond: SquareMm) -> str:
    """Ask for a measurement of an armour that comes to less copper than the main bond it is.

    No refusal: what makers' sheets say of armour differs, and a measurement decides.

    Examples
    --------
    >>> armour_measured("barn", SquareMm(7.9), SquareMm(10.0)).caution[-27:]
    'd; measure it and record it'
    """
    return (
        f"the armour of the feed of {board} is its earth: about {copper:.0f} mm² of copper against "
        f"the {bond:g} mm² of a main bond; measure it and record it"
    )


def house_feeds(home: Home, basis: Basis, tap: str) -> Made[None]:
    """Return what the long feeds of the house lack that the work at a tap must put right.

    A tap at the meter end opens the tails that feed every board; a tap at a board leans on the
    feeds on the way to it. A length nobody has told counts as short at the meter end.
    """
    found: list[Check | Note] = []
    on_way = None if tap == METER else chain_to(home, tap)
    for id_, board in home.boards.listed():
        through = fed_from(home, id_) != METER
        if on_way is not None and id_ not in on_way:
            continue
        if not is_long(basis, board) and not (on_way and through):
            continue
        if not through or on_way:
            check = feed_has_device(id_, board.feed_device_a)
            found.append(check.mended_by(*_own_device(home, basis, id_, board)))
        found.extend(_armour(home, basis, id_, board))
    return made_of(None, found)


def is_long(basis: Basis, board: Board) -> bool:
    """Say whether a board lies further from the meter than tails may run."""
    return if_said(lambda: board.from_meter_m, HERE) > basis.rules.own_device_over_m


def _armour(home: Home, basis: Basis, id_: str, board: Board) -> Iterator[Note]:
    """Yield what an armour that earths a board comes to in copper, where earth is combined."""
    system = doubted_earthing(home)
    if system != COMBINED or board.feed_kind != ARMOURED:
        return
    book = basis.book
    try:
        armour = armour_resistance_20(book, CORES[home.supply.phases], board.feed_mm2)
        bond_mm2 = required_bond(home, book, system)
    except OutOfTableError:
        return
    copper_mm2 = as_copper(resistance_20(book, 1), armour)
    told = armour_as_bond if copper_mm2 >= bond_mm2 else armour_measured
    yield told(id_, copper_mm2, bond_mm2)


def _own_device(home: Home, basis: Basis, id_: str, board: Board) -> Iterator[Remedy]:
    """Yield the work of a device at the head of a feed, no larger than its cable and the fuse.

    A breaker where no fuse is small enough; nothing where the cable bears neither.
    """
    fuse_a = home.supply.main_fuse_a
    parent = fed_from(home, id_)
    begins = "the meter end" if parent == METER else parent
    carries_a = if_said(
        lambda: may_protect(
            basis.book,
            feed_capacity(basis.book, home.supply.phases, board).capacity_a,
            board.feed_lies,
        ),
        fuse_a,
    )
    most_a = min(carries_a, fuse_a, key=float)
    fitting = [
        (max(ratings, key=float), kind)
        for row, kind in HEADS.items()
        if (ratings := [each for each in standard_ratings(basis.book, row) if each <= most_a])
    ]
    if not fitting:
        return
    rating_a, kind = fitting[0]
    yield Remedy(
        slug=f"feed-device-{id_}",
        does=f"Give the feed of {id_} a switch-fuse of its own at {begins}, {rating_a:g} A, "
        "no larger than its cable bears",
        changes=(
            (f"boards.{id_}.feed_device_a", float(rating_a)),
            (f"boards.{id_}.feed_device_kind", kind),
        ),
        parts=(Part(f"switch-fuse {rating_a:g} A, {home.supply.phases}-phase", 1.0),),
        minutes=basis.task("own-board").minutes,
    )
