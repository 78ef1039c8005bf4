"""What a program can read: each the record that a command writes with `--json`, and nothing made for here."""

from datetime import datetime
from typing import Annotated, Any

from fastapi import APIRouter, Query, Response

from tracker.errors import DataError, UsageError
from tracker.server.api.holders import Here
from tracker.services.context import Context
from tracker.services.json_text import json_text
from tracker.services.loading.export import export_records
from tracker.services.loading.origins import origins as read_origins
from tracker.services.own_clock import clock_says
from tracker.services.parts.kits import kits as read_kits
from tracker.services.parts.kits import prices_of_choices
from tracker.services.parts.ledger import ledger
from tracker.services.parts.needs import net_needs
from tracker.services.people import audit as deeds_of
from tracker.services.plans.baseline import baseline as read_baseline
from tracker.services.plans.made_plans import made_plan, made_plans
from tracker.services.plans.plan_record import plan_record
from tracker.services.plans.published import other_dates, published_plan
from tracker.services.plans.rehearsal_book import kept_rehearsal
from tracker.services.plans.verify import verify as read_verify
from tracker.services.screens.status import status as read_status
from tracker.services.terms import local_moment
from tracker.services.work import forecast as forecasts
from tracker.services.work.hours import hours_records
from tracker.services.work.scope import scope as read_scope
from tracker.services.work.settings import settings as read_settings
from tracker.services.work.worth import worth as read_worth
from tracker.services.work.worth_record import worth_record

Loom = Annotated[str | None, Query(description="A loom number; left out: all looms.")]
OneLoom = Annotated[str, Query(description="A loom number.")]
Hall = Annotated[str | None, Query(description="The hall, where a loom number stands in several.")]
Moment = Annotated[
    str | None, Query(description="2027-01-04 or 2027-01-04T06:00, in the mill's local time unless it has an offset.")
]


class Record(Response):
    """The very text that the command writes."""

    media_type = "application/json"

    def render(self, content: Any) -> bytes:
        return json_text(content).encode()


def at(here: Context, text: str | None) -> datetime | None:
    if text is None:
        return None
    try:
        return local_moment(here, text)
    except ValueError:
        raise UsageError("moment-unreadable", text=text) from None


def status(here: Here, as_of: Moment = None) -> Any:
    """The programme on one page: `beamslot status`."""
    return read_status(here, at(here, as_of)).record()


def scope(here: Here, loom: Loom = None, hall: Hall = None) -> Any:
    """What each loom needs and why: `beamslot scope`."""
    return read_scope(here, loom, hall).record()


def hours(here: Here) -> Any:
    """Hours by machine type: `beamslot export --what hours`."""
    return hours_records(here)


def forecast(here: Here, loom: Loom = None, hall: Hall = None, as_of: Moment = None) -> Any:
    """When each warp runs out: `beamslot forecast`."""
    return forecasts.forecast(here, loom, at(here, as_of), hall).record()


def backtest(here: Here) -> Any:
    """How well past beam-outs would have been said: `beamslot forecast --backtest`."""
    return forecasts.backtest(here).record()


def plan(here: Here, number: int | None = None) -> Any:
    """The published plan, or one by its number: `beamslot plan --show`."""
    if number is not None:
        return plan_record(*made_plan(here, number))
    found, mill = published_plan(here)
    return plan_record(found, mill.terms.zone)


def plans(here: Here) -> Any:
    """Every plan that was made: `beamslot plan --list`."""
    return made_plans(here).record()


def dates(here: Here, loom: OneLoom, hall: Hall = None) -> Any:
    """Other dates of a loom and what they would cost: `beamslot plan --dates`."""
    return other_dates(here, loom, hall).record()


def baseline(here: Here, as_of: Moment = None) -> Any:
    """What a mill does without a plan: `beamslot plan --baseline`."""
    return read_baseline(here, at(here, as_of)).record()


def verify(here: Here) -> Any:
    """The published plan recomputed: `beamslot verify`."""
    return read_verify(here).record()


def rehearsal(here: Here) -> Any:
    """The last rehearsal of the plan in force: `beamslot export --what rehearsal`."""
    kept = kept_rehearsal(here)
    return {"number": kept.number} | dict(kept.result)


def kits(here: Here, loom: Loom = None, hall: Hall = None) -> Any:
    """What each kit has and lacks: `beamslot kits`."""
    return read_kits(here, loom, hall).record()


def choices(here: Here) -> Any:
    """Which alternatives the plan took, and the price of the others: `beamslot kits --choices`."""
    return prices_of_choices(here).record()


def needs(here: Here, part: str | None = None, as_of: Moment = None, left_over: bool = True) -> Any:
    """Net needs by part and week: `beamslot needs`."""
    report = net_needs(here, at(here, as_of), left_over)
    if part is not None and part not in report.units:
        raise DataError("part-unknown", part=part)
    return [week for week in report.record() if part in (None, week["part"])]


def orders(here: Here, as_of: Moment = None, left_over: bool = True) -> Any:
    """What to order from whom by when: `beamslot needs --orders`."""
    return net_needs(here, at(here, as_of), left_over).order_record()


def stock(here: Here, part: str | None = None) -> Any:
    """The stockroom's book: `beamslot stock moves`."""
    return ledger(here, part).record()


def settings(here: Here, loom: Loom = None, hall: Hall = None, as_of: Moment = None) -> Any:
    """Settings over time with their alarms: `beamslot settings`."""
    return read_settings(here, loom, hall, at(here, as_of)).record()


def worth(
    here: Here, cause: str | None = None, article: str | None = None, first: Annotated[Moment, Query(alias="from")] = None,
    last: Annotated[Moment, Query(alias="to")] = None, as_of: Moment = None,
) -> Any:  # fmt: skip
    """Whether it was worth it: `beamslot worth`."""
    return worth_record(read_worth(here, cause, article, at(here, first), at(here, last), at(here, as_of)))


def tables(here: Here, what: Annotated[list[str], Query(description="Names of tables; left out: all.")] = []) -> Any:  # noqa: B006
    """Tables as they were loaded: `beamslot export --what TABLE`."""
    return export_records(here, what)


def origins(here: Here, loom: OneLoom, field: str, hall: Hall = None) -> Any:
    """Where a value came from: `beamslot load --origin`."""
    return [one.record() for one in read_origins(here, loom, field, hall)]


def audit(here: Here, loom: Loom = None, hall: Hall = None, who: str | None = None, since: Moment = None) -> Any:
    """Who did what, the newest first: `beamslot audit`."""
    return deeds_of.deeds(here, deeds_of.Which(loom, hall, who, at(here, since))).record()


def clock(here: Here) -> Any:
    """By which clock the programme goes: `beamslot clock`."""
    return clock_says(here).record()


READS = (
    status, scope, hours, forecast, backtest, plan, plans, dates, baseline, verify, rehearsal, kits, choices, needs, orders, stock,
    settings, worth, tables, origins, audit, clock,
)  # fmt: skip


def reads() -> APIRouter:
    """Each below its name."""
    router = APIRouter(tags=["read"], default_response_class=Record)
    for read in READS:
        router.add_api_route(f"/{read.__name__}", read, methods=["GET"], summary=read.__doc__, response_model=None)
    return router
