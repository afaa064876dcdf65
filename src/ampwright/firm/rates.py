"""What a firm charges and what it pays: prices, hours, road, mark-ups, as data it edits."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import MISSING, dataclass, field, fields, replace
from enum import StrEnum
from fnmatch import fnmatchcase
from typing import Any, Final, Generic, TypeVar, cast, get_args, get_type_hints

from ampwright.foundations.errors import BadFileError, NotFoundError, Problem
from ampwright.foundations.money import Pence
from ampwright.foundations.quantity import (
    UNIT_OF,
    Hours,
    Miles,
    PencePerHour,
    PencePerMile,
    Share,
)
from ampwright.foundations.source import SetBy, Source, Trust
from ampwright.foundations.working import given

from .catalogue import Catalogue
from .rows import (
    BadCell,
    Column,
    cells_of,
    column,
    columns_of,
    read_cells,
    read_rows,
    with_sources,
)

N = TypeVar("N", bound=float)
T = TypeVar("T")
LEVELS: Final = ("low", "usual", "high")
SAME: Final = frozenset({"offcuts_share"})
"""Rates that do not turn on how the work goes."""


@dataclass(frozen=True, slots=True)
class Rate(Generic[N]):
    """One rate of the card: when all goes well, usually, and when it does not."""

    low: N
    usual: N
    high: N


@dataclass(frozen=True, slots=True)
class RateCard:
    """What the firm charges beside goods, before tax, and where each figure comes from."""

    labour_p_per_h: Rate[PencePerHour] = column("p", "an electrician's hour")
    mate_p_per_h: Rate[PencePerHour] = column("p", "a second person's hour")
    office_h: Rate[Hours] = column("t", "hours of the office for a job")
    revisit_h: Rate[Hours] = column("t", "hours of the office for a second visit")
    office_p_per_h: Rate[PencePerHour] = column("p", "an hour of the office")
    papers_p: Rate[Pence] = column("p", "certificate and notices of a job")
    travel_miles: Rate[Miles] = column("m", "miles there and back")
    travel_h: Rate[Hours] = column("t", "hours there and back")
    travel_p_per_mile: Rate[PencePerMile] = column("p", "a mile of the van")
    travel_p_per_h: Rate[PencePerHour] = column("p", "an hour on the road")
    overheads_share: Rate[Share] = column("a", "overheads on work, travel and office")
    point_markup_share: Rate[Share] = column("a", "mark-up on the point")
    materials_markup_share: Rate[Share] = column("a", "mark-up on other goods")
    offcuts_share: Rate[Share] = column("w", "offcuts of what is sold by the metre")
    sources: Mapping[str, Source] = field(compare=False, repr=False, default_factory=dict)

    def documented(self) -> RateCard:
        """Return the same card whose numbers carry their working."""
        changes: dict[str, Any] = {each.name: self._worked(each) for each in card_columns()}
        return replace(self, **changes)

    def _worked(self, of: Column) -> Rate[float]:
        """Return one rate as leaves with the source it has on the card."""
        rate: Rate[float] = getattr(self, of.name)
        levels = (getattr(rate, level) for level in LEVELS)
        return Rate(*(given(of.symbol, each, of.unit, self.sources[of.name]) for each in levels))


class SoldBy(StrEnum):
    """What the price of a good is for."""

    EACH = "each"
    METRE = "m"


@dataclass(frozen=True, slots=True)
class Good:
    """Something the firm buys: its trade price before tax; ``point`` marks a charge point."""

    id: str = column(says="id")
    does: str = column(says="what it is, in the words of an order")
    unit: SoldBy = column(says="what the price is for")
    low_p: Pence = column("p", "trade price at its lowest")
    usual_p: Pence = column("p", "usual trade price")
    high_p: Pence = column("p", "trade price at its highest")
    trust: Trust = column(says="how far the price is to be relied on")
    point: bool = False


@dataclass(frozen=True, slots=True)
class CataloguePrice:
    """The price of a row of the catalogue, by its id."""

    id: str = column(says="id in the catalogue")
    low_p: Pence = column("p", "trade price at its lowest")
    usual_p: Pence = column("p", "usual trade price")
    high_p: Pence = column("p", "trade price at its highest")
    trust: Trust = column(says="how far the price is to be relied on")


@dataclass(frozen=True, slots=True)
class Charge:
    """What others ask for work that only they may do; tax is within."""

    remedy: str = column(says="slug of the work item")
    does: str = column(says="what they do")
    low_p: Pence = column("p", "what they ask at the least")
    usual_p: Pence = column("p", "what they usually ask")
    high_p: Pence = column("p", "what they ask at the most")
    trust: Trust = column(says="how far the figure is to be relied on")


class Lines(StrEnum):
    """The charge points for which an item of a kit is wanted, by their lines."""

    ANY = "any"
    ONE = "1"
    THREE = "3"


LINES_OF: Final = {Lines.ANY: (1, 3), Lines.ONE: (1,), Lines.THREE: (3,)}


@dataclass(frozen=True, slots=True)
class KitItem:
    """What a piece of work takes: so much of a good each time, or for each metre."""

    work: str = column(says="task, or other work, that takes it")
    phases: Lines = column(says="lines of the point; any, 1 or 3")
    item: str = column(says="id of the good")
    quantity: float = column("n", "how much each time")


@dataclass(frozen=True, eq=False)
class Rates:
    """Every price and rate of a firm; compared by identity.

    ``kits`` are by work and lines of the point, ``charges`` by the slug of the work item.
    """

    card: RateCard
    goods: Mapping[str, Good]
    in_words: Mapping[str, Good]
    kits: Mapping[tuple[str, int], tuple[KitItem, ...]]
    charges: Mapping[str, Charge]
    keeps_working: bool = False

    def documented(self) -> Rates:
        """Return the same rates whose numbers carry their working."""
        if self.keeps_working:
            return self
        return replace(self, card=self.card.documented(), keeps_working=True)

    def good(self, id_: str) -> Good:
        """Return a good and its prices; raises ``NotFoundError`` where it has none."""
        if id_ not in self.goods:
            raise NotFoundError("price of a good", id_, tuple(self.goods))
        found = self.goods[id_]
        return self._cited(found, "price list", found.does, found.trust)

    def named(self, words: str) -> str:
        """Return the id of the good that a work item names in these words, empty for none.

        In the words of a material ``*`` stands for a size that does not change its price.
        """
        if words in self.in_words:
            return self.in_words[words].id
        patterns = (each for each in self.in_words.values() if "*" in each.does)
        return next((each.id for each in patterns if fnmatchcase(words, each.does)), "")

    def kit(self, work: str, phases: int) -> tuple[KitItem, ...]:
        """Return what a piece of work takes for a point of so many lines; often nothing."""
        found = self.kits.get((work, phases), ())
        if not self.keeps_working:
            return found
        return tuple(
            self._cited(each, "kits", f"{each.item} for {work}", Trust.COMMON_PRACTICE)
            for each in found
        )

    def charge(self, slug: str) -> Charge | None:
        """Return what others ask for a work item, or ``None`` where that is not known."""
        found = self.charges.get(slug)
        return self._cited(found, "charges of others", found.does, found.trust) if found else None

    def _cited(self, row: T, who: str, what: str, trust: Trust) -> T:
        """Return a row as these rates give it: with sources where workings are kept."""
        if not self.keeps_working:
            return row
        says = {each.name: each.says for each in columns_of(type(row))}
        return with_sources(row, lambda name: SetBy(who, f"{what}, {says[name]} ({trust.value})"))


def card_columns() -> tuple[Column, ...]:
    """Return the rates of the card, in order."""
    hints = get_type_hints(RateCard)
    declared = [each for each in fields(RateCard) if each.default_factory is MISSING]
    return tuple(_card_column(each.name, hints[each.name], each.metadata) for each in declared)


def _card_column(name: str, hint: Any, metadata: Mapping[str, str]) -> Column:
    (kind,) = get_args(hint)
    unit = UNIT_OF[kind.__name__]
    return Column(name, kind.__supertype__, unit, metadata["symbol"], metadata["says"], False)


def read_card(name: str, text: str) -> RateCard:
    """Return the rate card, each figure with its reason.

    Raises ``BadFileError`` when a rate is missing, unknown, below nought or out of order.
    """
    columns = {each.name: each for each in card_columns()}
    values: dict[str, Any] = {}
    sources: dict[str, Source] = {}
    problems: list[Problem] = []
    for cells in cells_of(name, text, ("name", *LEVELS, "trust", "reason")):
        said = cells["name"]
        try:
            if said not in columns or said in values:
                raise BadCell("name", said, f"each once: {', '.join(columns)}")
            values[said] = _rate(columns[said], cells)
            sources[said] = _because(columns[said], cells)
        except BadCell as bad:
            problems.append(Problem(int(cells["line"]), bad.column, bad.cell, bad.expected))
    if not problems and (lacking := columns.keys() - values.keys()):
        found = f"also {', '.join(sorted(lacking))}"
        problems.append(Problem(1, "the rates", ", ".join(values), found))
    if problems:
        raise BadFileError(name, problems)
    return RateCard(**values, sources=sources)


def _rate(of: Column, cells: Mapping[str, str]) -> Rate[float]:
    """Return one rate; raises ``BadCell`` for a cell that does not read or stands too low."""
    found: list[float] = []
    for level in LEVELS:
        try:
            found.append(cast(float, of.read(cells[level])))
        except ValueError as expected:
            raise BadCell(level, cells[level], str(expected)) from None
    _rising(dict(zip(LEVELS, found, strict=True)))
    if of.name in SAME and len(set(found)) > 1:
        raise BadCell(LEVELS[0], cells[LEVELS[0]], "the same at every level: goods are bought once")
    return Rate(*found)


def _because(of: Column, cells: Mapping[str, str]) -> SetBy:
    """Return the source of one rate, with how far it is to be relied on."""
    trust = read_cells([each for each in columns_of(Good) if each.name == "trust"], cells)["trust"]
    return SetBy("rate card", f"{of.says}: {cells['reason']} ({trust.value})")


def _rising(levels: Mapping[str, float]) -> None:
    """Raise ``BadCell`` unless three levels rise from nought or more."""
    below, at_least = "nought", 0.0
    for name, value in levels.items():
        if value < at_least:
            raise BadCell(name, f"{value:g}", f"no less than {below}, {at_least:g}")
        below, at_least = name, value


def read_priced(name: str, text: str, kind: type[T]) -> tuple[T, ...]:
    """Return the rows of a file of prices; raises ``BadFileError`` where prices do not rise."""
    rows = read_rows(name, text, kind)
    id_ = columns_of(kind)[0].name
    lines = {cells[id_]: int(cells["line"]) for cells in cells_of(name, text, _header(kind))}
    problems = []
    for row in rows:
        try:
            _rising({f"{level}_p": getattr(row, f"{level}_p") for level in LEVELS})
        except BadCell as bad:
            line = lines[getattr(row, id_)]
            problems.append(Problem(line, bad.column, bad.cell, bad.expected))
    if problems:
        raise BadFileError(name, problems)
    return rows


def _header(kind: type) -> list[str]:
    return [each.name for each in columns_of(kind)]


def read_kits(
    name: str, text: str, goods: Mapping[str, Good], works: Iterable[str]
) -> dict[tuple[str, int], tuple[KitItem, ...]]:
    """Return what each piece of work takes, by work and lines of the point.

    Raises ``BadFileError`` for a good without a price, a work nobody does, or one said twice.
    """
    known, columns = frozenset(works), columns_of(KitItem)
    kits: dict[tuple[str, int], tuple[KitItem, ...]] = {}
    problems: list[Problem] = []
    for cells in cells_of(name, text, _header(KitItem)):
        try:
            item = KitItem(**read_cells(columns, cells))
            _known(item, goods, known)
            for phases in LINES_OF[item.phases]:
                at = (item.work, phases)
                if any(each.item == item.item for each in kits.get(at, ())):
                    raise BadCell("item", item.item, "a good that stands once for a work")
                kits[at] = (*kits.get(at, ()), item)
        except BadCell as bad:
            problems.append(Problem(int(cells["line"]), bad.column, bad.cell, bad.expected))
    if problems:
        raise BadFileError(name, problems)
    return kits


def _known(item: KitItem, goods: Mapping[str, Good], works: frozenset[str]) -> None:
    """Raise ``BadCell`` unless work and good are known and the quantity is above nought."""
    if item.work not in works:
        raise BadCell("work", item.work, f"one of {', '.join(sorted(works))}")
    if item.item not in goods:
        raise BadCell("item", item.item, "the id of a material or of the catalogue, with its price")
    if item.quantity <= 0:
        raise BadCell("quantity", f"{item.quantity:g}", "more than nought")


BESIDE_TASKS: Final = ("own-board-tails", "sheathed-ends", "data-run")
"""Work that takes goods and whose time is within other tasks."""


def read_rates(
    text: Callable[[str], tuple[str, str]], catalogue: Catalogue, tasks: Iterable[str]
) -> Rates:
    """Return every price and rate, from the files of their names.

    What the catalogue lists and nobody has priced has no price: an option that takes it says so.
    Raises ``BadFileError``.
    """
    materials = read_priced(*text("materials"), Good)
    prices = {each.id: each for each in read_priced(*text("prices"), CataloguePrice)}
    goods = {good.id: good for good in (*_listed(catalogue, prices), *materials)}
    if twice := [each.id for each in materials if each.id in prices]:
        problem = Problem(1, "id", twice[0], "an id that no price of the catalogue has")
        raise BadFileError(text("materials")[0], [problem])
    charges = read_priced(*text("third_party"), Charge)
    return Rates(
        card=read_card(*text("rates")),
        goods=goods,
        in_words={each.does: each for each in materials},
        kits=read_kits(*text("kits"), goods, (*tasks, *BESIDE_TASKS)),
        charges={each.remedy: each for each in charges},
    )


def _listed(catalogue: Catalogue, prices: Mapping[str, CataloguePrice]) -> Iterator[Good]:
    """Yield what the catalogue lists, with its price."""
    listed: list[tuple[str, str, SoldBy, bool]] = []
    listed += ((row.id, row.does, SoldBy.EACH, True) for row in catalogue.points)
    listed += ((row.id, row.does, SoldBy.EACH, False) for row in catalogue.devices)
    listed += ((row.id, row.does, SoldBy.EACH, False) for row in catalogue.boards)
    listed += ((row.id, row.does, SoldBy.EACH, False) for row in catalogue.origin_devices)
    listed += ((row.id, row.does, SoldBy.METRE, False) for row in catalogue.cables)
    for id_, does, unit, point in listed:
        if price := prices.get(id_):
            levels = price.low_p, price.usual_p, price.high_p
            yield Good(id_, does, unit, *levels, trust=price.trust, point=point)
