"""Known, open or blank; present or absent; plain or with a source."""

from __future__ import annotations

import pickle
from datetime import date

import pytest

from ampwright.foundations.answers import Between, CannotSay, OneOf, Unanswered
from ampwright.foundations.source import Evidence, Said, SetBy
from ampwright.foundations.working import Worked, working
from ampwright.survey.folding import as_found
from ampwright.survey.layout import build_home, frozen, plan_of
from ampwright.survey.states import MOST_POINTS
from ampwright.survey.views import PlainReader, documented, plain_home, possible

from .saying import say, stated

FUSE = "supply.main_fuse_a"


def test_not_asked_with_shares_is_open_and_says_so():
    state = stated()[FUSE]
    assert state.values == (60.0, 80.0, 100.0)
    assert sum(state.chances) == pytest.approx(1.0)
    assert state.said.evidence is Evidence.ASSUMED
    assert "memory" in state.said.how


def test_not_asked_with_a_stand_in_is_known_and_assumed():
    state = stated()["supply.lowest_v"]
    assert state.values == (216.2,)
    assert state.said.evidence is Evidence.ASSUMED
    assert "Electricity Safety" in state.said.how


def test_not_asked_with_neither_is_blank():
    for key in ("supply.meter_point", "loads.all_listed", "legs.a.length_m", "property.kind"):
        assert stated(say("legs.a.how", "tray"))[key].values == ()


def test_one_of_a_few_keeps_their_shares():
    state = stated(say(FUSE, OneOf((60.0, 100.0))))[FUSE]
    assert state.values == (60.0, 100.0)
    assert state.chances == pytest.approx((0.25 / 0.63, 0.38 / 0.63))


def test_a_rare_answer_weighs_as_the_least_likely_listed():
    state = stated(say(FUSE, OneOf((45.0, 80.0))))[FUSE]
    assert state.chances == pytest.approx((0.25 / 0.62, 0.37 / 0.62))


def test_an_answer_of_weight_nought_is_dropped_unless_nothing_else_is_left():
    key = "boards.main.front_rcd"
    assert stated(say(key, OneOf(("AC", "F"))))[key].values == ("AC",)
    assert stated(say(key, OneOf(("B", "F"))))[key].chances == (0.5, 0.5)
    assert "B" not in stated(say("boards.main.place", "hall"))[key].values


def test_a_range_is_cut_at_both_ends_and_at_each_step():
    key = "legs.a.length_m"
    state = stated(say(key, Between(4.5, 8.0)))[key]
    assert state.values == (4.5, 5.0, 6.0, 7.0, 8.0)
    assert state.span == (4.5, 8.0)
    long = stated(say(key, Between(1.0, 300.0)))[key].values
    assert (long[0], long[-1]) == (1.0, 300.0)
    assert len(long) <= MOST_POINTS
    ends = stated(say("services.gas.extraneous_ohm", Between(1.0, 9.0)))
    assert ends["services.gas.extraneous_ohm"].values == (1.0, 9.0)
    counted = stated(say("property.storeys", Between(1, 3)))["property.storeys"].values
    assert counted == (1, 2, 3)
    assert all(type(each) is int for each in counted)


def test_a_standard_thing_is_open_until_the_list_is_whole():
    shower = "loads.shower.present"
    assert stated()[shower].chances == pytest.approx((0.55, 0.45))
    whole = say("loads.all_listed", True, by="Jess", on=date(2026, 11, 24))
    absent = stated(whole)[shower]
    assert absent.values == (False,)
    assert str(absent.said) == (
        f"{shower}: told, not on the list, and the list is whole, Jess, 24 Nov 2026"
    )
    assert stated(say("loads.all_listed", False))[shower].is_open
    assert stated(whole, say(shower, CannotSay("upstairs")))[shower].is_open
    assert stated(whole, say(shower, OneOf((True, False))))[shower].is_open


def test_a_thing_that_is_described_is_there():
    there = stated(say("loads.shower.amps_a", 37.0, "seen"), say("loads.all_listed", True))
    assert there["loads.shower.present"].values == (True,)
    assert there["loads.shower.present"].said.evidence is Evidence.SEEN
    assert there["loads.shower.kind"].values == ("instant shower",)
    assert there["loads.shower.kind"].said.evidence is Evidence.SEEN


def test_a_thing_that_is_absent_has_no_facts():
    gone = stated(say("loads.kiln.amps_a", 13.0), say("loads.kiln.present", False, "seen"))
    assert gone["loads.kiln.amps_a"].values == ()
    assert gone["loads.kiln.present"].values == (False,)


def test_a_standard_thing_has_shares_of_its_own():
    assert stated()["loads.shower.amps_a"].values == (32.6, 37.0, 41.3, 45.7)
    assert stated()["services.gas.pipe_at_entry"].chances == pytest.approx((0.95, 0.05))


def test_all_listed_raises_until_somebody_says_yes():
    def loads(*rows):
        home = as_found(rows)
        found = possible(home)
        return plain_home(found.known, home.ids).loads

    kiln = say("loads.kiln.amps_a", 13.0)
    for rows in ([kiln], [kiln, say("loads.all_listed", False)]):
        with pytest.raises(Unanswered) as caught:
            loads(*rows).listed()
        assert caught.value.key == "loads.all_listed"
    whole = loads(kiln, say("loads.all_listed", True))
    assert [(thing, load.amps_a) for thing, load in whole.listed()] == [("kiln", 13.0)]
    assert len(whole) == len(whole.ids) == 9
    assert "kiln" in whole
    assert whole["kiln"].amps_a == 13.0
    with pytest.raises(Unanswered) as caught:
        whole["pump"]
    assert caught.value.key == "loads.pump.present"


def test_things_come_in_an_order_that_is_always_the_same():
    rows = [say(f"boards.main.outlets.{way}.blank", True) for way in ("10-L1", "2-L1", "1-L3")]
    home = as_found(rows)
    view = plain_home(possible(home).known, home.ids)
    assert view.boards["main"].outlets.ids == ("1-L3", "2-L1", "10-L1")


def test_nothing_is_read_while_a_view_is_built():
    def read(key):
        raise AssertionError(key)

    home = build_home(read, {"boards": ("main",)})
    with pytest.raises(AssertionError, match=FUSE):
        _ = home.supply.main_fuse_a
    assert plan_of(frozen({"boards": ("main",)})) is plan_of(frozen({"boards": ("main",)}))


def test_plain_values_are_plain():
    home = as_found([say(FUSE, 80.0), say("supply.phases", 3)])
    view = build_home(PlainReader(possible(home).known), home.ids)
    assert type(view.supply.main_fuse_a) is float
    assert type(view.supply.phases) is int
    with pytest.raises(Unanswered) as caught:
        _ = view.supply.looped
    assert caught.value.key == "supply.looped"


def test_documented_numbers_carry_their_records_and_reads_are_noted():
    home = as_found([
        say("supply.ze_ohm", 0.18, "measured", on=date(2026, 11, 24)),
        say("supply.earthing", "TN-C-S", "seen"),
        say("supply.phases", 1),
    ])  # fmt: skip
    view, reader = documented(home, fixed={FUSE: 80.0})
    ze = view.supply.ze_ohm
    assert isinstance(ze, Worked)
    assert ze is view.supply.ze_ohm
    assert [str(line) for line in working(ze)] == [
        "Ze = 0.18 Ω  [supply.ze_ohm: measured, tester 2, Ro, 24 Nov 2026]"
    ]
    assert view.supply.earthing == "TN-C-S"
    assert type(view.supply.phases) is int
    assert view.supply.main_fuse_a == 80.0
    assert list(reader.reads) == [
        "supply.ze_ohm", "supply.earthing", "supply.phases", FUSE,
    ]  # fmt: skip
    assert str(reader.reads["supply.earthing"]) == "Earthing arrangement: TN-C-S (seen, photo 2)"
    taken = reader.reads[FUSE].source
    assert isinstance(taken, Said)
    assert taken.how.startswith("taken, one of 60, 80 or 100; not asked")


def test_documented_reads_only_what_is_settled():
    view, reader = documented(as_found([say("legs.a.how", "tray")]))
    for read in (lambda: view.supply.looped, lambda: view.legs["a"].length_m):
        with pytest.raises(Unanswered):
            read()
    assert not reader.reads


def test_a_range_taken_one_way_says_between_what():
    key = "legs.a.length_m"
    view, _ = documented(as_found([say(key, Between(5.0, 9.0))]), fixed={key: 7.0})
    assert "taken, between 5 and 9" in str(next(working(view.legs["a"].length_m)))


def test_work_in_the_price_lies_over_what_was_found():
    home = as_found([say("services.water.bond_mm2", 0.0, "seen")])
    because = SetBy("this design", "bond the water")
    view, reader = documented(home, changes={"services.water.bond_mm2": (10.0, because)})
    assert view.services["water"].bond_mm2 == 10.0
    assert reader.reads["services.water.bond_mm2"].source == because
    assert "this design: bond the water" in str(reader.reads["services.water.bond_mm2"])


def test_a_documented_home_reads_the_same_numbers_as_a_plain_one():
    home = as_found([say("supply.ze_ohm", 0.21, "measured"), say("loads.kiln.amps_a", 13.0)])
    known = possible(home).known
    view, reader = documented(home)
    plain = plain_home(known, home.ids)
    for key, value in known.items():
        assert reader.read(key) == value == plain._read(key)
    assert view.loads["kiln"].amps_a == plain.loads["kiln"].amps_a
    assert pickle.loads(pickle.dumps(view.supply.ze_ohm)) == 0.21
