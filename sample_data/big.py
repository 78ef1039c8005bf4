"""Invented halls of any size for benchmarks: the sample's makes, articles, method and parts, with more of each."""

from dataclasses import replace
from datetime import timedelta
from itertools import accumulate, pairwise
from math import ceil
from random import Random

from sample_data import people, stores, weaving
from sample_data.hall import make_looms
from sample_data.method import METHOD
from tracker.domain.mill import Crew, Loom, Mill, Tool

SAMPLE_LOOMS, SAMPLE_WEEKS = 96, 12
MARGIN = 1.2
"""Stock and receipts above the sample's share, since another draw needs more of one part and less of another."""
Mix = tuple[tuple[str, float], ...]
AIR_JET, RAPIER = (("AJ-N", 0.7), ("AJ-W", 0.3)), (("RP-N", 0.68), ("RP-W", 0.32))
BOTH = (("AJ-N", 0.38), ("AJ-W", 0.16), ("RP-N", 0.31), ("RP-W", 0.15))
"""Machine types of a hall and their shares: halls take turns, a single hall has both, so that parts fit any mill."""
INSERTION = ("air-jet", "rapier")


def make_mill(looms: int, weeks: int, crews: int, halls: int = 1, seed: int = 1) -> Mill:
    """A mill of `looms` looms in `halls` halls, `crews` crews of two fitters, planned over `weeks` weeks.

    Halls take turns: air-jet, rapier, air-jet …; a single hall has both. A loom number starts again in each hall.
    There is an electrician for each crew; jigs and hoists grow with the crews; stock and receipts with the looms, spread over
    the weeks as in the sample. The same arguments give the same mill.
    """
    rng = Random(seed)
    found = {
        loom.key: loom
        for hall in range(halls)
        for loom in _hall(rng, hall, _share(looms, halls, hall), _mix(hall, halls))
    }
    warps = [warp for loom in found.values() for warp in weaving.make_warps(rng, loom, rng.choice((0, 1, 1, 2, 2, 3)))]
    scale = MARGIN * looms / SAMPLE_LOOMS
    return Mill(
        looms=found,
        warps=weaving.by_loom(warps),
        articles=weaving.ARTICLES,
        changes=weaving.CHANGES,
        parts=stores.parts(scale),
        receipts=stores.receipts(weaving.START, scale, weeks / SAMPLE_WEEKS),
        crews=_crews(crews),
        running=tuple(row for i in range(halls) for row in weaving.running(f"Hall {i + 1}", INSERTION[i % 2])),
        closures=tuple(closure for closure in weaving.CLOSURES if closure.hall is None),
        tools={name: Tool(name, ceil(crews / 2)) for name in people.TOOLS},
        method=METHOD,
        terms=replace(
            people.TERMS,
            programme=f"Benchmark of {looms} looms (invented)",
            horizon_days=7 * weeks,
            target_finish=weaving.START + timedelta(days=7 * weeks - 3),
            looms_stopped_at_once=max(2, ceil(1.5 * crews / halls)),
            pilots={},
        ),
    )


def _share(looms: int, halls: int, hall: int) -> int:
    return looms // halls + (hall < looms % halls)


def _mix(hall: int, halls: int) -> Mix:
    return BOTH if halls == 1 else (AIR_JET, RAPIER)[hall % 2]


def _hall(rng: Random, hall: int, count: int, mix: Mix) -> list[Loom]:
    numbers = [f"{n:03d}" for n in range(1, count + 1)]
    edges = [round(count * edge) for edge in accumulate((share for _, share in mix), initial=0.0)]
    counts = [(machine_type, b - a) for (machine_type, _), (a, b) in zip(mix, pairwise(edges), strict=True)]
    looms = make_looms(rng, f"Hall {hall + 1}", numbers, counts)
    return [replace(loom, capacity_unsold=rng.random() < 0.08) for loom in looms]


def _crews(crews: int) -> tuple[Crew, ...]:
    fitters = [
        Crew(f"Fitters {n + 1}", "fitter", 2, people.WORKDAYS, *people.SHIFTS[n % 2], 34.0) for n in range(crews)
    ]
    electricians, bench = people.CREWS[-2:]
    return (*fitters, replace(electricians, heads=crews), replace(bench, heads=ceil(crews / 2)))
