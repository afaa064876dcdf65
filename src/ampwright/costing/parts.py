"""What an option takes beside work: the point, its device, cable by the metre, and the rest."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, NamedTuple

from ampwright.design.route import LegRun
from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ChargePoint
from ampwright.firm.rates import SoldBy
from ampwright.foundations.quantity import Count, Metres, Millimetres, Share
from ampwright.foundations.remedies import Part, Remedy
from ampwright.foundations.source import Place, SetBy, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes, given, has_working, upward
from ampwright.survey.home import Home
from ampwright.tables.capacity import CableFamily
from ampwright.tables.practice import clip_spacing

from .labour import ours
from .tasks import Tasks

METHOD: Final = Place("Ampwright", at="method, what a job takes", trust=Trust.DERIVED)
CLIPPED: Final = frozenset({"clipped inside", "clipped outside"})
METRES: Final = SoldBy.METRE.value


class Piece(NamedTuple):
    """So much of a good, for one reason, before offcuts; named in words where it has no id."""

    good: str
    quantity: float
    why: str
    words: str = ""


@dataclass(frozen=True, slots=True)
class Item:
    """So much of one good, bought for an option, and why; ``good`` is empty without a price.

    Metres are those of the way, the rest counted; ``what`` is the good in words.
    """

    good: str
    what: str
    quantity: float
    unit: str
    why: str


@dataclass(frozen=True, slots=True)
class Parts:
    """All that is bought for an option, each good once."""

    items: tuple[Item, ...]


@computes("n", "", formula="upward(1000 * L / s)", place=METHOD)
def clips_along(L: Metres, s: Millimetres) -> Count:  # noqa: N803 - as printed
    """Return the clips along a leg at a spacing; one begun is one taken.

    Examples
    --------
    >>> clips_along(Metres(7.0), Millimetres(300.0))
    24
    """
    return Count(upward(1000 * L / s))


@computes("n", "", formula="n * q", place=METHOD)
def taken(n: float, q: float) -> float:
    """Return what work takes that is done so many times, or over so many metres."""
    return n * q


@computes("n", "", formula="sum(n)", place=METHOD)
def pieces_together(n: tuple[float, ...]) -> float:
    """Return how many of one good several pieces of work take."""
    return float(sum(n))


@computes("L", "m", formula="(1 + w) * sum(L)", place=METHOD)
def with_offcuts(L: tuple[Metres, ...], w: Share) -> Metres:  # noqa: N803 - as printed
    """Return the metres to buy for the metres to run, leg by leg.

    Examples
    --------
    >>> with_offcuts((Metres(7.0), Metres(1.0)), Share(0.1))
    8.8
    """
    return Metres((1 + w) * sum(L))


def parts(
    _home: Home,
    basis: Basis,
    legs: tuple[LegRun, ...],
    work: Tasks,
    point: ChargePoint,
    device: str,
    rcd: str,
    board: str,
    own: bool,
    cable: str,
    family: CableFamily,
    overall_mm: Millimetres,
    house_limit: bool,
    remedies: tuple[Remedy, ...],
) -> Made[Parts]:
    """Return all that is bought for an option; what others bring with their own work is not.

    ``device``, ``rcd``, ``board`` and ``cable`` are ids of the catalogue, empty where there is
    none; ``own`` says that the board is the point's own. A limiter's data cable runs along the
    way of the cable, unless that has data cores; its few metres from the meter to a board are
    within the sensor's lead.
    """
    phases = point.phases
    pieces: list[Piece] = [
        *catalogue_pieces(basis, point.id, device, rcd, board if own else ""),
        *cable_pieces(basis, legs, cable, family, overall_mm),
    ]
    for task in work.each:
        pieces += kit(basis, task.task, task.quantity, phases, basis.task(task.task).does)
    if family is CableFamily.SHEATHED:
        pieces += kit(basis, "sheathed-ends", 1.0, phases, "both ends of the cable")
    elif house_limit:
        for leg in legs:
            pieces += kit(basis, "data-run", leg.length_m, phases, "the limiter's sensor")
    pieces += (mending(basis, remedy, part) for remedy in ours(remedies) for part in remedy.parts)
    return Made(Parts(tuple(bought(basis, pieces))))


def catalogue_pieces(
    basis: Basis, point: str, device: str, rcd: str, board: str
) -> Iterator[Piece]:
    """Yield what is bought apiece from the catalogue."""
    one = counted(basis, 1.0, "one of it")
    for id_, why in (
        (point, "the point of this option"),
        (device, "protects its circuit"),
        (rcd, "sees residual current for its circuit"),
        (board, "the point's own board at the meter"),
    ):
        if id_:
            yield Piece(id_, one, why)


def cable_pieces(
    basis: Basis,
    legs: tuple[LegRun, ...],
    cable: str,
    family: CableFamily,
    overall_mm: Millimetres,
) -> Iterator[Piece]:
    """Yield the cable leg by leg, and the clips of the legs that are clipped."""
    if not cable:
        return
    for leg in legs:
        yield Piece(cable, leg.length_m, "the way from tap to point, leg by leg, with offcuts")
    clipped = tuple(leg for leg in legs if leg.how in CLIPPED)
    if not clipped:
        return
    armoured = family is CableFamily.ARMOURED
    spacing_mm, _ = clip_spacing(
        basis.book, "armoured" if armoured else "not armoured", overall_mm
    )
    for leg in clipped:
        clips = clips_along(leg.length_m, spacing_mm)
        yield Piece("cleat" if armoured else "clip", clips, "clips at their greatest spacing")


def kit(basis: Basis, work: str, quantity: float, phases: int, why: str) -> Iterator[Piece]:
    """Yield what a piece of work takes, by the firm's kits."""
    items = basis.rates.kit(work, phases)
    if not items:
        return
    times = counted(basis, quantity, work)
    for item in items:
        yield Piece(item.item, taken(times, item.quantity), why)


def counted(basis: Basis, quantity: float, what: str) -> float:
    """Return a quantity; one that was counted is named as such where workings are kept."""
    if basis.keeps_working and not has_working(quantity):
        return given("n", quantity, "", SetBy("this option", f"{what}, counted"))
    return quantity


def mending(basis: Basis, remedy: Remedy, part: Part) -> Piece:
    """Return a part of a work item, found among the firm's goods by its words."""
    good = basis.rates.named(part.what)
    amount = part.quantity
    if basis.keeps_working:
        source = SetBy("work of this option", remedy.does)
        amount = given("n", amount, part.unit, source)
    return Piece(good.id if good else "", amount, remedy.does, part.what)


def bought(basis: Basis, pieces: list[Piece]) -> Iterator[Item]:
    """Yield each good once, metres with the firm's share of offcuts."""
    by_good: dict[tuple[str, str], list[Piece]] = {}
    for piece in pieces:
        by_good.setdefault((piece.good, "" if piece.good else piece.words), []).append(piece)
    offcuts = basis.rates.card.offcuts_share.usual
    for (id_, words), each in by_good.items():
        good = basis.rates.goods.get(id_)
        unit = good.unit.value if good else ""
        yield Item(
            good=id_ if good else "",
            what=good.does if good else words or id_,
            quantity=quantity_of(tuple(piece.quantity for piece in each), unit, offcuts),
            unit="" if unit == SoldBy.EACH else unit,
            why="; ".join(dict.fromkeys(piece.why for piece in each)),
        )


def quantity_of(amounts: tuple[float, ...], unit: str, offcuts: Share) -> float:
    """Return how much of one good is bought for all that takes it."""
    if unit == METRES:
        return with_offcuts(tuple(Metres(each) for each in amounts), offcuts)
    return amounts[0] if len(amounts) == 1 else pieces_together(amounts)
