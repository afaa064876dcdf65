"""A paper for one invented home, filled in by hand: a plain semi whose water bond was cut off.

The numbers are those worked by hand for that home; the formulas are the usual ones, written here
so that the paper is tested with real checks and real workings.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from ampwright.documents.options_and_working.content import (
    CompareRow,
    ConfirmLine,
    DecisionBlock,
    FoundLine,
    HomeBlock,
    OptionColumn,
    OptionsPaper,
    Recommendation,
    RejectedRow,
    WorkItem,
)
from ampwright.documents.options_and_working.from_checks import Stage, working_of
from ampwright.foundations.checks import at_least, at_most, holds, not_applicable, requires
from ampwright.foundations.checks import undetermined as cannot_tell
from ampwright.foundations.quantity import Share
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.rulings import Row, Ruling
from ampwright.foundations.source import Evidence, Place, Said, SetBy, Trust
from ampwright.foundations.working import computes, given, largest, next_up

WIRING = "BS 7671"
TEXT = "2018+A2:2022"
HANDBOOK = Place("online electricians' handbook", at="Table 6.2", trust=Trust.COMMON_PRACTICE)
SEEN = date(2026, 11, 24)
MEASURED_ZE = Said("supply.ze_ohm", Evidence.MEASURED, "tester 2", "R. Tamm", SEEN)
EDITION = (
    "Figures are of the BS 7671:2018+A2:2022 text; the edition in force is 2018+A4:2026. "
    "Confirm them against the current edition before any are relied on."
)
RATINGS = (6.0, 10.0, 16.0, 20.0, 25.0, 32.0, 40.0, 50.0)


def book(at: str) -> Place:
    return Place(WIRING, TEXT, at, Trust.MEMORY)


def told(key: str, value: float, unit: str, symbol: str) -> float:
    return given(symbol, value, unit, Said(key, Evidence.TOLD, "call", "T. Okoro-Vale", SEEN))


def seen(key: str, value: float, unit: str, symbol: str, how: str) -> float:
    return given(symbol, value, unit, Said(key, Evidence.SEEN, how, "R. Tamm", SEEN))


@computes("I", "A", formula="I * s", place=HANDBOOK)
def lighting(I: float, s: float) -> float:
    return I * s


@computes("I", "A", formula="max(I) + s * (sum(I) - max(I))", place=HANDBOOK)
def sockets(I: tuple[float, ...], s: float) -> float:
    return max(I) + s * (sum(I) - max(I))


@computes("demand", "A", formula="sum(I)", place=Place("Ampwright", at="method"))
def total(I: tuple[float, ...]) -> float:
    return sum(I)


@computes("demand", "A", formula="I + Ipoint", place=Place("Ampwright", at="method"))
def with_point(I: float, Ipoint: float) -> float:
    return I + Ipoint


@computes("capacity", "A", formula="min(fuse, main_switch_a, tails)", place=book("132.16"))
def capacity(fuse: float, main_switch_a: float, tails: float) -> float:
    return min(fuse, main_switch_a, tails)


@computes("two", "A", formula="largest(I, 2)", place=HANDBOOK)
def two_largest(I: tuple[float, ...]) -> float:
    return largest(I, 2)


@computes("In", "A", formula="next_up(Ib, ratings)", place=book("433.1.1"))
def rating(Ib: float, ratings: tuple[float, ...]) -> float:
    return next_up(Ib, ratings)


@computes("Iz", "A", formula="It * Ca * Cg", place=book("523.1"))
def corrected(It: float, Ca: float, Cg: float) -> float:
    return It * Ca * Cg


@computes("dU", "V", formula="mv * Ib * L / 1000", place=book("Appendix 4, 6.4"))
def drop(mv: float, Ib: float, L: float) -> float:
    return mv * Ib * L / 1000


@computes("dU_share", "", formula="dU / U0", place=book("525.1"))
def share(dU: float, U0: float) -> float:
    return dU / U0


@computes("R1R2", "Ω", formula="(r1 + r2) * L / 1000", place=book("Appendix 3"))
def line_and_earth(r1: float, r2: float, L: float) -> float:
    return (r1 + r2) * L / 1000


@computes("Zs", "Ω", formula="Ze + R1R2", place=book("411.4.4"))
def loop(Ze: float, R1R2: float) -> float:
    return Ze + R1R2


@computes("Zs_max", "Ω", formula="Cmin * U0 / (m * In)", place=book("411.4.4"))
def loop_limit(Cmin: float, U0: float, m: float, In: float) -> float:
    return Cmin * U0 / (m * In)


@computes("S_needed", "mm²", formula="sqrt(I2t) / k", place=book("543.1.3"))
def adiabatic(I2t: float, k: float) -> float:
    return I2t**0.5 / k


@requires("demand ≤ capacity", unit="A", place=book("132.16"))
def supply_carries(demand: float, limit: float):
    return at_most(demand, limit)


@requires("Ib ≤ In", unit="A", place=book("433.1.1"))
def device_carries(Ib: float, In: float):
    return at_most(Ib, In)


@requires("In ≤ Iz", unit="A", place=book("433.1.1"))
def cable_carries(In: float, Iz: float):
    return at_most(In, Iz)


@requires("ΔU is no more than the share allowed", place=book("Appendix 4, 6.4"))
def drop_allowed(actual: Share, limit: Share):
    return at_most(actual, limit)


@requires("Zs ≤ Zs_max", unit="Ω", place=book("411.4.4"))
def loop_low(Zs: float, limit: float):
    return at_most(Zs, limit)


@requires("S ≥ S_needed", unit="mm²", place=book("543.1.3"))
def earth_core(S: float, needed: float):
    return at_least(S, needed)


@requires(
    "the main bond on each metal service is there, connected and of the size required",
    unit="mm²", place=book("544.1.1"),
)  # fmt: skip
def bonded(mm2: float, required: float):
    return at_least(mm2, required, "a loose clamp and a cut wire at the new stop tap")


@requires("volts at the point stay at or above the window", unit="V", place=book("722.411.4.1"))
def window_held(volts: float, low: float):
    return at_least(volts, low)


@requires("no residual-current device in front is blinded", place=book("722.531.3.101"))
def not_blinded(kind: str):
    return holds(kind != "AC", "every circuit has a device of its own, type A")


@requires("separated from metalwork of another earth by reach", unit="m", place=book("415.2"))
def separated():
    return cannot_tell("whether the street lamp is within reach has not been asked")


@requires("a buried cable is marked and deep enough", place=book("522.8.10"))
def buried():
    return not_applicable("no leg is buried")


NETWORK = Ruling(
    "may work start before the network is told",
    (
        Row("the cut-out is damaged", "damaged".__eq__, "stop until mended", HANDBOOK),
        Row("demand with the point is above the threshold", "over".__eq__, "ask first", HANDBOOK),
        Row("otherwise", bool, "tell after", HANDBOOK),
    ),
)  # fmt: skip


def demand_stage() -> tuple[Stage, float]:
    some = given("s", 0.66, "", HANDBOOK.at_row("lighting"))
    lights = lighting(told("loads.lighting.amps_a", 2.5, "A", "I"), some)
    rings = sockets(
        (
            told("loads.kitchen.amps_a", 15.0, "A", "I"),
            told("loads.others.amps_a", 10.0, "A", "I"),
        ),
        given("s", 0.4, "", HANDBOOK.at_row("sockets")),
    )
    fixed = told("loads.boiler.amps_a", 1.0, "A", "I")
    now = total((lights, rings, fixed))
    both = with_point(now, given("Ipoint", 32.0, "A", SetBy("choice", "setting")))
    limit = capacity(
        seen("supply.main_fuse_a", 80.0, "A", "fuse", "photo 1"),
        seen("boards.main.main_switch_a", 100.0, "A", "main_switch_a", "photo 2"),
        given("tails", 93.0, "A", book("Table 4D1A")),
    )
    figures = (("The most the house is likely to use at once", now), ("With the point", both))
    stage = Stage("Demand and supply", (supply_carries(both, limit),), figures)
    return stage, both


def network_stage() -> Stage:
    ruled = NETWORK.decide("under")
    return Stage("Network", rulings=((NETWORK, ruled),), rests_on=("fuse: 80 A (seen, photo 1)",))


def circuit_stage() -> Stage:
    Ib = given("Ib", 32.0, "A", SetBy("choice", "setting"))
    L = told("legs.a.length_m", 8.0, "m", "L")
    In = rating(Ib, tuple(given("In", each, "A", SetBy("catalogue")) for each in RATINGS))
    Iz = corrected(
        given("It", 47.0, "A", book("Table 4D5, 6 mm², method C")),
        given("Ca", 1.0, "", book("Table 4B1, 30 °C")),
        given("Cg", 1.0, "", book("Table 4C1, 1 circuit")),
    )
    U0 = given("U0", 230.0, "V", Place("Electricity Safety, Quality and Continuity Regulations",
                                       "2002", "regulation 27"))  # fmt: skip
    dU = drop(given("mv", 7.3, "mV/A/m", book("Table 4D5, 6 mm²")), Ib, L)
    checks = (
        device_carries(Ib, In),
        cable_carries(In, Iz),
        drop_allowed(share(dU, U0), given("limit", 0.05, "", SetBy("firm rule", "drop share"))),
        not_blinded("A"),
        buried(),
    )
    return Stage("Circuit", checks, rests_on=("way of fixing: clipped inside (told, call)",))


def earth_stage() -> Stage:
    L = told("legs.a.length_m", 8.0, "m", "L")
    R1R2 = line_and_earth(
        given("r1", 3.70, "Ω/km", book("Table I1, 6 mm² at 70 °C")),
        given("r2", 8.89, "Ω/km", book("Table I1, 2.5 mm² at 70 °C")),
        L,
    )
    Zs = loop(
        given("Ze", 0.18, "Ω", MEASURED_ZE),
        R1R2,
    )  # fmt: skip
    limit = loop_limit(
        given("Cmin", 0.95, "", book("411.4.4")),
        given("U0", 230.0, "V", Place("Electricity Safety, Quality and Continuity Regulations",
                                      "2002", "regulation 27")),
        given("m", 5.0, "", Place("IEC 60898-1", "2015", "Table 2")),
        given("In", 40.0, "A", SetBy("choice", "device")),
    )  # fmt: skip
    needed = adiabatic(
        given("I2t", 18_000.0, "A²s", SetBy("catalogue", "40 A device")),
        given("k", 115.0, "", book("Table 54.3")),
    )
    bond = Remedy("bond-water", "Fit a 10 mm² bond to the water pipe", (), minutes=(45, 60, 80))
    volts = given("U", 214.3, "V", SetBy("choice", "lowest legal voltage less the drop"))
    checks = (
        loop_low(Zs, limit),
        earth_core(given("S", 2.5, "mm²", book("Table 4D5, 6 mm²")), needed),
        bonded(
            seen("services.water.bond_mm2", 0.0, "mm²", "bond", "photo 4"),
            given("required", 10.0, "mm²", book("Table 54.8")),
        ).mended_by(bond),
        window_held(volts, given("low", 207.0, "V", book("722.411.4.1"))).with_caution(
            "No voltage was read here: this rests on the lowest voltage the law allows."
        ),
        separated(),
    )
    return Stage("Fault and earthing", checks, rests_on=("earthing: TN-C-S (seen, photo 1)",))


def stages() -> tuple[Stage, ...]:
    demand, _ = demand_stage()
    return demand, network_stage(), circuit_stage(), earth_stage()


DECISION = DecisionBlock(
    "tell_after",
    "Fit, then tell",
    "Fit a 7.4 kW point after putting a 10 mm² bond on the water pipe in the same visit.",
    "You do not have to wait",
)
HOME = HomeBlock(
    customer="Tamsin Okoro-Vale",
    address="14 Quillbrook Close, Sandermere",
    postcode="ZZ1 4QB",
    date="25 November 2026",
    firm="Quennell & Birdsworth",
    prepared_by="Jess Birdsworth",
    reference="quillbrook-close",
)
FOUND = (
    FoundLine("Main fuse, and cables into it", "80 A, one cable", "seen", "photo 1"),
    FoundLine("Kind of earth", "TN-C-S", "seen", "photo 1", overruled="TT"),
    FoundLine("Outside part of the earth loop", "0.18 Ω", "measured", "tester 2, 24 November"),
    FoundLine("Most the house is likely to use at once", "21.7 A", "told", "call, 24 November"),
    FoundLine(
        "Lowest voltage at the meter", "216.2 V", "assumed", "the legal floor; none was read"
    ),
    FoundLine("Earth clamp on the water pipe", "cut off at the stop tap", "seen", "photo 4"),
    FoundLine("Way to the point", "8 m: 7 m clipped, one hole", "told", "call, 24 November"),
    FoundLine("Street lamp within reach of the point", "", "not asked"),
)
OPTIONS = (
    OptionColumn("A", "Full speed", "front-wall/board/1ph-32a/flat/pme"),
    OptionColumn("B", "Full speed, house shares", "front-wall/board/1ph-32a-limit-60a/flat/pme"),
    OptionColumn("C", "Half speed", "front-wall/board/1ph-16a/flat/pme"),
)
ROWS = (
    CompareRow("All in, with VAT", ("£1,188", "£1,326", "£1,140"), leads=True),
    CompareRow("A usual night", ("57 minutes", "57 minutes", "1 hour 54 minutes")),
    CompareRow("Miles an hour", ("23", "23", "12")),
    CompareRow("Wait", ("none", "none", "none")),
    CompareRow("Seen from the street", ("the point only",) * 3),
    CompareRow(
        "Room to grow",
        (
            "up to 6 A more before the network must be asked",
            "a heat pump later",
            "a heat pump later",
        ),
    ),
    CompareRow("What you give up", ("nothing", "£138", "a big top-up in one short night")),
    CompareRow("Rests on", ("water bond",) * 3),
)
RECOMMENDED = Recommendation(
    "A",
    "Full speed",
    "Full speed fits your house as it stands and is the quickest to have. A usual week needs under "
    "an hour a night, and the cheap hours last five.",
    "53.65 A with the point at 32 A is under the 80 A fuse and under the 60 A threshold, so no "
    "limit is needed. PME is kept: the point must have built-in open-PEN detection, and the water "
    "pipe must be bonded before it goes live.",
    (
        "Kitchen sockets above 21.35 A: demand passes 60 A, and the network must be asked first.",
        "The operator counting a point by its largest size: no change here, 32 A is its largest.",
        "The water pipe measured above 22 kΩ to the main earth terminal: no bond is needed.",
    ),
)
WORK = (
    WorkItem(
        "Bond the water pipe, 10 mm², as near its entry as can be reached",
        "the old bond was cut when the stop tap was changed",
        ("10 mm² bond conductor, 9 m", "pipe clamp, 1"),
        "45 to 80 min", "£96", remedy=True,
    ),
    WorkItem(
        "Run a 6 mm² flat cable from the board to the point, 8 m",
        "", ("6 mm² flat cable, 8 m", "clips, 25", "sleeve through 270 mm cavity wall, 1"),
        "70 to 100 min", "£212",
    ),
    WorkItem(
        "Fit a 40 A two-pole device in the two spare ways", "",
        ("two-pole residual-current breaker, 40 A, type A, 30 mA, 1",), "20 to 30 min", "£74",
    ),
    WorkItem("Fit and set the point", "", ("point, 7.4 kW, tethered, 1",), "60 to 90 min", "£806"),
)  # fmt: skip
CONFIRM = (
    ConfirmLine(
        "Whether a street lamp or other earthed metal is within 2.5 m of the point", "open"
    ),
    ConfirmLine(
        "Lowest voltage at the meter: no reading was taken; 216.2 V is the floor", "assumed"
    ),
    ConfirmLine("Length and fixing of the way to the point", "told"),
    ConfirmLine("Tabulated capacity of 6 mm² flat cable, 47 A", "memory"),
)
CAUTIONS = (
    "Work on a supply or a board can kill. Isolate, prove dead, lock off.",
    "Part of this board stays live with the main switch off: the top terminals.",
    "Do not break the seals. They belong to the network operator or the meter operator.",
    "The maker's instructions come before anything printed here.",
)
REJECTED = (
    RejectedRow("supply cannot carry it", "36", "BS 7671:2018+A2:2022, 132.16 (memory)"),
    RejectedRow("cable too small for its device", "24", "BS 7671:2018+A2:2022, 433.1.1 (memory)"),
    RejectedRow("three phases wanted, one there", "216", "the home's supply"),
    RejectedRow("dearer and no better", "12", "", "A · Full speed"),
)


def paper() -> OptionsPaper:
    """The sample, not yet checked by a designer."""
    return OptionsPaper(
        DECISION, HOME, FOUND, OPTIONS, ROWS, RECOMMENDED, WORK, CONFIRM, CAUTIONS, REJECTED,
        working_of(stages()), EDITION,
    )  # fmt: skip


def checked() -> OptionsPaper:
    """The sample once a named designer stands behind it."""
    return replace(paper(), home=replace(HOME, designer="Tam Quennell, electrician"))
