"""Halls whose settings are made up from a seed: quiet ones, and some in which a loom moves or drifts."""

from datetime import UTC, datetime, timedelta

import numpy as np

from tracker.commissioning.settings.series import Limits, Occasion, Series, Value
from tracker.domain.mill import LoomKey

START = datetime(2027, 1, 11, 6, tzinfo=UTC)
SETTINGS = (("crossing angle", "deg", 310.0, 1.0), ("tension", "cN", 24.0, 3.0), ("position", "mm", 45.0, 1.0),
            ("offset", "deg", 0.0, 1.0))  # fmt: skip
"""Name, unit, target and repeatability; left and right of each make eight series a loom."""
FAMILIES = 8


def hall(seed: int, *, looms: int = 96, weeks: int = 8, rounded: bool = False, moved: float = 0.0, after: int = 4,
         spread: float = 1.0, settings: int = 8) -> list[Series]:  # fmt: skip
    """Series of a hall read once a week for `weeks` weeks after they were set.

    Readings vary by the repeatability ÷ 2.77, what is set by `spread` repeatabilities ÷ 2.77 from loom to loom; `rounded`
    to whole units. With `moved` the first series of loom 0 lies that many repeatabilities higher in its last `after` readings.
    """
    rng = np.random.default_rng(seed)
    found = []
    for i in range(looms):
        for j in range(settings):
            name, unit, target, repeatability = SETTINGS[j // 2 % len(SETTINGS)]
            name += f" {j // 8}" if j >= 8 else ""
            values = target + repeatability / 2.77 * (spread * rng.standard_normal() + rng.standard_normal(weeks + 1))
            if moved and i == j == 0:
                values[-after:] += moved * repeatability
            values = values % 360 if unit == "deg" else values
            found.append(_series(i, name, unit, "left" if j % 2 == 0 else "right", target, repeatability,
                                 np.round(values) if rounded else values))  # fmt: skip
    return found


def _series(
    loom: int, name: str, unit: str, side: str, target: float, repeatability: float, values: np.ndarray
) -> Series:
    return Series(
        LoomKey("A", str(loom + 1)), name, side,
        tuple(Value(float(v), START + timedelta(weeks=w), Occasion.READ_OUT if w else Occasion.SET, "plain")
              for w, v in enumerate(values)),
        unit, Limits(target), repeatability, "T1", f"family {loom % FAMILIES}",
    )  # fmt: skip
