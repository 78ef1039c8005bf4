"""How much things vary in this mill, read from what it has recorded."""

from datetime import datetime

from tracker.domain.mill import Mill
from tracker.domain.shifts import crews_of, lead_heads
from tracker.mill_state.planning import PlanningData
from tracker.rehearsal import recorded
from tracker.rehearsal.recorded import CrewThere, Own, Worked
from tracker.scope.experience import learn
from tracker.services.context import Context


def own_spreads(context: Context, data: PlanningData, at: datetime) -> Own:
    """What its records say up to the day of `at`, which is never later than today: nothing has happened yet of what lies ahead."""
    with context.reading() as uow:
        past, history = uow.past(), uow.stage_history()
    zone = data.mill.terms.zone
    today = min(at, context.now()).astimezone(zone).date()
    learned = learn(data.conversions, data.mill, data.methods)
    worked = {
        name: Worked(of_type.off_curve, of_type.since.astimezone(zone).date())
        for name, of_type in learned.items()
        if of_type.since
    }
    return {
        **recorded.of_work(worked), **recorded.of_receipts(past.lines, today),
        **recorded.of_people(_crews(data.mill), past.absences, today), **recorded.of_failures(history, zone),
        **recorded.of_orders(past.notices, past.listed_on, today),
    }  # fmt: skip


def _crews(mill: Mill) -> list[CrewThere]:
    """One for each crew, whatever its rows; of one with an open end the span is open."""
    lead, found = {crew.crew for crew in crews_of(mill, mill.terms.lead_trade)}, []
    for name in dict.fromkeys(crew.crew for crew in mill.crews if crew.heads > 0):
        rows = [crew for crew in mill.crews if crew.crew == name and crew.heads > 0]
        begins, ends = [row.from_on for row in rows if row.from_on], [row.to_on for row in rows if row.to_on]
        found.append(CrewThere(
            name, max(row.heads for row in rows), name in lead, lead_heads(mill) if name in lead else 1,
            min(begins) if len(begins) == len(rows) else None, max(ends) if len(ends) == len(rows) else None,
        ))  # fmt: skip
    return found
