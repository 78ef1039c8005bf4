"""Keep plans and read them back."""

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from datetime import datetime
from typing import Any

from sqlalchemy import ColumnElement, func, insert, select, true, tuple_
from sqlalchemy.orm import Session

from tracker.domain.messages import kept, kept_params, of_columns, read
from tracker.domain.mill import LoomKey
from tracker.domain.plan import (
    Asked,
    Booking,
    CostTerms,
    CrewTurn,
    FreePlan,
    Keeping,
    LeftOver,
    Need,
    OtherDate,
    Placed,
    Plan,
    PlanEntry,
    PlanStatus,
    RuledOut,
    ScarcityPrice,
    Undo,
)
from tracker.domain.windows import WindowKind
from tracker.domain.work import Choices
from tracker.store.models import ActRow, BookingRow, LeftOverRow, OtherDateRow, PlanRow, PriceRow
from tracker.store.rows import plain


@dataclass(frozen=True, slots=True)
class Made:
    """When, by whom and as what a plan is made."""

    at: datetime
    who: str
    published: bool
    scenario: str | None = None
    entries: Mapping[str, Any] | None = None
    """What the scenario has otherwise."""


def add_plan(session: Session, plan: Plan, made: Made) -> int:
    """Append a plan with its bookings; gives its number."""
    head = PlanRow(
        made_at=made.at, who=made.who, published=made.published, scenario=made.scenario, status=plan.status.value,
        objective=plan.objective, bound=plan.bound, seconds=plan.seconds, currency=plan.currency, as_of=plan.as_of,
        horizon_end=plan.horizon_end, start=plan.start, reasons=[kept(reason) for reason in plan.reasons],
        terms=_terms_record(plan) | ({ENTRIES: plain(made.entries)} if made.entries is not None else {}),
        crew_changes=plan.crew_changes,
    )  # fmt: skip
    session.add(head)
    session.flush()
    for model, records in (
        (BookingRow, [_booking_record(booking) for booking in plan.bookings]),
        (LeftOverRow, [_left_record(item) for item in plan.left_over]),
        (PriceRow, [_price_record(price) for price in plan.prices]),
        (OtherDateRow, [_other_record(other) for other in plan.other_dates]),
    ):
        if records:
            session.execute(insert(model), [record | {"plan_id": head.id} for record in records])
    return head.id


ASKED, KEEPING, UNDOING, ENTRIES = "asked for", "kept", "undoing", "scenario"
"""Under these names the stored terms of a plan say what it was asked for, what keeping bookings costs, what leaving each moved
one where it was, and what its scenario has otherwise."""


def _terms_record(plan: Plan) -> dict[str, Any]:
    return plain(plan.terms) | _asked_record(plan.asked) | _keeping_record(plan.keeping) | _undoing_record(plan.undoing)


def _asked_record(asked: Asked) -> dict[str, Any]:
    if asked == Asked():
        return {}
    released, held = ([list(key) for key in sorted(keys)] for keys in (asked.released, asked.held))
    record = {
        "hold firm": asked.hold_firm, "released": released, "afresh": asked.afresh, "gap": asked.gap, "held": held,
        "calm": asked.calm, "again": asked.again,
        "ruled out": [[*one.key, one.from_at.isoformat(), one.until_at.isoformat()] for one in asked.ruled_out],
        "placed": [[*one.key, one.start.isoformat(), [list(pair) for pair in one.choices]] for one in asked.placed],
    }  # fmt: skip
    return {ASKED: record}


def _asked(record: dict[str, Any] | None) -> Asked:
    if record is None:
        return Asked()
    released, held = (_keys(record.get(name, ())) for name in ("released", "held"))
    return Asked(
        record["hold firm"], released, record["afresh"], record["gap"], held, record.get("calm"), record.get("again"),
        tuple(
            RuledOut(LoomKey(hall, loom), datetime.fromisoformat(first), datetime.fromisoformat(past))
            for hall, loom, first, past in record.get("ruled out", ())
        ),
        tuple(
            Placed(LoomKey(hall, loom), datetime.fromisoformat(start), tuple((choice, taken) for choice, taken in choices))
            for hall, loom, start, choices in record.get("placed", ())
        ),
    )  # fmt: skip


def _keeping_record(keeping: Keeping | None) -> dict[str, Any]:
    return {KEEPING: asdict(keeping)} if keeping else {}


def _keeping(record: dict[str, Any] | None) -> Keeping | None:
    if record is None:
        return None
    free = record["free"] and FreePlan(
        **{**record["free"], "books": tuple(LoomKey(*key) for key in record["free"].get("books", ()))}
    )
    return replace(Keeping(**{**record, "free": None}), free=free)


def _undoing_record(undoing: Sequence[Undo]) -> dict[str, Any]:
    records = [
        {
            "loom": list(u.key),
            "costs": u.costs,
            "short": kept(u.short) if u.short else None,
            "by": [list(k) for k in u.taken_by],
            "instead": u.instead,
            "limit": kept(u.limit) if u.limit else None,
        }
        for u in undoing
    ]
    return {UNDOING: records} if records else {}


def _undoing(records: Iterable[dict[str, Any]]) -> tuple[Undo, ...]:
    return tuple(
        Undo(
            LoomKey(*r["loom"]),
            r["costs"],
            read(r["short"]) if r["short"] else None,
            tuple(LoomKey(*k) for k in r["by"]),
            r.get("instead"),
            read(r["limit"]) if r.get("limit") else None,
        )
        for r in records
    )


def _keys(pairs: Iterable[Sequence[str]]) -> frozenset[LoomKey]:
    return frozenset(LoomKey(hall, loom) for hall, loom in pairs)


def _loom(key: LoomKey) -> dict[str, Any]:
    return {"hall": key.hall, "loom": key.loom}


def _left_record(item: LeftOver) -> dict[str, Any]:
    return _loom(item.key) | {"why": item.why.code, "params": kept_params(item.why), "cost": item.cost}


def _price_record(price: ScarcityPrice) -> dict[str, Any]:
    return {"what": price.what.code, "params": kept_params(price.what), "week": price.week, "price": price.price}


def _date_record(item: Booking | OtherDate) -> dict[str, Any]:
    return _loom(item.key) | {
        "window": item.window, "kind": item.kind.value, "choices": [list(choice) for choice in item.choices],
        "start": item.start, "end": item.end,
    }  # fmt: skip


def _other_record(other: OtherDate) -> dict[str, Any]:
    return _date_record(other) | {"extra_cost": other.extra_cost}


def _booking_record(booking: Booking) -> dict[str, Any]:
    cost = booking.cost
    return _date_record(booking) | {
        "beam_out_p50": booking.beam_out_p50, "slots": booking.slots, "labour_h": booking.labour_h,
        "parts": dict(booking.parts), "firm": booking.firm, "pilot": booking.pilot,
        "lost_production": cost.lost_production, "late_beam_out": cost.late_beam_out, "labour": cost.labour,
        "parts_cost": cost.parts, "saving_foregone": cost.saving_foregone, "moves": cost.moves,
        "surviving": cost.surviving,
        "crews": [[turn.crew, turn.start.isoformat(), turn.end.isoformat()] for turn in booking.crews],
        "needs": [[n.kind, n.what, n.amount, n.start.isoformat(), n.end.isoformat()] for n in booking.needs],
        "attended": booking.attended,
        "pause_from": booking.pause[0] if booking.pause else None,
        "pause_to": booking.pause[1] if booking.pause else None,
    }  # fmt: skip


def last_published(session: Session, before_it: int = 0) -> Plan | None:
    """The last published plan, or the one so many before it; None where there is none."""
    query = select(PlanRow).where(PlanRow.published).order_by(PlanRow.id.desc()).offset(before_it).limit(1)
    head = session.scalar(query)
    return None if head is None else _plan(session, head)


def last_published_as_of(session: Session) -> datetime | None:
    """The moment for which the last published plan was made; None where there is none."""
    return session.scalar(select(PlanRow.as_of).where(PlanRow.published).order_by(PlanRow.id.desc()).limit(1))


ASKED_BY_NAME = 300
"""Looms that are named to the database; where more are asked for, all are read."""


def last_bookings(session: Session, keys: Collection[LoomKey], before: int | None = None) -> dict[LoomKey, Booking]:
    """Loom → its booking in the last published plan (of those before a number) that books it; looms that none books are
    left out."""
    return _published(session, keys, func.max, BookingRow.plan_id < before if before is not None else true())


def first_bookings(session: Session, keys: Collection[LoomKey], after: int) -> dict[LoomKey, Booking]:
    """Loom → its booking in the first published plan after a number that books it."""
    return _published(session, keys, func.min, BookingRow.plan_id > after)


def _published(
    session: Session, keys: Collection[LoomKey], which: Any, plans: ColumnElement[bool]
) -> dict[LoomKey, Booking]:
    b = BookingRow
    found = select(which(b.id)).join(PlanRow, PlanRow.id == b.plan_id).where(PlanRow.published, plans)
    query = select(b).where(b.id.in_(found.group_by(b.hall, b.loom)))
    if len(keys) <= ASKED_BY_NAME:
        query = query.where(tuple_(b.hall, b.loom).in_([(key.hall, key.loom) for key in keys]))
    return {booking.key: booking for booking in map(_booking, session.scalars(query)) if booking.key in keys}


def plan_entries(session: Session) -> list[PlanEntry]:
    """Every plan that was made, the newest first."""
    booked, left = (
        select(func.count()).where(model.plan_id == PlanRow.id).scalar_subquery() for model in (BookingRow, LeftOverRow)
    )
    heads = session.execute(select(PlanRow, booked, left).order_by(PlanRow.id.desc()))
    return [
        PlanEntry(head.id, head.made_at, head.who, head.published, head.scenario, head.as_of, PlanStatus(head.status),
                  head.objective, head.bound, head.currency, bookings, left_over)
        for head, bookings, left_over in heads
    ]  # fmt: skip


def plan_of(session: Session, number: int) -> Plan | None:
    """The plan of that number; None where there is none, as beyond what a row's number can be (4 bytes in PostgreSQL)."""
    head = session.get(PlanRow, number) if 0 < number < 1 << 31 else None
    return None if head is None else _plan(session, head)


def scenario_plans(session: Session) -> list[tuple[str, datetime, Plan]]:
    """Name, when it was made, and the newest plan of every scenario, by name."""
    newest = newest_of_scenarios(session).values()
    heads = session.scalars(select(PlanRow).where(PlanRow.id.in_(newest)).order_by(PlanRow.scenario))
    return [(str(head.scenario), head.made_at, _plan(session, head)) for head in heads]


def newest_of_scenarios(session: Session) -> dict[str, int]:
    """Scenario → the number of its newest plan."""
    named = select(PlanRow.scenario, func.max(PlanRow.id)).where(PlanRow.scenario.is_not(None))
    return {str(name): number for name, number in session.execute(named.group_by(PlanRow.scenario))}


def entries_of(session: Session, scenario: str) -> dict[str, Any] | None:
    """What a scenario has otherwise, by its newest plan, as its file has it and days as text; None where there is no such
    scenario, or its plan was made before that was kept."""
    newest = newest_of_scenarios(session).get(scenario)
    return None if newest is None else session.get_one(PlanRow, newest).terms.get(ENTRIES)


ASIDE = "set aside"
"""Under this name the account of who did what has, beside the `scenario`, the number of its newest plan when it was set aside;
None where it was listed again."""


def scenarios_aside(session: Session) -> set[str]:
    """Scenarios that were set aside, not listed again, and not planned again since."""
    said = select(ActRow.details).where(ActRow.details["scenario"].as_string().is_not(None)).order_by(ActRow.id)
    last = {details["scenario"]: details[ASIDE] for details in session.scalars(said)}
    return {name for name, number in newest_of_scenarios(session).items() if number <= (last.get(name) or 0)}


def _plan(session: Session, head: PlanRow) -> Plan:
    def rows(model: Any) -> list[Any]:
        return list(session.scalars(select(model).where(model.plan_id == head.id).order_by(model.id)))

    return Plan(
        status=PlanStatus(head.status), objective=head.objective, bound=head.bound, seconds=head.seconds,
        currency=head.currency, as_of=head.as_of, horizon_end=head.horizon_end,
        bookings=tuple(_booking(row) for row in rows(BookingRow)),
        left_over=tuple(_left_over(row) for row in rows(LeftOverRow)),
        prices=tuple(ScarcityPrice(of_columns(row.what, row.params), row.week, row.price) for row in rows(PriceRow)),
        other_dates=tuple(OtherDate(*_where_and_when(row), row.extra_cost) for row in rows(OtherDateRow)),
        reasons=tuple(map(read, head.reasons)), start=head.start, asked=_asked(head.terms.get(ASKED)),
        crew_changes=head.crew_changes,
        terms={name: value for name, value in head.terms.items() if name not in (ASKED, KEEPING, UNDOING, ENTRIES)},
        keeping=_keeping(head.terms.get(KEEPING)), undoing=_undoing(head.terms.get(UNDOING, ())),
    )  # fmt: skip


def _left_over(row: LeftOverRow) -> LeftOver:
    return LeftOver(LoomKey(row.hall, row.loom), of_columns(row.why, row.params), row.cost)


def _where_and_when(row: Any) -> tuple[LoomKey, int, WindowKind, Choices, datetime, datetime]:
    choices = tuple((choice, alternative) for choice, alternative in row.choices)
    return LoomKey(row.hall, row.loom), row.window, WindowKind(row.kind), choices, row.start, row.end


def _booking(row: BookingRow) -> Booking:
    cost = CostTerms(row.lost_production, row.late_beam_out, row.labour, row.parts_cost, row.saving_foregone, row.moves,
                     row.surviving or 0.0)  # fmt: skip
    return Booking(
        *_where_and_when(row),
        row.beam_out_p50,
        row.slots,
        row.labour_h,
        row.parts,
        cost,
        firm=row.firm,
        pilot=row.pilot,
        attended=bool(row.attended),
        crews=tuple(CrewTurn(crew, *map(datetime.fromisoformat, span)) for crew, *span in row.crews or ()),
        needs=tuple(
            Need(what, kind, amount, *map(datetime.fromisoformat, span))
            for kind, what, amount, *span in row.needs or ()
        ),
        pause=(row.pause_from, row.pause_to) if row.pause_from and row.pause_to else None,
    )
