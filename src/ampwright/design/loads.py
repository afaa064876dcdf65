"""The loads of one kind, without asking after those that are always of another."""

from __future__ import annotations

from collections.abc import Iterator

from ampwright.survey.home import Home
from ampwright.survey.home_loads import STANDARD_LOADS
from ampwright.survey.if_said import if_said


def loads_of(home: Home, kind: str) -> Iterator[str]:
    """Yield the ids of the loads of a kind that are there, as far as they are listed."""
    for id_ in home.loads.ids:
        standard = STANDARD_LOADS.get(id_)
        if standard is not None and standard.implies.get("kind") != kind:
            continue
        load = home.loads[id_]
        if load.present and if_said(lambda load=load: load.kind, "") == kind:  # type: ignore[misc]
            yield id_
