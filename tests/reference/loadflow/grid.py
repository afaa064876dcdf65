"""Homes put to power-grid-model, a general-purpose load-flow library, used here and nowhere else.

The library knows three phases and the ground, no neutral of its own. Its ground is taken as the
home's own star point, the main earth terminal; whatever lies between that and the transformer's
star point is a return path. A return of resistance ``z`` adds three times ``z`` to the
zero-sequence impedance, which is exact for any three loads. A sound neutral, a broken one with an
electrode and one that floats differ in that one figure. The library solves the network by nodal
admittances, not by any formula of ours.
"""

from __future__ import annotations

from cmath import rect
from dataclasses import dataclass
from math import acos, sqrt, tan

import numpy as np
from power_grid_model import (
    ComponentType,
    DatasetType,
    FaultPhase,
    FaultType,
    LoadGenType,
    PowerGridModel,
    ShortCircuitVoltageScaling,
    initialize_array,
)

U0 = 230.0
FLOATING_OHM = 1e7
"""A return path that carries nothing worth naming: 23 µA at 230 V."""
NO_OHM = 1e-7
IDEAL_VA = 1e18
"""Short-circuit power of a source that nothing here moves."""


@dataclass(frozen=True)
class Leg:
    """A stretch of line: impedance of each phase and of the return, in ohms."""

    line: complex
    back: complex


@dataclass(frozen=True)
class Load:
    """Loads of one node: amperes a phase at 230 V and the power factor, lagging."""

    amps: tuple[float, float, float]
    cos_phi: float = 1.0
    kind: LoadGenType = LoadGenType.const_impedance


@dataclass(frozen=True)
class Flow:
    """What the library found at the end of the last leg: phase to star point, and currents."""

    volts: tuple[complex, complex, complex]
    sent: tuple[float, float, float]
    star: complex
    """Of the home's star point, against the transformer's."""


def flow(legs, loads, volts=U0):
    """Solve a string of legs with a load at the end of each."""
    count = len(legs)
    grid = {
        ComponentType.node: nodes(count + 1, volts),
        ComponentType.line: lines(legs),
        ComponentType.source: source(),
        ComponentType.asym_load: asym_loads(loads, volts),
    }
    found = PowerGridModel(grid).calculate_power_flow(symmetric=False, error_tolerance=1e-12)
    node, line = found[ComponentType.node], found[ComponentType.line]
    at = [node["u"][spot] * np.exp(1j * node["u_angle"][spot]) for spot in (0, count)]
    return Flow(
        volts=tuple(complex(each) for each in at[1]),
        sent=tuple(float(each) for each in line["i_from"][-1]),
        star=complex((at[0] - at[1]).sum() / 3),
    )


def fault(legs, kind, volts=U0, scaling=ShortCircuitVoltageScaling.maximum):
    """Return the current of a dead short at the end of the legs, in amperes.

    ``kind`` is a fault type of the library; its voltage factors for low voltage are those of
    IEC 60909, 0.95 and 1.10.
    """
    count = len(legs)
    one = initialize_array(DatasetType.input, ComponentType.fault, 1)
    one["id"], one["status"], one["fault_object"] = [900], [1], [count + 1]
    one["fault_type"], one["fault_phase"] = [kind], [FaultPhase.default_value]
    one["r_f"], one["x_f"] = [0.0], [0.0]
    grid = {
        ComponentType.node: nodes(count + 1, volts),
        ComponentType.line: lines(legs),
        ComponentType.source: source(),
        ComponentType.fault: one,
    }
    found = PowerGridModel(grid).calculate_short_circuit(
        calculation_method="iec60909", short_circuit_voltage_scaling=scaling
    )
    return float(found[ComponentType.fault]["i_f"].max())


TO_EARTH = FaultType.single_phase_to_ground
BETWEEN_TWO = FaultType.two_phase
BETWEEN_THREE = FaultType.three_phase
LEAST = ShortCircuitVoltageScaling.minimum
MOST = ShortCircuitVoltageScaling.maximum


def nodes(count, volts):
    made = initialize_array(DatasetType.input, ComponentType.node, count)
    made["id"] = range(1, count + 1)
    made["u_rated"] = volts * sqrt(3)
    return made


def lines(legs):
    made = initialize_array(DatasetType.input, ComponentType.line, len(legs))
    made["id"] = [100 + spot for spot in range(len(legs))]
    made["from_node"] = range(1, len(legs) + 1)
    made["to_node"] = range(2, len(legs) + 2)
    made["from_status"] = made["to_status"] = 1
    made["r1"] = [max(leg.line.real, NO_OHM) for leg in legs]
    made["x1"] = [leg.line.imag for leg in legs]
    made["r0"] = [max((leg.line + 3 * leg.back).real, NO_OHM) for leg in legs]
    made["x0"] = [(leg.line + 3 * leg.back).imag for leg in legs]
    for none in ("c1", "tan1", "c0", "tan0"):
        made[none] = 0.0
    made["i_n"] = 1000.0
    return made


def source():
    made = initialize_array(DatasetType.input, ComponentType.source, 1)
    made["id"], made["node"], made["status"], made["u_ref"] = [200], [1], [1], [1.0]
    made["sk"], made["rx_ratio"], made["z01_ratio"] = [IDEAL_VA], [1.0], [1.0]
    return made


def asym_loads(loads, volts):
    made = initialize_array(DatasetType.input, ComponentType.asym_load, len(loads))
    made["id"] = [300 + spot for spot in range(len(loads))]
    made["node"] = range(2, len(loads) + 2)
    made["status"] = 1
    made["type"] = [load.kind for load in loads]
    watts = np.array([[amps * volts * load.cos_phi for amps in load.amps] for load in loads])
    made["p_specified"] = watts
    made["q_specified"] = watts * np.array([[tan(acos(load.cos_phi))] for load in loads])
    return made


def ohms(magnitude, angle=0.0):
    """Return an impedance from its size and angle."""
    return rect(magnitude, angle)
