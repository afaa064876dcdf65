"""Which choice leads in each drawn home: the setting first, then the circuit that carries it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from itertools import product
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ChargePoint
from ampwright.foundations.answers import Missing
from ampwright.foundations.quantity import Amperes
from ampwright.supply.hours import ANY

from ..choices import METER, Choice
from ..gates import work_of_others
from ..laying import Laid
from ..menu import EARTHS, families
from ..outlook import NUMBERS, decision_numbers
from ..runs import Ran, Run
from ..spread import Spread
from ..supply_side import Decision
from ..weighing import shortfall, uncovered, usable_power, wait
from ..work import before_circuit, use_of, work_of
from .drawn import DrawnHomes
from .remaining import PRICES, what_it_says
from .trying import Found, Trying, laid_over, nothing_found, numbers_of, severity

Where = NDArray[np.bool_]
TRIED_A: Final = ((32.0, False), (32.0, True), (16.0, False), (16.0, True), (10.0, False))
"""Settings, without and with a limit on the house, in the order in which they are tried."""
NEW_BOARD: Final = "new-board-"
MOST_ALWAYS: Final = 3
"""So many of the choices that lead most often are tried in every home."""
MOST_FALLBACKS: Final = 3
"""How many settings are gone through where the better ones lead to no sound circuit."""


def found_in(homes: DrawnHomes, basis: Basis) -> Found:
    """Return what leads in each drawn home, as near as a few well-chosen choices come to it."""
    trying = Trying(homes, basis)
    found = nothing_found(trying.count)
    first = list(settings(trying))
    keys = [list(standing(trying, each)) for each in first]
    laid = [each[-1] for each in keys]
    stacked = np.asarray([each[:-1] for each in keys])
    order = np.lexsort(
        tuple(stacked[:, part] for part in reversed(range(stacked.shape[1]))), axis=0
    )
    for rank in range(min(MOST_FALLBACKS, len(first))):
        for number, choice in enumerate(first):
            here = (order[rank] == number) & ~found.sound & (stacked[number, 0] < 2)
            for system in (TN, TT):
                cells = here & system_is(homes, trying.count, system)
                if cells.any():
                    circuits(trying, choice, laid[number], cells, system, found)
    found.calls += trying.calls
    return found


def always(homes: DrawnHomes, basis: Basis, found: Found) -> tuple[str, ...]:
    """Return which of the choices that lead somewhere hold in every drawn home.

    With what each home then needs done; nothing where no choice was found for some home.
    """
    if not found.sound.all():
        return ()
    trying, work = Trying(homes, basis), work_of(basis)
    counts = Counter(each for each in found.choice if each is not None)
    slugs = []
    for choice, _ in counts.most_common(MOST_ALWAYS):
        design, ran, _ = trying.mended(choice, work, trying.nothing)
        if design is not None and bool((severity(ran, trying.count) == 0).all()):
            slugs.append(choice.slug)
    return tuple(slugs)


TN: Final = ("TN-C-S", "TN-S")
TT: Final = ("TT",)


def settings(trying: Trying) -> Iterator[Choice]:
    """Yield each setting worth a look, on the first place, tap, point and cable."""
    homes, basis = trying.homes, trying.basis
    points = points_for(homes, basis)
    place = homes.there("places", trying.base.view.places.ids)[0]
    tap = (*homes.there("boards", trying.base.view.boards.ids), METER)[0]
    family = families(basis, points)[0]
    for phases in sorted({point.phases for point in points}):
        point = next(each for each in points if each.phases == phases)
        for setting_a, limited in TRIED_A:
            yield Choice("pme", tap, place, point, Amperes(setting_a), limited, ANY, family)


def points_for(homes: DrawnHomes, basis: Basis) -> tuple[ChargePoint, ...]:
    """Return the first point of each kind of detection that may suit the supply."""
    phases = max((int(each) for each in homes.answers("supply.phases")), default=1)
    kinds: dict[Any, ChargePoint] = {}
    for point in basis.catalogue.points:
        if point.phases <= phases:
            kinds.setdefault((point.phases, point.detection), point)
    return tuple(kinds.values())


def system_is(homes: DrawnHomes, count: int, system: tuple[str, ...]) -> Where:
    """Say in which homes the earthing is one of some kinds."""
    key = "supply.earthing"
    if key in homes.numbers:
        return np.asarray([each in system for each in homes.among[key]])[homes.numbers[key]]
    return np.full(count, homes.known.get(key) in system)


def standing(trying: Trying, choice: Choice) -> Iterator[Any]:
    """Yield how a setting stands in each home, the most telling first, then the work laid.

    Whether it holds, the wait, whether the cheap hours hold the cars' need, and what is lacking
    of the power asked for.
    """

    def work(run: Run, made: Choice) -> Any:
        _, side = before_circuit(run, trying.basis, made)
        use = use_of(run, trying.basis, made)
        usable = run.aside(usable_power, use.charging.cars, use.charging.offered_kw)
        awaits = run.aside(work_of_others, made.remedies)
        return (
            run.aside(wait, side.outcome, side.origin.strained, awaits),
            run.aside(uncovered, use.nights.covers),
            run.aside(shortfall, usable),
        )

    out, ran, laid = trying.mended(choice, work, trying.nothing)
    yield severity(ran, trying.count)
    parts = out or ()
    for at in range(3):
        yield numbers_of(parts[at], trying.count, 0.0) if parts else np.zeros(trying.count)
    yield laid


def circuits(
    trying: Trying, choice: Choice, laid: Laid, cells: Where, system: tuple[str, ...], found: Found
) -> None:
    """Try one setting's circuits in some homes, the firm's first one first, until one holds.

    Where that wants a new board, the meter end is tried too, and the cheaper stands.
    """
    here = trying.beside(laid)
    work = work_of(trying.basis)
    dear = np.zeros(trying.count, np.bool_)
    for each in circuit_choices(trying, choice, system):
        left = cells & (~found.sound | dear) if each.tap == METER else cells & ~found.sound
        if not left.any():
            continue
        here.ask_only(left)
        design, ran, further = here.mended(each, work, laid)
        if design is not None:
            holds = note(found, each, design, ran, left)
            dear = (dear & ~holds) | (holds & wants_new_board(further, trying.count))
    found.calls += here.calls


def wants_new_board(laid: Laid, count: int) -> Where:
    """Say in which homes some work has a new board in it."""
    wanted = [any(each.slug.startswith(NEW_BOARD) for each in work or ()) for work in laid.values]
    return np.asarray(wanted)[laid_over(laid, count)]


def circuit_choices(trying: Trying, choice: Choice, system: tuple[str, ...]) -> Iterator[Choice]:
    """Yield the circuits of one setting, the firm's first ones first."""
    homes, view = trying.homes, trying.base.view
    points = points_for(homes, trying.basis)
    alike = [point for point in points if point.phases == choice.point.phases]
    taps = (*homes.there("boards", view.boards.ids), METER)
    places = homes.there("places", view.places.ids)
    for place, earthing, tap, point, family in product(
        places, EARTHS[system[0]], taps, alike, families(trying.basis, points)
    ):
        yield replace(choice, place=place, earthing=earthing, tap=tap, point=point, family=family)


def note(found: Found, choice: Choice, design: Any, ran: list[Ran], left: Where) -> Where:
    """Note what a circuit comes to where it holds, or cannot be said to fail, and is no dearer.

    Returns in which of the homes it does.
    """
    count, total = len(left), design.price.total
    worst = severity(ran, count)
    holds = left & (worst < 2)
    dearer = numbers_of(total.usual_p, count) > found.usual_p
    good = holds & ~(found.sound & dearer)
    for each in ran:
        note_lacking(found, each.made, good)
    decided = decision_numbers(design.decision)[laid_over(design.decision, count)]
    decided = np.where(worst == 1, NUMBERS[Decision.UNDETERMINED], decided)
    found.decision = np.where(good, decided, found.decision)
    for name in PRICES:
        price = numbers_of(getattr(total, name), count)
        setattr(found, name, np.where(good, price, getattr(found, name)))
    note_said(found, choice, design, good)
    found.sound = found.sound | good
    return holds


def note_lacking(found: Found, made: Spread[Any], here: Where) -> None:
    """Note the blank facts for want of which a stage cannot be said in some homes."""
    for number, value in enumerate(made.values):
        if isinstance(value, Missing):
            where = here & (laid_over(made, len(here)) == number)
            for key in value.keys:
                found.lacking[key] = found.lacking.get(key, np.zeros(len(here), bool)) | where


def note_said(found: Found, choice: Choice, design: Any, here: Where) -> None:
    """Note the choice in some homes, and what else it comes to in each."""
    told = {
        name: (each.values, laid_over(each, len(here)))
        for name, each in what_it_says(design).items()
    }
    for cell in np.flatnonzero(here).tolist():
        found.choice[cell] = choice
        for name, (values, index) in told.items():
            value = values[index[cell]]
            found.says[name][cell] = None if isinstance(value, Missing) else value
