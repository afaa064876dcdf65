"""Facts of the earth and of the pipes that must be bonded to it."""

from __future__ import annotations

from typing import Literal

from ampwright.foundations.quantity import Count, Metres, OhmMetres, Ohms, SquareMm
from ampwright.foundations.source import Place, Trust

from .register import MEASURED, SEEN, TOLD, Agree, Part, Standard, StandIn, Thing, fact

Electrode = Literal["rod", "plate", "tape", "foundation", "other"]
Month = Literal[
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
]  # fmt: skip
Soil = Literal[
    "Well-graded gravel", "Poorly graded gravel", "Clayey gravel", "Silty sand", "Clayey sand",
    "Silty or clayey sand, slight plasticity", "Loam, garden soil", "Clay",
    "Clay, sand and gravel mix", "Peat, marsh, cultivated", "Chalk", "Sand", "Slate, shale",
    "Rock (crystalline)",
]  # fmt: skip
Pipe = Literal["metal", "plastic"]
TAKEN_TO_BRING_EARTH_IN = Place(
    "habit of the trade", at="metal from the ground counts as earth until it is measured",
    trust=Trust.COMMON_PRACTICE,
)  # fmt: skip
BondRoute = Literal["clipped", "trunking", "under floor", "loft void", "buried", "in conduit"]


class Earthing(Part):
    """The main earth wire and the electrode, where there is one."""

    conductor_mm2: SquareMm = fact(
        ask="How thick is the green-and-yellow wire from the big fuse to the board?",
        trade="Earthing conductor size",
        look="Photo of its end with a coin beside it; some have the size printed along them.",
        who="photo",
        values={6: 0.1, 10: 0.2, 16: 0.7},
        rare=(2.5, 4, 25),
        needs={"fit": SEEN, "certify": SEEN},
        symbol="earthing conductor",
    )
    labelled: bool = fact(
        ask="Is there a label at the main earth, and at each clamp on a pipe, not to remove it?",
        trade="Main earth and clamps labelled",
        look="Photo of each clamp; one without its label is no.",
        who="photo",
    )
    electrode_ohm: Ohms = fact(
        ask="Is there a test certificate that gives a figure for the earth rod?",
        trade="Earth electrode resistance",
        look="Measured with the electrode apart from the house; dry months read highest.",
        who="site",
        between=(0.1, 5000.0),
        step=10.0,
        agree=Agree(5.0, "higher", share=0.1),
        needs={"fit": SEEN, "certify": MEASURED},
        ages_after=365,
        symbol="RA",
    )
    electrode_joined: bool = fact(
        ask="Is there an earth rod as well, joined to the main earth bar of the house?",
        trade="Electrode joined to the main earthing terminal beside the network's earth",
        look="A green-and-yellow wire from the bar out to a pit; its reading is asked for then.",
        who="site",
        needs={"fit": SEEN, "certify": MEASURED},
    )
    electrode_kind: Electrode = fact(
        ask="What does the earth wire end in, out in the ground?",
        trade="Earth electrode, kind",
        look="Look for a small round or square pit by the wall; photo with the lid as it is.",
        who="photo",
        values={"rod": 0.9, "plate": 0.03, "tape": 0.03, "foundation": 0.02, "other": 0.02},
    )
    electrode_read_in: Month = fact(
        ask="In which month was the earth rod tested?",
        trade="Month of the electrode reading",
        look="The date of the certificate.",
    )
    second_electrode_room: bool = fact(
        ask="Is there open ground a good stride from the rod, free of pipes, cables and drains?",
        trade="Room for a second electrode",
        look="Photo of the ground around the rod.",
        who="photo",
        values={True: 0.7, False: 0.3},
    )
    rod_metal_m: Metres = fact(
        ask="How far from where a rod would go do pipes or cables of metal lie in the ground?",
        trade="From a new rod to buried metal on the network's earth",
        look="Old plans and a cable finder; the operator's own figure rules.",
        who="site",
        between=(0.0, 100.0),
        step=0.5,
        agree=Agree(0.3, "lower"),
        needs={"fit": SEEN},
        symbol="apart",
    )
    soil: Soil = fact(
        ask="What is the ground like where a rod would go: clay, sand, gravel, chalk, rock?",
        trade="Soil at the electrode",
        look="Dig a spade deep, or look at a bank or a trench nearby; a map of soils helps.",
        who="photo",
    )
    soil_ohm_m: OhmMetres = fact(
        ask="Has anybody measured how well the ground conducts?",
        trade="Resistivity of the soil, measured",
        look="Four spikes in a line, as deep as a rod goes; better in a dry month.",
        who="site",
        between=(1.0, 20000.0),
        step=10.0,
        agree=Agree(10.0, "higher", share=0.2),
        symbol="ρ",
    )
    rods_planned: Count = fact(
        ask="How many earth rods will there be in all, joined, when the work is done?",
        trade="Electrodes in all after the work planned",
        look="Work that is planned, never what was found.",
        who="site",
        between=(2, 6),
    )
    rod_planned_m: Metres = fact(
        ask="How deep will the earth rod go when the work is done?",
        trade="Length of the electrode after the work planned",
        look="Work that is planned, never what was found.",
        who="site",
        between=(0.5, 10.0),
        symbol="L planned",
    )
    tape_planned_m: Metres = fact(
        ask="How long will the tape in the ground be when the work is done?",
        trade="Tape electrode after the work planned",
        look="Work that is planned, never what was found.",
        who="site",
        between=(1.0, 100.0),
        symbol="L tape",
    )
    plate_planned_m: Metres = fact(
        ask="How wide will the plate in the ground be when the work is done?",
        trade="Plate electrode after the work planned, side",
        look="Work that is planned, never what was found.",
        who="site",
        between=(0.3, 2.0),
        symbol="a plate",
    )


class Service(Thing):
    """A pipe or a metal part that comes in from the ground."""

    pipe_at_entry: Pipe = fact(
        ask="Where it comes out of the ground or the wall, is the pipe metal or plastic?",
        trade="Pipe at the entry",
        look="Photo of the lowest bit in view, by the stop tap or the meter.",
        who="photo",
        values={"metal": 0.6, "plastic": 0.4},
        known_as={"copper": "metal", "steel": "metal", "lead": "metal", "iron": "metal"},
        needs={"quote": TOLD, "fit": SEEN, "certify": SEEN},
    )
    pipe_inside: Pipe = fact(
        ask="Further into the house, is the pipe metal or plastic?",
        trade="Pipe inside",
        look="Photo of the pipe a metre or two on from the entry.",
        who="photo",
        values={"metal": 0.75, "plastic": 0.25},
        known_as={"copper": "metal", "steel": "metal"},
    )
    bond_mm2: SquareMm = fact(
        ask="Is there a green-and-yellow wire clamped to it, and how thick is it?",
        trade="Main bonding conductor size",
        look="Photo of the clamp with the wire going into it, label in view.",
        who="photo",
        values={0: 0.2, 4: 0.03, 6: 0.1, 10: 0.67},
        rare=(2.5, 16),
        written_as={0: "none"},
        needs={"quote": SEEN, "fit": SEEN, "certify": SEEN},
        symbol="bond",
    )
    bond_connected: bool = fact(
        ask="Is that wire whole, and is the clamp tight on the pipe?",
        trade="Bond connected",
        look="Photo of the clamp and the wire along its way; a cut end or a loose clamp counts "
        "as no. Only look, turn nothing.",
        who="photo",
        values={True: 0.95, False: 0.05},
        needs={"fit": SEEN, "certify": MEASURED},
    )
    bond_route_m: Metres = fact(
        ask="How far is it from the fuse board to that pipe, the way a wire could go?",
        trade="Length of a new bond",
        look="Pace it along the walls; a pace is a bit under a metre.",
        values={4: 0.25, 8: 0.4, 12: 0.25, 20: 0.1},
        between=(0.1, 100.0),
        step=1.0,
        agree=Agree(1.0, "higher", share=0.15),
        symbol="L bond",
    )
    bond_route_how: BondRoute = fact(
        ask="What would a wire to that pipe run along: walls, under the floor, the loft?",
        trade="Method of a new bond",
        look="Film the way from the board to the pipe.",
        who="photo",
    )
    extraneous_ohm: Ohms = fact(
        ask="Has an electrician measured whether that pipe brings in earth from outside?",
        trade="Resistance from the pipe to the main earthing terminal",
        look="Measured with any bond lifted; only a high reading makes a bond needless. "
        "Never measured: we take it to bring one in.",
        who="site",
        between=(0.0, 1e9),
        stand_in=StandIn(0.0, TAKEN_TO_BRING_EARTH_IN),
        symbol="R pipe",
    )
    looks: str = fact(
        ask="What is there to see at the pipe?",
        trade="What was seen at the service",
        look="In a few words: clamp, label, colour of the pipe, a cut wire.",
    )


STANDARD_SERVICES = {
    "water": Standard(
        ask="Does a water main come into the house?",
        trade="Water service",
        look="Photo of the stop tap and the pipe it sits on.",
        values={True: 0.99, False: 0.01},
        priors={"pipe_at_entry": {"metal": 0.5, "plastic": 0.5}},
    ),
    "gas": Standard(
        ask="Is there mains gas?",
        trade="Gas service",
        look="Photo of the gas meter and the pipe out of it.",
        values={True: 0.78, False: 0.22},
        priors={"pipe_at_entry": {"metal": 0.95, "plastic": 0.05}},
    ),
    "oil": Standard(
        ask="Is there an oil tank?",
        trade="Oil line",
        look="Photo where the oil pipe comes through the wall.",
        values={True: 0.06, False: 0.94},
        priors={"pipe_at_entry": {"metal": 0.9, "plastic": 0.1}},
    ),
    "lpg": Standard(
        ask="Is there bottled gas or a gas tank outside?",
        trade="LPG line",
        look="Photo where the pipe comes through the wall.",
        values={True: 0.03, False: 0.97},
        priors={"pipe_at_entry": {"metal": 0.95, "plastic": 0.05}},
    ),
    "structure": Standard(
        ask="Has the house a steel frame or steel beams that go into the ground?",
        trade="Structural steel",
        look="Photo of any column in view; drawings tell more.",
        values={True: 0.02, False: 0.98},
        implies={"pipe_at_entry": "metal"},
    ),
    "other": Standard(
        ask="Does anything else of metal come in from the ground: a well pipe, a duct, an "
        "aerial mast?",
        trade="Other extraneous part",
        look="Photo where it enters.",
        values={True: 0.02, False: 0.98},
    ),
}
"""The services that are looked for in every home."""
