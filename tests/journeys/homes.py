"""What the journeys share: a shipped home, read, folded and worked out."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from functools import cache
from pathlib import Path

from ampwright.firm.basis import Basis, load_basis
from ampwright.foundations.answers import Is, Value
from ampwright.options.documented import Documented, documented
from ampwright.options.open_homes import documented_home, homes_of
from ampwright.options.outlook import Outlook, outlook
from ampwright.options.search import Option
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
        chosen = option or self.best
        kept = self.basis.documented()
        likely = {
            key: max(zip(weights, values, strict=True), key=lambda pair: pair[0])[1]
            for (key, values), weights in zip(
                self.outlook.homes.open.items(), self.outlook.homes.chances.values(), strict=True
            )
        }
        home, reader = documented_home(self.folded, kept, likely, chosen.choice.remedies)
        return documented(home, work_of(kept), chosen.choice), reader


def journey(
    name: str,
    *,
    profile: str = "neutral",
    change: Callable[[Iterable[Record]], Iterable[Record]] = lambda records: records,
) -> Journey:
    """Work a shipped home out, after changing its records."""
    folded = as_found(change(records_of(name)))
    rests = basis(profile)
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
