"""Two names for one thing: what two people noted apart, joined by a ``same_as`` record."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from ampwright.foundations.answers import Answer, Is, OneOf, Value
from ampwright.foundations.errors import NotFoundError

from .layout import slot, things_in
from .records import Record
from .register import Fact


@dataclass(frozen=True, slots=True)
class Renamed:
    """For the path of each thing known under a second name, the path it is kept under."""

    kept: Mapping[str, str]

    def key(self, key: str) -> str:
        """Return the key of the same fact under the name that is kept."""
        if not self.kept:
            return key
        for path, thing in things_in(key):
            name = f"{path}.{thing}"
            if name in self.kept:
                return self.key(self.kept[name] + key.removeprefix(name))
        return key

    def record(self, record: Record, fact: Fact) -> Record:
        """Return a record that names things by the names that are kept."""
        if not self.kept or not fact.refers or record.answer is None:
            return record
        return replace(record, answer=self._answer(record.answer, fact, record.key))

    def _answer(self, answer: Answer, fact: Fact, key: str) -> Answer:
        match answer:
            case Is(value):
                return Is(self._ids(value, fact, key))
            case OneOf(values):
                kept = tuple(dict.fromkeys(self._ids(each, fact, key) for each in values))
                return OneOf(kept) if len(kept) > 1 else Is(kept[0])
            case _:
                return answer

    def _ids(self, value: Value, fact: Fact, key: str) -> Value:
        """Return the ids in an answer, each as it is kept."""
        beside = "".join(f"{path}.{thing}." for path, thing in things_in(key)[:1])
        places = [place for name in fact.refers.split() for place in (name, f"{beside}{name}")]
        return " ".join(self._id(word, places) for word in str(value).split(" "))

    def _id(self, thing: str, places: Iterable[str]) -> str:
        for place in places:
            if f"{place}.{thing}" in self.kept:
                return self.kept[f"{place}.{thing}"].removeprefix(f"{place}.")
        return thing


def renamed(records: Iterable[Record]) -> Renamed:
    """Return which things are one, from the ``same_as`` records among current ones.

    The name that others point to is kept; if several or none are pointed to, the first by
    letter. So the order of the records does not matter.
    """
    links = [link for record in records if (link := _link(record))]
    groups: dict[str, set[str]] = {}
    for one, other in links:
        joined = groups.get(one, {one}) | groups.get(other, {other})
        for each in joined:
            groups[each] = joined
    pointing = {one for one, other in links if one != other}
    kept: dict[str, str] = {}
    for path, group in groups.items():
        keep = min(group - pointing or group)
        if path != keep:
            kept[path] = keep
    return Renamed(kept)


def _link(record: Record) -> tuple[str, str] | None:
    """Return the paths of two things that a record calls one, if both may exist."""
    path = record.key.removesuffix(".same_as")
    if path == record.key or not isinstance(record.answer, Is):
        return None
    other = f"{path.rpartition('.')[0]}.{record.answer.value}"
    try:
        slot(f"{other}.present")
    except NotFoundError:
        return None
    return path, other
