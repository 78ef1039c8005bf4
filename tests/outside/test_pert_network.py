"""Three-point estimates against a published worked example."""

import pytest

from tracker.scope.pert import three_point, total

ACTIVITIES = {
    "1-2": (5, 8, 17), "1-3": (7, 10, 13), "2-3": (3, 5, 7), "2-4": (1, 3, 5), "3-5": (4, 6, 8), "4-5": (3, 3, 3),
    "5-7": (3, 4, 5),
}  # fmt: skip
"""The figures; only the critical path's names are given by the source's answer."""


def test_the_critical_path_of_the_example():
    """P1, seen: flylib.com 3.287.1.117. Expected times of (5,8,17)(7,10,13)(3,5,7)(1,3,5)(4,6,8)(3,3,3)(3,4,5) are
    9, 10, 5, 3, 6, 3, 4; the critical path of expected time 24 has variance 5 and P(at most 28) = .963.

    24 = 9 + 5 + 6 + 4 and variance 4 + 4/9 + 4/9 + 1/9 = 5.
    """
    estimates = {name: three_point(*figures) for name, figures in ACTIVITIES.items()}
    assert [one.expected for one in estimates.values()] == [9, 10, 5, 3, 6, 3, 4]
    path = total([estimates["1-2"], estimates["2-3"], estimates["3-5"], estimates["5-7"]])
    assert path.expected == pytest.approx(24)
    assert path.variance == pytest.approx(5)
    assert path.within(28) == pytest.approx(0.963, abs=2e-4)
    assert path.quantile(0.963) == pytest.approx(28, abs=0.01)
