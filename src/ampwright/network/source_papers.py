"""What the papers of a source must show: that the network was told in time, and a limit proved."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import date
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Check
from ampwright.foundations.dates import day
from ampwright.foundations.notes import Note, tells
from ampwright.foundations.quantity import Count
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.source import SetBy
from ampwright.foundations.working import given
from ampwright.standards.network.deadlines import days_gone, last_day
from ampwright.standards.network.generation import source_told_in_time
from ampwright.standards.network.limiter import PROOF, limiter_proved
from ampwright.survey.home_loads import Source
from ampwright.survey.if_said import if_said
from ampwright.tables.network import notice_days

TOLD_AFTER: Final = "generation told after"


@tells(PROOF, caution=True)
def limit_to_see_proved(source: str) -> str:
    """Ask for the proof of an export limit that counts.

    Examples
    --------
    >>> limit_to_see_proved("sun").caution
    'the export limit of sun counts here: see its test sheet before anybody relies on it'
    """
    return (
        f"the export limit of {source} counts here: see its test sheet before anybody relies on it"
    )


def told_in_time(basis: Basis, untold: Iterable[tuple[str, Source]]) -> Iterator[Check]:
    """Yield whether each source that nobody told of is still within the days for telling.

    For sources that need only be told of. One without a day of commissioning, or one that is
    still to be switched on, yields nothing.
    """
    limit = notice_days(basis.book, TOLD_AFTER)
    for id_, source in untold:
        fitted = if_said(lambda source=source: source.fitted_on, "")  # type: ignore[misc]
        if not fitted or date.fromisoformat(fitted) > basis.design_date:
            continue
        on = date.fromisoformat(fitted)
        check = source_told_in_time(_days_since(basis, on), limit).mended_by(_late_form(basis, id_))
        yield check.with_caution(f"tell the network of {id_} by {day(last_day(on, limit))}")


def _days_since(basis: Basis, on: date) -> Count:
    """Return the days from a day to that of the design."""
    first, last = Count(on.toordinal()), Count(basis.design_date.toordinal())
    if basis.keeps_working:
        first = given("D0", first, "", SetBy("switched on", day(on)))
        last = given("D", last, "", SetBy("day of the design", day(basis.design_date)))
    return days_gone(first, last)


def _late_form(basis: Basis, id_: str) -> Remedy:
    """Return the work of telling the network late."""
    return Remedy(
        slug=f"late-form-{id_}",
        does=f"Tell the network of {id_} late, with its form, before the point is fitted",
        changes=((f"sources.{id_}.told_operator", True),),
        minutes=basis.task("late-form").minutes,
    )


def limits_proved(basis: Basis, sources: Iterable[tuple[str, Source]]) -> Iterator[Check | Note]:
    """Yield whether each export limit that counts was proved; a note while nobody has said."""
    for id_, source in sources:
        proved = if_said(lambda source=source: source.limit_proved, None)  # type: ignore[misc]
        if proved is None:
            yield limit_to_see_proved(id_)
        else:
            yield limiter_proved(proved).mended_by(_proof(basis, id_))


def _proof(basis: Basis, id_: str) -> Remedy:
    """Return the work of proving an export limit."""
    return Remedy(
        slug=f"prove-limit-{id_}",
        does=f"Try the export limit of {id_} and write down what it does when its sensor, its "
        "link and its power are lost",
        changes=((f"sources.{id_}.limit_proved", True),),
        minutes=basis.task("prove-limit").minutes,
    )
