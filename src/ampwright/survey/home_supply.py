"""Facts of the supply: the head, the meter and what feeds the house."""

from __future__ import annotations

from typing import Literal

from ampwright.foundations.quantity import (
    Amperes,
    Count,
    Kiloamperes,
    Kilowatts,
    Metres,
    Ohms,
    SquareMm,
    Volts,
)
from ampwright.foundations.source import Place

from .home_readings import Reading
from .register import MEASURED, SEEN, TOLD, Agree, Many, Part, StandIn, fact, many

EarthingKind = Literal["TN-C-S", "TN-S", "TT"]
FuseKind = Literal["BS 88-3", "BS 1361", "unknown type"]
Condition = Literal["sound", "doubtful", "dangerous"]
Isolator = Literal["none", "two pole", "four pole"]
MeterIn = Literal["indoors", "outside cabinet", "garage or store"]
DemandBy = Literal["household table", "half-hour readings", "logger"]
SmartMeter = Literal["no", "yes", "yes, half-hourly"]

LEGAL_LIMITS = Place(
    "Electricity Safety, Quality and Continuity Regulations", "2002", "reg. 27, 230 V +10 % −6 %"
)


class Supply(Part):
    """The supply head, the meter and what feeds the house."""

    phases: Count = fact(
        ask="How many of the big sealed fuses are there: one, or three side by side?",
        trade="Phases of the supply",
        look="Photo of the meter and all that is beside it, from a step back.",
        who="photo",
        values={1: 0.93, 3: 0.07},
        needs={"quote": SEEN, "fit": SEEN, "certify": SEEN},
        said_as={1: "one", 3: "three"},
    )
    main_fuse_a: Amperes = fact(
        ask="Read me the white label on the big fuse, not the number moulded in the plastic.",
        trade="Cut-out fuse-link rating",
        look="Photo straight on, no flash, close enough to read the label. The seals stay on.",
        who="photo",
        values={60: 0.25, 80: 0.37, 100: 0.38},
        rare=(30, 40, 45),
        needs={"quote": SEEN, "fit": SEEN, "certify": SEEN},
        symbol="service fuse",
    )
    fuse_kind: FuseKind = fact(
        ask="Are there any letters and numbers after BS on the big fuse?",
        trade="Cut-out fuse standard",
        look="It stands in small print on the fuse label. The seals stay on.",
        who="photo",
        values={"BS 88-3": 0.3, "BS 1361": 0.5, "unknown type": 0.2},
        known_as={"BS88-3": "BS 88-3", "1361": "BS 1361", "unknown": "unknown type"},
        needs={"certify": SEEN},
        on_papers=True,
    )
    fuse_label_readable: bool = fact(
        ask="Can you read a number on the label of the big fuse?",
        trade="Fuse label readable",
        look="Torch on from the side, a hand's length away.",
        who="photo",
        values={True: 0.7, False: 0.3},
    )
    looped: bool = fact(
        ask="How many thick cables go into the bottom of the big fuse? "
        "Count them; one and two are very different answers.",
        trade="Looped or shared service",
        look="Photo of the big fuse with every cable in and out of it in view.",
        who="photo",
        values={False: 0.9, True: 0.1},
        needs={"quote": SEEN, "fit": SEEN, "certify": SEEN},
        said_as={False: "one", True: "two"},
    )
    condition: Condition = fact(
        ask="Does anything at the big fuse look cracked, scorched, wet or home-made?",
        trade="Condition of the cut-out and the service",
        look="Photo close up: cracks, brown marks, black goo, metal cases, open ends. Only look.",
        who="photo",
        values={"sound": 0.94, "doubtful": 0.05, "dangerous": 0.01},
        needs={"quote": SEEN, "fit": SEEN},
        ages_after=730,
        known_as={"nothing": "sound", "fine": "sound"},
        said_as={
            "sound": "no",
            "doubtful": "home-made, or not sure",
            "dangerous": "yes: cracked, scorched or wet",
        },
    )
    metered: bool = fact(
        ask="Does a meter measure all the house uses?",
        trade="Metered supply",
        look="Photo of the meter.",
        who="photo",
        values={True: 0.995, False: 0.005},
        needs={"fit": SEEN},
    )
    overhead: bool = fact(
        ask="Do the electricity wires come to the house through the air, from a pole?",
        trade="Overhead service",
        look="From the garden: wires to a bracket under the eaves, or none to be seen.",
        values={False: 0.85, True: 0.15},
        needs={"quote": TOLD},
    )
    earthing: EarthingKind = fact(
        ask="Where does the green-and-yellow wire by the big fuse go: into the fuse block, "
        "to a clamp on the cable, or to a rod in the ground?",
        trade="Earthing arrangement",
        look="Photo of the earth wire from the board to where it ends, that end close up.",
        who="photo",
        values={"TN-C-S": 0.72, "TN-S": 0.2, "TT": 0.08},
        known_as={"PME": "TN-C-S", "TNCS": "TN-C-S", "TNS": "TN-S", "rod": "TT"},
        needs={"quote": SEEN, "fit": SEEN, "certify": SEEN},
        said_as={
            "TN-C-S": "into the fuse block",
            "TN-S": "to a clamp on the cable",
            "TT": "to a rod in the ground",
        },
    )
    earthing_confirmed: bool = fact(
        ask="Has the network or an electrician said in writing which kind of earth this is?",
        trade="Earthing arrangement confirmed",
        look="A network letter, a certificate, or our electrician's own look on site.",
        who="site",
        values={True: 0.3, False: 0.7},
    )
    ze_ohm: Ohms = fact(
        ask="Is there a test certificate that gives Ze?",
        trade="External earth loop impedance",
        look="Measured with the main earth lifted and all isolated; an old certificate is only "
        "seen. On a rod, the figure includes the rod.",
        who="site",
        values={0.18: 0.45, 0.35: 0.45, 0.8: 0.1},
        between=(0.01, 5000.0),
        step=0.05,
        agree=Agree(0.02, "higher", share=0.1),
        needs={"certify": MEASURED},
        ages_after=1825,
        symbol="Ze",
    )
    neutral_loop_ohm: Ohms = fact(
        ask="Is there a test certificate that gives the line to neutral loop?",
        trade="Line to neutral loop impedance at the origin",
        look="Measured at the origin; or 230 V over the line to neutral fault current.",
        who="site",
        between=(0.005, 5.0),
        step=0.05,
        agree=Agree(0.02, "higher", share=0.1),
        symbol="Zln",
    )
    fault_current_ka: Kiloamperes = fact(
        ask="Is there a test certificate that gives the fault current?",
        trade="Prospective fault current, line to neutral",
        look="Measured at the origin with the tester on its fault current range.",
        who="site",
        values={0.6: 0.2, 1.5: 0.6, 6.0: 0.2},
        between=(0.02, 50.0),
        step=0.1,
        agree=Agree(0.05, "higher", share=0.1),
        needs={"certify": MEASURED},
        ages_after=1825,
        symbol="Ipf",
    )
    fault_current_3ph_ka: Kiloamperes = fact(
        ask="Is there a test certificate that gives the fault current between phases?",
        trade="Prospective fault current, three phase",
        look="Measured line to line; the usual rule takes twice the line to neutral figure.",
        who="site",
        between=(0.02, 80.0),
        step=0.1,
        agree=Agree(0.1, "higher", share=0.1),
        needs={"certify": MEASURED},
        ages_after=1825,
        symbol="Ipf3",
    )
    lowest_v: Volts = fact(
        ask="Do the lights dip at tea time, and has anyone measured the voltage then?",
        trade="Lowest supply voltage, line to neutral",
        look="Read at the board between five and eight in the evening with the house as usual. "
        "Never read: we reckon with the lowest the law allows.",
        who="site",
        between=(170.0, 253.0),
        step=1.0,
        agree=Agree(2.0, "lower"),
        stand_in=StandIn(216.2, LEGAL_LIMITS),
        ages_after=365,
        symbol="U lowest",
    )
    highest_v: Volts = fact(
        ask="Are there many solar roofs in the road, and has anyone measured the voltage at noon?",
        trade="Highest supply voltage, line to neutral",
        look="Read at the board on a bright day around noon. "
        "Never read: we reckon with the highest the law allows.",
        who="site",
        between=(216.2, 270.0),
        step=1.0,
        agree=Agree(2.0, "higher"),
        stand_in=StandIn(253.0, LEGAL_LIMITS),
        ages_after=365,
        symbol="U highest",
    )
    readings: Many[Reading] = many(
        ask="Is that every voltage anyone has read?",
        trade="Whether every voltage reading is listed",
        look="Readings at night, at noon and at tea time tell most.",
    )
    tails_mm2: SquareMm = fact(
        ask="How thick are the two grey cables from the meter to the fuse board: a pencil or a "
        "finger?",
        trade="Meter tails, conductor size",
        look="Photo where the tails go into the board, with a coin held beside them. Some have "
        "the size printed along them.",
        who="photo",
        values={16: 0.35, 25: 0.65},
        rare=(6, 10, 35),
        needs={"quote": TOLD, "fit": SEEN, "certify": SEEN},
        symbol="tails",
        said_as={16: "a pencil", 25: "a finger"},
    )
    tails_m: Metres = fact(
        ask="How long are the cables from the meter to the fuse board?",
        trade="Meter tails, length",
        look="Along the cable, not through the wall.",
        between=(0.1, 100.0),
        step=0.5,
        agree=Agree(0.5, "higher", share=0.1),
        symbol="L tails",
    )
    isolator: Isolator = fact(
        ask="Is there a switch of its own between the meter and the fuse board?",
        trade="Isolator after the meter",
        look="Photo from the meter to the board with all that lies between.",
        who="photo",
        values={"none": 0.55, "two pole": 0.43, "four pole": 0.02},
        needs={"quote": TOLD, "fit": SEEN},
        said_as={
            "none": "no",
            "two pole": "yes",
            "four pole": "yes, a wide one for three lines",
        },
    )
    isolator_a: Amperes = fact(
        ask="What number stands on that switch before the letter A?",
        trade="Isolator rating",
        look="Photo of the switch, close enough to read it.",
        who="photo",
        values={80: 0.05, 100: 0.95},
        rare=(60, 63, 125),
        needs={"fit": SEEN},
        symbol="isolator",
    )
    isolator_labelled: bool = fact(
        ask="Does that switch say what it switches off?",
        trade="Isolator after the meter labelled",
        look="Photo of the switch and what is written by it; one that stands alone by the meter "
        "may be plain enough.",
        who="photo",
    )
    smart_meter: SmartMeter = fact(
        ask="Is there a smart meter, and does your supplier read it every half hour?",
        trade="Smart meter",
        look="The half-hour setting is in the supplier's app or on the bill.",
        values={"no": 0.35, "yes": 0.25, "yes, half-hourly": 0.4},
    )
    demand_by: DemandBy = fact(
        ask="By which figures shall the house's demand be judged?",
        trade="Demand counted by",
        look="The household table unless a person who knows the home says otherwise; a year of "
        "half-hours, or a logger over a cold week, may show what it really draws.",
        who="site",
    )
    logged_l1_a: Amperes = fact(
        ask="What was the highest half-hour on L1 in our logger?",
        trade="Highest half-hour mean by logger, L1",
        look="From the logger's file; the only line of a single-phase supply is L1.",
        who="site",
        between=(0.0, 300.0),
        step=1.0,
        ages_after=365,
        symbol="I L1",
    )
    logged_l2_a: Amperes = fact(
        ask="What was the highest half-hour on L2 in our logger?",
        trade="Highest half-hour mean by logger, L2",
        look="From the logger's file.",
        who="site",
        between=(0.0, 300.0),
        step=1.0,
        ages_after=365,
        symbol="I L2",
    )
    logged_l3_a: Amperes = fact(
        ask="What was the highest half-hour on L3 in our logger?",
        trade="Highest half-hour mean by logger, L3",
        look="From the logger's file.",
        who="site",
        between=(0.0, 300.0),
        step=1.0,
        ages_after=365,
        symbol="I L3",
    )
    meter_in: MeterIn = fact(
        ask="Where is the meter: indoors, in a cabinet outside, or in a garage or store?",
        trade="Place of the meter",
        look="Photo from a step back, the cabinet open if it opens by hand.",
        who="photo",
        known_as={
            "inside": "indoors",
            "outside": "outside cabinet",
            "outdoors": "outside cabinet",
            "garage": "garage or store",
            "store": "garage or store",
        },
        needs={"quote": TOLD},
    )
    own_board_m: Metres = fact(
        ask="How far along the cable is it from the meter to a free bit of indoor wall, as big as "
        "a sheet of paper?",
        trade="Tails to a small board of the point's own",
        look="Beside the meter if there is room; through the wall behind an outside cabinet.",
        who="photo",
        between=(0.1, 50.0),
        step=0.5,
        agree=Agree(0.5, "higher", share=0.1),
        symbol="L tails",
    )
    own_board_fused: bool = fact(
        ask="Will a switch-fuse stand at the meter end, ahead of the tails to the small board?",
        trade="Switch-fuse ahead of the small board's tails, planned",
        look="Work that is planned, never what was found.",
        who="site",
    )
    highest_half_hour_kw: Kilowatts = fact(
        ask="What is the most the house has used in half an hour, in the supplier's app?",
        trade="Highest half-hour import",
        look="A year of half-hours from the supplier; the largest, doubled, is the kilowatts.",
        between=(0.1, 70.0),
        step=0.1,
        ages_after=365,
    )
    meter_point: str = fact(
        ask="What is the long number in the box marked S on the bill?",
        trade="Meter point administration number (MPAN)",
        look="The bottom line, thirteen digits; photo of the bill's second page.",
        form="meter point",
        needs={"fit": TOLD, "certify": SEEN},
        on_papers=True,
    )
    operator: str = fact(
        ask="Who is named on the bill for power cuts?",
        trade="Distribution network operator",
        look="The first two digits of the meter point number tell it too.",
        needs={"quote": TOLD},
    )
    fed_by: str = fact(
        ask="Who feeds the estate's own network: which area's operator?",
        trade="Distributor that an independent network connects to",
        look="The independent operator says so; so does the page on power cuts for the postcode.",
    )
    transformer: str = fact(
        ask="Where does your electricity come from: a pole with a grey tank, a green box?",
        trade="Transformer and who shares it",
        look="Photo of the pole or box; its plate gives a size in kVA. Never climb.",
        who="photo",
    )
