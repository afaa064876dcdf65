"""What kind of earthing a home counts as, and by which proof a point outdoors may use it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from ampwright.foundations.quantity import Volts
from ampwright.foundations.rulings import Row, Ruling
from ampwright.foundations.source import Place, Trust

from ..places import wiring
from .earthing import Detection

DOUBT = Place(
    "usual practice for charge points",
    "",
    "a separate earth that nobody confirmed may have been mended with a combined one",
    Trust.COMMON_PRACTICE,
)
OUTLINE = "a tutor's outline"
TOUCH = wiring("722.411.4.1 (i), (ii)", OUTLINE)
WATCHED = wiring("722.411.4.1 (iii)", "a device maker's page")
WINDOW = wiring("722.411.4.1 (iv)", "a trade association magazine, spring 2020")
EQUIVALENT = wiring("722.411.4.1 (v)", "the standards body's page")


class CountsAs(Enum):
    """How the rules for a point look at the supply's earth."""

    COMBINED = "combined with the neutral"
    SEPARATE = "separate all the way"
    OWN_ROD = "the home's own electrode"
    UNKNOWN = "not known"


@dataclass(frozen=True, slots=True, kw_only=True)
class EarthingCase:
    """The supply's earthing as it was found, and whether the operator confirmed it."""

    earthing: str
    confirmed: bool


COUNTS_AS_EARTHING: Ruling[EarthingCase, CountsAs] = Ruling(
    "What the supply's earthing counts as",
    (
        Row(
            "combined with the neutral",
            lambda case: case.earthing == "TN-C-S",
            CountsAs.COMBINED,
            wiring("312.2.1"),
        ),
        Row(
            "separate, and the operator confirmed it",
            lambda case: case.earthing == "TN-S" and case.confirmed,
            CountsAs.SEPARATE,
            wiring("312.2.1"),
        ),
        Row(
            "separate to all appearance, not confirmed",
            lambda case: case.earthing == "TN-S",
            CountsAs.COMBINED,
            DOUBT,
        ),
        Row(
            "an electrode of its own",
            lambda case: case.earthing == "TT",
            CountsAs.OWN_ROD,
            wiring("312.2.1"),
        ),
        Row("anything else", lambda _: True, CountsAs.UNKNOWN, wiring("313.1")),
    ),
)
"""A sheath that is an earth today may be joined to a combined neutral tomorrow, unseen."""


class Proof(Enum):
    """By which part of 722.411.4.1 a point outdoors may use a combined earth."""

    NOT_ASKED = "not asked"
    LOADS = "(i)"
    ELECTRODE = "(ii)"
    WATCHED = "(iii)"
    WINDOW = "(iv)"
    EQUIVALENT = "(v)"
    NONE = "none"


@dataclass(frozen=True, slots=True, kw_only=True)
class ProofCase:
    """A point and its earth; volts on the earth terminal with the street's neutral broken.

    ``bare_v`` without an electrode joined to it and ``rod_v`` with the one that is there, both
    at the worst credible unbalance; without an electrode the two are the same.
    """

    outdoors: bool
    combined: bool
    phases: int
    bare_v: Volts
    rod_v: Volts
    limit_v: Volts
    detection: str


PME_PROOF: Ruling[ProofCase, Proof] = Ruling(
    "By which proof a point outdoors may use a combined earth",
    (
        Row("not used outdoors", lambda case: not case.outdoors, Proof.NOT_ASKED, TOUCH),
        Row("not a combined earth", lambda case: not case.combined, Proof.NOT_ASKED, TOUCH),
        Row(
            "it watches the earth terminal against the ground",
            lambda case: case.detection == Detection.EARTH_POTENTIAL,
            Proof.WATCHED,
            WATCHED,
        ),
        Row(
            "it watches line to neutral",
            lambda case: case.detection == Detection.VOLTS_WINDOW,
            Proof.WINDOW,
            WINDOW,
        ),
        Row(
            "its maker shows it no less safe",
            lambda case: case.detection == Detection.EQUIVALENT,
            Proof.EQUIVALENT,
            EQUIVALENT,
        ),
        Row(
            "three phases whose other loads hold the earth terminal down",
            lambda case: case.phases > 1 and case.bare_v <= case.limit_v,
            Proof.LOADS,
            TOUCH,
        ),
        Row(
            "an electrode holds the earth terminal down",
            lambda case: case.rod_v <= case.limit_v,
            Proof.ELECTRODE,
            TOUCH,
        ),
        Row("none of these", lambda _: True, Proof.NONE, TOUCH),
    ),
)
"""Devices before sums: a sum rests on loads that may change."""
