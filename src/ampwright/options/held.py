"""What a result can be in the homes where an option holds, and the most usual such home."""

from __future__ import annotations

from typing import Any

import numpy as np

from ampwright.foundations.answers import Missing, Value

from .cells import Cells
from .search import Option
from .spread import Spread


def held_values(option: Option[Any], spread: Spread[Any]) -> tuple[Any, ...]:
    """Return the distinct values of a result in the homes where the option does not fail.

    ``Missing`` stands among them where facts are blank. Of homes too many to go through, those
    that were drawn.
    """
    cells = Cells.over(option.sound.homes, (*spread.facts, *option.sound.facts))
    index, severity = np.broadcast_arrays(cells.at(spread), option.sound.at(cells))
    return tuple(spread.values[i] for i in np.unique(index[severity < 2]).tolist())


def known_values(option: Option[Any], spread: Spread[Any]) -> tuple[Any, ...]:
    """Return the distinct values that can be worked out, in the homes where the option holds."""
    return tuple(v for v in held_values(option, spread) if not isinstance(v, Missing))


def most_usual_home(option: Option[Any]) -> dict[str, Value]:
    """Return a value for each open fact: the likeliest of the homes where the option is soundest.

    Facts that do not bear on whether the option holds take the value most common beside these.
    """
    return option.sound.most_usual_home()
