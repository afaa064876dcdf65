"""Firm rules may only tighten."""

from __future__ import annotations

import math
from importlib.resources import files

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ampwright.firm.rules import (
    LOOSEST,
    TIGHTER,
    FirmRules,
    Tighter,
    is_tighter,
    read_limits,
    read_rules,
    tighten,
)
from ampwright.foundations.errors import BadFileError

DATA = files("ampwright.firm") / "data"
LIMITS = read_limits("limits", (DATA / "limits.csv").read_text(encoding="utf-8"))
SHIPPED = (DATA / "rules.csv").read_text(encoding="utf-8")

amounts = st.floats(0, 1000, allow_nan=False)
any_rules = st.builds(
    FirmRules,
    **{name: st.booleans() if way is Tighter.YES else amounts for name, way in TIGHTER.items()},
)


def looser(name: str, value: float, than: float) -> bool:
    if TIGHTER[name] is Tighter.LOWER:
        return value > than
    return value < than


class TestTighten:
    @given(any_rules, any_rules)
    def test_never_loosens_either(self, base, more):
        made = tighten(base, more)
        for name in TIGHTER:
            for of in (base, more):
                assert not looser(name, getattr(made, name), getattr(of, name))

    @given(any_rules, any_rules)
    def test_takes_every_value_from_one_of_the_two(self, base, more):
        made = tighten(base, more)
        for name in TIGHTER:
            assert getattr(made, name) in (getattr(base, name), getattr(more, name))

    @given(any_rules, any_rules, any_rules)
    def test_order_of_head_office_and_branches_does_not_matter(self, a, b, c):
        assert tighten(tighten(a, b), c) == tighten(a, tighten(c, b))

    def test_keeps_the_reason_of_the_value_that_stands(self):
        strict = SHIPPED.replace("drop_share,0.05", "drop_share,0.04").replace(
            "the standard's own figure for other than lights", "our branch is careful"
        )
        head, branch = (read_rules("rules", each, LIMITS) for each in (SHIPPED, strict))
        made = tighten(head, branch)
        assert made.drop_share == 0.04
        assert "our branch is careful" in str(made.sources["drop_share"])
        assert made.sources["aim_rod_ohm"] == head.sources["aim_rod_ohm"]


class TestReading:
    def test_shipped_rules_read(self):
        rules = read_rules("rules", SHIPPED, LIMITS)
        assert rules.voltage_margin_v == 3.0
        assert (rules.stable_rod_ohm, rules.aim_rod_ohm) == (200.0, 100.0)
        assert rules.watch_every_line is True

    def test_a_rule_without_a_law_has_no_limit(self):
        assert LIMITS.house_limit_a == math.inf
        assert LIMITS.least_point_mm2 == LOOSEST[Tighter.HIGHER]

    @pytest.mark.parametrize(
        ("was", "loose"),
        [("drop_share,0.05", "drop_share,0.06"), ("stable_rod_ohm,200", "stable_rod_ohm,201"),
         ("need_margin,1.25", "need_margin,0.9"), ("voltage_margin_v,3", "voltage_margin_v,-1")],
    )  # fmt: skip
    def test_looser_than_the_law_is_refused_with_its_line(self, was, loose):
        with pytest.raises(BadFileError, match=r"line \d+: .*nothing looser than.*tighten the law"):
            read_rules("own rules", SHIPPED.replace(was, loose), LIMITS)

    def test_at_the_law_is_accepted(self):
        made = read_rules(
            "own rules", SHIPPED.replace("voltage_margin_v,3", "voltage_margin_v,0"), LIMITS
        )
        assert made.voltage_margin_v == 0.0

    def test_a_missing_rule_is_named(self):
        lines = [line for line in SHIPPED.splitlines() if not line.startswith("need_margin")]
        with pytest.raises(BadFileError, match="also need_margin"):
            read_rules("own rules", "\n".join(lines), LIMITS)

    def test_an_unknown_rule_and_a_bad_number_are_both_reported(self):
        text = SHIPPED.replace("aim_rod_ohm,100", "aim_rods,100").replace("0.03", "3 %")
        with pytest.raises(BadFileError, match="2 problems") as found:
            read_rules("own rules", text, LIMITS)
        assert "a number" in str(found.value)

    def test_how_far_a_rule_is_trusted_must_be_one_of_the_words(self):
        with pytest.raises(BadFileError, match="trust is 'sure'; expected one of published"):
            read_rules("own rules", SHIPPED.replace(",memory,", ",sure,", 1), LIMITS)

    def test_is_tighter_looks_the_right_way(self):
        assert is_tighter("watch_every_line", True, False)
        assert not is_tighter("watch_every_line", False, True)
