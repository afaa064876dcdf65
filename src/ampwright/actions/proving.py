"""What an instrument proves on the day the work is done, in words."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from ampwright.design.on_the_day import OnTheDay, ToProve

from .design_run import DesignRun
from .shapes import Prove
from .words import amount

LETS_GO: Final = "the car falls to its least or stops, each time"


def to_prove(run: DesignRun) -> tuple[Prove, ...]:
    """Return what is proved of a design on the day, in the order of the tests."""
    return tuple(proof for stage in run.stages for proof in proofs_in(stage.run.out))


def proofs_in(out: object) -> Iterator[Prove]:
    """Yield the proofs that a stage lists: the readings to expect first, then what is held to."""
    if isinstance(out, OnTheDay):
        yield Prove(
            "line and protective conductor together, dead",
            f"about {amount(out.r1r2_ohm, 'Ω')} at 20 °C, {amount(out.r1r2_cold_ohm, 'Ω')} at "
            "10 °C",
            "read from end to end before anything is switched on",
            "the design of this option",
        )
        yield from map(in_words, out.each)


def in_words(proof: ToProve) -> Prove:
    """Return one proof in words."""
    clause, limit = proof.clause, proof.limit
    held = f"{amount(limit, clause.unit)} at most" if limit is not None else LETS_GO
    return Prove(proof.what, held, proof.how, str(clause.place))
