"""What stands at the head and the foot of every answer: the basis, and what an option is called."""

from __future__ import annotations

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import Lead
from ampwright.foundations.answers import Is
from ampwright.options.choices import Choice
from ampwright.supply.hours import ANY
from ampwright.survey.folding import FoldedHome

from .shapes import BasisHead
from .words import all_of, amount

SHORT_DIGEST = 12
NOMINAL_V = 230
PREPOSITIONS = (
    "at", "by", "on", "in", "beside", "near", "under", "next", "behind", "inside", "outside",
    "against", "between", "over",
)  # fmt: skip
EARTHS = {
    "pme": "the home's own earth",
    "rod": "a rod of its own",
    "house rod": "the home's own rod",
}
"""What each choice of earthing is called."""
CONFIRM = "Confirm every figure that carries a decision against the edition in force."


def basis_head(basis: Basis) -> BasisHead:
    """Return what an answer was worked to."""
    profile = basis.profile
    return BasisHead(
        design_date=basis.design_date,
        profile=profile.id,
        profile_words=profile.words,
        edition=f"In force: {basis.edition}. {CONFIRM}",
        digest=basis.digest[:SHORT_DIGEST],
    )


def power(choice: Choice) -> str:
    """Return the power of a point at its setting, at nominal voltage."""
    return amount(choice.point.phases * choice.setting_a * NOMINAL_V / 1000, "kW", 1)


def spot(home: FoldedHome, place: str) -> str:
    """Return where a place is, as people of the house say it.

    Names such as *by the front window* stand as they are; others get an *at*.
    """
    name = text_at(home, f"places.{place}.name") or place
    return name if name.split()[0].casefold() in PREPOSITIONS else f"at {name}"


def option_name(home: FoldedHome, choice: Choice) -> str:
    """Return what an option is called in a heading: its power, place and what is special."""
    special = ["socket" if choice.point.lead is Lead.SOCKET else "own lead"]
    special += ["house limit"] if choice.house_limit else []
    special += ["cheap hours only"] if choice.hours != ANY else []
    special += ["rod of its own"] if choice.earthing == "rod" else []
    return f"{power(choice)} {spot(home, choice.place)}, {all_of(special)}"


def feed(tap: str) -> str:
    """Say what a point is fed from."""
    return "the meter" if tap == "meter" else f"board {tap}"


def text_at(folded: FoldedHome, key: str) -> str:
    """Return the one answer to a fact in words, or nothing."""
    answer = folded.at(key).answer
    return str(answer.value) if isinstance(answer, Is) else ""
