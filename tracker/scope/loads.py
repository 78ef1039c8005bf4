"""From the operations that a loom gets to minutes, heads and tools."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from operator import attrgetter

from tracker.domain.method import KitLine, Operation
from tracker.domain.words import fold
from tracker.domain.work import StepLoad
from tracker.scope.pert import operation_minutes

ON_LOOM, BENCH, AFTER, BENCH_AFTER = "on loom", "bench before", "after restart", "bench after"


@dataclass(frozen=True, slots=True)
class Load:
    """Operations in step order and what they take; minutes include the factor that was asked for."""

    operations: tuple[Operation, ...]
    steps: tuple[StepLoad, ...]
    """On the loom."""
    after_steps: tuple[StepLoad, ...]
    """After the restart."""
    on_loom_min: float
    """Elapsed; then on the bench before, after the restart, and on the bench after."""
    bench_min: float
    after_restart_min: float
    bench_after_min: float
    labour_min: Mapping[str, float]
    """Trade → person-minutes over all places."""
    kept_labour_min: Mapping[str, float]
    """Of these, what the learning factor does not touch."""


class Loader:
    """Adds up operations; the same rows side by side are added up once.

    Every minute of every place takes 1 + `allowance`, and those that learn take the learning factor too.
    """

    def __init__(self, allowance: float, learning: float = 1.0):
        self.allowance, self.learning = allowance, learning
        self._minutes: dict[int, float] = {}
        self._steps: dict[tuple[int, ...], StepLoad] = {}
        self._spelt: dict[str, str] = {}
        """Folded trade or tool → as its first row writes it: `Fitter` and `fitter` are one."""
        self._first: dict[str, str] = {}
        """As a row writes it → as the first one does."""

    def load(self, operations: Iterable[Operation]) -> Load:
        ordered = tuple(sorted(operations, key=attrgetter("step")))
        steps = self._steps_by_place(ordered)
        return Load(
            operations=ordered,
            steps=tuple(steps[ON_LOOM]),
            after_steps=tuple(steps[AFTER]),
            on_loom_min=sum(step.minutes for step in steps[ON_LOOM]),
            bench_min=sum(step.minutes for step in steps[BENCH]),
            after_restart_min=sum(step.minutes for step in steps[AFTER]),
            bench_after_min=sum(step.minutes for step in steps[BENCH_AFTER]),
            labour_min=self._labour_min(ordered),
            kept_labour_min=self._labour_min(row for row in ordered if not row.learns),
        )

    def minutes(self, operation: Operation) -> float:
        """Elapsed minutes of one operation, expected."""
        if id(operation) not in self._minutes:
            factor = (1 + self.allowance) * (self.learning if operation.learns else 1.0)
            self._minutes[id(operation)] = operation_minutes(operation).expected * factor
        return self._minutes[id(operation)]

    def _steps_by_place(self, ordered: tuple[Operation, ...]) -> dict[str, list[StepLoad]]:
        rows: dict[tuple[str, int], list[Operation]] = {}
        for operation in ordered:
            rows.setdefault((operation.place, operation.step), []).append(operation)
        steps: dict[str, list[StepLoad]] = {ON_LOOM: [], BENCH: [], AFTER: [], BENCH_AFTER: []}
        for (place, _), side_by_side in rows.items():
            steps.setdefault(place, []).append(self._step(side_by_side))
        return steps

    def _step(self, rows: list[Operation]) -> StepLoad:
        key = tuple(map(id, rows))
        if key not in self._steps:
            self._steps[key] = self._added(rows)
        return self._steps[key]

    def _added(self, rows: list[Operation]) -> StepLoad:
        """Minutes of the longest row; heads and tools of rows side by side add up."""
        heads: dict[str, int] = {}
        tools: dict[str, int] = {}
        for operation in rows:
            trade = self._one(operation.trade)
            heads[trade] = heads.get(trade, 0) + operation.heads
            if operation.tool:
                tool = self._one(operation.tool)
                tools[tool] = tools.get(tool, 0) + 1
        longest = max(rows, key=self.minutes)
        asked = {operation.warp for operation in rows}
        warp = next((word for word in ("out", "in") if word in asked), None)
        neighbours = any(operation.stops_neighbours for operation in rows)
        return StepLoad(rows[0].step, self.minutes(longest), heads, tools, longest.learns, warp, neighbours)

    def _labour_min(self, operations: Iterable[Operation]) -> Mapping[str, float]:
        labour: dict[str, float] = {}
        for operation in operations:
            trade = self._one(operation.trade)
            labour[trade] = labour.get(trade, 0.0) + self.minutes(operation) * operation.heads
        return labour

    def _one(self, name: str) -> str:
        if name not in self._first:
            self._first[name] = self._spelt.setdefault(fold(name), name)
        return self._first[name]


def part_quantities(kit: Iterable[KitLine]) -> Mapping[str, float]:
    """Part → quantity, lines of the same part added."""
    quantities: dict[str, float] = {}
    for line in kit:
        quantities[line.part] = quantities.get(line.part, 0.0) + line.quantity
    return quantities
