"""Sources at the figures of the operators' forms, and one printed digit beyond."""

from __future__ import annotations

import pytest

from ampwright.network.generation import generation
from ampwright.standards.network.connection import Step

from ..demand.homes import home_of
from ..supply.given_basis import BASIS, LEAD
from .test_generation import decided, source, with_sources
from .test_operator import told


def limited(id_, amps, to_a):
    return source(id_, amps, told=False, export_limited=True, export_limit_a=to_a)


# Of two inverters of 16 A held to an export each, the two limits add up: at most 16 A together
# is of the small export, 16.1 A is not.
@pytest.mark.parametrize(("other_a", "same"), [(8.0, True), (8.1, False)])
def test_export_limits_add_up(other_a, same):
    both = decided(with_sources(limited("a", 16.0, 8.0), limited("b", 16.0, other_a)))
    small = decided(with_sources(limited("a", 16.0, 8.0), limited("b", 16.0, 8.0)))
    assert (both.step is small.step) is same


def test_one_limit_stands_by_itself():
    one = decided(with_sources(limited("a", 32.0, 16.0)))
    over = decided(with_sources(limited("a", 32.0, 16.1)))
    assert one.step is not over.step
    assert Step.TELL_AFTER not in (one.outcome, over.outcome)


# Lists of distributor ids: 10 is an area's own operator, 24 an independent one.
@pytest.mark.parametrize(
    ("number", "says"),
    [
        ("1012345678903", "tell the operator of Eastern England, number 10"),
        ("2412345678905", "an independent operator, number 24, runs the wires of this estate"),
    ],
)
def test_whom_a_meter_point_names(number, says):
    assert told(number).notes[0].says.startswith(says)


def test_without_a_number_nobody_is_named():
    assert told().notes[0].says.startswith("whom to tell: not known")


@pytest.mark.parametrize(
    ("facts", "words"),
    [
        (with_sources(), "nothing here can feed the network"),
        (with_sources(source("sun", 16.0)), "every source here was told of"),
    ],
)
def test_nothing_new_is_said_so(facts, words):
    assert decided(facts).words == words


def test_a_battery_that_charges_from_nothing_listed_is_not_said_to_be_counted():
    home = home_of(with_sources(source("store", 16.0, kind="battery")))
    (note,) = generation(home, BASIS, LEAD).notes
    assert note.caution.startswith("no load is listed for the battery's own charging")
