"""Every home that may be, gone through at once: whole where they are few, else drawn."""
from __future__ import annotations

from typing import Any, Final
import numpy as np

from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Missing
from ampwright.foundations.checks import Outcome, verdict
from ampwright.foundations.quantity import Amperes
from ampwright.supply.hours import ANY

from ..choices import METER, Choice, Choosing, Menu, Pick
from ..homes import Homes
from ..laying import changes_of, mended
from ..menu import EARTHS, families
from ..runs import Cut, Exploring
from ..spread import NOWHERE, Spread, trimmed
from ..truth import truth_of
from ..search import Option
from ..work import work_of
from .drawn import HOME, DrawnHomes, DrawnLifter

SETTINGS: Final = tuple(Amperes(a) for a in (32.0, 16.0, 10.0))

def draw(homes: Homes, count: int, seed: int) -> DrawnHomes:
    chance = np.random.default_rng(seed)
    numbers = {}
    for key, values in homes.open.items():
        p = np.asarray(homes.chances[key]); p = p / p.sum()
        # even ranks, shuffled: each value as often as its share says
        at = (chance.permutation(count) + chance.random(count)) / count
        numbers[key] = np.minimum(np.searchsorted(np.cumsum(p), at), len(values) - 1)
    return DrawnHomes(homes.known, {HOME: tuple(range(count))}, {HOME: (1 / count,) * count}, homes.build, among=homes.open, numbers=numbers)

def coarse_menu(homes: DrawnHomes, lifter, basis: Basis) -> Menu:
    def may(key):
        if key in homes.known: return (homes.known[key],)
        return homes.among.get(key, ())
    phases, systems = may("supply.phases"), may("supply.earthing")
    points = tuple({(p.phases,p.detection): p for p in reversed(basis.catalogue.points) if p.phases <= max(phases, default=1)}.values())[::-1]
    view = lifter.view
    there = lambda path, ids: tuple(i for i in ids if may(f"{path}.{i}.present") != (False,))
    return {
        "earthing": tuple(dict.fromkeys(e for s in systems for e in EARTHS[s])),
        "tap": (*there("boards", view.boards.ids), METER),
        "place": there("places", view.places.ids),
        "point": points,
        "setting_a": SETTINGS,
        "house_limit": (False, True),
        "hours": (ANY,),
        "family": families(basis, points),
    }

class Mending:
    def __init__(self, homes, basis):
        self.homes, self.basis = homes, basis
        self.base = DrawnLifter(homes)
        self.work = work_of(basis)
        nothing = Spread.of(homes, (), NOWHERE, ((),))
        self.lifters = {nothing: self.base}
        self.nothing = nothing
        self.menu = coarse_menu(homes, self.base, basis)
        self.options = []
        self.runs = 0
    def lifter(self, laid, parent):
        if laid not in self.lifters:
            self.lifters[laid] = DrawnLifter(self.homes, changes_of(laid), (parent, self.base))
        return self.lifters[laid]
    def run(self):
        waiting = [({}, self.nothing)]
        while waiting:
            made, laid = waiting.pop()
            for round in range(6):
                lifter = self.lifters[laid]
                choice = Choosing(made, laid.part("(work)", lambda w: w))
                run = Exploring(lifter, choice)
                pick = None; cut=False; design=None
                self.runs += 1
                try:
                    design = self.work(run, choice.as_choice)
                except Pick as p:
                    pick = p
                except Cut:
                    cut = True
                more = self.more(run.ran, laid)
                if more is None: break
                self.lifter(more, lifter); laid = more
            if pick:
                waiting += (({**made, pick.dimension: v}, laid) for v in reversed(self.menu[pick.dimension]))
            elif not cut:
                sound = truth_of(self.homes, [r.outcome for r in run.ran])
                if not sound.never:
                    self.options.append(Option(Choice(**made), design, tuple(run.ran), sound, laid))
    def more(self, ran, laid):
        n = len(self.homes.open[HOME])
        want = [dict() for _ in range(n)]
        hopeless = np.zeros(n, bool)
        before = [laid.values[i] for i in np.broadcast_to(laid.index, (n,))]
        for r in ran:
            index = np.broadcast_to(r.made.index, (n,))
            for number, value in enumerate(r.made.values):
                if isinstance(value, Missing) or verdict(value.checks) is not Outcome.FAIL: continue
                sets = [s for s in mended(value)][len(value.offers):]
                cells = np.flatnonzero(index == number)
                if not sets:
                    hopeless[cells] = True
                    continue
                for c in cells:
                    for rem in sets[0]: want[c].setdefault(rem.slug, rem)
        new = {}; idx = np.zeros(n, np.int64); changed=False
        for c in range(n):
            have = {x.slug for x in before[c]}
            add = [r for s, r in want[c].items() if s not in have]
            w = before[c]
            if add and not hopeless[c] and len(add)+len(have) <= 6:
                w = tuple(sorted((*w, *add), key=lambda r: r.slug)); changed=True
            idx[c] = new.setdefault(w, len(new))
        if not changed: return None
        return trimmed(self.homes, (HOME,), idx, tuple(new))

def explored(homes, basis):
    m = Mending(homes, basis)
    m.run()
    return m
