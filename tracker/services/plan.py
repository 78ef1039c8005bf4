"""Make a plan, hold it against the last published one, check it without the solver, and publish it."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.clock import planning_moment
from tracker.domain.mill import LoomKey
from tracker.domain.plan import Asked, Booking, Plan, PlanStatus
from tracker.domain.progress import StageChange
from tracker.errors import PlanRefused
from tracker.planning.planner import plan as solve
from tracker.planning.problem import PlanningProblem
from tracker.planning.verify import no_longer, verify
from tracker.services.looms import find_loom
from tracker.services.plan_record import local, plan_record
from tracker.services.planning_data import PlanningData, prepare, read_planning_data
from tracker.services.reservations import reserve_plan
from tracker.services.scenario import apply_scenario, read_scenario
from tracker.store import open_store

Progress = Callable[[str, float], None]
MOST_REASONS = 3
"""Why there is no plan, told in one message."""


@dataclass(frozen=True, slots=True)
class Firm:
    """Which bookings of the firm period stay."""

    stay: bool = True
    """False = none."""
    release: tuple[str, ...] = ()
    """Numbers of looms whose bookings may move all the same."""
    hall: str | None = None
    """Says which, where a number stands in several."""


FIRM = Firm()


@dataclass(frozen=True, slots=True)
class Move:
    """What replanning did to one loom's booking; None = none."""

    key: LoomKey
    before: Booking | None
    after: Booking | None
    because: str = ""
    """Why a dropped loom is not booked any more, or why the booking before cannot stay."""

    @property
    def start(self) -> datetime:
        """The new start; of a dropped booking the old one."""
        booking = self.after or self.before
        assert booking
        return booking.start

    @property
    def why(self) -> str:
        """What is known of the reason, in words."""
        if self.before is None:
            return "was not booked before"
        if self.after is None:
            return self.because or "no longer among the looms to plan"
        return self.because or f"{_window_words(self.before, self.after)}the whole plan costs less this way"

    @property
    def dearer(self) -> float | None:
        """What the booking now costs more than the one before, move cost included; None where there is only one."""
        return self.after.cost.total - self.before.cost.total if self.before and self.after else None

    @property
    def what(self) -> str:
        if self.before is None:
            return "new"
        if self.after is None:
            return "dropped"
        if self.before.start != self.after.start:
            return "later" if self.after.start > self.before.start else "earlier"
        return "other choice" if self.before.choices != self.after.choices else "same"


SAME_BEAM_OUT_H = 72
"""A forecast moves by less than this; beyond it the booking waits for another beam-out. The numbers of the windows do not
tell, since they start again with every new warp."""


def _window_words(before: Booking, after: Booking) -> str:
    if before.beam_out_p50 is None or after.beam_out_p50 is None:
        return "" if before.kind is after.kind else f"{after.kind.value} instead of {before.kind.value}: "
    later_h = (after.beam_out_p50 - before.beam_out_p50).total_seconds() / 3600
    when = "later" if later_h > 0 else "earlier"
    if abs(later_h) >= SAME_BEAM_OUT_H:
        return f"{'a' if later_h > 0 else 'an'} {when} beam-out: "
    return f"its beam-out is expected {abs(later_h):,.0f} h {when}; " if abs(later_h) >= 1 else ""


@dataclass(frozen=True, slots=True)
class PlanReport:
    plan: Plan
    previous: Plan | None
    moves: tuple[Move, ...]
    """Looms whose booking differs from the last published plan, by the new start; empty where there was none."""
    broken: tuple[str, ...]
    """What of the last published plan the data do not allow any more."""
    number: int | None
    """Of the plan in the database."""
    published: bool
    scenario: str | None
    zone: ZoneInfo

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        return plan_record(self.plan, self.zone) | {
            "number": self.number,
            "published": self.published,
            "scenario": self.scenario,
            "broken": list(self.broken),
            "moves": [
                {"hall": m.key.hall, "loom": m.key.loom, "what": m.what, "why": m.why, "dearer": m.dearer,
                 "before": local(m.before.start, self.zone) if m.before else None,
                 "after": local(m.after.start, self.zone) if m.after else None}
                for m in self.moves
            ],
        }  # fmt: skip


def plan(
    db: str,
    publish: bool = False,
    scenario: Path | None = None,
    time_limit_s: float | None = None,
    as_of: datetime | None = None,
    progress: Progress | None = None,
    stop: Callable[[], bool] | None = None,
    firm: Firm = FIRM,
    afresh: bool = False,
) -> PlanReport:
    """Plan from what the database holds at `as_of` (default: now, or the start of a programme that lies ahead).

    The plan is saved beside the earlier ones; with `publish` it becomes the one in force and its kits are reserved, unless
    the search was stopped (`stop`). A scenario is planned and saved but never published. `firm` says which firm bookings
    stay; `afresh` plans as if nothing had been published before. Raises PlanRefused where the solver-free check objects,
    and DataError where the data cannot carry a plan; nothing is written then.
    """
    if scenario and publish:
        raise PlanRefused("a scenario is not published; load the change it stands for, then plan again")
    data = read_planning_data(db)
    published = data.previous
    changes = read_scenario(scenario) if scenario else {}
    data = replace(data, mill=apply_scenario(data.mill, changes), previous=None if afresh else published)
    prepared = prepare(data, planning_moment(data.mill.terms, as_of))
    released = frozenset(find_loom(data.mill, loom, firm.hall) for loom in firm.release)
    problem = prepared.asked(Asked(firm.stay, released))
    result = solve(problem, time_limit_s=time_limit_s, progress=progress, stop=stop)
    check(result, problem)
    result = replace(result, asked=replace(result.asked, afresh=afresh and published is not None))
    name = str(changes.get("name") or scenario.stem) if scenario else None
    publish = publish and not (stop and stop())
    return report_of(result, data, problem, save(db, result, publish, name, published), publish, name)


def report_of(
    result: Plan, data: PlanningData, problem: PlanningProblem, number: int, published: bool, scenario: str | None
) -> PlanReport:
    """A plan beside the published one that it was made after."""
    broken = no_longer(data.previous, problem) if data.previous else {}
    moves = differences(data.previous, result, data.stages, broken) if data.previous else ()
    told = tuple(finding for findings in broken.values() for finding in findings)
    return PlanReport(result, data.previous, moves, told, number, published, scenario, data.mill.terms.zone)


def check(result: Plan, problem: PlanningProblem) -> None:
    """Refuse a plan that books nothing because nothing can be, or that the solver-free check rejects."""
    if result.status is PlanStatus.INFEASIBLE:
        raise PlanRefused("there is no plan: " + _first(result.reasons, MOST_REASONS))
    if violations := verify(result, problem):
        raise PlanRefused(f"the plan does not pass the check: {_first(violations, 1)}; nothing was saved")


def _first(sentences: Sequence[str], most: int) -> str:
    more = len(sentences) - most
    return " ".join(sentences[:most]) + (f" (and {more} more)" if more > 0 else "")


def save(db: str, result: Plan, publish: bool, scenario: str | None, previous: Plan | None) -> int:
    """Append a plan, and reserve its kits where it is published; gives its number. `previous`: the published plan that it
    was made after; PlanRefused where another one has been published since."""
    with open_store(db).unit_of_work() as uow:
        if publish and uow.published_plan() != previous:
            raise PlanRefused("another plan was published while this one was made; nothing was saved, plan again")
        number = uow.save_plan(result, published=publish, scenario=scenario)
        if publish:
            reserve_plan(uow, result)
        uow.commit()
    return number


def differences(
    before: Plan,
    after: Plan,
    stages: Mapping[LoomKey, StageChange] | None = None,
    broken: Mapping[LoomKey | None, Sequence[str]] | None = None,
) -> tuple[Move, ...]:
    """Looms whose booking moved, came, went or takes another choice; by the new start, dropped ones last. `stages`: what
    was recorded of the looms, since it says why one is not booked any more; `broken`: what of the plan before does not
    hold any more, by loom."""
    old: Mapping[LoomKey, Booking] = {b.key: b for b in before.bookings}
    new: Mapping[LoomKey, Booking] = {b.key: b for b in after.bookings}
    left = {key: change.stage.value for key, change in (stages or {}).items()}
    left |= {item.key: item.why for item in after.left_over}
    why = {key: findings[0] for key, findings in (broken or {}).items() if key and findings} | left
    moves = [Move(key, old.get(key), new.get(key), why.get(key, "")) for key in old.keys() | new.keys()]
    moved = [move for move in moves if move.what != "same"]
    return tuple(sorted(moved, key=lambda move: (move.after is None, move.start, move.key.sort_key)))
