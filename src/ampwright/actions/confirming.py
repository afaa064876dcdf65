"""What must be confirmed before a design is relied on: weak facts, weak values, open questions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from ampwright.foundations.source import Evidence, Place, Said, Trust
from ampwright.survey.layout import slot
from ampwright.survey.views import Rest

from .design_run import DesignRun
from .facts import alike, how, name_of_several, of_things
from .shapes import Confirm, Why

ORDER: Final[tuple[Why, ...]] = ("open", "assumed", "operator", "see first", "memory", "doubtful")
NOT_ASKED: Final = "not asked; "
GATE: Final = "fit"
"""Facts must be known as well as the register asks before a point is fitted."""


def confirm_first(run: DesignRun) -> tuple[Confirm, ...]:
    """Return what to confirm, in the order in which it matters."""
    return (*of_the_home(run), *of_the_tables(run))


def of_the_home(run: DesignRun) -> Iterator[Confirm]:
    """Yield the facts that its soundness rests on and that are not known well enough to fit."""
    read = [rest for stage in run.stages if not stage.run.aside for rest in stage.read]
    for why in ORDER:
        weak = [rest for rest in read if why_weak(rest, run) == why]
        yield from (Confirm(confirm_words(each, why), why) for each in alike(weak))


def confirm_words(reads: Sequence[Rest], why: Why) -> str:
    """Write what to confirm of some things: what was worked with, and on what that rests."""
    said, source = f"{name_of_several(reads)}: {of_things(reads)}", reads[0].source
    on = how(source) if isinstance(source, Said) else str(source)
    if why == "open":
        on = on.partition(";")[0]  # how common each answer is stands in the working
    return f"{said}  [{on.removeprefix(NOT_ASKED)}]" if on else said


def why_weak(rest: Rest, run: DesignRun) -> Why | None:
    """Say why a fact has to be confirmed, if it has to."""
    source = rest.source
    if rest.key in run.fixed:
        return "open"
    if not isinstance(source, Said):
        return "operator" if rest.key.startswith("operator.") else None
    if source.evidence is Evidence.ASSUMED:
        return "assumed"
    needed = slot(rest.key).fact.needs.get(GATE)
    return "see first" if needed is not None and source.evidence < needed else None


def of_the_tables(run: DesignRun) -> Iterator[Confirm]:
    """Yield the published values the design rests on that are recalled or doubtful."""
    rows: dict[tuple[Why, str], dict[str, None]] = {}
    for number in run.numbers():
        place = number.step.source
        if not isinstance(place, Place):
            continue
        marks: tuple[tuple[Why, bool], ...] = (
            ("memory", place.trust is Trust.MEMORY), ("doubtful", place.doubtful),
        )  # fmt: skip
        for why, marked in marks:
            if marked:
                rows.setdefault((why, place.name), {})[table_of(place)] = None
    for (why, document), tables in rows.items():
        yield Confirm(f"{document}: {'; '.join(tables)}", why)


def table_of(place: Place) -> str:
    """Return the table of a place, without its row.

    Examples
    --------
    >>> table_of(Place("BS 7671", "2018+A2:2022", "Table 4D5, 6 mm², method C", Trust.MEMORY))
    'Table 4D5'
    """
    return place.at.partition(",")[0] or "throughout"
