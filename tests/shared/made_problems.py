"""Problems made from invented mills of any size, through the forecast and the scope as the services do it."""

from dataclasses import replace
from datetime import timedelta
from typing import Any

from sample_data.big import make_mill
from tracker.domain.clock import horizon_end, start_of_day
from tracker.domain.mill import Mill, Tool
from tracker.domain.terms import Terms
from tracker.forecast.beam_outs import forecast, unforecast
from tracker.planning.problem import PlanningProblem
from tracker.scope.content import scope_looms


def problem_of(
    looms: int, weeks: int, crews: int, halls: int = 1, seed: int = 1, days: float = 0, **changes: Any
) -> PlanningProblem:
    """A problem as of `days` after the start of an invented mill, whose halls share crews, tools and parts; `changes`
    are terms or fields of the problem."""
    terms = {name: changes.pop(name) for name in list(changes) if name in Terms.__slots__}
    mill = make_mill(looms, weeks, crews, halls=halls, seed=seed)
    return _planned(replace(mill, terms=replace(mill.terms, **terms)), days, **changes)


def problem_of_separate_halls(looms: int, weeks: int, halls: int, crews: int, seed: int = 1) -> PlanningProblem:
    """Halls of their own crews (`crews` each), electricians and no want of tools: they share only parts."""
    mill = make_mill(looms, weeks, halls * crews, halls=halls, seed=seed)
    names = [f"Hall {i + 1}" for i in range(halls)]
    fitters = [crew for crew in mill.crews if crew.trade == "fitter"]
    own = [replace(crew, hall=names[i // crews]) for i, crew in enumerate(fitters)]
    for crew in mill.crews:
        if crew.trade != "fitter":
            heads = max(1, -(-crew.heads // halls))
            own += [replace(crew, crew=f"{crew.crew} {name}", hall=name, heads=heads) for name in names]
    return _planned(replace(mill, crews=tuple(own), tools={name: Tool(name, looms) for name in mill.tools}))


def _planned(mill: Mill, days: float = 0, **changes: Any) -> PlanningProblem:
    assert mill.terms.start
    as_of = start_of_day(mill.terms.start, mill.terms) + timedelta(days=days)
    scopes = scope_looms(mill)
    without = {key: scope.obstacle for key, scope in scopes.items() if scope.obstacle and not scope.contents}
    return PlanningProblem(
        mill=mill,
        windows=forecast(mill, as_of, horizon_end(mill.terms, as_of)),
        contents={key: scope.contents for key, scope in scopes.items() if scope.contents},
        as_of=as_of,
        unplannable=unforecast(mill, as_of) | without,
        **changes,
    )
