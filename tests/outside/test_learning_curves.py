"""The unit learning curve against published tables."""

import pytest

from tracker.scope.learning import Curve, fit_curve


def test_an_85_per_cent_curve():
    """LC2, seen: solutions manual of an operations-management textbook, chapter 13, problem 13.4. First unit 75 h.
    The factors are printed to three places, 0.7225 as .723."""
    curve = Curve(0.85)
    assert [curve.unit(n) for n in (2, 4, 8)] == [pytest.approx(v, abs=5.1e-4) for v in (0.850, 0.723, 0.614)]
    assert [75 * curve.unit(n) for n in (2, 4, 8)] == [pytest.approx(v, abs=0.05) for v in (63.75, 54.23, 46.05)]


def test_six_units_at_90_per_cent():
    """LC3, quoted by another page: cumulative factor 5.101."""
    assert Curve(0.9).total(6) == pytest.approx(5.101, abs=1e-3)


def test_the_unit_curve_is_not_the_cumulative_average_curve():
    """LC4, seen: a project-management page, appendix 2. Wright's 80 % curve has an average of 80 for the first two of 100
    for the first; on Crawford's the second unit itself takes 80, so that the average is 90."""
    curve = Curve(0.8)
    wright = {2: 80, 4: 64, 8: 51.2, 16: 40.96}
    assert {n: 100 * curve.unit(n) for n in wright} == {n: pytest.approx(v) for n, v in wright.items()}
    assert 100 * curve.total(2) / 2 == pytest.approx(90)


@pytest.mark.parametrize(
    ("rate", "exponent", "ten"), [(0.80, -0.321928, 6.315), (0.85, -0.234465, 7.116), (0.90, -0.152003, 7.994)]
)
def test_exponents_and_sums_of_ten(rate, exponent, ten):
    """LC5, computed from the named formula; the usual tables print the same."""
    curve = Curve(rate)
    assert curve.unit(10) == pytest.approx(10**exponent, abs=1e-5)
    assert curve.total(10) == pytest.approx(ten, abs=1e-3)


def test_a_fit_gives_the_published_curve_back():
    """The 75 h table of LC2 (seen), fitted: its rate and first unit."""
    hours = {1: 75.0, 2: 63.75, 4: 54.23, 8: 46.05, 16: 75 * 0.85**4}
    curve = fit_curve(Curve(0.9), list(hours), list(hours.values()))
    assert curve.rate == pytest.approx(0.85, abs=5e-4)
    assert curve.level == pytest.approx(75, abs=0.05)
