"""What can feed the network from a home: told of, to be asked about, or nothing at all."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from ampwright.demand.household import LINES, nothing
from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ChargePoint
from ampwright.foundations.checks import Check
from ampwright.foundations.notes import Note, tells
from ampwright.foundations.quantity import Amperes, Kilowatts, Volts
from ampwright.foundations.rulings import Ruled
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made, made_of
from ampwright.foundations.working import computes
from ampwright.standards.network.connection import Step
from ampwright.standards.network.generation import (
    G98,
    GENERATION,
    GenerationCase,
    GenerationStep,
    registered_total,
)
from ampwright.supply.headroom import worst
from ampwright.survey.home import Home
from ampwright.survey.home_loads import Source
from ampwright.survey.if_said import if_said
from ampwright.tables.network import generation_kw, threshold_a
from ampwright.tables.supply_limits import nominal_v

from .source_papers import limits_proved, told_in_time

METHOD: Final = Place("Ampwright", at="method, sources of a home", trust=Trust.DERIVED)
ALL_LINES: Final = "all"
BATTERY: Final = "battery"
CHARGING: Final = "battery charging"
STRICTEST_FIRST: Final = (Step.STOP, Step.ASK_FIRST_SEVERAL, Step.ASK_FIRST, Step.TELL_AFTER)
BEFORE_WORK: Final = {
    GenerationStep.STOP: Step.STOP,
    GenerationStep.AGREE_SEVERAL: Step.ASK_FIRST_SEVERAL,
    GenerationStep.ASK_FULL: Step.ASK_FIRST,
    GenerationStep.ASK_SIMPLE: Step.ASK_FIRST,
    GenerationStep.ASK_FAST: Step.ASK_FIRST,
    GenerationStep.TELL_AFTER: Step.TELL_AFTER,
    GenerationStep.NOTHING: Step.TELL_AFTER,
}
"""What a step of the generation flow lets the work wait for."""


@computes("P", "kW", formula="U0 * sum(I) / 1000", place=METHOD)
def power_of(U0: Volts, I: tuple[Amperes, ...]) -> Kilowatts:  # noqa: E741, N803 - as printed
    """Return the power of the sources on all lines, at nominal voltage."""
    return Kilowatts(U0 * sum(I) / 1000)


@tells(G98, caution=True)
def letter_to_find(untold: tuple[str, ...]) -> str:
    """Ask for the network's letter on sources that nobody told it of.

    They do not stand in the way of a point: it is asked about, or their form is sent, first.

    Examples
    --------
    >>> letter_to_find(("battery",)).caution[:28]
    'find the letter for battery,'
    """
    return (
        f"find the letter for {', '.join(untold)}, or put it right with the network before the "
        "point is fitted"
    )


@tells(METHOD, caution=True)
def battery_uncounted() -> str:
    """Ask whether a battery is a load too: it is while it charges from the network.

    One that never does, and only stores the sun, is none.
    """
    return (
        "no load is listed for the battery's own charging: if it charges from the network, list "
        "what it takes as a load"
    )


@dataclass(frozen=True, slots=True)
class Generation:
    """What must be agreed of the sources of a home before work starts.

    ``line_a`` is what all of them together, and the point if it gives back, can give to each
    line; ``untold`` are those that nobody told the network of. ``row`` is the test that decided,
    nought where none was needed.
    """

    outcome: Step
    step: GenerationStep
    row: int
    words: str
    place: Place
    line_a: tuple[Amperes, ...]
    total_kw: Kilowatts
    untold: tuple[str, ...]


def generation(home: Home, basis: Basis, point: ChargePoint) -> Made[Generation]:
    """Return what the operators' tests for generation come to, all sources taken together.

    By the inverters' rated currents, not the panels; one that panels and battery share is one
    source. Sources that were told of ask for nothing more unless something new gives back. A
    point that gives back is taken to feed every line and to be type tested. One home: programmes
    of several have tests of their own. Raises ``Unanswered`` while not every source is listed.
    """
    sources = tuple(home.sources.listed())
    line_a = feeding(home, basis, point, sources)
    total_kw = power_of(nominal_v(basis.book), line_a)
    untold = tuple(id_ for id_, each in sources if not each.told_operator)
    ruled = _ruled(home, basis, point, sources, line_a, total_kw, untold)
    out = Generation(
        outcome=BEFORE_WORK[ruled.outcome],
        step=ruled.outcome,
        row=ruled.row,
        words=ruled.words,
        place=ruled.place,
        line_a=line_a,
        total_kw=total_kw,
        untold=untold,
    )
    return made_of(out, (*_notes(home, sources, untold), *_papers(basis, sources, ruled.outcome)))


Sources = tuple[tuple[str, Source], ...]


def feeding(home: Home, basis: Basis, point: ChargePoint, sources: Sources) -> tuple[Amperes, ...]:
    """Return what the sources, and the point if it gives back, can give to each line."""
    phases = int(home.supply.phases)
    back_a = (basis.cited(point).gives_back_a,) if point.gives_back_a else ()
    found = []
    for line in LINES[:phases]:
        here = tuple(
            each.amps_a for _, each in sources if phases == 1 or each.phase in (line, ALL_LINES)
        )
        all_a = (*here, *back_a)
        found.append(
            registered_total(all_a) if all_a else nothing(basis.book, "no source on this line")
        )
    return tuple(found)


def _ruled(
    home: Home,
    basis: Basis,
    point: ChargePoint,
    sources: Sources,
    line_a: tuple[Amperes, ...],
    total_kw: Kilowatts,
    untold: tuple[str, ...],
) -> Ruled[GenerationStep]:
    """Return what the tests come to; nothing where nothing is new and all was told of."""
    if not point.gives_back_a and not untold:
        words = "every source here was told of" if sources else "nothing here can feed the network"
        return Ruled(GenerationStep.NOTHING, 0, words, METHOD)
    supply, book = home.supply, basis.book
    small_a = threshold_a(book, "generation told after")
    total_a = worst(line_a)
    larger = total_a > small_a
    return GENERATION.decide(
        GenerationCase(
            danger=supply.condition == "dangerous",
            unmetered=not supply.metered,
            fuse_known=supply.fuse_label_readable,
            condition=supply.condition,
            looped=supply.looped,
            parallel=True,
            total_a=total_a,
            total_kw=total_kw,
            type_tested=all(each.type_tested for _, each in sources),
            others_near=False,
            export_limit_a=_export_limit(sources) if larger else None,
            runs_in_power_cut=larger and _backed_up(sources),
            small_a=small_a,
            fast_a=threshold_a(book, "generation fast track"),
            fast_export_a=small_a,
            simple_kw=generation_kw(book, "simple form", int(supply.phases)),
        )
    )


def _export_limit(sources: Sources) -> Amperes | None:
    """Return what the sources together are held to, or nothing unless every one is.

    Limits of several sources add up, as far as anybody has noted one scheme for all. One whose
    figure nobody knows is none: it is not proved.
    """
    if not sources or not all(each.export_limited for _, each in sources):
        return None
    said = tuple(_limit_of(each) for _, each in sources)
    limits = tuple(each for each in said if each is not None)
    if len(limits) < len(said):
        return None
    return registered_total(limits) if len(limits) > 1 else limits[0]


def _limit_of(source: Source) -> Amperes | None:
    """Return the export limit of one source, if anybody has noted its figure."""

    def read() -> Amperes | None:
        return source.export_limit_a

    return if_said(read, None)


def _backed_up(sources: Sources) -> bool:
    """Say whether something keeps part of the house going in a power cut."""
    return any(each.kind == BATTERY and each.backs_up != "nothing" for _, each in sources)


def _papers(basis: Basis, sources: Sources, step: GenerationStep) -> Iterator[Check | Note]:
    """Yield whether the network was told in time where that is all, and whether a limit holds."""
    if step is GenerationStep.TELL_AFTER:
        yield from told_in_time(
            basis, ((id_, each) for id_, each in sources if not each.told_operator)
        )
    if step is GenerationStep.ASK_FAST:
        yield from limits_proved(basis, sources)


def _notes(home: Home, sources: Sources, untold: tuple[str, ...]) -> Iterator[Note]:
    """Yield what must be put right about the sources, and what a battery takes."""
    if untold:
        yield letter_to_find(untold)
    if any(each.kind == BATTERY for _, each in sources) and not any(
        load.kind == CHARGING for _, load in home.loads.listed()
    ):
        yield battery_uncounted()


def stricter(one: Step, other: Step) -> Step:
    """Return the outcome that lets the work wait longer.

    Examples
    --------
    >>> stricter(Step.TELL_AFTER, Step.ASK_FIRST)
    <Step.ASK_FIRST: 'ask_first'>
    """
    return min(one, other, key=STRICTEST_FIRST.index)


def before_work(_home: Home, demand: Step, generation: Step) -> Made[Step]:
    """Return what comes before the work: the stricter of the demand and the generation flow.

    No fact of the home bears on it beyond the two outcomes.
    """
    return Made(stricter(demand, generation))
