"""The comparison of options: one question a row, the answer of each option in its place."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from ampwright.options.held import known_values
from ampwright.options.search import Option
from ampwright.options.supply_side import Decision
from ampwright.options.work import Design
from ampwright.supply.hours import ANY

from .deciding import either_of
from .figures import texts
from .heads import EARTHS, feed, spot
from .naming import may_need
from .seeing import Seen
from .shapes import Figure, Row
from .words import (
    all_of,
    amount,
    brief,
    by_line,
    capital,
    from_to,
    hours,
    minutes,
    money,
    percent,
    small,
    span,
)

MOST_COMPARED: Final = 3
"""So many options stand beside each other on a sheet of 80 columns and on paper."""
NOT_KNOWN: Final = "not known yet"
LINES: Final = {1: "one line", 3: "three lines"}
FAMILIES: Final = {
    "flat": "flat twin and earth",
    "sheathed": "sheathed outdoor cable",
    "armoured": "armoured cable",
}


@dataclass(frozen=True, eq=False, slots=True)
class Side:
    """One option of the comparison and its figures."""

    seen: Seen
    option: Option[Any]
    figures: Mapping[str, Figure]

    @property
    def design(self) -> Any:
        """What the option comes to, each part over all the possible homes."""
        return self.option.design

    def words(self, name: str) -> str:
        """Return the words of a figure, or that it is not known."""
        return self.figures[name].words if name in self.figures else NOT_KNOWN

    def known(self, *names: str) -> bool:
        """Say whether all of some figures are known."""
        return all(name in self.figures for name in names)

    def texts(self, spread: Any, write: Callable[[Any], str]) -> str:
        """Write all that a result can be."""
        return texts(self.option, spread, write)


def rows_of(
    seen: Seen, options: Sequence[Option[Design]], figures: Sequence[Mapping[str, Figure]]
) -> tuple[Row, ...]:
    """Return every question of the comparison with the answer of each option."""
    sides = [Side(seen, option, each) for option, each in zip(options, figures, strict=True)]
    if not sides:
        return ()
    return tuple(Row(asks, tuple(write(side) for side in sides)) for asks, write in QUESTIONS)


def gathered(rows: Sequence[Row]) -> tuple[Row, ...]:
    """Return rows with those that no option has an answer to in one row at the end.

    Examples
    --------
    >>> gathered((Row("cable", ("not known yet",) * 2), Row("hours", ("any", "any"))))[-1]
    Row(question='not known yet', answers=('cable', 'cable'))
    """
    blank = [row for row in rows if is_blank(row)]
    if not blank:
        return tuple(rows)
    names = "; ".join(row.question for row in blank)
    last = Row(NOT_KNOWN, (names,) * len(blank[0].answers))
    return (*(row for row in rows if row not in blank), last)


def is_blank(row: Row) -> bool:
    """Say whether no option has an answer to a question yet."""
    return all(each.startswith(NOT_KNOWN) for each in row.answers)


def decision(side: Side) -> str:
    """Say what the option means for the job."""
    found = known_values(side.option, side.design.decision)
    in_order = sorted(found, key=list(Decision).index)
    return either_of(in_order) or NOT_KNOWN


def setting(side: Side) -> str:
    """Say what the point is set to."""
    choice = side.option.choice
    return f"{amount(choice.setting_a, 'A')}, {LINES[choice.point.phases]}"


def point(side: Side) -> str:
    """Say what kind of point it is."""
    return side.option.choice.point.does


def where(side: Side) -> str:
    """Say where the point hangs and what it is fed from."""
    choice = side.option.choice
    own = ", on a board of its own" if choice.tap == "meter" else ""
    return f"{spot(side.seen.home.folded, choice.place)}, from {feed(choice.tap)}{own}"


def first(side: Side) -> str:
    """Say what work comes first."""
    own, more = side.option.choice.remedies, may_need(side.seen.outlook, side.option)
    said = capital(all_of([small(brief(each.does)) for each in own])) if own else "none"
    maybe = all_of([small(brief(each.does)) for each in more])
    return f"{said}; it may need: {maybe}" if maybe else said


def limit(side: Side) -> str:
    """Say whether the whole house is held to a limit, and to which."""
    if not side.option.choice.house_limit:
        return "none"
    carried = side.design.supply.carried
    return side.texts(carried.limit_a, lambda each: f"whole house held to {amount(each, 'A')}")


def allowed(side: Side) -> str:
    """Say in which hours the point may charge."""
    return "any" if side.option.choice.hours == ANY else "the cheap hours only, locked"


def demand(side: Side) -> str:
    """Say what the supply must carry beside what it can."""
    if not side.known("carried_a", "supply_rating_a"):
        return NOT_KNOWN
    said = f"{side.words('carried_a')} of {side.words('supply_rating_a')}"
    supply = side.design.supply
    now = known_values(side.option, supply.counted.now_a)
    with_it = known_values(side.option, supply.carried.carried_a)
    if len(now) == len(with_it) == 1 and len(now[0]) > 1:
        return f"{said}; {from_to(now[0], with_it[0])} with it"
    now_words = f"{said}; now {side.texts(supply.counted.now_a, by_line)}"
    if all(len(each) == 1 for each in with_it):
        return now_words
    return f"{now_words}; with it {side.texts(supply.carried.carried_a, by_line)}"


def declared(side: Side) -> str:
    """Say what the operator is told beside the figure above which it must be asked."""
    said = side.words("declared_a")
    spare = side.figures.get("before_asking_a")
    if spare is None:
        return said
    if spare.high < 0:
        return f"{said}, {span(-spare.high, -spare.low, 'A')} over"
    return f"{said}, {spare.words} to spare" if spare.low >= 0 else f"{said}, may be over"


def cable(side: Side) -> str:
    """Say which cable, how long and what governs its size."""
    if not side.known("cable_mm2", "cable_m"):
        return NOT_KNOWN
    family = side.option.choice.family.value
    size = f"{side.words('cable_mm2')} {FAMILIES.get(family, family)}, {side.words('cable_m')}"
    governed = known_values(side.option, side.design.cable.governed_by)
    return f"{size}; sized by {all_of(governed)}" if any(governed) else size


def device(side: Side) -> str:
    """Say what protects the circuit."""
    known = {each.id: each.does for each in side.seen.basis.catalogue.devices}
    device = side.design.device.device
    return side.texts(device, lambda id_: known.get(id_, "none in the catalogue"))


def earth(side: Side) -> str:
    """Say what earths the point."""
    return EARTHS[side.option.choice.earthing]


def loop(side: Side) -> str:
    """Say what the earth-fault loop comes to beside its limit."""
    if not side.known("loop_ohm", "loop_limit_ohm"):
        return NOT_KNOWN
    return f"{side.words('loop_ohm')} of {side.words('loop_limit_ohm')}"


def drop(side: Side) -> str:
    """Say how many volts the cable loses and what share that is."""
    share = side.figures.get("drop_share")
    said = side.words("drop_v")
    if share is None:
        return said
    at_most = "" if share.low == share.high else "at most "
    return f"{said}, {at_most}{percent(share.high)}"


def volts(side: Side) -> str:
    """Say how low the volts at the point may fall, and whether anyone read them."""
    if not side.known("lowest_volts_v"):
        return NOT_KNOWN
    read = known_values(side.option, side.design.volts.read)
    basis = {(True,): "from a reading", (False,): "none read: the legal floor"}.get(read, "")
    return ", ".join(part for part in (side.words("lowest_volts_v"), basis) if part)


def night(side: Side) -> str:
    """Say how long the cars charge on an average night."""
    each = side.figures.get("charging_h_a_day")
    if each is None:
        return NOT_KNOWN
    low, high = hours(each.low), hours(each.high)
    said = low if low == high else f"{low} to {high}"
    cheap = side.figures.get("cheap_h_a_day")
    return said if cheap is None else f"{said} of {cheap.words} cheap"


def year(side: Side) -> str:
    """Say what a year's charging takes and costs."""
    said = side.words("energy_kwh_a_year")
    at_night = side.figures.get("cost_at_night_p_a_year")
    by_day = side.figures.get("cost_by_day_p_a_year")
    if at_night is None or by_day is None:
        return said
    return f"{said}: {pounds(at_night)} at night, {pounds(by_day)} by day"


def pounds(each: Figure) -> str:
    """Write pence as pounds."""
    low, high = money(each.low), money(each.high)
    return low if low == high else f"{low} to {high}"


def time(side: Side) -> str:
    """Say how long the firm is on site, and for how much of it a second person."""
    each, mate = (side.figures.get(name) for name in ("usual_work_min", "usual_mate_min"))
    if each is None:
        return NOT_KNOWN
    said = f"about {minutes(each.low, each.high)}"
    if mate is None or not mate.high:
        return said
    return f"{said}, a second person {minutes(mate.low, mate.high)}"


def price(side: Side) -> str:
    """Say what the customer pays, tax within: usually, and from the least to the most."""
    usual, low, high = (side.figures.get(n) for n in ("price_p", "price_low_p", "price_high_p"))
    if usual is None or low is None or high is None:
        return NOT_KNOWN
    return f"about {pounds(usual)}; {money(low.low)} to {money(high.high)}"


def sight(side: Side) -> str:
    """Say whether the point is seen from the street."""
    return side.texts(side.design.criteria.seen, lambda each: "yes" if each else "no")


def room(side: Side) -> str:
    """Say how many further loads the supply has room for beside the point."""
    load = amount(side.seen.basis.rules.later_load_a, "A")
    says = {0.0: f"two loads of {load}, or more", 1.0: f"one load of {load}", 2.0: "hardly any"}
    return side.texts(side.design.criteria.cramped, says.__getitem__)


QUESTIONS: Final[tuple[tuple[str, Callable[[Side], str]], ...]] = (
    ("decision", decision),
    ("price, VAT in", price),
    ("set to", setting),
    ("point", point),
    ("where", where),
    ("work first", first),
    ("house limit", limit),
    ("hours", allowed),
    ("supply carries", demand),
    ("operator is told", declared),
    ("cable", cable),
    ("protected by", device),
    ("earthed to", earth),
    ("earth loop", loop),
    ("voltage drop", drop),
    ("lowest volts", volts),
    ("average night", night),
    ("a year", year),
    ("time on site", time),
    ("seen from street", sight),
    ("room for more", room),
)
