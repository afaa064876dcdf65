"""Facts of cables that lie there already for a point: a builder's, a firm's, an old point's."""

from __future__ import annotations

from typing import Literal

from ampwright.foundations.quantity import Metres, Millimetres, SquareMm

from .home_boards import FeedKind
from .home_legs import LegHow
from .register import SEEN, TOLD, Agree, Thing, fact

LeftBy = Literal["the builder", "another firm", "an old point"]


class LaidCable(Thing):
    """A cable that somebody has left for a charge point."""

    left_by: LeftBy = fact(
        ask="Who put that cable in: the builder, another firm, or does an old point hang on it?",
        trade="Cable left by",
        look="The certificate or the builder's papers name it.",
        values={"the builder": 0.5, "another firm": 0.2, "an old point": 0.3},
    )
    from_place: str = fact(
        ask="Where does it begin?",
        trade="From",
        look="The meter or a fuse board; follow it if it is in view.",
        refers="boards places meter",
        needs={"quote": TOLD, "fit": SEEN},
    )
    to_place: str = fact(
        ask="And where does it come out?",
        trade="To",
        look="One of the places for the point.",
        refers="boards places meter",
        needs={"quote": TOLD, "fit": SEEN},
    )
    kind: FeedKind = fact(
        ask="Is it flat and grey, round and smooth, or steel-armoured?",
        trade="Kind of cable",
        look="Photo of the end that hangs out, with a coin beside it.",
        who="photo",
        values={"flat": 0.5, "sheathed": 0.2, "armoured": 0.3},
        needs={"quote": SEEN, "fit": SEEN},
    )
    size_mm2: SquareMm = fact(
        ask="Is a size printed on it, such as 6 mm²?",
        trade="Size of a line core",
        look="Photo of the print along the sheath; if there is none, our electrician measures.",
        who="photo",
        values={2.5: 0.15, 4: 0.15, 6: 0.5, 10: 0.2},
        rare=(1.5, 16, 25),
        needs={"quote": SEEN, "fit": SEEN},
        symbol="S laid",
    )
    length_m: Metres = fact(
        ask="How long is it, end to end?",
        trade="Length",
        look="From the papers, or paced along the way it must take.",
        between=(0.1, 300.0),
        step=1.0,
        agree=Agree(0.5, "higher", share=0.1),
        needs={"fit": SEEN},
        symbol="L",
    )
    how: LegHow = fact(
        ask="What does it run through where it is worst cooled: a loft, a filled wall, the ground?",
        trade="Method of the stretch that cools worst",
        look="The builder's drawings; a thermal picture; a borescope.",
        who="site",
        needs={"fit": SEEN},
    )
    feeds_only: bool = fact(
        ask="Is it sure that it feeds nothing else on its way?",
        trade="Feeds nothing but the point",
        look="Follow it; a spur to a light or a shed counts as something else.",
        who="site",
        values={True: 0.85, False: 0.15},
        needs={"fit": SEEN},
    )
    certificate: bool = fact(
        ask="Is there a certificate with test results for that cable?",
        trade="Installation certificate seen for it",
        look="Among the papers of the house, or from whoever laid it.",
        who="photo",
        needs={"fit": SEEN},
    )
    of_load: str = fact(
        ask="Which of the listed loads hangs on it now?",
        trade="Load that hangs on it, by id",
        look="The old point, if it is among the loads.",
        refers="loads",
    )
    depth_mm: Millimetres = fact(
        ask="How deep does it lie: under the ground, or in from the face of the wall?",
        trade="Depth under the surface",
        look="Where it comes out; the builder's drawings.",
        who="site",
        between=(0.0, 3000.0),
        step=50.0,
        agree=Agree(20.0, "lower"),
        needs={"fit": SEEN},
        symbol="depth",
    )
    marked: bool = fact(
        ask="Is there a warning tape, or are there covers, over it in the ground?",
        trade="Marked where it is buried",
        look="The builder's photographs of the open trench.",
        who="site",
    )
    in_zone: bool = fact(
        ask="Does it run in the wall straight up, down or level from a socket or a switch, or "
        "within a hand's length of a corner or the ceiling?",
        trade="Within the zones for hidden cable",
        look="The builder's drawings; a cable finder.",
        who="site",
        needs={"fit": SEEN},
    )
    clip_gap_mm: Millimetres = fact(
        ask="How far apart are its clips, where it is clipped?",
        trade="Greatest gap between clips",
        look="The widest gap in view, on a level stretch.",
        who="photo",
        between=(50.0, 5000.0),
        step=50.0,
        agree=Agree(20.0, "higher"),
        symbol="gap clips",
    )
    corner_mm: Millimetres = fact(
        ask="How tightly is it bent at its tightest corner?",
        trade="Radius of the tightest bend, inside of the curve",
        look="The radius of the largest round thing that fits inside the bend.",
        who="site",
        between=(5.0, 2000.0),
        step=5.0,
        agree=Agree(5.0, "lower"),
        symbol="R corner",
    )
    metal_fixings: bool = fact(
        ask="Is it held by clips of metal, or of plastic alone?",
        trade="Held by fixings that fire does not soften; no is plastic alone",
        look="Photo of a clip, overhead above all.",
        who="photo",
    )
    earth_core: bool = fact(
        ask="Has it an earth wire of its own beside the others, or an armour?",
        trade="A protective conductor of its own in the cable",
        look="At its open end: a bare or a green-and-yellow wire, or steel.",
        who="photo",
        needs={"fit": SEEN},
    )
    far_gland: bool = fact(
        ask="Is its steel armour held by a metal gland where it comes out for the point?",
        trade="Armour made off in a metal gland at the far end",
        look="Photo of the end: steel wires clamped under a brass gland, or cut back and bare.",
        who="photo",
        needs={"fit": SEEN},
    )
    used: bool = fact(
        ask="Shall the new point hang on it?",
        trade="To be used for the point, planned",
        look="Work that is planned, never what was found.",
        who="site",
    )
