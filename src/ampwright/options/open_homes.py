"""From what was said of a home to all the homes it may be, and to one of them documented."""

from __future__ import annotations

from collections.abc import Mapping

from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Value
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.source import SetBy
from ampwright.survey.folding import FoldedHome
from ampwright.survey.home import Home
from ampwright.survey.layout import build_home
from ampwright.survey.views import DocumentedReader, documented, possible

from .homes import Homes

READINGS = ("counts_limiter", "counts_setting")


def profiled(basis: Basis) -> dict[str, tuple[Value, SetBy]]:
    """Return the operator's own reading as facts; what it has not said stays open."""
    profile = basis.profile
    said = {f"operator.{name}": getattr(profile, name) for name in READINGS}
    source = SetBy(f"operator profile {profile.id}", profile.words)
    return {key: (value, source) for key, value in said.items() if value is not None}


def homes_of(folded: FoldedHome, basis: Basis) -> Homes:
    """Return every home that the answers allow, with how common each open value is.

    What the home's own records say of its operator stands before the profile.
    """
    facts = possible(folded)
    known = {key: value for key, (value, _) in profiled(basis).items()} | facts.known
    still = {key: domain for key, domain in facts.open.items() if key not in known}
    return Homes(
        known,
        {key: domain.values for key, domain in still.items()},
        {key: domain.chances for key, domain in still.items()},
        lambda reader: build_home(reader, folded.ids),
        together=basis.together,
        steps={key: domain.step for key, domain in still.items() if domain.step},
    )


def documented_home(
    folded: FoldedHome,
    basis: Basis,
    fixed: Mapping[str, Value],
    remedies: tuple[Remedy, ...] = (),
) -> tuple[Home, DocumentedReader]:
    """Return one of the homes with its sources, the work of some remedies laid over it."""
    known = possible(folded).known
    changes = {key: said for key, said in profiled(basis).items() if key not in known}
    for remedy in remedies:
        source = SetBy("work of this option", remedy.does)
        changes.update((key, (value, source)) for key, value in remedy.changes)
    return documented(folded, fixed, changes)
