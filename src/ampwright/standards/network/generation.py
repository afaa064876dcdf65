"""What must be agreed before sun, storage or a point that gives back may run beside the network."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from ampwright.foundations.checks import Finding, at_most, requires
from ampwright.foundations.quantity import Amperes, Count, Kilowatts
from ampwright.foundations.rulings import Row, Ruling
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes

SAME_GATE = Place("the demand tests", "", "the same gate", Trust.MEMORY)
G98 = Place("a network operator's page", "", "procedure of G98 for one home")
G98_SEVERAL = Place("network operators' pages", "", "procedure of G98 for several homes")
NOT_TESTED = Place("a network operator's page", "", "changing or removing generation")
FAST = Place("a network operator's page", "", "storage beside other generation")
SIMPLE = Place("network operators' association", "older page", "storage that feeds the grid")


class GenerationStep(Enum):
    """What comes before a source is connected, lightest last."""

    STOP = "stop_until"
    ASK_FULL = "ask_first_full"
    ASK_SIMPLE = "ask_first_simple"
    ASK_FAST = "ask_first_fast"
    AGREE_SEVERAL = "ask_first_several"
    TELL_AFTER = "tell_after"
    NOTHING = "nothing"


@dataclass(frozen=True, slots=True, kw_only=True)
class GenerationCase:
    """What the generation tests look at: every source of one home, old and new, together.

    ``total_a`` is the sum of the sources' registered currents on the worst phase, from the
    inverters and not the panels. ``export_limit_a`` is that of a proved limiting scheme, or
    ``None``. The last five are the limits of each class.
    """

    danger: bool
    unmetered: bool
    fuse_known: bool
    condition: str
    looped: bool
    parallel: bool
    total_a: Amperes
    total_kw: Kilowatts
    type_tested: bool
    others_near: bool
    export_limit_a: Amperes | None
    runs_in_power_cut: bool
    small_a: Amperes
    fast_a: Amperes
    fast_export_a: Amperes
    simple_kw: Kilowatts


@requires("told within the days allowed", unit="days", place=G98)
def source_told_in_time(days: Count, limit: Count) -> Finding:
    """A source that needs only be told of is told of within the days allowed.

    Counted from the day it was switched on; not for one that had to be asked about.

    Examples
    --------
    >>> source_told_in_time(Count(28), Count(28)).outcome.value
    'pass'
    """
    return at_most(days, limit)


@computes("I", "A", formula="sum(I)", place=G98)
def registered_total(I: tuple[Amperes, ...]) -> Amperes:
    """Registered current of every source on one phase, old and new.

    An inverter shared by panels and a battery counts once.

    Examples
    --------
    >>> registered_total((Amperes(16.0), Amperes(16.0)))
    32.0
    """
    return Amperes(sum(I))


def _small(case: GenerationCase) -> bool:
    """Say whether the sources stay within the class that is told of afterwards."""
    return case.total_a <= case.small_a


def _fast(case: GenerationCase) -> bool:
    """Say whether the sources fit the class that is answered within days."""
    return (
        case.total_a <= case.fast_a
        and case.type_tested
        and not case.runs_in_power_cut
        and case.export_limit_a is not None
        and case.export_limit_a <= case.fast_export_a
    )


GENERATION: Ruling[GenerationCase, GenerationStep] = Ruling(
    "What the network must agree before a source runs",
    (
        Row(
            "no source can run beside the network",
            lambda case: not case.parallel,
            GenerationStep.NOTHING,
            SIMPLE,
        ),
        Row(
            "the service equipment is dangerous",
            lambda case: case.danger or case.condition == "dangerous",
            GenerationStep.STOP,
            SAME_GATE,
        ),
        Row(
            "the fuse, the equipment, the meter or the service itself is in doubt or shared",
            lambda case: (
                case.unmetered or not case.fuse_known or case.condition != "sound" or case.looped
            ),
            GenerationStep.ASK_FULL,
            SAME_GATE,
        ),
        Row(
            "small and type tested, with others of the same firm close by and close in time",
            lambda case: _small(case) and case.type_tested and case.others_near,
            GenerationStep.AGREE_SEVERAL,
            G98_SEVERAL,
        ),
        Row(
            "small and type tested, one home",
            lambda case: _small(case) and case.type_tested,
            GenerationStep.TELL_AFTER,
            G98,
        ),
        Row(
            "small, but a source is not type tested",
            _small,
            GenerationStep.ASK_FULL,
            NOT_TESTED,
        ),
        Row(
            "larger, type tested, held to the small class by a proved limit, dead in a power cut",
            _fast,
            GenerationStep.ASK_FAST,
            FAST,
        ),
        Row(
            "within the simpler form's power",
            lambda case: case.total_kw <= case.simple_kw,
            GenerationStep.ASK_SIMPLE,
            SIMPLE,
        ),
        Row("larger than that", lambda _: True, GenerationStep.ASK_FULL, SIMPLE),
    ),
)
"""The generation tests in order; the first that hits decides."""
