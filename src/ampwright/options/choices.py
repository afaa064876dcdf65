"""What a person decides about a charge point, and the tree those decisions form.

The tree is the order in which the work first asks for each choice: whatever is asked for
late is not multiplied into what was settled early.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields
from typing import Any, cast

from ampwright.firm.catalogue import ChargePoint
from ampwright.foundations.quantity import Amperes
from ampwright.foundations.remedies import Remedy
from ampwright.supply.hours import ANY
from ampwright.tables.capacity import CableFamily

METER = "meter"
"""The tap at the meter end; every other tap is the id of a board."""


@dataclass(frozen=True, slots=True)
class Choice:
    """One full set of choices.

    ``place`` and ``tap`` are ids of the home; ``house_limit`` says whether the whole house is
    held to the firm's figure; ``hours`` is ``any``, or ``night`` for the cheap hours alone;
    ``earthing`` is ``pme`` (the home's own earth), ``rod`` (an
    electrode for the point) or ``house rod``. ``remedies`` is no choice of its own: it is what
    was laid over the home so that the rest holds.
    """

    earthing: str
    tap: str
    place: str
    point: ChargePoint
    setting_a: Amperes
    house_limit: bool
    hours: str
    family: CableFamily
    remedies: tuple[Remedy, ...] = ()

    @property
    def slug(self) -> str:
        """The id of this choice: its parts in words, then its remedies; stable across edits."""
        limit = ("house-limit",) if self.house_limit else ()
        hours = (f"{self.hours}-only",) if self.hours != ANY else ()
        size = f"{self.point.phases}ph-{self.setting_a:g}a"
        parts = (self.place, self.tap, size, self.family.value, self.earthing, self.point.id)
        chosen = "/".join(part.replace(" ", "-") for part in (*parts, *limit, *hours))
        return "+".join((chosen, *(remedy.slug for remedy in self.remedies)))


DIMENSIONS = tuple(field.name for field in fields(Choice) if field.name != "remedies")

Menu = Mapping[str, tuple[Any, ...]]
"""The values of each dimension of ``Choice``."""


class Choosing:
    """A choice that is made step by step, as the work asks for one part of it after another.

    ``choose`` is called with the name of a part that is not among those ``made`` and must make
    it. ``asked`` lists the dimensions asked for so far, in order. ``remedies`` is the work laid
    over the homes; while exploring, in each home its own.
    """

    def __init__(
        self,
        made: Mapping[str, Any],
        remedies: Any = (),
        choose: Callable[[str], None] | None = None,
    ) -> None:
        self._made, self._choose = made, choose
        self.remedies = remedies
        self._asked: tuple[str, ...] = ()

    def __getattr__(self, name: str) -> Any:
        """Return what is chosen, and keep it: asked for again, it is found without this."""
        if name not in DIMENSIONS:
            raise AttributeError(name)
        if name not in self._made and self._choose is not None:
            self._choose(name)
        value = self._made[name]
        self._asked += (name,)
        setattr(self, name, value)
        return value

    @property
    def asked(self) -> tuple[str, ...]:
        """The dimensions asked for so far."""
        return self._asked

    @property
    def as_choice(self) -> Choice:
        """The same, typed as the choice it is becoming."""
        return cast(Choice, self)


def leaves_under(menu: Menu, made: Mapping[str, Any]) -> int:
    """Return how many full choices share what is already chosen."""
    count = 1
    for dimension in DIMENSIONS:
        if dimension not in made:
            count *= len(menu[dimension])
    return count
