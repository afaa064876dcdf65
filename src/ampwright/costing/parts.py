"""What is bought: pieces of work take goods, metres want offcuts, and each good has its price."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import Final, NamedTuple

from ampwright.firm.basis import Basis
from ampwright.firm.rates import Good, Rate, Rates, SoldBy
from ampwright.foundations.quantity import Count, Metres, Millimetres, Share
from ampwright.foundations.source import Place, SetBy, Trust
from ampwright.foundations.working import computes, given, has_working, upward

from .lines import CHARGE_POINT, Amount, Bundle, Group, Line, amount, bundle, marked_up

METHOD: Final = Place("Ampwright", at="method, what a job takes", trust=Trust.DERIVED)


class Piece(NamedTuple):
    """So much of a good, for one reason, before offcuts; named in words where it has no id."""

    good: str
    quantity: float
    why: str
    words: str = ""


class Asked(NamedTuple):
    """What the firm asks for one of a good, level by level, and the group it belongs to."""

    group: Group
    unit: Amount


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


def counted(basis: Basis, quantity: float, what: str) -> float:
    """Return a quantity; one that was counted is named as such where workings are kept."""
    if basis.keeps_working and not has_working(quantity):
        return given("n", quantity, "", SetBy("this option", f"{what}, counted"))
    return quantity


def kit(basis: Basis, work: str, quantity: float, phases: int, why: str) -> Iterator[Piece]:
    """Yield what a piece of work takes, by the firm's kits."""
    items = basis.rates.kit(work, phases)
    if not items:
        return
    times = counted(basis, quantity, work)
    for item in items:
        yield Piece(item.item, taken(times, item.quantity), why)


def bought(basis: Basis, pieces: Iterable[Piece]) -> Bundle:
    """Return the lines of what is bought, each good once, metres with the firm's offcuts.

    What has no price is named: by its words where a work item asks for it, else by its id.
    """
    by_good: dict[str, list[Piece]] = {}
    unpriced: dict[str, None] = {}
    for piece in pieces:
        if piece.good in basis.rates.goods:
            by_good.setdefault(piece.good, []).append(piece)
        else:
            unpriced[piece.words or piece.good] = None
    lines = tuple(_line(basis, basis.rates.goods[id_], each) for id_, each in by_good.items())
    return bundle(lines, tuple(unpriced))


def _line(basis: Basis, good: Good, pieces: list[Piece]) -> Line:
    """Return the line of one good."""
    group, unit = asked_for(basis.rates, good.id)
    n = quantity_of(basis, good, tuple(piece.quantity for piece in pieces))
    words = {piece.words or good.does for piece in pieces}
    return Line(
        group,
        good.id,
        words.pop() if len(words) == 1 else good.does,
        n,
        METRE if good.unit is SoldBy.METRE else "",
        unit.usual_p,
        Amount(amount(n, unit.low_p), amount(n, unit.usual_p), amount(n, unit.high_p)),
        "; ".join({piece.why: None for piece in pieces}),
        CHARGE_POINT,
    )


METRE: Final = SoldBy.METRE.value


def quantity_of(basis: Basis, good: Good, amounts: tuple[float, ...]) -> float:
    """Return how much of one good is bought for all that takes it."""
    if good.unit is SoldBy.METRE:
        offcuts = basis.rates.card.offcuts_share.usual
        return with_offcuts(tuple(Metres(each) for each in amounts), offcuts)
    return amounts[0] if len(amounts) == 1 else pieces_together(amounts)


def asked_for(rates: Rates, id_: str) -> Asked:
    """Return what the firm asks for one of a good that it has a price for."""
    return _worked_out(rates, id_) if rates.keeps_working else _kept(rates, id_)


def _worked_out(rates: Rates, id_: str) -> Asked:
    good, card = rates.good(id_), rates.card
    share: Rate[Share] = card.point_markup_share if good.point else card.materials_markup_share
    return Asked(
        Group.POINT if good.point else Group.MATERIALS,
        Amount(
            marked_up(good.low_p, share.low),
            marked_up(good.usual_p, share.usual),
            marked_up(good.high_p, share.high),
        ),
    )


_kept = lru_cache(maxsize=4096)(_worked_out)
"""For rates that keep no working only: prices are the same in every option."""
