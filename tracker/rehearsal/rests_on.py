"""From where each figure that a rehearsal draws by comes: the mill's records, what was asked for, or what is usual."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from math import isclose, sqrt
from statistics import fmean

from tracker.domain.shifts import crews_of
from tracker.domain.terms import Terms
from tracker.forecast.variation import default_spread_h
from tracker.planning.problem import PlanningProblem
from tracker.rehearsal.drawing import BEAM_OUTS
from tracker.rehearsal.sources import MILL, OF_SOURCE, Source, Spreads, Whose, of_crew, of_supplier

USE_OF_WARP = "day_to_day_variation"


@dataclass(frozen=True, slots=True)
class Ground:
    """One figure, and for whom it was taken."""

    source: Source
    name: str
    """Of `Spreads`, or `USE_OF_WARP`."""
    value: float
    by: str
    """`records`, `asked` (or said by the terms) or `usual`."""
    kind: str
    """Of whom: `type`, `supplier`, `crew` or `mill`."""
    names: tuple[str, ...] = ()
    """For whom it was taken; empty = for all."""
    together: bool = False
    """Whether the records are those of all of them together, since each alone has too few."""
    count: int = 0
    since: date | None = None


def rests_on(problem: PlanningProblem, spreads: Spreads) -> tuple[Ground, ...]:
    """Of every source that varies, in the order of `Source`; by records first, then as asked for, then as is usual."""
    found = [ground for name in OF_SOURCE for ground in _of(name, problem, spreads)]
    found = [ground for ground in (*_use_of_warp(problem), *found) if ground.source not in spreads.off]
    order = list(Source)
    return tuple(sorted(found, key=lambda ground: order.index(ground.source)))


def _of(name: str, problem: PlanningProblem, spreads: Spreads) -> Iterator[Ground]:
    source, usual, own = OF_SOURCE[name], getattr(spreads, name), spreads.own.get(name, {})
    if name in spreads.asked:
        yield Ground(source, name, usual, "asked", "mill")
        return
    parties = _parties(name, problem) or [("", ())]
    takers: dict[Whose | None, list[str]] = {}
    for party, looked_for in parties:
        takers.setdefault(next((each for each in looked_for if each in own), None), []).append(party)
    kind = KINDS.get(source, "mill")
    for whose, names in sorted(takers.items(), key=lambda item: item[0] is None):
        whom = tuple(filter(None, names)) if (whose and whose.name) or len(names) < len(parties) else ()
        if whose is None:
            yield Ground(source, name, usual, "usual", kind, whom)
        else:
            figure, together = own[whose], not whose.name and whose != MILL
            yield Ground(source, name, figure.value, "records", kind, whom, together, figure.count, figure.since)


def _use_of_warp(problem: PlanningProblem) -> Iterator[Ground]:
    """How much the use of warp varies from day to day: the spread that the forecast has for the looms to be planned."""
    mill, default = problem.mill, problem.mill.terms.day_to_day_variation
    spreads_h = {key: window.spread_h for key in problem.planned for window in problem.windows.get(key, ())
                 if window.kind in BEAM_OUTS}  # fmt: skip
    own = [key for key, spread_h in spreads_h.items() if not isclose(spread_h, default_spread_h(default))]
    readings = [one for key in own for one in mill.readings.get(key, ()) if one.read_at <= problem.as_of]
    if readings:
        since = min(one.read_at for one in readings).astimezone(mill.terms.zone).date()
        mean = fmean(sqrt(spreads_h[key] / default_spread_h(1)) for key in own)
        yield Ground(Source.BEAM_OUTS, USE_OF_WARP, mean, "records", "mill", count=len(readings), since=since)
    if len(own) < len(spreads_h):
        by = "usual" if default == Terms().day_to_day_variation else "asked"
        yield Ground(Source.BEAM_OUTS, USE_OF_WARP, default, by, "mill")


KINDS = {Source.WORK: "type", Source.PEOPLE: "crew", Source.RECEIPTS: "supplier"}


def _parties(name: str, problem: PlanningProblem) -> Sequence[tuple[str, Sequence[Whose]]]:
    """(as it is called, where its figure is looked for) of all whom a figure is drawn for."""
    mill, kind = problem.mill, KINDS.get(OF_SOURCE[name])
    if kind == "type":
        types = sorted({mill.looms[key].machine_type for key in problem.planned})
        return [(each, (Whose("type", each),)) for each in types]
    if kind == "crew":
        lead = {crew.crew for crew in crews_of(mill, mill.terms.lead_trade)}
        crews = dict.fromkeys(crew.crew for crew in mill.crews if crew.heads > 0)
        return [(crew, of_crew(crew, crew in lead)) for crew in crews]
    if kind == "supplier":
        of_lines = [
            line.supplier or mill.parts[line.part].supplier for line in mill.receipts if line.part in mill.parts
        ]
        suppliers = {name or "" for name in (*of_lines, *(part.supplier for part in mill.parts.values()))}
        return [(each, of_supplier(each)) for each in sorted(suppliers)]
    return [("", (MILL,))]
