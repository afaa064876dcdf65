"""Everything a firm works by on one day, frozen and passed as an argument."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property
from pathlib import Path
from typing import Final, TypeVar

from ampwright.foundations.source import SetBy, Source
from ampwright.tables.book import Book, Changed

from .asking import Asking, read_asking
from .catalogue import Cable, Catalogue, ChargePoint, Device, OriginDevice, SmallBoard, Task, by_id
from .driving import Driving, read_driving
from .files import OWN_CELLS, File, digest_of, read_files, table_cards
from .operators import OperatorProfile, read_operators
from .own_cells import read_own_cells
from .rates import Rates, read_rates
from .rows import columns_of, read_rows, with_sources
from .rules import FirmRules, read_limits, read_rules
from .together import GoesWith, read_together

EDITION: Final = "BS 7671:2018+A4:2026; recalled tables are of the A2:2022/A3:2024 text"

Cited = TypeVar(
    "Cited",
    ChargePoint, Device, SmallBoard, OriginDevice, Cable, Task, OperatorProfile, Driving, FirmRules,
)  # fmt: skip


@dataclass(frozen=True, eq=False)
class Basis:
    """What a design rests on beside the home: compared by identity, kept with every result.

    ``profile`` is the operator's unless the home names another; ``digest`` changes whenever any
    data file of the firm or any card of a published table does.
    """

    design_date: date
    edition: str
    profile: OperatorProfile
    operators: tuple[OperatorProfile, ...]
    rules: FirmRules
    catalogue: Catalogue
    tasks: tuple[Task, ...]
    rates: Rates
    driving: Driving
    asking: Asking
    together: tuple[GoesWith, ...]
    book: Book
    digest: str
    keeps_working: bool = False

    def __repr__(self) -> str:
        """Name the basis by its day, its operator profile and its digest."""
        return f"Basis({self.design_date}, {self.profile.id}, {self.digest[:8]})"

    def documented(self) -> Basis:
        """Return the same basis whose numbers carry their working."""
        if self.keeps_working:
            return self
        return replace(
            self,
            rules=with_sources(self.rules, self.rules.sources.__getitem__),
            rates=self.rates.documented(),
            driving=with_sources(self.driving, self.driving.sources.__getitem__),
            profile=with_sources(self.profile, self.profile.sources.__getitem__),
            book=self.book.documented(),
            keeps_working=True,
        )

    def cited(self, row: Cited) -> Cited:
        """Return a row as this basis gives it: with sources in a documented basis, else as is.

        Choices stay plain; a stage that computes with a row's numbers reads them from here.
        """
        if not self.keeps_working:
            return row
        sources: Mapping[str, Source] = getattr(row, "sources", {})
        if sources:
            return with_sources(row, sources.__getitem__)
        says = {each.name: each.says for each in columns_of(type(row))}
        id_ = getattr(row, "id", "")
        return with_sources(row, lambda name: SetBy("catalogue", f"{id_}, {says[name]}"))

    def for_operator(self, named: str) -> Basis:
        """Return the same basis by the profile that a home names; as it is, if nobody wrote it."""
        found = next((each for each in self.operators if each.id == named), self.profile)
        if found.id == self.profile.id:
            return self
        return replace(self, profile=self.cited(found))

    def task(self, id_: str) -> Task:
        """Return a task and its usual time; raises ``NotFoundError``."""
        return self._tasks.get(id_) or by_id("task", self.tasks, id_)

    @cached_property
    def _tasks(self) -> dict[str, Task]:
        return {task.id: task for task in self.tasks}

    def operator(self, id_: str) -> OperatorProfile:
        """Return an operator profile; raises ``NotFoundError``."""
        return by_id("operator profile", self.operators, id_)


def load_basis(*, design_date: date, profile: str, folder: Path | None = None) -> Basis:
    """Return the basis of a firm on a day.

    ``folder`` may hold a firm's own data files; each replaces the shipped one of its name,
    except the limits of the law; ``own_cells`` is laid over cells of the published tables.
    Raises ``BadFileError``, ``TableCardError``, ``InputError`` for a folder that is not there
    and, for an operator profile or a file that nobody knows, ``NotFoundError``.
    """
    files = read_files(folder)
    texts = {name: (file.title, file.text) for name, file in files.items()}
    operators = read_operators(*texts["operators"], on=design_date)
    catalogue, tasks = _catalogue(files), read_rows(*texts["tasks"], Task)
    return Basis(
        design_date=design_date,
        edition=EDITION,
        profile=by_id("operator profile", operators, profile),
        operators=operators,
        rules=read_rules(*texts["rules"], limits=read_limits(*texts["limits"])),
        catalogue=catalogue,
        tasks=tasks,
        rates=read_rates(texts.__getitem__, catalogue, (task.id for task in tasks)),
        driving=read_driving(*texts["driving"]),
        asking=read_asking(texts["asking"], texts["usual"], texts["longer"]),
        together=read_together(*texts["together"]),
        book=_book(texts),
        digest=digest_of([*(file.digest for file in files.values()), *table_cards()]),
    )


def own_cells(folder: Path | None) -> tuple[Changed, ...]:
    """Return the cells that a firm's own copies lay over; raises like ``load_basis``."""
    texts = {name: (file.title, file.text) for name, file in read_files(folder).items()}
    return tuple(_book(texts).changed())


def _book(texts: Mapping[str, tuple[str, str]]) -> Book:
    """Return the published tables, a firm's own cells laid over them."""
    return Book(overrides=read_own_cells(*texts[OWN_CELLS]) if OWN_CELLS in texts else ())


def _catalogue(files: Mapping[str, File]) -> Catalogue:
    """Return the equipment of every file."""

    def text(name: str) -> tuple[str, str]:
        return files[name].title, files[name].text

    return Catalogue(
        points=read_rows(*text("points"), ChargePoint),
        devices=read_rows(*text("devices"), Device),
        boards=read_rows(*text("boards"), SmallBoard),
        origin_devices=read_rows(*text("origin_devices"), OriginDevice),
        cables=read_rows(*text("cables"), Cable),
    )
