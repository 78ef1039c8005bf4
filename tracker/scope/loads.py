"""From the rows that a loom gets to minutes, heads, tools and parts."""

from collections import Counter
from collections.abc import Iterable, Mapping
from itertools import groupby

from tracker.domain.method import Check, KitLine, Operation, Setpoint
from tracker.domain.windows import WindowKind
from tracker.domain.work import Choices, StepLoad, WorkContent
from tracker.scope.pert import operation_minutes

ON_LOOM, BENCH, AFTER = "on loom", "bench before", "after restart"


def work_content(
    kind: WindowKind,
    choices: Choices,
    operations: Iterable[Operation],
    kit_lines: Iterable[KitLine],
    setpoints: Iterable[Setpoint],
    checks: Iterable[Check],
    factor: float,
) -> WorkContent:
    """The content of one conversion; `factor` = (1 + allowance) × learning, on every minute of every place."""
    ordered = tuple(sorted(operations, key=lambda operation: operation.step))
    kit = tuple(kit_lines)
    steps = step_loads((o for o in ordered if o.place == ON_LOOM), factor)
    return WorkContent(
        kind=kind,
        choices=choices,
        operations=ordered,
        kit_lines=kit,
        setpoints=tuple(setpoints),
        checks=tuple(checks),
        steps=steps,
        on_loom_min=sum(step.minutes for step in steps),
        bench_min=_elapsed_min(ordered, BENCH, factor),
        after_restart_min=_elapsed_min(ordered, AFTER, factor),
        labour_min=labour_min(ordered, factor),
        parts=_parts(kit),
    )


def step_loads(operations: Iterable[Operation], factor: float) -> tuple[StepLoad, ...]:
    """Operations in step order → steps: minutes of the longest row; heads and tools of rows side by side add up."""
    steps = []
    for number, rows in groupby(operations, key=lambda operation: operation.step):
        heads: Counter[str] = Counter()
        tools: Counter[str] = Counter()
        longest = 0.0
        for row in rows:
            longest = max(longest, operation_minutes(row).expected)
            heads[row.trade] += row.heads
            if row.tool:
                tools[row.tool] += 1
        steps.append(StepLoad(number, longest * factor, dict(heads), dict(tools)))
    return tuple(steps)


def labour_min(operations: Iterable[Operation], factor: float) -> Mapping[str, float]:
    """Trade → person-minutes."""
    minutes: Counter[str] = Counter()
    for operation in operations:
        minutes[operation.trade] += operation_minutes(operation).expected * operation.heads * factor  # type: ignore[assignment]
    return dict(minutes)


def _elapsed_min(operations: Iterable[Operation], place: str, factor: float) -> float:
    return sum(step.minutes for step in step_loads((o for o in operations if o.place == place), factor))


def _parts(kit: Iterable[KitLine]) -> Mapping[str, float]:
    quantities: Counter[str] = Counter()
    for line in kit:
        quantities[line.part] += line.quantity  # type: ignore[assignment]
    return dict(quantities)
