"""Work content: what one conversion consists of, for one loom's attributes, a window kind and choices taken."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from tracker.domain.method import Check, KitLine, Operation, Setpoint
from tracker.domain.windows import WindowKind

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
