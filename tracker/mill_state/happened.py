"""What happened since a plan was made, as far as it may take a booking's place away: who is away, what did not come, what was
changed; and of what there is less by it."""

from calendar import day_abbr
from collections.abc import Container, Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime, time
from math import inf
from typing import Any

from tracker.domain.days import Days
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.ordering import Ordering
from tracker.domain.plan import Plan
from tracker.domain.since import EnteredSince, RowChanged
from tracker.domain.stock import Movement, MovementKind
from tracker.domain.tables import TABLES, TERM_HEADINGS, Kind
from tracker.domain.terms import Terms
from tracker.domain.units import percent
from tracker.domain.words import fold
from tracker.errors import Message, message
from tracker.mill_state.relying import relying_on

PEOPLE, PART, TOOL, STOPPED, SECTION, LENGTH, WATCH, CLOSED, OTHER = (
    "people", "part", "tool", "stopped", "section", "length", "watch", "closed", "other",
)  # fmt: skip
"""Of what there may be less: people of a trade, a part, a tool, looms that may stand at once (of a hall, of a section), time,
since the work is longer, people after a restart, days over which a loom may stand open."""


@dataclass(frozen=True, slots=True)
class Happened:
    says: Message
    of: str
    """Of what there is less by it, as above; `OTHER` where of nothing."""
    name: str = ""
    """Which trade, part or tool, folded; empty = any."""
    first: date | None = None
    """The first local day; None = since ever."""
    last: date | None = None
    """The last one, included; None = for good."""
    hall: str | None = None
    """None = all."""
    crew: str | None = None
    """The crew, where it is about one."""
    looms: frozenset[LoomKey] = frozenset()
    """Those booked whose kits could not be had without it."""

    def on(self, day: date) -> bool:
        """Whether it bears upon a day."""
        return (self.first is None or self.first <= day) and (self.last is None or day <= self.last)


def happened(mill: Mill, since: EnteredSince, before: Plan, as_of: datetime) -> tuple[Happened, ...]:
    """In the order people, parts, tools, terms; last the orders that `before` could still wait for and that come later now."""
    days = Days(mill)
    came = {(m.order, m.part) for m in since.movements if m.order}
    found = [one for row in since.rows for one in _of_row(row, mill, came)]
    found += [one for movement in since.movements for one in _of_movement(movement, since, mill, before, days)]
    found += _not_come(mill, since, before, days.local(as_of))
    if since.method:
        found.append(Happened(message("happened-method", version=since.method), LENGTH))
    ordered = {row.now.get("part") for row in since.rows if row.table == "receipts" and not row.was}
    return (*found, *_orders(mill, before, as_of, ordered))


def _of_row(row: RowChanged, mill: Mill, came: Container[tuple[str, str]]) -> Iterator[Happened]:
    match row.table:
        case "absences":
            yield from _away(row, mill)
        case "overtime":
            yield from _overtime(row, mill)
        case "closures":
            yield from _closed(row)
        case "receipts":
            yield from _order_line(row, mill, came)
        case "terms":
            yield _term(row)
        case _:
            yield from _fields(row, mill)


def _trade(mill: Mill, crew: str) -> str:
    return next((fold(row.trade) for row in mill.crews if row.crew == crew), "")


def _away(row: RowChanged, mill: Mill) -> Iterator[Happened]:
    away = row.now or row.was
    crew, first, last = away["crew"], away["from_on"], away["to_on"]
    there = not row.now or row.now["heads"] == 0
    says = message("happened-away", crew=crew, first=first, last=last if last != first else None, heads=away["heads"] or None,
                   why=away["reason"], how="back" if there else "away")  # fmt: skip
    yield Happened(says, OTHER if there else PEOPLE, _trade(mill, crew), first, last, crew=crew)


def _overtime(row: RowChanged, mill: Mill) -> Iterator[Happened]:
    extra = row.now or row.was
    start, end = (_value(extra[at]) for at in ("start", "end"))
    says = message("happened-overtime", crew=extra["crew"], on=extra["on"], start=start, end=end,
                   how="taken" if not row.now else "changed" if row.was else "given")  # fmt: skip
    yield Happened(
        says, OTHER if row.now and not row.was else PEOPLE, _trade(mill, extra["crew"]), extra["on"], extra["on"],
        crew=extra["crew"],
    )  # fmt: skip


def _closed(row: RowChanged) -> Iterator[Happened]:
    shut = row.now or row.was
    says = message("happened-closed", on=shut["on"], hall=shut["hall"], stops=shut["stops"] or "both", why=shut["reason"],
                   how="shut" if row.now else "open")  # fmt: skip
    works = not row.now or shut["stops"] == "weaving"
    yield Happened(says, OTHER if works else PEOPLE, "", shut["on"], shut["on"], shut["hall"])


def _order_line(row: RowChanged, mill: Mill, came: Container[tuple[str, str]]) -> Iterator[Happened]:
    was, now = row.was, row.now
    line = was or now
    if (line["order"], line["part"]) in came and not now:
        return
    how = "new" if not was else "gone" if not now else "moved" if was["due"] != now["due"] else "other"
    says = message("happened-order", order=line["order"], part=line["part"], unit=_unit(mill, line["part"]), how=how,
                   quantity=line["quantity"], due=line["due"], now=now.get("due"), less=now.get("quantity"))  # fmt: skip
    better = (
        how == "new"
        or (how == "moved" and now["due"] < was["due"])
        or (how == "other" and line["quantity"] < now["quantity"])
    )
    yield Happened(says, OTHER if better else PART, fold(line["part"]))


def _unit(mill: Mill, part: str) -> str | None:
    return mill.parts[part].unit if part in mill.parts else None


_TERMS = {
    "looms_stopped_at_once": STOPPED, "stopped_per_section": SECTION, "allowance": LENGTH, "learning_rate": LENGTH,
    "learning_floor": LENGTH, "watch_h": WATCH, "open_over_closed_days": CLOSED, "days_to_order": PART,
    "lead_time_none_given_days": PART, "plan_with_orders": PART, "receipts_later_days": PART,
}  # fmt: skip


def _term(row: RowChanged) -> Happened:
    term = (row.now or row.was)["term"]
    field = TERM_HEADINGS.get(fold(term), "")
    was, now = (values.get("value", getattr(Terms(), field, None)) for values in (row.was, row.now))
    share = term.endswith("(%)")
    says = message("happened-term", term=term, was=_value(was, share), now=_value(now, share))
    return Happened(says, _TERMS.get(field, OTHER) if _takes_away(field, was, now) else OTHER)


_LESS = (
    "heads",
    "how_many",
    "looms_stopped_at_once",
    "stopped_per_section",
    "plan_with_orders",
    "open_over_closed_days",
)
_MORE = (
    "safety_stock", "lead_time_days", "allowance", "learning_rate", "learning_floor", "watch_h", "days_to_order",
    "lead_time_none_given_days", "receipts_later_days",
)  # fmt: skip
"""Fields of which less, or more, leaves less room for bookings."""


def _takes_away(field: str, was: Any, now: Any) -> bool:
    """Whether a change may leave less room; where that cannot be told by the field, it may."""
    if field in _LESS:
        return (inf if now is None else now) < (inf if was is None else was)
    return (now or 0) > (was or 0) if field in _MORE else True


def _value(value: Any, share: bool = False) -> Message:
    """As the mill has it: a share in percent; times and weekdays as texts, since reasons are kept."""
    if share and value is not None:
        value = percent(value)
    if isinstance(value, time):
        value = f"{value:%H:%M}"
    if isinstance(value, frozenset):
        value = ", ".join(day_abbr[day] for day in sorted(value))
    return message("empty-value") if value is None else message("own-value", value=value)


_FIELDS: Mapping[str, tuple[str, str]] = {"crews": ("crew", PEOPLE), "tools": ("tool", TOOL), "parts": ("part", PART),
                                          "running": ("hall", OTHER)}  # fmt: skip
"""Table → the field that names the row, and of what there may be less where a row is changed."""


def _fields(row: RowChanged, mill: Mill) -> Iterator[Happened]:
    named, of = _FIELDS[row.table]
    table, some = TABLES[row.table], row.now or row.was
    what = str(some[named])
    name = fold(some.get("trade") or "") if row.table == "crews" else fold(what)
    crew = what if row.table == "crews" else None
    if not row.was or not row.now:
        says = message("happened-row", sheet=table.sheet, what=what, how="new" if row.now else "gone")
        yield Happened(says, of if not row.now else OTHER, name, crew=crew)
        return
    for column in table.columns:
        was, now = row.was.get(column.field), row.now.get(column.field)
        if was != now and column.field != "on_hand":
            share = column.kind is Kind.FRACTION
            old, new = _value(was, share), _value(now, share)
            says = message("happened-field", what=what, heading=column.title, was=old, now=new)
            yield Happened(says, of if _takes_away(column.field, was, now) else OTHER, name, crew=crew)


def _of_movement(m: Movement, since: EnteredSince, mill: Mill, before: Plan, days: Days) -> Iterator[Happened]:
    unit, on = _unit(mill, m.part), days.local(m.at)
    if m.kind is MovementKind.RECEIPT and m.order:
        due = since.promised.get((m.order, m.part))
        if due and due < on:
            says = message("happened-came-late", quantity=m.quantity, unit=unit, part=m.part, due=due, came=on)
            yield Happened(says, PART, fold(m.part), due, on, looms=relying_on(mill, since, before, m.order, m.part))
    if m.kind in (MovementKind.COUNT, MovementKind.ADJUSTMENT) and m.quantity < 0:
        says = message("happened-fewer", quantity=-m.quantity, unit=unit, part=m.part, why=m.why or None, loom=m.key,
                       how="count" if m.kind is MovementKind.COUNT else "loss")  # fmt: skip
        yield Happened(says, PART, fold(m.part), on)
    if m.kind is MovementKind.ISSUE and m.key not in {b.key for b in before.bookings if m.part in b.parts}:
        says = message("happened-issued", quantity=-m.quantity, unit=unit, part=m.part, loom=m.key)
        yield Happened(says, PART, fold(m.part), on)


def _not_come(mill: Mill, since: EnteredSince, before: Plan, today: date) -> Iterator[Happened]:
    for line in mill.receipts:
        if line.due < today:
            says = message("happened-not-come", quantity=line.quantity, unit=_unit(mill, line.part), part=line.part,
                           due=line.due, order=line.order)  # fmt: skip
            looms = relying_on(mill, since, before, line.order, line.part)
            yield Happened(says, PART, fold(line.part), line.due, looms=looms)


def _orders(mill: Mill, before: Plan, as_of: datetime, ordered: Iterable[object]) -> Iterator[Happened]:
    """Parts that the plan before could wait for to be ordered, and that would come later now, since nobody has."""
    then, now = Ordering(mill, before.as_of), Ordering(mill, as_of)
    for name in sorted(
        {part for booking in before.bookings for part in booking.parts} & mill.parts.keys() - set(ordered)
    ):
        was, comes = then.comes(mill.parts[name]), now.comes(mill.parts[name])
        if was and comes and comes > was:
            yield Happened(message("happened-not-ordered", part=name, was=was, now=comes), PART, fold(name))
