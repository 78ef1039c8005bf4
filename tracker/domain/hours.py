"""What a conversion takes of people, as the hours of a machine type or a variant are told."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from tracker.domain.windows import WindowKind


@dataclass(frozen=True, slots=True)
class Hours:
    """Person-hours for one loom (the mean over `looms`), allowance included, with the choices that take the least."""

    machine_type: str
    variant: str
    """Empty: all variants of the type."""
    kinds: tuple[WindowKind, ...]
    """The kinds of window for which the figures hold."""
    looms: int
    first_h: float
    """The first conversion of the type by a crew."""
    next_h: float
    """The next one, as the next plan counts it."""
    last_h: float
    """The `last_number`-th by one crew: the last one if one crew did all looms of the type."""
    last_number: int
    low_h: float
    """The next one, P10 and P90 by the three-point estimates of the method; equal to `next_h` where it gives none."""
    high_h: float
    on_loom_h: float
    """Elapsed hours of the next one, loom stopped; then on the bench before, and after the restart."""
    bench_h: float
    after_restart_h: float
    parts_cost: float
    """Currency."""
    source: str
    """`standard` (the curve of the terms) or `fitted`."""
    trades: Mapping[str, float] = field(default_factory=dict)
    """Trade → person-hours of the next one."""
