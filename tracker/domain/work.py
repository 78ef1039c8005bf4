"""Work content: what one conversion consists of, for one loom's attributes, a window kind and choices taken."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from math import sqrt

from tracker.domain.method import Check, KitLine, Operation, Setpoint
from tracker.domain.mill import Part
from tracker.domain.windows import WindowKind
from tracker.domain.words import fold

MethodRow = Operation | KitLine | Setpoint | Check

Choices = tuple[tuple[str, str], ...]
"""((choice, alternative), …) in the order of the method."""


@dataclass(frozen=True, slots=True)
class StepLoad:
    """One step on the loom: how long it lasts and what it holds, allowance and learning included."""

    step: int
    minutes: float
    heads: Mapping[str, int]
    """Trade → heads held during the step."""
    tools: Mapping[str, int]
    """Tool → how many are held during the step."""
    learns: bool = True
    """Whether the learning factor touches it (of rows side by side: the longest)."""
    warp: str | None = None
    """`out` or `in` as the method says (of rows side by side: `out` before `in`); None = either."""
    stops_neighbours: bool = False
    """Whether the looms beside it stand meanwhile."""

    def holds(self, trade: str) -> str:
        """A trade as its heads name it; empty where it holds none of it."""
        return next((name for name, heads in self.heads.items() if heads and fold(name) == fold(trade)), "")


@dataclass(frozen=True, slots=True)
class WorkContent:
    """Looms with equal scopes share one object."""

    kind: WindowKind
    choices: Choices
    operations: tuple[Operation, ...]
    kit_lines: tuple[KitLine, ...]
    setpoints: tuple[Setpoint, ...]
    checks: tuple[Check, ...]
    steps: tuple[StepLoad, ...]
    """On-loom steps in order."""
    on_loom_min: float
    """Elapsed minutes on the loom: Σ of the steps."""
    bench_min: float
    """Elapsed minutes on the bench before the start."""
    after_restart_min: float
    labour_min: Mapping[str, float]
    """Trade → person-minutes over all places, allowance and learning included."""
    parts: Mapping[str, float]
    """Part → quantity."""
    kept_labour_min: Mapping[str, float] = field(default_factory=dict)
    """Of `labour_min`, what the learning factor does not touch."""
    after_steps: tuple[StepLoad, ...] = ()
    """Steps after the restart, in order."""
    bench_after_min: float = 0.0
    """Elapsed minutes on the bench when the conversion is done."""

    @property
    def kept_labour_h(self) -> float:
        return sum(self.kept_labour_min.values()) / 60

    @property
    def rows(self) -> tuple[MethodRow, ...]:
        """All rows of the method that this conversion takes."""
        return (*self.operations, *self.kit_lines, *self.setpoints, *self.checks)

    @property
    def labour_h(self) -> float:
        return sum(self.labour_min.values()) / 60

    @property
    def first_part(self) -> int:
        """How many of the steps come before the ordinary change, where the warp has its place among them: up to the last
        that needs it out, else those before the first that needs it in. 0 = the conversion is done in one piece: no step
        asks for the warp, or all of the work lies on one side of the change."""
        outs = [i for i, step in enumerate(self.steps, start=1) if step.warp == "out"]
        ins = [i for i, step in enumerate(self.steps) if step.warp == "in"]
        cut = outs[-1] if outs else ins[0] if ins else 0
        both = any(step.minutes > 0 for step in self.steps[:cut]) and any(step.minutes > 0 for step in self.steps[cut:])
        return cut if both else 0

    @property
    def neighbours_stand_min(self) -> float:
        """Minutes of the steps on the loom during which the looms beside it stand."""
        return sum(step.minutes for step in self.steps if step.stops_neighbours)

    def attended_by(self, trade: str) -> "WorkContent":
        """The same work when one head of a trade stays from its start to its end; itself where its steps on the loom do not ask
        for that trade, or ask for it all along."""
        names = [name for step in self.steps if (name := step.holds(trade))]
        if len(names) in (0, len(self.steps)):
            return self
        name, labour, kept = names[0], dict(self.labour_min), dict(self.kept_labour_min)
        for step in self.steps:
            if not step.holds(trade):
                labour[name] = labour.get(name, 0.0) + step.minutes
                kept[name] = kept.get(name, 0.0) + (0.0 if step.learns else step.minutes)
        steps = tuple(s if s.holds(trade) else replace(s, heads={**s.heads, name: 1}) for s in self.steps)
        return replace(self, steps=steps, labour_min=labour, kept_labour_min=kept)

    def holds_throughout(self, trade: str) -> bool:
        """Whether every step on the loom holds a head of a trade."""
        return bool(self.steps) and all(step.holds(trade) for step in self.steps)

    def scaled(self, share: float) -> "WorkContent":
        """The same work when every minute on the loom that learns takes this share."""
        steps = tuple(replace(step, minutes=step.minutes * share) if step.learns else step for step in self.steps)
        kept = self.kept_labour_min
        return replace(
            self,
            steps=steps,
            on_loom_min=sum(step.minutes for step in steps),
            labour_min={t: kept.get(t, 0.0) + (m - kept.get(t, 0.0)) * share for t, m in self.labour_min.items()},
        )


USUAL_VARIATION = 0.15
"""Coefficient of variation of the time of a conversion, where the method gives no low and high."""


def time_variation(content: WorkContent, usual: float = USUAL_VARIATION) -> float:
    """Coefficient of variation of its time on the loom: by the method's low and high (a sixth of what lies between is taken
    for the standard deviation of a step), else the usual one."""
    ranges = [(op.minutes_low, op.minutes_high) for op in content.operations]
    wide = [high - low for low, high in ranges if low is not None and high is not None]
    if not wide or content.on_loom_min <= 0:
        return usual
    return sqrt(sum((each / 6) ** 2 for each in wide)) / content.on_loom_min


def labour_cost(content: WorkContent, rates: Mapping[str, float]) -> float:
    """Currency: Σ person-minutes / 60 × rate, over all trades and places. `rates`: folded trade → currency per head and hour;
    a trade without a crew costs nothing."""
    return sum(minutes / 60 * rates.get(fold(trade), 0.0) for trade, minutes in content.labour_min.items())


def parts_cost(content: WorkContent, parts: Mapping[str, Part]) -> float:
    """Currency: Σ quantity × price; a part that is not listed has none."""
    return sum(quantity * parts[part].price for part, quantity in content.parts.items() if part in parts)
