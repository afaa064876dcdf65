"""Whether a charge point may be fitted and then told of, or must be asked for first."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from ampwright.foundations.checks import Finding, at_most, not_applicable, requires
from ampwright.foundations.quantity import Amperes
from ampwright.foundations.rulings import Row, Ruling
from ampwright.foundations.source import Place, Trust

FAQ = Place("network operators' association", "archived page", "questions on connecting")
ADEQUACY = Place("a network operator's page", "", "installing heat pumps and charge points")
EARLIER_FORM = Place("operators' form for low-carbon devices", "earlier edition", "cover notes")
LATER_FORM = Place("operators' form for charge points", "later edition", "Section B, cover page")
DANGER = Place("network operators' association", "archived page", "unsafe service equipment")
DEVICE_SIZE = Place("operators' notice route", "", "largest device a phase", Trust.MEMORY, True)


class Step(Enum):
    """What comes before the work, in the words of the file."""

    STOP = "stop_until"
    ASK_FIRST = "ask_first"
    ASK_FIRST_SEVERAL = "ask_first_several"
    TELL_AFTER = "tell_after"


@dataclass(frozen=True, slots=True, kw_only=True)
class DemandCase:
    """What the operators' tests look at, for the worst phase of one home.

    ``demand_a`` is what will flow, under a limiter that counts; ``declared_a`` is what the
    operator counts, which may be more; ``device_a`` likewise, the setting or the largest size.
    A threshold or a largest device of ``None`` means that this operator has none.
    """

    danger: bool
    new_service: bool
    unmetered: bool
    fuse_known: bool
    condition: str
    looped: bool
    adequacy_shown: bool
    demand_a: Amperes
    declared_a: Amperes
    fuse_a: Amperes
    dwelling: bool
    threshold_a: Amperes | None
    device_compliant: bool
    device_a: Amperes
    largest_device_a: Amperes | None
    several_devices: bool
    several_premises: bool
    other_criteria_met: bool


@requires("declared demand ≤ the operator's threshold", unit="A", place=EARLIER_FORM)
def within_threshold(demand_a: Amperes, threshold_a: Amperes | None) -> Finding:
    """The demand an operator counts does not pass the figure above which it wants to be asked.

    On the worst phase; ``None`` where the operator has no such figure. It decides only between
    telling and asking, never whether a supply can carry the load.

    Examples
    --------
    >>> within_threshold(Amperes(60.0), Amperes(60.0)).outcome.value
    'pass'
    """
    if threshold_a is None:
        return not_applicable("this operator has no ampere threshold")
    return at_most(demand_a, threshold_a)


def _over(figure: Amperes, limit: Amperes | None) -> bool:
    """Say whether a figure passes a limit that may not exist."""
    return limit is not None and figure > limit


TELL_OR_ASK: Ruling[DemandCase, Step] = Ruling(
    "Tell the network after, or ask first",
    (
        Row(
            "the service equipment is dangerous",
            lambda case: case.danger or case.condition == "dangerous",
            Step.STOP,
            DANGER,
        ),
        Row(
            "a new, larger or three-phase service is needed",
            lambda case: case.new_service,
            Step.ASK_FIRST,
            EARLIER_FORM,
        ),
        Row("the supply has no meter", lambda case: case.unmetered, Step.ASK_FIRST, FAQ),
        Row(
            "the main fuse or the state of the service equipment is not known for sure",
            lambda case: not case.fuse_known or case.condition != "sound",
            Step.ASK_FIRST,
            ADEQUACY,
        ),
        Row(
            "the service is shared with a neighbour, or seems to be",
            lambda case: case.looped,
            Step.ASK_FIRST,
            FAQ,
        ),
        Row(
            "the demand would pass the main fuse",
            lambda case: case.demand_a > case.fuse_a,
            Step.ASK_FIRST,
            ADEQUACY,
        ),
        Row(
            "readings put in doubt that the supply can carry it",
            lambda case: not case.adequacy_shown,
            Step.ASK_FIRST,
            ADEQUACY,
        ),
        Row(
            "a home whose demand, as the operator counts it, passes the operator's threshold",
            lambda case: case.dwelling and _over(case.declared_a, case.threshold_a),
            Step.ASK_FIRST,
            EARLIER_FORM,
        ),
        Row(
            "the device does not meet the standards for harmonics and flicker without conditions",
            lambda case: not case.device_compliant,
            Step.ASK_FIRST,
            EARLIER_FORM,
        ),
        Row(
            "the device takes more on a phase than the operator lets in unasked",
            lambda case: _over(case.device_a, case.largest_device_a),
            Step.ASK_FIRST,
            DEVICE_SIZE,
        ),
        Row(
            "several devices under one control, or several homes in one programme",
            lambda case: case.several_devices or case.several_premises,
            Step.ASK_FIRST_SEVERAL,
            LATER_FORM,
        ),
        Row(
            "another condition of the operator's present form is not met",
            lambda case: not case.other_criteria_met,
            Step.ASK_FIRST,
            LATER_FORM,
        ),
        Row("none of these", lambda _: True, Step.TELL_AFTER, LATER_FORM),
    ),
)
"""The demand tests in the order operators set them; the first that hits decides.

What can give back runs the generation tests as well, and the stricter answer holds.
"""
