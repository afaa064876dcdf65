"""Cells that follow from other cells, or from figures that others print.

A slip of one digit shows here where no publication stands beside the cell.
"""

from itertools import pairwise
from math import exp, log, log10, sqrt

import pytest

from ampwright.standards.wiring.earthing import bond_of_earthing_conductor
from ampwright.tables.book import Book
from ampwright.tables.capacity import CableFamily, tabulated_capacity
from ampwright.tables.conductors import resistance_20
from ampwright.tables.earthing import protective_least_mm2, protective_share
from ampwright.tables.loader import table, table_names

BOOK = Book()
DROPS = [
    name for name in table_names() if name.startswith("voltage_drop/") and "limits" not in name
]
ENCLOSED = "enclosed, methods A and B"
AREA_OF_50 = 47.5
"""IEC 60364-5-52, Annex D takes this for the nominal 50 mm²."""


def cells(name, column):
    """Every filled cell of a column with its keys by name."""
    found = table(name)
    for keys, value in found.numbers[column].items():
        yield dict(zip(found.keys, keys, strict=True)), value


# --- voltage drop ------------------------------------------------------------------------------

OFF_STEP = {
    ("r", 70, 1, 1, ""): 44, ("r", 70, 1, 6, ""): 7.3, ("r", 70, 3, 4, ""): 9.5,
    ("r", 90, 3, 50, ""): 0.86,
    ("r", 70, 1, 25, ENCLOSED): 1.8, ("r", 70, 1, 35, ENCLOSED): 1.3,
    ("r", 70, 1, 50, ENCLOSED): 0.95, ("r", 70, 3, 50, ENCLOSED): 0.81,
    ("r", 90, 3, 50, ENCLOSED): 0.87,
    ("z", 90, 1, 25, ""): 1.9, ("z", 90, 3, 25, ""): 1.65,
    ("z", 70, 1, 25, ENCLOSED): 1.8, ("z", 70, 1, 35, ENCLOSED): 1.3,
    ("z", 70, 3, 35, ENCLOSED): 1.1, ("z", 90, 1, 35, ENCLOSED): 1.35,
    ("z", 90, 3, 25, ENCLOSED): 1.65, ("z", 90, 3, 35, ENCLOSED): 1.15,
    ("z", 90, 3, 50, ENCLOSED): 0.9,
}  # fmt: skip
"""Printed a step or two beside the law; each stands among the disagreements."""


def step(printed, size):
    """The step a drop is printed in."""
    if printed >= 10:
        return 1.0
    if size in (25, 35):
        return 0.05
    return (0.05 if printed >= 1 else 0.01) if size >= 50 else 0.1


def is_printed(part, name, keys, printed, law):
    """Whether a printed figure is its law to the step, or the one known to stand beside it."""
    place = (part, 90 if name.endswith("_90") else 70, keys["phases"], keys["size_mm2"])
    arrangement = ENCLOSED if keys.get("arrangement") == ENCLOSED else ""
    known = OFF_STEP.get((*place, arrangement), OFF_STEP.get((*place, "")))
    close = abs(printed - law) <= step(printed, keys["size_mm2"]) / 2 + 1e-9
    return close or printed == known


@pytest.mark.parametrize("name", DROPS)
def test_every_drop_is_its_law_to_the_printed_step(name):
    """2·r or √3·r of IEC 60228, warmed by 0.00393 a kelvin."""
    warm = 1 + 0.00393 * ((90 if name.endswith("_90") else 70) - 20)
    for keys, printed in cells(name, "r_mv"):
        way = 2 if keys["phases"] == 1 else sqrt(3)
        law = way * resistance_20(BOOK, keys["size_mm2"]) * warm
        assert is_printed("r", name, keys, printed, law), keys


@pytest.mark.parametrize("name", DROPS)
def test_every_whole_drop_is_the_root_of_its_parts_to_the_printed_step(name):
    for keys, whole in cells(name, "z_mv"):
        r = BOOK.number(name, "r_mv", **keys)
        x = table(name).numbers["x_mv"].get(tuple(keys.values()), 0.0)
        assert is_printed("z", name, keys, whole, sqrt(r * r + x * x)), keys


@pytest.mark.parametrize("name", [name for name in DROPS if "flat" not in name])
def test_three_wires_react_as_two_do(name):
    """√3 instead of twice the reactance of a conductor; 0.0051: printed in steps of 0.005 or
    0.01, each rounded by half of one."""
    other = {"touching on a surface, method C": "trefoil on a surface, method C"}
    for keys, two in cells(name, "x_mv"):
        if keys["phases"] == 1:
            three = keys | {"phases": 3.0}
            if "arrangement" in keys:
                three["arrangement"] = other.get(keys["arrangement"], keys["arrangement"])
            x = BOOK.number(name, "x_mv", **three)
            assert x == pytest.approx(two * sqrt(3) / 2, abs=0.0051), keys


@pytest.mark.parametrize("insulation", [70, 90])
def test_armour_changes_nothing_of_the_drop(insulation):
    """Two tables of the standard, one figure: the same cores lie as far apart in both."""
    for column in ("r_mv", "x_mv", "z_mv"):
        for keys, armoured in cells(f"voltage_drop/armoured_{insulation}", column):
            bare = BOOK.number(f"voltage_drop/multicore_{insulation}", column, **keys)
            assert bare == armoured, keys


# --- capacity ----------------------------------------------------------------------------------

SMOOTH = {
    ("capacity/armoured_70", "C"): 0.017, ("capacity/armoured_70", "E"): 0.014,
    ("capacity/armoured_90", "C"): 0.02, ("capacity/armoured_90", "E"): 0.025,
    ("capacity/flat_70", "100"): 0.012, ("capacity/flat_70", "101"): 0.01,
    ("capacity/flat_70", "102"): 0.033, ("capacity/flat_70", "103"): 0.038,
    ("capacity/flat_70", "C"): 0.02, ("capacity/flat_70", "A"): 0.02,
}  # fmt: skip
"""How far a column strays from its best curve; 102 and 103 hold the two doubtful cells."""


@pytest.mark.parametrize(("name", "method"), SMOOTH)
def test_capacity_follows_a_smooth_curve(name, method):
    """A·S^m through the column itself, as IEC 60364-5-52, Annex D has it: a slip stands out."""
    for loaded in {keys["loaded"] for keys, _ in cells(name, "capacity_a")}:
        points = [
            (log(AREA_OF_50 if keys["size_mm2"] == 50 else keys["size_mm2"]), log(amperes))
            for keys, amperes in cells(name, "capacity_a")
            if keys["method"] == method and keys["loaded"] == loaded
        ]
        n = len(points)
        mean_s, mean_a = sum(s for s, _ in points) / n, sum(a for _, a in points) / n
        m = sum((s - mean_s) * (a - mean_a) for s, a in points) / sum(
            (s - mean_s) ** 2 for s, _ in points
        )
        stray = max(abs(exp(a - mean_a - m * (s - mean_s)) - 1) for s, a in points)
        assert stray <= SMOOTH[name, method]


# --- factors -----------------------------------------------------------------------------------


def test_a_device_that_acts_late_and_the_ground_multiply():
    """1.45/2 for wire, 0.9 in the ground (433.1), and both: rounded to 0.001, half upward."""
    factor = {tuple(keys.values()): value for keys, value in cells(
        "factors/device_and_burial", "factor")}  # fmt: skip
    assert factor["rewireable fuse", "air"] == 1.45 / 2
    assert factor["rewireable fuse", "ground"] == pytest.approx(
        1.45 / 2 * factor["breaker or cartridge fuse", "ground"], abs=0.00051
    )


def test_insulation_costs_no_less_than_it_once_did():
    """The older set of the 16th edition, as a handbook prints it: 0.01 to 0.05 higher."""
    older = {50: 0.89, 100: 0.81, 200: 0.68, 400: 0.55, 500: 0.50}
    for length, printed in older.items():
        factor = BOOK.number("factors/thermal_insulation", "factor", length_mm=length)
        assert 0 <= printed - factor < 0.051


def test_a_deeper_cable_carries_no_more():
    """Warmth leaves the ground at its face; against 0.5 m, where the set begins."""
    depths = [factor for _, factor in cells("factors/burial_depth", "factor")]
    assert depths[0] == 1 and depths == sorted(depths, reverse=True)
    assert all(shallow - deep <= 0.02 + 1e-9 for shallow, deep in pairwise(depths))


def test_what_counts_in_full_counts_nothing_else():
    """A household's storage, floor and stored water heating: 100 % (an electricians' handbook)."""
    for keys, share in cells("demand/diversity", "share"):
        columns = ("first_a", "in_full", "socket_a")
        besides = [BOOK.number("demand/diversity", column, **keys) for column in columns]
        if share == 1:
            assert besides == [0, 0, 0], keys
        if keys["kind"] in ("storage heating", "floor heating", "stored hot water"):
            assert share == 1
        if keys["kind"] == "lighting":
            assert besides == [0, 0, 0]


# --- devices -----------------------------------------------------------------------------------


def test_a_service_fuse_acts_as_its_rating_and_its_loop_say():
    """1.25 and 1.6 times within the conventional time (IEC 60269-1: an hour to 63 A, two above),
    1.5 times within four hours (BS 1361); 5 s by its largest loop, to 1 A."""
    times = {"holds for": 1.25, "operates within the": 1.6, "operates within four": 1.5}
    for keys, amperes in cells("devices/service_fuse_points", "current_a"):
        rating, point = keys["rating_a"], keys["point"]
        took = BOOK.number("devices/service_fuse_points", "time_s", **keys)
        for words, times_rating in times.items():
            if point.startswith(words):
                assert amperes == pytest.approx(times_rating * rating)
                assert took == (14400 if "four" in words else 3600 if rating <= 63 else 7200)
        if point.startswith("operates within") and point.endswith(" s"):
            assert took == float(point.split()[-2])
        if point == "operates within 5 s":
            loop = {"kind": keys["kind"], "time_s": 5, "rating_a": rating}
            by_loop = BOOK.number("devices/fuse_loop_limits", "acting_a", **loop)
            assert amperes == pytest.approx(by_loop, abs=0.51)


def test_a_fuse_opens_sooner_by_more():
    """The readings of curves that nothing else stands beside: shorter times need more current."""
    found = [
        (keys["kind"], keys["rating_a"], BOOK.number(
            "devices/service_fuse_points", "time_s", **keys), amperes)
        for keys, amperes in cells("devices/service_fuse_points", "current_a")
        if not keys["point"].startswith("holds")
    ]  # fmt: skip
    for kind, rating, took, amperes in found:
        for kind_, rating_, took_, more in found:
            if (kind, rating) == (kind_, rating_) and took_ < took:
                assert more > amperes
            if (kind, took) == (kind_, took_) and rating_ > rating:
                assert more > amperes


def test_bands_of_breakers_meet():
    """B, C and D follow one another, and the upper end is what the loop limits rest on."""
    multiple = {tuple(keys.values()): value for keys, value in cells(
        "devices/trip_multiples", "multiple")}  # fmt: skip
    for low, high in (("B", "C"), ("C", "D")):
        assert multiple[low, "at the latest"] == multiple[high, "not below"]
    for curve in "BCD":
        acting = BOOK.number("devices/breaker_loop_limits", "acting_a", curve=curve, time_s=0.4,
                             rating_a=32)  # fmt: skip
        assert acting == multiple[curve, "at the latest"] * 32
    assert multiple["B", "not below"] == 3


def test_breakers_hold_and_trip_about_their_rating():
    """433.1.1 (iii) rests on 1.45; an hour up to 63 A and two above, as of fuses."""
    for keys, multiple in cells("devices/thermal_tests", "multiple"):
        said = {"must hold": 1.13, "must trip": 1.45, "must trip between": 2.55}
        assert multiple == said[keys["test"]]
    hour = {63.0: 3600, float("inf"): 7200}
    for column in ("least_s", "most_s"):
        for keys, took in cells("devices/thermal_tests", column):
            if "between" not in keys["test"]:
                assert took == hour[keys["up_to_a"]]


def test_energy_let_through_goes_with_the_fault_and_the_rating():
    """10 kA lets through twice what 6 kA does; 40 A is taken as 1.2 times 32 A."""
    for keys, energy in cells("devices/let_through", "let_through_a2s"):
        if keys["breaking_ka"] == 10:
            assert energy == 2 * BOOK.number(
                "devices/let_through", "let_through_a2s", **(keys | {"breaking_ka": 6})
            )
        if keys["rating_a"] == 40:
            assert energy == pytest.approx(1.2 * BOOK.number(
                "devices/let_through", "let_through_a2s", **(keys | {"rating_a": 32})))  # fmt: skip


def test_type_c_lets_through_a_fifth_more():
    """1.2 times, in steps of 5000 A²s: 35 and 42, 45 and 55 thousand."""
    for keys, energy in cells("devices/let_through", "let_through_a2s"):
        if keys["curve"] == "B":
            more = BOOK.number("devices/let_through", "let_through_a2s", **(keys | {"curve": "C"}))
            assert more == pytest.approx(1.2 * energy, rel=0.02)


def test_ratings_are_those_of_the_preferred_numbers():
    """ISO 3, the series R10: tenths of a decade, rounded; 2 %. What is made besides is named."""
    besides = {"breaker": {6, 13, 45}, "service fuse": {30, 45, 60}}
    for keys, rating in cells("devices/standard_ratings", "rating_a"):
        if rating not in besides.get(keys["family"], ()):
            series = 10 ** (round(10 * log10(rating)) / 10)
            assert rating == pytest.approx(series, rel=0.02), keys


def test_ratings_that_are_made_are_those_the_loop_tables_print():
    """All but 13 A of breakers (a page for the 18th edition), and fuses of every standard."""
    made = {"breaker": ("devices/breaker_loop_limits",), "service fuse": (
        "devices/fuse_loop_limits",)}  # fmt: skip
    for family, tables in made.items():
        printed = {keys["rating_a"] for name in tables for keys, _ in cells(name, "limit_ohm")}
        ratings = {
            rating
            for keys, rating in cells("devices/standard_ratings", "rating_a")
            if keys["family"] == family
        }
        assert ratings - printed <= {13}
        assert len(ratings) == {"breaker": 14, "service fuse": 7}[family]


def test_tests_of_residual_current_devices_are_at_the_current_they_name():
    said = {"rated": 1, "twice": 2, "five times": 5}
    for keys, times in cells("devices/rcd_times", "multiple"):
        assert times == next(n for words, n in said.items() if words in keys["test"])


# --- earths ------------------------------------------------------------------------------------


def test_main_bonds_are_half_the_earthing_conductor_in_sizes_that_are_made():
    """544.1.1, brought up to the next size made, at the largest conductor of each row."""
    made = (6, 10, 16, 25)
    for keys, bond in cells("earthing/main_bonding", "bond_mm2"):
        if keys["earthing"] != "TN-C-S":
            largest = min(keys["by_mm2"], 1000.0)
            half = bond_of_earthing_conductor(largest, 6.0, 25.0)
            assert bond == min(size for size in made if size >= half)


@pytest.mark.parametrize(
    ("line", "printed"),
    [(1.5, 1.5), (6, 6), (16, 16), (25, 16), (35, 16), (50, 25), (70, 35)],
)
def test_protective_conductors_are_as_a_panel_builder_tables_them(line, printed):
    """IEC 60364-5-54, as a panel builder's page tables it."""
    share, least = protective_share(BOOK, line), protective_least_mm2(BOOK, line)
    assert max(share * line, least) == printed


def test_tails_carry_the_fuse_they_are_for():
    """Single cores clipped direct (Table 4D1A) carry the rating claimed, and no size less does."""
    made = [keys["tails_mm2"] for keys, _ in cells("earthing/tails", "fuse_a")]
    for keys, fuse in cells("earthing/tails", "fuse_a"):
        size = keys["tails_mm2"]
        carried = tabulated_capacity(BOOK, CableFamily.SINGLES, "C", 2, size)
        assert 0.7 * carried < fuse <= carried
        earth = BOOK.number("earthing/tails", "earthing_conductor_mm2", tails_mm2=size)
        assert earth == (size if size <= 16 else 16), "Table 54.7"
    assert made == sorted(made)


@pytest.mark.parametrize("family", ["sheathed", "armoured", "five-core"])
def test_an_earth_among_the_cores_is_as_large_as_they_are(family):
    for keys, earth in cells("conductors/earth_cores", "earth_core_mm2"):
        if keys["family"] == family:
            assert earth == keys["size_mm2"]


@pytest.mark.parametrize("plastic", ["thermosetting", "thermoplastic"])
def test_armour_grows_with_the_cable_inside_it(plastic):
    """Cables of more or larger cores are no thinner, so neither is their armour."""
    areas = list(cells(f"conductors/armour_{plastic}", "area_mm2"))
    for keys, area in areas:
        for others, larger in areas:
            if all(others[key] >= keys[key] for key in keys):
                assert larger >= area, (keys, others)


def test_armour_over_thicker_insulation_is_no_less():
    """Insulation at 70 °C is the thicker, and the cable with it, by up to half."""
    for keys, area in cells("conductors/armour_thermosetting", "area_mm2"):
        over = BOOK.number("conductors/armour_thermoplastic", "area_mm2", **keys)
        assert area <= over <= 1.75 * area, keys


def test_a_rod_may_stand_at_the_voltage_its_device_is_printed_for():
    """1667 Ω at 30 mA (an engineers' forum) is 50 V."""
    (volts,) = (value for _, value in cells("earthing/touch_voltage", "volts_v"))
    assert round(volts / 0.03) == BOOK.number("devices/rod_limits", "limit_ohm", rated_ma=30)


# --- constants ---------------------------------------------------------------------------------


def test_coefficients_are_those_of_the_metals():
    """1/(β + 20) of IEC 60228 and IEC 60364-5-54: 234.5 °C for copper, 228 °C for aluminium."""
    for metal, beta in (("copper", 234.5), ("aluminium", 228)):
        coefficient = BOOK.number("conductors/coefficients", "per_kelvin", metal=metal)
        assert coefficient == pytest.approx(1 / (beta + 20), abs=0.000006)


def test_the_window_and_the_frequency_are_shares_of_nominal():
    """±10 % of 230 V, ±1 % of 50 Hz (the regulations of 2002, as two places tell them)."""
    volts = {keys["item"]: value for keys, value in cells("charging/open_pen_voltages", "volts_v")}
    assert (volts["window low"], volts["window high"]) == pytest.approx((0.9 * 230, 1.1 * 230))
    hertz = {keys["item"]: value for keys, value in cells("supply/frequency", "hertz")}
    assert hertz["lowest"] == pytest.approx(0.99 * hertz["nominal"])
    assert hertz["highest"] == pytest.approx(1.01 * hertz["nominal"])
    assert hertz["nominal"] == 50


def test_the_voltage_factors_give_printed_limits():
    """0.97 Ω for 45 A of type B (an electricians' forum); 253 V is 1.1 times 230 V."""
    factor = {keys["item"]: value for keys, value in cells("supply/voltage_factors", "factor")}
    assert round(factor["least"] * 230 / (5 * 45), 2) == 0.97
    assert factor["greatest"] * 230 == pytest.approx(
        BOOK.number("supply/voltages", "volts_v", item="highest")
    )


def test_powers_of_generation_are_amperes_at_230_volts():
    """16 A a phase is 3.68 and 11.04 kW, 32 A 7.36 kW (operators' pages)."""
    power = {tuple(keys.values()): value for keys, value in cells("network/powers", "power_kw")}
    amperes = {keys["item"]: value for keys, value in cells("network/currents", "current_a")}
    told, fast = amperes["generation told after"], amperes["generation fast track"]
    assert power["told after", 1] == pytest.approx(told * 0.23)
    assert power["told after", 3] == pytest.approx(3 * told * 0.23)
    assert power["fast track", 1] == pytest.approx(fast * 0.23)


def test_a_small_generator_lets_go_outside_the_supply_s_own_limits():
    """230 V +14 %, +19 % and −20 %, as EREC G98 has them of the nominal voltage."""
    volts = {keys["item"]: value for keys, value in cells("network/protection_volts", "volts_v")}
    shares = (1.14, 1.19, 0.8)
    found = [volts[i] for i in ("over-voltage, stage 1", "over-voltage, stage 2", "under-voltage")]
    assert found == pytest.approx([230 * share for share in shares])


def test_the_parts_of_a_meter_point_number_make_it_whole():
    """21 digits on the bill, 13 of them the core (an encyclopaedia and a library's source)."""
    digits = {"upper": 0.0, "lower": 0.0}
    for each in table("network/meter_point_parts").rows.values():
        digits[each.texts["line"]] += each.numbers["digits"]
    assert digits == {"upper": 8, "lower": 13}


def test_the_pilot_starts_as_test_instruments_show_it():
    """1 kHz and ±12 V (a test-instrument maker's manual), which the states without a car are."""
    source = {column: next(cells("charging/pilot_source", column))[1]
              for column in ("frequency_hz", "amplitude_v", "series_ohm")}  # fmt: skip
    assert source["frequency_hz"] == 1000
    volts = {keys["state"]: value for keys, value in cells("charging/pilot_states", "pilot_v")}
    assert (volts["A"], volts["F"], volts["E"]) == (
        source["amplitude_v"], -source["amplitude_v"], 0
    )  # fmt: skip
    load = {keys["state"]: value for keys, value in cells("charging/pilot_loads", "load_ohm")}
    beside = {"C": 1300, "D": 270}  # a module maker's manual: R3 beside R2
    for state, ohms in beside.items():
        assert load[state] == pytest.approx(ohms * load["B"] / (ohms + load["B"]), abs=0.51)
    assert source["series_ohm"] == pytest.approx(load["B"] * (12 - 9) / (9 - 0.7), rel=0.02)


def test_a_device_is_as_wide_as_it_has_poles():
    """One module a pole (DIN 43880); what may be wider says so."""
    poles = {"one pole": 1, "two poles": 2, "three poles": 3, "four poles": 4}
    for keys, modules in cells("boards/module_widths", "modules"):
        most = BOOK.number("boards/module_widths", "modules_most", **keys)
        if keys["device"].startswith(("breaker, ", "main switch", "residual current switch, ")):
            assert modules == most == next(n for w, n in poles.items() if w in keys["device"])
        assert modules <= most <= 2 * modules


def test_days_that_a_rule_counts_in_hours_months_or_weeks():
    """72 hours of a breach; a month at its shortest; twelve months; eight weeks."""
    days = {keys["event"]: n for keys, n in cells("network/deadlines", "days")}
    assert days["data breach told"] * 24 == 72
    assert days["access request"] == min(28, 30, 31)
    assert days["not told of cancelling"] == 365
    assert days["building control completion"] == 8 * 7
    assert days["refund"] == days["cancellation"]
    assert days["third-party certificate"] == days["building certificate"]


def test_a_cable_is_used_no_hotter_than_its_insulation_and_its_terminals_bear():
    """70 °C thermoplastic, 90 °C thermosetting (BS 7671, Table 52.1); terminals 70 °C."""
    for keys, insulation in cells("conductors/families", "insulation_c"):
        thermoplastic = keys["family"] in {"flat", "singles"}
        assert insulation == (70 if thermoplastic else 90)
        assert BOOK.number("conductors/families", "used_at_c", **keys) == min(insulation, 70)
