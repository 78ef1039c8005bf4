"""Which of many chances are reported, the share of false ones held (Benjamini and Hochberg 1995)."""

import numpy as np
from numpy.typing import ArrayLike
from scipy.stats import false_discovery_control

RATE = 0.1
"""Of what one review reports, the share that is expected to be false."""


def reported(chances: ArrayLike, rate: float = RATE) -> np.ndarray:
    """True where a chance is reported."""
    p = np.asarray(chances, dtype=float)
    return false_discovery_control(p) <= rate if p.size else np.zeros(0, dtype=bool)
