"""The spread that is left when a booking is made firm (MODEL.md, section 2)."""

import numpy as np

from tracker.arrays.inverse_gaussian import quantile
from tracker.planning.model.grid import Floats

SHARES = np.arange(1, 100) / 100
"""The 99 quantiles over which expected costs are taken."""


def firmed(mean_h: Floats, spread_h: Floats) -> Floats:
    """The 99 quantiles (running hours) of inverse Gaussians of mean `mean_h` and variance mean × `spread_h`.

    Both of shape (n,), hours; result (n, 99). Without mean or spread every quantile is the mean (0 where below 0).
    """
    pairs = np.stack([np.maximum(mean_h, 0.0), spread_h], axis=1)
    unique, back = np.unique(pairs, axis=0, return_inverse=True)
    return quantile(unique[:, :1], unique[:, 1:], SHARES)[back.reshape(-1)]
