"""The sums a customer asks for: nights, a year, full, sun, one point or two, what speed buys."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from ampwright.documents.options_and_working.from_checks import Stage
from ampwright.documents.options_and_working.from_checks import working_of as groups_of
from ampwright.energy.sums import (
    Mile,
    Points,
    Size,
    Sun,
    cost_a_mile,
    one_or_two,
    sizes,
    sun_or_sold,
    unused,
)
from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Missing
from ampwright.options.runs import InOneHome
from ampwright.survey.folding import FoldedHome

from .design_run import DesignRun, run_design
from .facts import fact_name, words_of
from .heads import basis_head, text_at
from .naming import find_option
from .seeing import Seen, Terms, see
from .sums_shapes import CustomerSum, SumsAnswer
from .words import amount, capital, hours, money, number
from .working import figure_answer
from .working_shapes import Taken

Figures = tuple[tuple[str, float], ...]
Told = tuple[tuple[str, ...], Figures]
"""What to say, and the figures it rests on, each with what it is."""

WORTH_SAYING_KW: Final = 0.5
"""Less than this beyond what a car takes is no speed that anybody pays for."""


@dataclass(frozen=True, eq=False, slots=True)
class Case:
    """One option in one home, with a way to run further sums there."""

    design: Any
    choice: Any
    basis: Basis
    there: InOneHome
    folded: FoldedHome

    @property
    def use(self) -> Any:
        """What the point does for the cars."""
        return self.design.use

    def car(self, id_: str) -> str:
        """Return what a car is called."""
        return text_at(self.folded, f"cars.{id_}.name") or f"car {id_}"


def sums_of(path: Path, terms: Terms, name: str = "") -> SumsAnswer:
    """Return the sums of the option with a letter or id; unless named, of the one that leads.

    Raises like ``read_home``, and ``NotFoundError`` for an option that is not there.
    """
    seen = see(path, terms)
    option = find_option(seen.outlook, seen.offered, name or "A")
    run = run_design(seen.home.folded, seen.basis, option)
    return SumsAnswer(
        home=seen.home.head,
        basis=basis_head(seen.basis),
        letter=seen.letter(option.id),
        id=option.id,
        name=seen.name(option.choice),
        taken=tuple(Taken(k, fact_name(k), words_of(k, v)) for k, v in run.taken.items()),
        sums=sums_in(seen, run),
    )


def sums_in(seen: Seen, run: DesignRun) -> tuple[CustomerSum, ...]:
    """Return every sum of an option, each by itself: what one lacks keeps no other back."""
    case = case_of(seen, run)
    return tuple(one(slug, asks, work, case) for slug, asks, work in SUMS)


def worth_saying(seen: Seen, run: DesignRun) -> Iterator[str]:
    """Yield what a customer should hear unasked: speed that buys nothing, sun in the car."""
    case = case_of(seen, run)
    if not isinstance(case.use.charging, Missing):
        yield from buys_nothing(case, case.there.aside(unused, case.use.charging))
    found = sun(case)
    if not isinstance(found, Missing) and found[1]:
        yield found[0][0]


def case_of(seen: Seen, run: DesignRun) -> Case:
    """Return an option in the home of its working, for further sums."""
    there, basis = InOneHome(run.home), seen.basis.documented()
    return Case(run.design, run.option.choice, basis, there, seen.home.folded)


def one(slug: str, asks: str, work: Callable[[Case], Told | Missing], case: Case) -> CustomerSum:
    """Return one sum with its working, or the facts it lacks."""
    found = work(case)
    if isinstance(found, Missing):
        return CustomerSum(slug, asks, (), (), tuple(map(fact_name, found.keys)))
    says, figures = found
    (group,) = groups_of([Stage("", figures=figures)], fact_name)
    return CustomerSum(slug, asks, says, tuple(map(figure_answer, group.figures)), ())


def nights(case: Case) -> Told | Missing:
    """Say how long the cars charge on an average night, beside the cheap hours."""
    charging, cheap = case.use.charging, case.use.nights
    if isinstance(charging, Missing):
        return charging
    says = [f"{capital(hours(charging.hours_a_day))} on an average night at {kw(charging)}."]
    figures = [(f"{case.car(each.car)}, a day", each.hours_a_day) for each in charging.cars]
    figures.append(("all cars, a day", charging.hours_a_day))
    if not isinstance(cheap, Missing):
        fits = "within" if cheap.covers else "more than"
        says.append(
            f"With the firm's margin for a cold month {hours(cheap.needed_h)}: {fits} the "
            f"{hours(cheap.cheap_h)} of the cheap rate."
        )
        figures.append(("with the firm's margin", cheap.needed_h))
    return tuple(says), tuple(figures)


def kw(charging: Any) -> str:
    """Write the power at which the cars charge."""
    powers = dict.fromkeys(amount(each.power_kw, "kW", 1) for each in charging.cars)
    return " and ".join(powers)


def year(case: Case) -> Told | Missing:
    """Say what a year's charging takes and costs at each rate of the tariff, and a mile."""
    need, cost = case.use.need, case.use.cost
    if isinstance(cost, Missing):
        return cost
    mile: Mile | Missing = case.there.aside(cost_a_mile, cost.at_night_p, cost.by_day_p)
    if isinstance(mile, Missing):
        return mile
    says = (
        f"{number(need.kwh_a_year, 0)} kWh a year at the wall: {money(cost.at_night_p)} at the "
        f"night rate, {money(cost.by_day_p)} at the day rate.",
        f"That is {number(mile.at_night_p, 1)} p a mile by night and {number(mile.by_day_p, 1)} p "
        "by day.",
    )
    figures = (
        ("a year", need.kwh_a_year), ("all at night", cost.at_night_p),
        ("all by day", cost.by_day_p), ("a mile at night", mile.at_night_p),
        ("a mile by day", mile.by_day_p),
    )  # fmt: skip
    return says, figures


def full(case: Case) -> Told | Missing:
    """Say how long each car takes from empty to full."""
    charging = case.use.charging
    if isinstance(charging, Missing):
        return charging
    says = tuple(
        f"{capital(case.car(each.car))}: {hours(each.full_h)} at "
        f"{amount(each.power_kw, 'kW', 1)}, without the slow last part."
        for each in charging.cars
    )
    return says, tuple((case.car(each.car), each.full_h) for each in charging.cars)


def speed(case: Case) -> Told | Missing:
    """Say what each usual size gives the car that needs most, and what buys nothing."""
    need, charging = case.use.need, case.use.charging
    if isinstance(need, Missing) or isinstance(charging, Missing):
        return need if isinstance(need, Missing) else charging
    most = max(need.cars, key=lambda each: each.kwh_a_day)
    found: tuple[Size, ...] | Missing = case.there.aside(sizes, case.basis, need, most.car)
    if isinstance(found, Missing):
        return found
    beyond: Any = case.there.aside(unused, charging)
    says = [*map(size_words, found), *buys_nothing(case, beyond)]
    figures = [(f"{amount(each.offered_kw, 'kW', 1)}, a day", each.day_min) for each in found]
    return tuple(says), (*figures, ("beyond what the cars take", beyond))


def size_words(size: Size) -> str:
    """Say what one size gives a car."""
    taken = amount(size.taken_kw, "kW", 1)
    return (
        f"{amount(size.offered_kw, 'kW', 1)}: the car takes {taken}, {hours(size.day_min / 60)} "
        f"a day, {hours(size.full_h)} from empty to full."
    )


def buys_nothing(case: Case, beyond: Any) -> Iterator[str]:
    """Yield what this option's point offers that no car here takes, if it is worth saying."""
    charging = case.use.charging
    if isinstance(beyond, Missing) or isinstance(charging, Missing) or beyond < WORTH_SAYING_KW:
        return
    offered = amount(charging.offered_kw, "kW", 1)
    most = amount(max(each.power_kw for each in charging.cars), "kW", 1)
    yield (
        f"Of the {offered} of this point the cars take {most} at most: the rest buys nothing "
        "until a car comes that takes it."
    )


def sun(case: Case) -> Told | Missing:
    """Say whether sun is better in the car or sold, at these prices."""
    phases, least = case.choice.point.phases, case.basis.cited(case.choice.point).least_a
    kwh = case.use.need
    if isinstance(kwh, Missing):
        return kwh
    found: Sun | Missing | None = case.there.aside(
        sun_or_sold, case.basis, kwh.kwh_a_year, least, phases
    )
    if isinstance(found, Missing):
        return found
    if found is None:
        return (("There are no solar panels here.",), ())
    says = (
        sun_words(found),
        f"A point can follow the sun from {amount(found.least_kw, 'kW', 1)} of it upward.",
    )
    return says, (
        ("lost on a unit kept", found.lost_p), ("units, at the most", found.most_kwh),
        ("lost in a year, at the most", found.lost_a_year_p), ("least power", found.least_kw),
    )  # fmt: skip


def sun_words(found: Sun) -> str:
    """Say what a unit of sun in the car costs or saves, against selling it."""
    each = f"{number(abs(found.lost_p), 1)} p"
    if found.lost_p > 0:
        return (
            f"Every unit of sun put in the car instead of sold costs {each}: charge at night and "
            f"sell the sun. With all the car could take that is {money(found.lost_a_year_p)} a "
            "year."
        )
    if found.lost_p < 0:
        return (
            f"Every unit of sun put in the car instead of sold saves {each}: let the point follow "
            f"the sun. With all the car could take that is {money(-found.lost_a_year_p)} a year."
        )
    return "A unit sold fetches what a night unit costs: sun in the car or sold is the same."


def points(case: Case) -> Told | Missing:
    """Say whether one point is enough for the cars of the home."""
    charging, cheap = case.use.charging, case.use.nights
    if isinstance(charging, Missing) or isinstance(cheap, Missing):
        return charging if isinstance(charging, Missing) else cheap
    found: Points | Missing = case.there.aside(one_or_two, case.basis, charging, cheap)
    if isinstance(found, Missing):
        return found
    much = f"{hours(found.needed_h)} wanted with the margin, {hours(found.cheap_h)} of cheap hours"
    said = "One point is enough" if found.one_is_enough else "One point is not enough at night"
    says = (
        f"{said}: {much}.",
        f"One night's cheap hours hold {number(found.miles, 0)} miles.",
    )
    return says, (("wanted", found.needed_h), ("there are", found.cheap_h), ("miles", found.miles))


SUMS: Final[tuple[tuple[str, str, Callable[[Case], Told | Missing]], ...]] = (
    ("nights", "How long each night?", nights),
    ("year", "What does a year cost?", year),
    ("full", "From empty to full?", full),
    ("speed", "What does more speed buy?", speed),
    ("sun", "Sun in the car, or sold?", sun),
    ("points", "One point or two?", points),
)
