from __future__ import annotations

import pytest

from ampwright.design.circuit.voltage import volts_at_point
from ampwright.firm.catalogue import Detection

from .homes import SEMI, SUNNY, basis, plain


def at(low=230.0, high=240.0, read=True, high_read=True, drop=2.0,
       kind=Detection.VOLTS_WINDOW, facts=SEMI):  # fmt: skip
    return volts_at_point(plain(facts), basis(), kind, low, high, read, high_read, drop)


def checks(low=230.0, high=240.0, read=True, high_read=True, drop=2.0,
           kind=Detection.VOLTS_WINDOW, facts=SEMI):  # fmt: skip
    return at(low, high, read, high_read, drop, kind, facts).checks


@pytest.mark.parametrize(("low", "says"), [(212.0, "pass"), (211.9, "fail")])
def test_read_volts_keep_the_firms_margin(low, says):
    # 207 V and a margin of 3 V: 210 V at the point
    assert checks(low=low)[0].outcome.value == says


def test_on_a_stand_in_it_is_a_warning():
    (low,) = at(low=211.9, read=False).notes
    assert "210 V" in low.caution
    assert low.about == (pytest.approx(209.9), 210.0)
    (fine,) = at(low=216.2, read=False).notes
    assert not fine.caution
    assert "keeps 214.2 V" in fine.says


@pytest.mark.parametrize(("high", "read", "says"), [
    (250.0, True, "pass"), (250.1, True, "fail"), (253.0, False, "pass"),
])  # fmt: skip
def test_a_sunny_street_counts_too(high, read, says):
    assert checks(high=high, high_read=read)[1].outcome.value == says


def test_sun_on_the_roof_wants_the_noon_read():
    _, unread = checks(high_read=False, facts=SUNNY)
    assert unread.outcome.value == "pass"
    assert "read at noon" in unread.caution
    assert not checks(high=249.0, facts=SUNNY)[1].caution
    assert not checks(high_read=False)[1].caution


@pytest.mark.parametrize("kind", [Detection.EARTH_POTENTIAL, Detection.NONE])
def test_only_a_volts_window_minds(kind):
    made = at(low=190.0, read=False, kind=kind)
    assert made.checks == ()
    assert "low volts stay a matter for the operator" in made.notes[0].says


@pytest.mark.parametrize(("low", "says"), [(206.8, "pass"), (206.6, "fail")])
def test_any_point_has_the_volts_that_equipment_is_fed_with(low, says):
    # 216.2 V by law less 5 per cent of 230 V along the installation: 204.7 V
    (borne,) = checks(low=low, kind=Detection.EARTH_POTENTIAL)
    assert borne.outcome.value == says
    assert borne.limit == pytest.approx(204.7)
