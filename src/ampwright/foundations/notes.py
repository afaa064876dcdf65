"""What is only told beside a result: it holds no number to a limit, and nothing fails by it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import wraps
from typing import Any, NamedTuple, ParamSpec, cast

from .source import Place
from .working import Worked

P = ParamSpec("P")


@dataclass(frozen=True, slots=True, eq=False)
class Telling:
    """Something that may have to be told: its name, where it is written, how it is put.

    ``caution`` marks what somebody must see to.
    """

    name: str
    place: Place
    caution: bool
    body: Callable[..., str]

    @property
    def id(self) -> str:
        """The last part of the name."""
        return self.name.rpartition(".")[2]


class Note(NamedTuple):
    """Something told of a home, and what it is about; put in words when somebody reads it."""

    telling: Telling
    about: tuple[Any, ...] = ()

    @property
    def says(self) -> str:
        """The sentence."""
        return self.telling.body(*self.about)

    @property
    def caution(self) -> str:
        """The sentence, where somebody must see to it; else empty."""
        return self.says if self.telling.caution else ""

    @property
    def numbers(self) -> tuple[float, ...]:
        """The numbers with a working that it is about."""
        return tuple(each for each in self.about if isinstance(each, Worked))


def tells(
    place: Place, *, caution: bool = False
) -> Callable[[Callable[P, str]], Callable[P, Note]]:
    """Declare how something is told; the call keeps what it is about and writes nothing yet.

    ``caution`` where somebody must see to it: it then stands among the cautions of an option.
    The declaration is reachable as ``.telling`` and the body as ``.plain``. What can fail is a
    requirement instead.

    Examples
    --------
    >>> @tells(Place("example"), caution=True)
    ... def look_at(what: str) -> str:
    ...     return f"look at {what} before anything is fixed"
    >>> look_at("the joists").caution
    'look at the joists before anything is fixed'
    """

    def decorate(body: Callable[P, str]) -> Callable[P, Note]:
        telling = Telling(f"{body.__module__}.{body.__qualname__}", place, caution, body)

        @wraps(body)
        def note(*args: P.args, **kwargs: P.kwargs) -> Note:
            return Note(telling, (*args, *kwargs.values()))

        made = cast(Any, note)
        made.plain = body
        made.telling = telling
        return note

    return decorate
