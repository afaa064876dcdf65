"""Homes for the tests of this room: facts by key, plain or with their working."""

from __future__ import annotations

from collections import defaultdict
from datetime import date
from functools import cache

from ampwright.firm.basis import Basis, load_basis
from ampwright.foundations.answers import Unanswered
from ampwright.foundations.source import Evidence, Said
from ampwright.foundations.working import given
from ampwright.survey.home import Home
from ampwright.survey.layout import build_home, slot, things_in
from ampwright.survey.views import PlainReader


@cache
def basis() -> Basis:
    return load_basis(design_date=date(2026, 11, 25), profile="demo")


@cache
def documented_basis() -> Basis:
    return basis().documented()


class WorkedReader:
    """Gives numbers as leaves of a working, each with the key it was read from."""

    def __init__(self, values):
        self.values = values

    def read(self, key):
        if key not in self.values:
            raise Unanswered(key)
        value, fact = self.values[key], slot(key).fact
        if fact.kind is not float:
            return value
        return given(fact.symbol or key, float(value), fact.unit, Said(key, Evidence.SEEN))


def flat(facts, prefix="") -> dict:
    found = {}
    for name, value in facts.items():
        if isinstance(value, dict):
            found |= flat(value, f"{prefix}{name}.")
        else:
            found[f"{prefix}{name}"] = value
    return found


def completed(facts) -> dict:
    """Facts by key, with every thing that is described present and every list whole."""
    values = flat(facts)
    for key in tuple(values):
        for path, id_ in things_in(key):
            values.setdefault(f"{path}.{id_}.present", True)
            values.setdefault(f"{path}.all_listed", True)
    for path in ("services", "sources", "legs", "boards"):
        values.setdefault(f"{path}.all_listed", True)
    return values


def ids_in(values) -> dict:
    found = defaultdict(dict)
    for key in values:
        for path, id_ in things_in(key):
            found[path][id_] = None
    for path in ("services",):
        for id_ in ("water", "gas", "oil", "lpg", "structure", "other"):
            values.setdefault(f"{path}.{id_}.present", False)
    return {path: tuple(ids) for path, ids in found.items()}


def plain(facts) -> Home:
    values = completed(facts)
    return build_home(PlainReader(values), ids_in(values))


def worked(facts) -> Home:
    values = completed(facts)
    return build_home(WorkedReader(values), ids_in(values))


def changed(facts, **changes) -> dict:
    """The same facts with some changed; dots in a key are written as two underscores."""
    return flat(facts) | {key.replace("__", "."): value for key, value in changes.items()}


def without(facts, *keys) -> dict:
    return {key: value for key, value in flat(facts).items() if key not in keys}


def leg(start, end, metres, how, **more) -> dict:
    return {
        "from_place": start, "to_place": end, "length_m": metres, "how": how,
        "insulation_mm": 0.0, "ambient_c": 30.0, "grouped_with": 0, "wall_mm": 270.0, **more,
    }  # fmt: skip


BONDED = {"pipe_at_entry": "metal", "bond_mm2": 10.0, "bond_connected": True}
UNBONDED = {"pipe_at_entry": "metal", "bond_mm2": 0.0, "bond_connected": False,
            "bond_route_m": 9.0, "extraneous_ohm": 0.0}  # fmt: skip
PLASTIC = {"pipe_at_entry": "plastic"}


def board(**more) -> dict:
    return {
        "phases": 1, "case": "metal", "main_switch_a": 100.0, "rated_a": 100.0, "spare_ways": 2,
        "spare_behind_rcd": "none", "front_rcd": "none", "protection": "RCBOs",
        "surge_protection": True, "parts_sold": True, "from_meter_m": 1.5, **more,
    }  # fmt: skip


def supply(**more) -> dict:
    return {
        "phases": 1, "main_fuse_a": 80.0, "earthing": "TN-C-S", "earthing_confirmed": True,
        "ze_ohm": 0.18, "fault_current_ka": 1.3, "lowest_v": 216.2, "highest_v": 253.0,
        "tails_mm2": 25.0, "isolator": "two pole", "isolator_a": 100.0, **more,
    }  # fmt: skip


# The worked homes of the project, those parts that this room reads: a plain semi with its water
# bond cut off, one with solar and battery, a rod-earthed cottage, a three-phase yard, a weak rural
# line, and a house where half speed is enough.
PLACE = {"outdoors": True, "metal_within_m": 6.0, "on": "wall"}
SEMI = {
    "supply": supply(),
    "earthing": {"conductor_mm2": 16.0},
    "services": {"water": UNBONDED, "gas": BONDED},
    "boards": {"main": board()},
    "places": {"window": PLACE},
    "legs": {
        "plaster": leg("main", "inside", 7.0, "clipped inside"),
        "hole": leg("inside", "window", 1.0, "through wall"),
    },
}
SUNNY = {
    "supply": supply(ze_ohm=0.16, fault_current_ka=1.45),
    "earthing": {"conductor_mm2": 16.0},
    "services": {"water": PLASTIC, "gas": BONDED},
    "boards": {"main": board(from_meter_m=0.6)},
    "sources": {
        "sun": {"kind": "solar", "amps_a": 16.0, "board": "main", "sensor_at": "on the tails",
                "way_both_ways": True, "export_limited": False},
        "store": {"kind": "battery", "amps_a": 16.0, "board": "main",
                  "sensor_at": "on the tails", "way_both_ways": True, "backs_up": "nothing",
                  "holds_off_for_car": False, "export_limited": False},
    },
    "places": {"store": PLACE},
    "legs": {
        "inside": leg("meter", "wall", 1.8, "clipped inside"),
        "hole": leg("wall", "outside", 0.2, "through wall"),
        "outside": leg("outside", "store", 5.0, "clipped outside"),
    },
}  # fmt: skip
COTTAGE = {
    "supply": supply(earthing="TT", ze_ohm=182.0, fault_current_ka=0.68),
    "earthing": {"conductor_mm2": 10.0, "electrode_ohm": 182.0, "electrode_read_in": "November",
                 "second_electrode_room": True},
    "services": {"water": PLASTIC, "oil": BONDED},
    "boards": {"main": board(case="plastic", front_rcd="AC", front_rcd_ma=100.0,
                             front_delayed=True, protection="mixed", surge_protection=False)},
    "places": {"gate": PLACE},
    "legs": {
        "porch": leg("meter", "trench", 2.0, "clipped outside"),
        "garden": leg("trench", "gate", 15.0, "buried"),
        "from-board": leg("main", "trench", 2.0, "clipped outside"),
    },
}  # fmt: skip
YARD = {
    "supply": supply(phases=3, ze_ohm=0.19, fault_current_ka=1.21, fault_current_3ph_ka=2.3,
                     isolator="four pole"),
    "earthing": {"conductor_mm2": 16.0},
    "services": {"water": PLASTIC, "oil": BONDED},
    "boards": {"main": board(phases=3, main_switch_a=125.0, rated_a=125.0, spare_phases="L3 L3",
                             from_meter_m=45.0, feed_mm2=25.0, feed_kind="armoured",
                             feed_lies="buried", feed_device_a=80.0, parts_three_phase_rcbo=True)},
    "places": {"store": PLACE},
    "legs": {
        "hole": leg("meter", "store", 3.0, "through wall"),
        "trench": leg("main", "store", 48.0, "buried"),
    },
}  # fmt: skip
WEAK = {
    "supply": supply(main_fuse_a=60.0, ze_ohm=0.55, fault_current_ka=0.42, lowest_v=217.0,
                     tails_mm2=16.0),
    "earthing": {"conductor_mm2": 16.0},
    "services": {"water": PLASTIC, "oil": BONDED},
    "boards": {"main": board(from_meter_m=1.0)},
    "places": {"end-wall": PLACE},
    "legs": {
        "inside": leg("main", "wall", 3.6, "clipped inside"),
        "hole": leg("wall", "outside", 0.4, "through wall"),
        "outside": leg("outside", "end-wall", 10.0, "clipped outside"),
    },
}  # fmt: skip
HALF_SPEED = {
    "supply": supply(ze_ohm=0.21, fault_current_ka=1.1),
    "earthing": {"conductor_mm2": 16.0},
    "services": {"water": PLASTIC, "gas": BONDED},
    "boards": {"main": board(case="plastic", spare_ways=1, spare_behind_rcd="AC",
                             spare_behind_rcd_ma=30.0, protection="shared RCDs",
                             surge_protection=False)},
    "places": {"port": PLACE},
    "legs": {
        "out": leg("meter", "wall", 1.0, "clipped inside"),
        "along": leg("wall", "rise", 5.0, "clipped outside"),
        "rise": leg("rise", "port", 1.0, "clipped outside"),
    },
}  # fmt: skip


def outlets(rows: str) -> dict:
    """The outlets of a three-phase board, a row a way; a dot is blank."""
    return {
        f"{way}-L{line}": {"blank": name == "."}
        for way, row in enumerate(rows.split("\n"), 1)
        for line, name in enumerate(row.split(), 1)
    }


def fed(rows: str, slack: dict) -> tuple[dict, dict]:
    """The devices and circuits of such a board; what is named thrice fills a whole way."""
    where = defaultdict(list)
    for way, row in enumerate(rows.split("\n"), 1):
        for line, name in enumerate(row.split(), 1):
            where[name].append(f"{way}-L{line}")
    where.pop(".", None)
    devices = {name: {"outlets": " ".join(at), "poles": len(at)} for name, at in where.items()}
    circuits = {name: {"device": name, "slack_mm": float(slack.get(name, 0.0))} for name in devices}
    return devices, circuits


# The packed three-phase board of the worked homes: its map, and the spare length of its wires.
PACKED_MAP = """kiln kiln kiln
studio-sockets hob immersion
. house-sockets house-lights
studio-lights smoke-alarms house-sockets-two
extractor fridge boiler
bench-sockets . outside-lights
. towel-rail shed
alarm garage ."""
PACKED_SLACK = {"house-sockets": 60, "house-lights": 200, "bench-sockets": 250,
                "outside-lights": 300, "alarm": 220, "garage": 40}  # fmt: skip


def packed(rows=PACKED_MAP, slack=PACKED_SLACK, **more) -> dict:
    devices, circuits = fed(rows, slack)
    return {
        "supply": supply(phases=3, ze_ohm=0.17, fault_current_ka=1.35, fault_current_3ph_ka=2.6,
                         isolator="four pole"),
        "earthing": {"conductor_mm2": 16.0},
        "services": {"water": BONDED, "gas": BONDED},
        "boards": {"main": board(
            phases=3, main_switch_a=125.0, rated_a=125.0, spare_ways=4, from_meter_m=3.0,
            spare_phases="L1 L2 L1 L3", parts_three_phase_rcbo=False, way_pitch_mm=27.0,
            outlets=outlets(rows), devices=devices, circuits=circuits, **more,
        )},
        "places": {"wall": PLACE},
        "legs": {
            "trunking": leg("main", "inside", 9.0, "trunking"),
            "hole": leg("inside", "outside", 1.0, "through wall"),
            "outside": leg("outside", "wall", 2.0, "clipped outside"),
        },
    }  # fmt: skip


PACKED = packed()
