"""Ratios of rates and the stepped comparison against published values and other libraries."""

import numpy as np
import pytest
import statsmodels.api as sm
from made_programmes import programme
from scipy.stats import binomtest
from statsmodels.stats.rates import test_poisson_2indep as rates_differ

from tracker.commissioning.worth.effects import FitRows, Sizes, fit
from tracker.commissioning.worth.plain import exact_ratio
from tracker.commissioning.worth.stepped import Stepped, stepped

WARPBREAKS = {
    ("A", "L"): (26, 30, 54, 25, 70, 52, 51, 26, 67), ("A", "M"): (18, 21, 29, 17, 12, 18, 35, 30, 36),
    ("A", "H"): (36, 21, 24, 18, 10, 43, 28, 15, 26), ("B", "L"): (27, 14, 29, 19, 29, 31, 41, 20, 44),
    ("B", "M"): (42, 26, 19, 16, 39, 28, 21, 39, 29), ("B", "H"): (20, 21, 24, 17, 13, 15, 15, 16, 28),
}  # fmt: skip
"""Breaks per loom by wool and tension (Tippett 1950, data set warpbreaks of R, from memory; deviance and coefficients agree)."""


def test_rates_of_a_published_pair() -> None:
    """R1: Gu et al. 2008 as encoded in the tests of statsmodels (seen): 60 in 51,477.5 against 30 in 54,308.7, ratio 2.1100;
    two-sided p .000675 by the exact conditional test, and 1 stays outside the interval."""
    told = exact_ratio(60, 51477.5, 30, 54308.7)
    assert told.estimate == pytest.approx(2.1100, abs=5e-5)
    p = rates_differ(60, 51477.5, 30, 54308.7, method="exact-cond").pvalue
    assert p == pytest.approx(0.000675, abs=5e-6)
    assert binomtest(60, 90, 51477.5 / (51477.5 + 54308.7)).pvalue == pytest.approx(p)
    assert told.low > 1


def test_the_exact_interval_of_a_ratio() -> None:
    """R3: the help example of R's `poisson.test` (seen): 11 in 800 against 21 in 3,011."""
    told = exact_ratio(11, 800, 21, 3011)
    assert (told.estimate, told.low, told.high) == pytest.approx((1.97149, 0.85843, 4.27727), abs=1e-5)


def test_effects_of_wool_and_tension() -> None:
    """R4: Poisson regression of warpbreaks on wool and tension, published R output (seen): −.2060 for wool B, −.3213 and −.5185
    for tension M and H; deviance 210.392 on 50 degrees; Pearson scale 4.26. The wool stands for our looms, the tension for our
    hall-weeks."""
    loom, cell, value = _warpbreaks()
    rows = FitRows(loom, cell, np.zeros(54, dtype=int), value, np.ones(54))
    effects = fit(rows, Sizes(2, 3, 1), counts=True)
    assert effects.loom[1] - effects.loom[0] == pytest.approx(-0.2060, abs=1e-4)
    assert effects.shared[1:3] - effects.shared[0] == pytest.approx([-0.3213, -0.5185], abs=1e-4)
    means = np.exp(effects.loom[loom] + effects.shared[cell] + effects.shared[3])
    assert 2 * (value * np.log(value / means) - (value - means)).sum() == pytest.approx(210.392, abs=1e-3)
    assert ((value - means) ** 2 / means).sum() / 50 == pytest.approx(4.26, abs=5e-3)


def _warpbreaks() -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    wool, tension = {"A": 0, "B": 1}, {"L": 0, "M": 1, "H": 2}
    rows = [(wool[w], tension[t], breaks) for (w, t), many in WARPBREAKS.items() for breaks in many]
    loom, cell, value = (np.array(column) for column in zip(*rows, strict=True))
    return loom, cell, value.astype(float)


@pytest.mark.parametrize("counts", [True, False])
def test_the_expectation_against_a_dense_fit(counts: bool) -> None:
    """`statsmodels` GLM (Poisson with log link and offset; Gaussian) on all dummies of looms, hall-weeks and articles, fitted to
    the unconverted rows alone; the expected of the converted rows must be the same, and so the headline."""
    panel = programme(2, looms=12, weeks=14, first=5, last=12).panel
    found = stepped(panel, counts)
    assert isinstance(found, Stepped)
    design = np.hstack([np.eye(n)[index] for n, index in
                        ((len(panel.looms), panel.loom), (panel.cell.max() + 1, panel.cell), (6, panel.article))])  # fmt: skip
    before, after = panel.before, found.rows
    if counts:
        offset = np.log(panel.picks)
        dense = sm.GLM(panel.value[before], design[before], family=sm.families.Poisson(), offset=offset[before])
        expected = dense.fit(tol=1e-12).predict(design[after], offset=offset[after]).sum()
    else:
        expected = sm.GLM(panel.value[before], design[before]).fit().predict(design[after]).mean()
    assert found.expected == pytest.approx(expected, rel=1e-6)


@pytest.mark.parametrize("seed", [1, 7])
def test_the_interval_is_no_bolder_than_that_of_one_effect_with_clustered_errors(seed: int) -> None:
    """`statsmodels` GLM (Poisson) on the same rows with one effect of conversion for all, errors clustered by loom. It also
    learns of the weeks from converted looms, so it is surer where the effect is indeed one, as here; the two agree within ours."""
    panel = programme(seed, looms=48, weeks=20, first=6, last=18).panel
    found = stepped(panel, by_weeks=False)
    assert isinstance(found, Stepped)
    used = panel.before | found.rows
    sizes = (len(panel.looms), panel.loom), (panel.cell.max() + 1, panel.cell), (6, panel.article)
    design = np.hstack([found.rows[:, None], *(np.eye(n)[index] for n, index in sizes)]).astype(float)[used]
    free = np.abs(np.diag(np.linalg.qr(design, mode="r"))) > 1e-8  # one dummy of each kind says nothing of its own
    dense = sm.GLM(panel.value[used], design[:, free], family=sm.families.Poisson(), offset=np.log(panel.picks[used]))
    clustered = dense.fit(cov_type="cluster", cov_kwds={"groups": panel.loom[used]})
    assert abs(np.log(found.told.estimate) - clustered.params[0]) < 1.96 * found.told.se
    assert found.told.se > clustered.bse[0]
