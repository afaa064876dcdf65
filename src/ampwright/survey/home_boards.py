"""Facts of the fuse boards: what is in them, what is free and who stands in front of it."""

from __future__ import annotations

from typing import Literal

from ampwright.foundations.quantity import (
    Amperes,
    Count,
    Metres,
    Milliamperes,
    Millimetres,
    Seconds,
    SquareMm,
    Year,
)

from .home_legs import LegHow
from .home_ways import RCD_MARKS, Circuit, Device, Outlet, RcdKind
from .register import SEEN, TOLD, Agree, Many, Thing, fact, many

Case = Literal["metal", "plastic", "wood"]
Protection = Literal["RCBOs", "shared RCDs", "breakers only", "rewireable fuses", "mixed"]
FeedDevice = Literal["breaker", "cartridge fuse", "rewireable fuse"]
FeedKind = Literal["armoured", "flat", "sheathed"]


class Board(Thing):
    """A fuse board: a consumer unit or a distribution board."""

    place: str = fact(
        ask="Where is the fuse board?",
        trade="Place of the board",
        look="Photo with the lid shut, from a step back.",
        needs={"quote": TOLD},
        on_papers=True,
    )
    fed_from: str = fact(
        ask="Does it hang on the meter, or on another fuse board?",
        trade="Fed from: meter, or the id of a board",
        look="Follow the thick cables.",
        who="photo",
        refers="boards meter",
    )
    night_only: bool = fact(
        ask="Does that fuse board feed nothing but night heaters, and is it dead by day?",
        trade="Live in the cheap hours only",
        look="A second meter or a time switch beside it; only night heaters on its chart.",
        who="photo",
        values={False: 0.8, True: 0.2},
        needs={"quote": TOLD, "fit": SEEN},
    )
    case: Case = fact(
        ask="Is the box metal, plastic or wood?",
        trade="Enclosure",
        look="A fridge magnet sticks to metal.",
        who="photo",
        values={"metal": 0.45, "plastic": 0.53, "wood": 0.02},
        needs={"fit": SEEN},
    )
    made_year: Year = fact(
        ask="Do you know when the board was put in?",
        trade="Year of the board",
        look="A date on a sticker or a certificate.",
        between=(1930, 2100),
    )
    phases: Count = fact(
        ask="Does the board have one main line or three?",
        trade="Phases of the board",
        look="A main switch four wide with three thick wires is three.",
        who="photo",
        values={1: 0.94, 3: 0.06},
        said_as={1: "one", 3: "three"},
    )
    main_switch_a: Amperes = fact(
        ask="What number stands on the board's main switch before the letter A?",
        trade="Main switch rating",
        look="Photo of the main switch, close enough to read.",
        who="photo",
        values={63: 0.01, 80: 0.04, 100: 0.92, 125: 0.03},
        rare=(40, 45, 60, 160, 200, 250),
        needs={"quote": TOLD, "fit": SEEN},
        symbol="main switch",
    )
    rated_a: Amperes = fact(
        ask="What rating does the sticker inside the lid give for the whole board?",
        trade="Rated current of the assembly",
        look="On the maker's label: InA, or rated current. Photo of the label.",
        who="photo",
        values={63: 0.01, 80: 0.03, 100: 0.91, 125: 0.05},
        rare=(40, 45, 60, 160, 200, 250),
        needs={"fit": SEEN},
        symbol="board rating",
    )
    positions: Count = fact(
        ask="How many positions are there in the row, empty ones too?",
        trade="Positions",
        look="Count the narrow switches and the blank covers, without the main switch.",
        who="photo",
        between=(1, 120),
    )
    three_phase_ways: Count = fact(
        ask="How many three-line ways has the board?",
        trade="Three-phase ways",
        look="From its chart: 1 L1 L2 L3, 2 L1 L2 L3 and so on.",
        who="photo",
        between=(1, 36),
    )
    spare_ways: Count = fact(
        ask="How many positions are empty, with only a plastic cover in them?",
        trade="Spare ways",
        look="Photo of the row with the flap open, every label in view.",
        who="photo",
        values={0: 0.4, 1: 0.22, 2: 0.2, 3: 0.1, 4: 0.08},
        rare=tuple(range(5, 37)),
        needs={"quote": SEEN, "fit": SEEN},
    )
    spare_phases: str = fact(
        ask="Which lines are the empty positions on?",
        trade="Phases of the spare ways, with spaces between",
        look="From the chart in the board, as L3 L3.",
        who="photo",
    )
    whole_ways_spare: Count = fact(
        ask="On how many ways are all three positions empty?",
        trade="Whole three-phase ways free",
        look="From the chart or a photo of the row: three blanks side by side on one way.",
        who="photo",
        between=(0, 36),
    )
    spare_behind_rcd: RcdKind = fact(
        ask="Is the empty position beside switches that share one with a test button, and which "
        "wave is drawn on that one?",
        trade="RCD in front of the spare way, type",
        look=RCD_MARKS,
        who="photo",
        values={"none": 0.5, "AC": 0.35, "A": 0.15, "F": 0.0, "B": 0.0},
        needs={"quote": SEEN, "fit": SEEN},
    )
    spare_behind_rcd_ma: Milliamperes = fact(
        ask="What stands on that one in mA, or as 0.03 A?",
        trade="RCD in front of the spare way, residual current",
        look="30 mA and 0.03 A are the same.",
        who="photo",
        values={30: 0.93, 100: 0.07},
        rare=(10, 300, 500),
        symbol="IΔn",
    )
    front_rcd: RcdKind = fact(
        ask="Is there one big switch with a test button in front of the whole board?",
        trade="RCD in front of the whole board, type",
        look=RCD_MARKS,
        who="photo",
        values={"none": 0.9, "AC": 0.08, "A": 0.02, "F": 0.0, "B": 0.0},
        needs={"quote": TOLD, "fit": SEEN},
    )
    front_rcd_ma: Milliamperes = fact(
        ask="What stands on that front switch in mA?",
        trade="RCD in front of the whole board, residual current",
        look="100 mA and 0.1 A are the same.",
        who="photo",
        values={30: 0.3, 100: 0.7},
        rare=(300, 500),
        symbol="IΔn",
    )
    front_delayed: bool = fact(
        ask="Is there an S in a square on that front switch?",
        trade="Front RCD time-delayed",
        look="An S in a square means it waits, so that the ones behind it open first.",
        who="photo",
        values={True: 0.6, False: 0.4},
    )
    front_trips_in_s: Seconds = fact(
        ask="Does the last certificate say how fast that front switch opened?",
        trade="Front RCD, time at its rated residual current",
        look="The schedule of test results, in milliseconds: 40 ms is 0.04 s.",
        who="site",
        between=(0.0, 10.0),
        step=0.01,
        symbol="t front",
    )
    protection: Protection = fact(
        ask="Has every switch in the row a test button, or do a few buttons serve many?",
        trade="Protection in the board",
        look="Photo of the row with the flap open: a button on each is RCBOs; one or two "
        "wide ones with a button are shared RCDs; wire and porcelain are rewireable fuses.",
        who="photo",
        values={
            "RCBOs": 0.25,
            "shared RCDs": 0.5,
            "breakers only": 0.12,
            "rewireable fuses": 0.05,
            "mixed": 0.08,
        },
        needs={"quote": SEEN, "fit": SEEN},
    )
    surge_protection: bool = fact(
        ask="Is there a module in the row with one or two small green windows?",
        trade="Surge protective device",
        look="Photo of the row; the window is green when it is sound.",
        who="photo",
        values={False: 0.7, True: 0.3},
        needs={"quote": TOLD, "fit": SEEN},
    )
    surge_leads_m: Metres = fact(
        ask="How long are the wires of that module, from the bar to it and from it to the earth?",
        trade="Leads of the surge protective device, line side and earth side together",
        look="Only with the cover off and the board dead: our electrician measures them.",
        who="site",
        between=(0.0, 20.0),
        step=0.1,
        agree=Agree(0.05, "higher"),
        symbol="L surge",
    )
    lock_fits: bool = fact(
        ask="Can a lock be put on one of its switches, or on its lid?",
        trade="A device of this board can be locked off",
        look="The maker's list; a lid with a hole for a lock does as well.",
        who="site",
    )
    chart: bool = fact(
        ask="Is there a list in or by the board that says what each switch feeds?",
        trade="Circuit chart at the board",
        look="Photo of the inside of the lid.",
        who="photo",
    )
    test_notice: bool = fact(
        ask="Is there a notice that says to press the test button now and then?",
        trade="Notice to test residual current devices",
        look="On the lid or beside the board.",
        who="photo",
    )
    sources_notice: bool = fact(
        ask="Is there a notice at the board that the house has a second source of electricity?",
        trade="Notice of a second source",
        look="Yellow, at the board, the meter and the main switch.",
        who="photo",
    )
    parts_sold: bool = fact(
        ask="Who made the board, so that we can see whether parts are still sold?",
        trade="Devices for this board still sold",
        look="Photo of the maker's mark and the model on the lid; we look it up.",
        who="photo",
        values={True: 0.75, False: 0.25},
        needs={"fit": SEEN},
        said_as={False: "no longer sold", True: "still sold"},
    )
    parts_three_phase_rcbo: bool = fact(
        ask="Who made the board, so that we can see what is sold for it?",
        trade="Three-phase RCBO sold for this board",
        look="The maker's list for the model on the lid.",
        who="photo",
        values={True: 0.4, False: 0.6},
        said_as={False: "not sold for it", True: "sold for it"},
    )
    from_meter_m: Metres = fact(
        ask="How far is the fuse board from the meter, along the cable?",
        trade="Length of the feed from the meter",
        look="Pace it along the walls; a pace is a bit under a metre.",
        between=(0.0, 300.0),
        step=0.5,
        agree=Agree(0.5, "higher", share=0.1),
        needs={"quote": TOLD},
        symbol="L feed",
    )
    feed_mm2: SquareMm = fact(
        ask="Is a size printed on the cable that feeds the board?",
        trade="Feed from the meter, conductor size",
        look="Photo of the cable's sheath near the board.",
        who="photo",
        values={10: 0.05, 16: 0.3, 25: 0.63, 35: 0.02},
        rare=(6, 50, 70),
        symbol="feed",
    )
    feed_how: str = fact(
        ask="How does that cable run: along walls, under ground, armoured?",
        trade="Feed from the meter, kind and method",
        look="Photo at both ends.",
        who="photo",
    )
    feed_kind: FeedKind = fact(
        ask="Is the cable that feeds the board steel-armoured, flat and grey, or round and smooth?",
        trade="Feed, kind of cable",
        look="Photo at both ends; steel wires and a metal gland are armour.",
        who="photo",
        values={"armoured": 0.6, "flat": 0.3, "sheathed": 0.1},
        needs={"fit": SEEN},
    )
    feed_lies: LegHow = fact(
        ask="What does that cable run along, over its worst stretch: walls, a loft, the ground?",
        trade="Feed, method of the stretch that cools worst",
        look="Photo along the way; buried, or deep in insulation, cools worst.",
        who="photo",
        needs={"fit": SEEN},
    )
    feed_device_a: Amperes = fact(
        ask="Is there a fuse or a breaker of its own where that cable starts, and what number "
        "stands on it?",
        trade="Device at the head of the feed",
        look="Photo of what lies between the meter and the cable.",
        who="photo",
        values={0: 0.35, 32: 0.1, 63: 0.2, 80: 0.2, 100: 0.15},
        rare=(16, 20, 25, 40, 45, 50, 60, 125),
        written_as={0: "none"},
        needs={"quote": TOLD, "fit": SEEN},
        symbol="In feed",
    )
    feed_device_kind: FeedDevice = fact(
        ask="Is what stands where that cable starts a switch, a fuse in one piece, or a fuse with "
        "a wire in a holder?",
        trade="Device at the head of the feed, kind",
        look="Photo of its face; look only.",
        who="photo",
        needs={"fit": SEEN},
    )
    own_rod: bool = fact(
        ask="Has that fuse board an earth rod of its own, apart from the house's earth?",
        trade="Board earthed by a rod of its own",
        look="A green-and-yellow wire into the ground by an outbuilding; the armour of its feed "
        "held in a gland of plastic.",
        who="photo",
        needs={"fit": SEEN},
    )
    way_pitch_mm: Millimetres = fact(
        ask="How wide is one position?",
        trade="Pitch of the ways",
        look="Our electrician measures from one way to the next.",
        who="site",
        between=(10.0, 60.0),
        symbol="pitch",
    )
    line_pitch_mm: Millimetres = fact(
        ask="How far is it from one line to the next within one way?",
        trade="Pitch of the lines within a way",
        look="Our electrician measures it, cover off: without it no circuit is taken to another "
        "line inside the board.",
        who="site",
        between=(5.0, 60.0),
        symbol="pitch between lines",
    )
    layout: str = fact(
        ask="Are the switches in one row, two rows or a column?",
        trade="Layout",
        look="Photo with the flap open.",
        who="photo",
    )
    outlets: Many[Outlet] = many(
        ask="Is that every position in the board, the empty ones too?",
        trade="Whether every position is listed",
        look="Count them on the photo against the list.",
        who="photo",
        found=True,
    )
    devices: Many[Device] = many(
        ask="Is that every switch in the board?",
        trade="Whether every device is listed",
        look="Count them on the photo against the list.",
        who="photo",
    )
    circuits: Many[Circuit] = many(
        ask="Is that every circuit on the chart?",
        trade="Whether every circuit is listed",
        look="Count the lines of the chart against the list.",
        who="photo",
    )
