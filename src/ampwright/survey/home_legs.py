"""Facts of the ways a cable could go, stretch by stretch."""

from __future__ import annotations

from typing import Literal

from ampwright.foundations.quantity import Celsius, Count, Metres, Millimetres
from ampwright.foundations.source import Place, Trust

from .register import SEEN, TOLD, Agree, StandIn, Thing, fact

LegHow = Literal[
    "clipped inside", "clipped outside", "through wall", "trunking", "conduit", "loft void",
    "under floor", "stud wall", "in insulation", "buried", "duct", "tray",
]  # fmt: skip
Surface = Literal["lawn", "border", "gravel", "paving", "concrete", "tarmac"]

USUAL_AMBIENT = Place(
    "design ambient temperature of cables in air", "", "30 °C", Trust.COMMON_PRACTICE
)


class Leg(Thing):
    """One stretch of the way of a cable: from one place to the next, by one method."""

    from_place: str = fact(
        ask="Where does this stretch begin?",
        trade="From",
        look="The meter, a fuse board, a corner with a name, a place for the point.",
        refers="boards places meter",
        needs={"quote": TOLD},
    )
    to_place: str = fact(
        ask="And where does it end?",
        trade="To",
        look="The meter, a fuse board, a corner with a name, a place for the point.",
        refers="boards places meter",
        needs={"quote": TOLD},
    )
    length_m: Metres = fact(
        ask="How long is it, along the way the cable would go?",
        trade="Length",
        look="Film it walking, one pace at a time; a pace is a bit under a metre. Up and down "
        "count too.",
        between=(0.05, 300.0),
        step=1.0,
        agree=Agree(0.5, "higher", share=0.1),
        needs={"quote": TOLD, "fit": SEEN},
        symbol="L",
    )
    how: LegHow = fact(
        ask="What would the cable run along or through there?",
        trade="Method of installation",
        look="One photo a turn: wall, loft, floor, ground.",
        who="photo",
        known_as={"clipped": "clipped inside", "trench": "buried", "steel trunking": "trunking"},
        needs={"quote": TOLD, "fit": SEEN},
    )
    highest_m: Metres = fact(
        ask="How high above the ground is the highest part of it?",
        trade="Greatest height of work on it",
        look="A door is about 2 m, the sill of an upper window 4 m, the eaves of two floors 5 m.",
        who="photo",
        between=(0.0, 30.0),
        step=1.0,
        agree=Agree(0.5, "higher"),
        symbol="height",
    )
    insulation_mm: Millimetres = fact(
        ask="How much of it lies in insulation?",
        trade="Length inside thermal insulation",
        look="At the hatch, a tape along it; nobody climbs for a photo.",
        who="site",
        between=(0.0, 300000.0),
        step=50.0,
        agree=Agree(50.0, "higher", share=0.1),
        symbol="insulation",
    )
    ambient_c: Celsius = fact(
        ask="Does that stretch get hot: a boiler cupboard, a loft under slates in summer?",
        trade="Ambient temperature",
        look="Not known: we reckon with the usual figure.",
        who="site",
        between=(-20.0, 80.0),
        step=5.0,
        stand_in=StandIn(30.0, USUAL_AMBIENT),
        symbol="ambient",
    )
    grouped_with: Count = fact(
        ask="How many other cables would lie against it there?",
        trade="Other loaded circuits touching",
        look="Photo of the run; only those that carry a real load count.",
        who="photo",
        values={0: 0.7, 1: 0.2, 3: 0.1},
        between=(0, 40),
        step=1,
        needs={"fit": SEEN},
    )
    wall_mm: Millimetres = fact(
        ask="How thick is the wall it goes through?",
        trade="Wall thickness drilled",
        look="From the inside face to the outside face, with a tape.",
        between=(10.0, 2000.0),
        step=10.0,
        agree=Agree(20.0, "higher"),
    )
    surface: Surface = fact(
        ask="What would we dig through: lawn, gravel, paving, concrete?",
        trade="Surface over the trench",
        look="Photo along the way.",
        who="photo",
    )
    depth_mm: Millimetres = fact(
        ask="How deep could the cable lie there, or how deep does the duct lie: under the ground, "
        "or in from the face of the wall?",
        trade="Depth under the surface",
        look="At an end of the duct, from its top to the ground; in a wall, to the face where a "
        "nail would go in.",
        who="site",
        between=(0.0, 3000.0),
        step=50.0,
        agree=Agree(20.0, "lower"),
        needs={"fit": SEEN},
        symbol="depth",
    )
    marked: bool = fact(
        ask="Is there a warning tape, or are there covers, over the duct?",
        trade="Marked where it is buried",
        look="Where the ground is open; else nobody knows.",
        who="site",
    )
    in_zone: bool = fact(
        ask="Could it run in the wall straight up, down or level from a socket or a switch, or "
        "within a hand's length of a corner or the ceiling?",
        trade="Within the zones for hidden cable",
        look="A way that slants across the wall is no.",
        who="photo",
    )
    corner_mm: Millimetres = fact(
        ask="How much room is there to bend it at the tightest corner of that stretch?",
        trade="Radius left at the tightest bend, inside of the curve",
        look="Held against the corner: the radius of the largest round thing that fits.",
        who="site",
        between=(5.0, 2000.0),
        step=5.0,
        agree=Agree(5.0, "lower"),
        symbol="R corner",
    )
    data_gap_mm: Millimetres = fact(
        ask="If a thin second cable runs along there too, how far from it can it keep?",
        trade="Gap left for a data cable beside it",
        look="The narrowest place: a shared hole or pipe is nought.",
        who="site",
        between=(0.0, 2000.0),
        step=10.0,
        agree=Agree(10.0, "lower"),
        symbol="gap data",
    )
