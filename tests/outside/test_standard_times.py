"""Standard time with allowances against published worked examples."""

from statistics import fmean

import pytest

from tracker.domain.method import Operation
from tracker.scope.loads import Loader


def with_allowance(normal, allowance):
    """What the method's minutes become: the allowance is a share of the job."""
    return Loader(allowance).load([Operation(10, "Job", normal, "fitter", 1)]).steps[0].minutes


def test_normal_and_standard_time():
    """WS1, seen: a work-study answer page. Observations 27, 19, 20, 21, 13 s, rating 120, allowance 20 % of job time."""
    normal = fmean((27, 19, 20, 21, 13)) * 120 / 100
    assert normal == pytest.approx(24)
    assert with_allowance(normal, 0.20) == pytest.approx(28.8)


def test_the_base_of_the_allowance_is_the_job():
    """WS3, seen and partly from memory: tutorsglobe 52155990. Normal time 3.234: 23 % of the day gives 4.20, 23 % of the
    job 3.98. The terms' allowance is a share of the job (`Terms.allowance`: share added to observed work)."""
    assert with_allowance(3.234, 0.23) == pytest.approx(3.98, abs=0.01)
    of_the_day = 3.234 / (1 - 0.23)
    assert of_the_day == pytest.approx(4.20, abs=0.01)
    assert with_allowance(3.234, of_the_day / 3.234 - 1) == pytest.approx(4.20, abs=0.01)
