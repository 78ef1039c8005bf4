"""Plan several scenarios and set them side by side with the published plan."""

from collections.abc import Sequence
from dataclasses import asdict, dataclass, replace
from datetime import datetime
from pathlib import Path
from typing import Any

from tracker.domain.clock import planning_moment
from tracker.errors import PlanRefused, UsageError, message
from tracker.services.context import Context
from tracker.services.people.permissions import May
from tracker.services.plans.plan import FIRM, TO_THE_END, Firm, PlanReport, PlanRequest, Progress, Search, plan
from tracker.services.plans.scenario import apply_scenario, read_scenario
from tracker.services.screens.scenario_board import PlanLine, plan_line
from tracker.words import ENGLISH

AS_THEY_STAND = ENGLISH.say(message("as-things-stand"))
"""A name, as those of the scenarios beside it."""


@dataclass(frozen=True, slots=True)
class ScenariosReport:
    plans: tuple[PlanReport, ...]
    """One for each scenario, in the order given."""
    compared: tuple[PlanLine, ...]
    """What is measured against first: the published plan, where it is of the same moment and no booked loom has gone on
    since, else a plan of things as they stand; then the scenarios."""
    currency: str

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        return {
            "plans": [report.record() for report in self.plans],
            "compared": [_line_record(line) for line in self.compared],
        }


def plan_scenarios(
    context: Context,
    files: Sequence[Path],
    as_of: datetime | None = None,
    firm: Firm = FIRM,
    search: Search = TO_THE_END,
) -> ScenariosReport:
    """Plan each scenario as `plan` does; all the files are read before the first is planned, so that a fault in the last
    costs nobody an hour. UsageError for one that does not fit, and for two of one name."""
    context.require(May.PLAN)
    names = _names(context, files)
    with context.reading() as uow:
        mill, published, stages = uow.mill(), uow.published_plan(), uow.stages()
    at = planning_moment(mill.terms, as_of, context.now())
    same = published is not None and published.as_of == at and not any(b.key in stages for b in published.bookings)
    runs = [*([] if same else [(AS_THEY_STAND, None)]), *zip(names, files, strict=True)]

    def run(number: int, name: str, file: Path | None) -> PlanReport:
        told = _part_of(search.progress, name, number, len(runs)) if search.progress else None
        try:
            return plan(context, PlanRequest(scenario=file, as_of=as_of, firm=firm), replace(search, progress=told))
        except PlanRefused as refusal:
            raise PlanRefused("of-scenario", name=name, why=refusal.message) from refusal

    made = {name: run(number, name, file) for number, (name, file) in enumerate(runs)}
    lines = [plan_line(mill, name, None, report.plan) for name, report in made.items()]
    if same and published:
        lines.insert(0, plan_line(mill, "published plan", None, published))
    return ScenariosReport(tuple(made[name] for name in names), tuple(lines), mill.terms.currency)


def _names(context: Context, files: Sequence[Path]) -> list[str]:
    with context.reading() as uow:
        mill = uow.mill()
    names: list[str] = [AS_THEY_STAND]
    for file in files:
        scenario = read_scenario(file)
        apply_scenario(mill, scenario)
        name = str(scenario.get("name") or file.stem)
        if name in names:
            raise UsageError("scenario-named-twice", file=str(file), name=name)
        names.append(name)
    return names[1:]


def _part_of(progress: Progress, name: str, number: int, of: int) -> Progress:
    return lambda what, part: progress(message("of-scenario", name=name, why=what), (number + part) / of)


def _line_record(line: PlanLine) -> dict[str, Any]:
    plan = line.plan
    return {
        "name": line.name, "status": plan.status.value, "objective": plan.objective, "bound": plan.bound, "gap": plan.gap,
        "bookings": len(plan.bookings), "left_over": len(plan.left_over), "cost": asdict(line.cost),
        "left_over_cost": line.left_over_cost, "without_moves": line.comparable, "stopped_h": line.stopped_h,
        "finish_on": line.finish_on.isoformat() if line.finish_on else None,
    }  # fmt: skip
