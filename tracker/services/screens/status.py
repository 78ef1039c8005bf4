"""The programme on one page: looms by stage, planned and done over time, finish, cost."""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass, replace
from datetime import date, datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.clock import planning_moment
from tracker.domain.late import Late
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.needs import KitState
from tracker.domain.plan import Booking, CostTerms, LeftOver, Plan
from tracker.domain.progress import BEFORE_BOOKING, CONVERTED, NOT_TO_COME, UNDER_WAY, Stage, StageChange
from tracker.domain.rehearsal import KeptRehearsal
from tracker.domain.risks import RiskAhead
from tracker.domain.scopes import LoomScope
from tracker.errors import Message, message
from tracker.forecast.beam_outs import forecast
from tracker.mill_state.late import late
from tracker.mill_state.progress import Pace, WeekCount, by_week, done_on, expected_cost, pace, still_to_come
from tracker.mill_state.risks import RiskSigns, risks
from tracker.scope.content import scope_looms
from tracker.services.context import Context
from tracker.services.moments import began
from tracker.services.parts.needs import needs_of
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.plans.late_list import late_record
from tracker.services.plans.reference import Reference, read_reference
from tracker.services.plans.rehearsal_says import finish_line
from tracker.services.work.spent import Labour, MonthMoney, by_month, elapsed_min, labour_recorded, parts_issued
from tracker.store import UnitOfWork
from tracker.words import ENGLISH

TO_SURVEY = "to survey"
"""Beside the stages: an attribute that would change the scope is missing."""
STAGE_ORDER = (TO_SURVEY, *(stage.value for stage in Stage))


@dataclass(frozen=True, slots=True)
class StatusReport:
    """Everything that the status page and `beamslot status` show. Money in `currency`."""

    programme: str
    currency: str
    as_of: datetime
    looms: int
    stages: Mapping[str, int]
    """Stage → looms, in the order of the stages, empty ones too."""
    loom_stages: Mapping[LoomKey, str]
    weeks: tuple[WeekCount, ...]
    plan: Plan | None
    reference: Reference | None
    """What the programme is measured by."""
    planned_cost: CostTerms
    """Of all looms by the reference plan."""
    expected_cost: CostTerms
    """Of all looms: done ones by the records, those to come by the plan in force; without the price of looms left over."""
    parts_issued_cost: float
    """Parts issued less returned and recovered, those scrapped for a loom with them, at the list price."""
    labour_recorded_h: float
    """Person-hours of the recorded conversions: elapsed time × heads of the crew."""
    labour_recorded_cost: float
    untimed: int
    """Recorded conversions without a time, so not in the labour."""
    finish_on: date | None
    """Local day on which the last booking ends."""
    target_finish: date | None
    pace: Pace
    late: tuple[Late, ...]
    """What should have been by now, the oldest first."""
    risks: tuple[RiskAhead, ...]
    """Of the next fortnight, the next first."""
    months: tuple[MonthMoney, ...]
    next_bookings: tuple[Booking, ...]
    """The ones that start or run in the seven days after `as_of`, less the looms that are ready or wait no more."""
    left_over: tuple[LeftOver, ...]
    """The looms that the published plan leaves over, less those that have been converted, put off or left out since."""
    kits: tuple[KitState, ...]
    zone: ZoneInfo
    rehearsal: KeptRehearsal | None = None
    """The newest of the plan in force."""

    def kit_of(self, key: LoomKey) -> str:
        """State of a booked loom's kit."""
        return next((kit.state for kit in self.kits if kit.key == key), "")

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        plan = self.plan
        return {
            "programme": self.programme,
            "as_of": self.as_of.astimezone(self.zone).isoformat(timespec="minutes"),
            "looms": self.looms,
            "stages": dict(self.stages),
            "loom_stages": [{"hall": k.hall, "loom": k.loom, "stage": stage} for k, stage in self.loom_stages.items()],
            "weeks": [asdict(week) for week in self.weeks],
            "currency": self.currency,
            "reference": self.reference.record() if self.reference else None,
            "planned_cost": asdict(self.planned_cost),
            "expected_cost": asdict(self.expected_cost),
            "parts_issued_cost": self.parts_issued_cost,
            "labour_recorded_h": self.labour_recorded_h,
            "labour_recorded_cost": self.labour_recorded_cost,
            "conversions_without_time": self.untimed,
            "finish_on": self.finish_on.isoformat() if self.finish_on else None,
            "target_finish": self.target_finish.isoformat() if self.target_finish else None,
            "finish": ENGLISH.say(self.finish_says),
            "pace": asdict(self.pace) | {"finish_on": self.pace.finish_on.isoformat() if self.pace.finish_on else None},
            "late": [late_record(one, self.zone) for one in self.late],
            "risks": [
                {
                    "at": one.at.astimezone(self.zone).isoformat(timespec="minutes"),
                    "kind": one.kind,
                    "hall": one.key.hall if one.key else None,
                    "loom": one.key.loom if one.key else None,
                    "what": ENGLISH.say(one.what),
                }
                for one in self.risks
            ],
            "months": [asdict(month) for month in self.months],
            "rehearsal": self._rehearsal_record(),
            "plan": {"status": plan.status.value, "objective": plan.objective, "bound": plan.bound, "gap": plan.gap}
            if plan
            else None,
        }

    def _rehearsal_record(self) -> dict[str, Any] | None:
        kept = self.rehearsal
        if kept is None:
            return None
        made = kept.made_at.astimezone(self.zone).isoformat(timespec="minutes")
        return (
            {"number": kept.number, "made_at": made}
            | {name: kept.result[name] for name in ("as_of", "runs", "to_do", "milestones", "target")}
            | {"cost": kept.result["policies"][0]["cost"]}
        )

    @property
    def pace_says(self) -> Message:
        """The finish at the pace of the last four weeks."""
        if self.plan and not self.pace.to_come and self.pace.finish_on:
            return message("pace-done")
        return message("pace", **asdict(self.pace), finish=self.pace.finish_on, how=self.pace.how)

    @property
    def rehearsal_says(self) -> Message | None:
        """Finish and cost as the hall will have them; None where the plan in force was never rehearsed."""
        return (
            finish_line(self.rehearsal.result, self.rehearsal.made_at.astimezone(self.zone).date())
            if self.rehearsal
            else None
        )

    @property
    def reference_says(self) -> Message | None:
        """Which plan the planned curve and cost come from."""
        found = self.reference
        if found is None:
            return None
        made = found.made_at.astimezone(self.zone).date()
        return message("reference-plan", number=found.number, made=made, how="chosen" if found.chosen else "first")

    @property
    def cost_so_far(self) -> float:
        return self.parts_issued_cost + self.labour_recorded_cost

    @property
    def untimed_says(self) -> Message | None:
        """What the recorded labour leaves out; None where it leaves nothing out."""
        return message("labour-untimed", many=self.untimed) if self.untimed else None

    @property
    def finish_says(self) -> Message:
        """The finish forecast."""
        if self.plan is None:
            return message("finish-without-plan")
        if self.finish_on is None:
            return message("finish-without-booking")
        days = (self.finish_on - self.target_finish).days if self.target_finish else 0
        how = "none" if self.target_finish is None else "on" if not days else "after" if days > 0 else "before"
        return message("finish", on=self.finish_on, how=how, days=abs(days), left_over=len(self.left_over))


def status(context: Context, as_of: datetime | None = None) -> StatusReport:
    """The programme as the database knows it at `as_of` (default: now, or the start of a programme that lies ahead)."""
    with context.reading() as uow:
        mill, plan = uow.mill(), uow.published_plan()
        number = uow.published_number()
        reference = read_reference(uow, mill, (number, plan) if number is not None and plan else None)
        first_day, booked = began(uow, mill.terms), _last_booked(uow, mill, plan)
        stages, history = uow.stages(), uow.stage_history()
        conversions, room = uow.conversions(), read_stockroom(uow, known=(mill, plan))
        rehearsal = uow.last_rehearsal(number) if number is not None else None
    at = planning_moment(mill.terms, as_of, context.now())
    kits, windows = room.kits, forecast(mill, at, at)
    loom_stages = stages_now(mill, plan, kits, stages)
    counts = Counter(loom_stages.values())
    bookings = plan.bookings if plan else ()
    labour, issued = labour_recorded(conversions, mill), parts_issued(room.movements, mill)
    recorded = {key: change.stage for key, change in stages.items()}
    to_come, finished = still_to_come(plan, recorded, booked), done_on(history, mill.terms)
    today = at.astimezone(mill.terms.zone).date()
    measured = list(reference.bookings.values()) if reference else []
    return StatusReport(
        programme=mill.terms.programme,
        currency=mill.terms.currency,
        as_of=at,
        looms=len(mill.looms),
        stages={stage: counts.get(stage, 0) for stage in STAGE_ORDER},
        loom_stages=loom_stages,
        weeks=by_week(measured, finished, to_come, today, mill.terms),
        plan=plan,
        reference=reference,
        planned_cost=total_cost(measured),
        expected_cost=_expected(to_come, finished, booked, recorded, issued, labour),
        parts_issued_cost=sum(issued.values()),
        labour_recorded_h=sum(done.person_h for done in labour),
        labour_recorded_cost=sum(done.cost for done in labour),
        untimed=sum(not elapsed_min(done) for done in conversions),
        finish_on=max((b.end.astimezone(mill.terms.zone).date() for b in bookings), default=None),
        target_finish=mill.terms.target_finish,
        pace=pace(finished, len(to_come), first_day, today),
        late=late(mill, to_come, recorded, windows, room.wanting, at),
        risks=risks(
            mill,
            _not_begun(to_come, recorded),
            RiskSigns(
                kits,
                needs_of(room, at).orders if plan else (),
                windows,
                rehearsal.result["bookings"] if rehearsal else (),
            ),
            at,
        ),
        months=by_month(mill, measured, room.movements, labour),
        next_bookings=tuple(
            b for b in bookings if b.end > at and (b.start - at).days < 7 and loom_stages.get(b.key) not in NOT_TO_COME
        ),
        left_over=tuple(item for item in plan.left_over if _still_left(item, loom_stages)) if plan else (),
        kits=kits,
        zone=mill.terms.zone,
        rehearsal=rehearsal,
    )


def _last_booked(uow: UnitOfWork, mill: Mill, plan: Plan | None) -> dict[LoomKey, Booking]:
    """Of every loom; only what the plan in force does not book has to be looked for in others."""
    here = {booking.key: booking for booking in plan.bookings} if plan else {}
    return here | uow.last_bookings(mill.looms.keys() - here.keys())


def _not_begun(to_come: Iterable[Booking], recorded: Mapping[LoomKey, Stage]) -> list[Booking]:
    return [booking for booking in to_come if recorded.get(booking.key) not in UNDER_WAY]


KNEW_OF_IT = ("left-put-off", "as-it-stands")
"""Reasons of a plan that knew that the loom was put off; of one that kept no codes nobody can tell, and the loom stays listed."""


def _still_left(item: LeftOver, stages: Mapping[LoomKey, str]) -> bool:
    """Does the loom still wait, for the reason that the plan gave?"""
    stage = stages.get(item.key, "")
    if stage == Stage.PUT_OFF:
        return item.why.code in KNEW_OF_IT
    return stage not in (*UNDER_WAY, *NOT_TO_COME)


def stages_now(
    mill: Mill, plan: Plan | None, kits: Iterable[KitState], recorded: Mapping[LoomKey, StageChange]
) -> dict[LoomKey, str]:
    """The stage of every loom by what the database says now; without a method no loom can be scoped."""
    scopes = scope_looms(mill) if mill.method.operations else {}
    return stage_of_looms(mill, scopes, plan, kits, recorded)


def stage_of_looms(
    mill: Mill,
    scopes: Mapping[LoomKey, LoomScope],
    plan: Plan | None,
    kits: Iterable[KitState],
    recorded: Mapping[LoomKey, StageChange],
) -> dict[LoomKey, str]:
    """The stage of every loom: what was recorded, else what follows from scope, published plan and kit."""
    kitted = {kit.key for kit in kits if kit.complete}
    booked = {booking.key for booking in plan.bookings} if plan else set()

    def stage(key: LoomKey) -> str:
        if key in recorded and recorded[key].stage not in BEFORE_BOOKING:
            return recorded[key].stage.value
        if not mill.method.operations:
            return Stage.SURVEYED.value
        if scopes[key].to_survey:
            return TO_SURVEY
        if key in booked:
            return (Stage.KITTED if key in kitted else Stage.BOOKED).value
        return Stage.SCOPED.value

    return {key: stage(key) for key in mill.looms}


def total_cost(bookings: Iterable[Booking]) -> CostTerms:
    """What bookings cost that somebody pays, term by term."""
    costs = [replace(booking.cost, surviving=0.0) for booking in bookings]
    return CostTerms(**{term: sum(getattr(cost, term) for cost in costs) for term in CostTerms.__slots__})


def _expected(
    to_come: Iterable[Booking], finished: Mapping[LoomKey, date], booked: Mapping[LoomKey, Booking],
    recorded: Mapping[LoomKey, Stage], issued: Mapping[LoomKey, float], labour: Iterable[Labour],
) -> CostTerms:  # fmt: skip
    behind = [booked[key] for key in finished if key in booked]
    begun = {key: stage for key, stage in recorded.items() if stage in (Stage.IN_WORK, *CONVERTED)}
    return expected_cost(to_come, behind, begun, issued, {done.key: done.cost for done in labour})
