"""What the journeys share: a shipped home, read, folded and worked out."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, fields, replace
from datetime import date
from functools import cache
from itertools import product
from pathlib import Path
from typing import Any

from ampwright.firm.basis import Basis, load_basis
from ampwright.foundations.answers import Is, Missing, Value
from ampwright.options.choices import Choice
from ampwright.options.documented import Documented, documented
from ampwright.options.open_homes import documented_home, homes_of
from ampwright.options.outlook import Outlook, outlook
from ampwright.options.search import Option
from ampwright.options.supply_side import Decision
from ampwright.options.work import Design, work_of
from ampwright.survey.folding import FoldedHome, as_found
from ampwright.survey.homefile import read
from ampwright.survey.records import Record
from ampwright.survey.views import DocumentedReader

EXAMPLES = Path(__file__).parents[2] / "examples"
DESIGNED = date(2026, 11, 25)


@cache
def basis(profile: str = "neutral") -> Basis:
    return load_basis(design_date=DESIGNED, profile=profile)


@cache
def records_of(name: str) -> tuple[Record, ...]:
    return tuple(read((EXAMPLES / f"{name}.toml").read_text("utf-8"), name).records)


@dataclass(frozen=True, eq=False)
class Journey:
    """One home on one basis, from its records to everything that follows."""

    folded: FoldedHome
    basis: Basis
    outlook: Outlook

    @property
    def best(self) -> Option[Design]:
        found = self.outlook.recommended
        assert found is not None, "no option holds in this home"
        return found

    def worked(self, option: Option[Design] | None = None) -> tuple[Documented, DocumentedReader]:
        """Run an option of a complete home on numbers that keep their working."""
        return self._documented((option or self.best).choice)

    def tried(self, **wanted: Any) -> Documented:
        """Run one choice, sound or not: the best one with what is wanted otherwise.

        A point is named by its id, remedies by theirs among those that some option needs.
        """
        points = {each.id: each for each in self.basis.catalogue.points}
        remedies = {r.slug: r for option in self.options() for r in option.choice.remedies}
        if "point" in wanted:
            wanted["point"] = points[wanted["point"]]
        if "remedies" in wanted:
            wanted["remedies"] = tuple(remedies[slug] for slug in wanted["remedies"])
        return self._documented(replace(self.best.choice, **wanted))[0]

    def _documented(self, choice: Choice) -> tuple[Documented, DocumentedReader]:
        kept = self.basis.documented()
        likely = {
            key: max(zip(weights, values, strict=True), key=lambda pair: pair[0])[1]
            for (key, values), weights in zip(
                self.outlook.homes.open.items(), self.outlook.homes.chances.values(), strict=True
            )
        }
        home, reader = documented_home(self.folded, kept, likely, choice.remedies)
        return documented(home, work_of(kept), choice), reader

    def options(self, **wanted: Any) -> list[Option[Design]]:
        """Return the options that chose what is wanted, the best first.

        ``phases`` and ``detection`` are those of the point, ``point`` its id. ``remedies``
        names all of them by their slugs, ``needing`` and ``sparing`` one each, there and not.
        """
        return [o for o in self.outlook.ranking.options if _chose(o.choice, wanted)]

    def each(self, *keys: str) -> Iterator[dict[str, Value]]:
        """Yield every combination of the values that some open facts can have."""
        still = self.outlook.homes.open
        for values in product(*(still[key] for key in keys)):
            yield dict(zip(keys, values, strict=True))

    def refused(self, says: str) -> list[tuple[Any, Any]]:
        """Return the distinct pairs of number and limit of a requirement that ruled choices out."""
        return list(
            dict.fromkeys(
                (check.actual, check.limit)
                for rejection in self.outlook.searched.rejections
                for check in rejection.checks
                if check.requirement.says == says
            )
        )


def figures(worked: Documented) -> dict[str, Any]:
    """Return what the answer sheets give figures for, of one option run in one home.

    Where a supply has three lines, the demands are tuples of them.
    """
    design = worked.design
    demand, carried = design.supply.demand, design.supply.carried
    one = len(demand.now_a) == 1
    return {
        "demand now": demand.now_a[0] if one else demand.now_a,
        "demand with the point": carried.with_point_a[0] if one else carried.with_point_a,
        "left for the car": carried.car_a,
        "volts lost": design.cable.drop_v,
        "share lost": design.cable.drop_share,
        "lowest volts at the point": design.volts.lowest_v,
        "loop": design.cable.zs_ohm,
        "kWh a year": design.use.need.kwh_a_year,
        "kWh a day": design.use.need.kwh_a_day,
        "hours a day": design.use.charging.hours_a_day,
        "pounds a year at night": design.use.cost.at_night_p / 100,
        "pounds a year by day": design.use.cost.by_day_p / 100,
    }


def works(option: Option[Design]) -> set[str]:
    """Return the work that an option needs, by slug."""
    return {remedy.slug for remedy in option.choice.remedies}


def decisions(option: Option[Design]) -> set[Decision]:
    """Return every decision an option can come to, over all that is still open."""
    spread: Any = option.design.decision
    return {value for value in spread.values if not isinstance(value, Missing)}


def _chose(choice: Choice, wanted: Mapping[str, Any]) -> bool:
    names = {field.name for field in fields(Choice)}
    has: dict[str, Any] = {name: getattr(choice, name) for name in names}
    has |= {"phases": choice.point.phases, "detection": choice.point.detection.value}
    has |= {"point": choice.point.id, "remedies": {remedy.slug for remedy in choice.remedies}}
    needing, sparing = wanted.get("needing"), wanted.get("sparing")
    plain = {name: wanted[name] for name in wanted if name not in ("needing", "sparing")}
    return (
        all(has[name] == value for name, value in plain.items())
        and (needing is None or needing in has["remedies"])
        and (sparing is None or sparing not in has["remedies"])
    )


@cache
def told(name: str, profile: str) -> Journey:
    """Work a shipped home out as its file tells it; once in a run of the tests."""
    return _journey(records_of(name), basis(profile))


def journey(
    name: str,
    *,
    profile: str = "neutral",
    change: Callable[[Iterable[Record]], Iterable[Record]] | None = None,
) -> Journey:
    """Work a shipped home out, after changing its records."""
    if change is None:
        return told(name, profile)
    return _journey(change(records_of(name)), basis(profile))


def _journey(records: Iterable[Record], rests: Basis) -> Journey:
    folded = as_found(records)
    return Journey(folded, rests, outlook(homes_of(folded, rests), rests))


def without(*keys: str) -> Callable[[Iterable[Record]], Iterable[Record]]:
    """Leave out every record of some keys."""
    return lambda records: [record for record in records if record.key not in keys]


def saying(
    answers: Mapping[str, Value],
) -> Callable[[Iterable[Record]], Iterable[Record]]:
    """Answer some keys otherwise; each must have been answered once."""

    def change(records: Iterable[Record]) -> list[Record]:
        found = []
        for record in records:
            if record.key in answers:
                answer = Is(answers[record.key])
                record = replace(record, answer=answer, id=f"changed-{record.key}")
            found.append(record)
        assert set(answers) <= {record.key for record in found}
        return found

    return change


def adding(answers: Mapping[str, Value]) -> Callable[[Iterable[Record]], Iterable[Record]]:
    """Answer keys that nobody has spoken of yet."""

    def change(records: Iterable[Record]) -> list[Record]:
        found = list(records)
        assert not set(answers) & {record.key for record in found}
        pattern = replace(found[0], how="added")
        return found + [
            replace(pattern, key=key, answer=Is(value), id=f"added-{key.replace('.', '-')}")
            for key, value in answers.items()
        ]

    return change
