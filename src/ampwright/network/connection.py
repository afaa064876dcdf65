"""Whether the operator is told after, asked first or the work stops, and whose reading decides."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

from ampwright.demand.moving import Move, remedy_of
from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ChargePoint
from ampwright.firm.operators import OperatorProfile
from ampwright.foundations.checks import Check, Outcome, verdict
from ampwright.foundations.quantity import Amperes, Count
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.rulings import Ruled
from ampwright.foundations.source import Place
from ampwright.foundations.stages import Made
from ampwright.foundations.working import given
from ampwright.standards.network.connection import (
    TELL_OR_ASK,
    DemandCase,
    Step,
    within_threshold,
)
from ampwright.standards.wiring.adequacy import service_sound
from ampwright.supply.declared import Declared, declared_demand
from ampwright.supply.headroom import Headroom, carried_with, room, worst
from ampwright.survey.home import Home

COUNTS_LIMITER: Final = "operator.counts_limiter"
COUNTS_SETTING: Final = "operator.counts_setting"
"""Keys of what an operator has not said; each is an open fact like any other."""


@dataclass(frozen=True, slots=True)
class Connection:
    """What comes before the work as far as the network goes, and on what that rests.

    ``row`` is the test that decided; ``also`` are those that would hit after it. ``within`` is
    the test of the threshold with both numbers: it decides between telling and asking alone.
    ``sound`` is the test of the service: what is dangerous stops the work, what is doubtful is
    asked about.
    ``margin_a`` is what the declared demand could still grow before the operator must be asked
    (below nought: by how much it is over), ``None`` without a figure. ``needs_limit`` says that
    without the house limit the outcome would be another, or the supply would not carry it.
    ``rests_on`` names the readings of the operator that the outcome turns on.
    """

    outcome: Step
    row: int
    words: str
    place: Place
    also: tuple[str, ...]
    sound: Check
    within: Check
    declared_a: Amperes
    margin_a: Amperes | None
    needs_limit: bool
    rests_on: tuple[str, ...]
    notice_days: Count


@dataclass(frozen=True, slots=True)
class Case:
    """One point in one home, ready to be judged by either reading of the operator."""

    home: Home
    basis: Basis
    now_a: tuple[Amperes, ...]
    point: ChargePoint
    setting_a: Amperes
    volts_within_law: bool

    def carried_again(self, carried: Headroom) -> Made[Headroom]:
        """Return what the supply carries by this demand, under the same limit if there was one."""
        return carried_with(
            self.home, self.basis, self.now_a, carried.rating_a, self.point, self.setting_a,
            carried.limit_a is not None, carried.sharing,
        )  # fmt: skip

    def declared(self, carried: Headroom, reading: Reading) -> Declared:
        """Return the demand as the operator counts it."""
        made = declared_demand(
            self.home, self.basis, self.now_a, carried, self.point, self.setting_a,
            reading.limiter, reading.setting,
        )  # fmt: skip
        return made.out

    def hits(self, carried: Headroom, declared: Declared) -> tuple[Ruled[Step], ...]:
        """Return every test that hits, the one that decides first."""
        return TELL_OR_ASK.hits(self.judged(carried, declared))

    def judged(self, carried: Headroom, declared: Declared) -> DemandCase:
        """Return what the tests look at."""
        supply, profile = self.home.supply, self.basis.profile
        return DemandCase(
            danger=supply.condition == "dangerous",
            new_service=self.point.phases > supply.phases,
            unmetered=not supply.metered,
            fuse_known=supply.fuse_label_readable,
            condition=supply.condition,
            looped=supply.looped,
            adequacy_shown=self.volts_within_law,
            demand_a=worst(carried.carried_a),
            declared_a=declared.most_a,
            fuse_a=supply.main_fuse_a,
            dwelling=True,
            threshold_a=declared.threshold_a,
            device_compliant=self.point.unconditional,
            device_a=declared.point_a,
            largest_device_a=profile.largest_device_a,
            several_devices=bool(carried.sharing.points),
            several_premises=False,
            other_criteria_met=True,
        )

    def outcome(self, carried: Headroom, reading: Reading) -> Step:
        """Return what the tests come to."""
        return TELL_OR_ASK.decide(self.judged(carried, self.declared(carried, reading))).outcome


@dataclass(frozen=True, slots=True)
class Reading:
    """What the operator takes as the demand: a limiter's figure, a point's locked setting."""

    limiter: bool
    setting: bool

    def words(self, profile: OperatorProfile) -> dict[str, str]:
        """Return each part of the reading in words with whose it is, by its key."""
        return {
            COUNTS_LIMITER: f"the operator {_takes(self.limiter)} a limiter's figure as the demand"
            f"; {_whose(profile, profile.counts_limiter, self.limiter)}",
            COUNTS_SETTING: f"the operator {_takes(self.setting)} the locked setting of a point "
            "rather than its largest size; "
            f"{_whose(profile, profile.counts_setting, self.setting)}",
        }


def _takes(yes: bool) -> str:
    return "takes" if yes else "does not take"


def _whose(profile: OperatorProfile, said: bool | None, taken: bool) -> str:
    """Return whose reading of the rule it is."""
    if said is taken:
        return f"so the operator profile {profile.id} has it: confirm with the operator"
    if said is None:
        return "the operator's own word, on record or still to be asked for"
    return f"the operator's own word, against its profile {profile.id}"


def connection(
    home: Home,
    basis: Basis,
    now_a: tuple[Amperes, ...],
    carried: Headroom,
    point: ChargePoint,
    setting_a: Amperes,
    volts_within_law: bool,
    counts_limiter: bool,
    counts_setting: bool,
    moves: tuple[Move, ...],
) -> Made[Connection]:
    """Return what the operators' tests come to for one point on the supply of a home.

    ``counts_limiter`` and ``counts_setting`` say what the operator takes as the demand. One
    point in one home, or one more under one limit with those there: programmes of several homes,
    and what can export, have tests of their own.
    The first of ``moves`` that turns asking into telling is offered.
    """
    case = Case(home, basis, now_a, point, setting_a, volts_within_law)
    reading = Reading(counts_limiter, counts_setting)
    declared = case.declared(carried, reading)
    first, *rest = case.hits(carried, declared)
    threshold_a = declared.threshold_a
    out = Connection(
        outcome=first.outcome,
        row=first.row,
        words=first.words,
        place=first.place,
        also=tuple(each.words for each in rest if each.outcome is not Step.TELL_AFTER),
        sound=service_sound(home.supply.condition),
        within=within_threshold(declared.most_a, threshold_a),
        declared_a=declared.most_a,
        margin_a=None if threshold_a is None else room(threshold_a, declared.most_a),
        needs_limit=_needs_limit(case, carried, reading, first.outcome),
        rests_on=_rests_on(case, carried, reading, first.outcome),
        notice_days=notice_days(basis),
    )
    return Made(out, (), _offers(case, carried, reading, first.outcome, moves))


def _offers(
    case: Case, carried: Headroom, reading: Reading, outcome: Step, moves: tuple[Move, ...]
) -> tuple[Remedy, ...]:
    """Return the move of one load after which the operator need only be told, if there is one."""
    if outcome is not Step.ASK_FIRST:
        return ()
    for move in moves:
        moved = replace(case, now_a=move.now_a)
        again = moved.carried_again(carried)
        tells = moved.outcome(again.out, reading) is Step.TELL_AFTER
        if tells and verdict(again.checks) is Outcome.PASS:
            return (remedy_of(move, case.basis),)
    return ()


def notice_days(basis: Basis) -> Count:
    """Return the days within which the operator is told, as its profile gives them."""
    days, sources = basis.profile.notice_days, basis.profile.sources
    return given("d", days, "days", sources["notice_days"]) if basis.keeps_working else days


def _needs_limit(case: Case, carried: Headroom, reading: Reading, outcome: Step) -> bool:
    """Say whether the house limit is what makes the outcome, or the fit, what it is."""
    if carried.limit_a is None:
        return False
    alone = replace(carried.sharing, points=())
    free = replace(carried, carried_a=carried.with_point_a, limit_a=None, sharing=alone)
    return not carried.fits_unlimited or case.outcome(free, reading) is not outcome


def _rests_on(case: Case, carried: Headroom, reading: Reading, outcome: Step) -> tuple[str, ...]:
    """Return the parts of the operator's reading that the outcome turns on, in words."""
    turned: dict[str, Reading] = {}
    if carried.limit_a is not None:
        turned[COUNTS_LIMITER] = replace(reading, limiter=not reading.limiter)
    if case.setting_a < case.point.max_a:
        turned[COUNTS_SETTING] = replace(reading, setting=not reading.setting)
    words = reading.words(case.basis.profile)
    return tuple(
        words[key] for key, other in turned.items() if case.outcome(carried, other) is not outcome
    )
