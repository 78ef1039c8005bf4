"""Percent and fraction lead into each other without dust."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tracker.domain.units import fraction, percent


@pytest.mark.parametrize(
    ("share", "shown"),
    [(0.88, 88), (0.285, 28.5), (0.287, 28.7), (0.07, 7), (0.575, 57.5), (1.0, 100), (0.0, 0), (-0.011, -1.1)],
)
def test_no_dust(share, shown):
    """0.07 × 100 in floating point is 7.000000000000001, 0.575 × 100 is 57.49999999999999."""
    assert percent(share) == shown and fraction(shown) == share


@given(st.decimals(-10, 10, places=14))
def test_any_fraction_of_fourteen_decimals_comes_back(decimal):
    share = float(decimal)
    assert fraction(percent(share)) == share


@given(st.floats(1e-9, 10))
def test_a_dusty_fraction_comes_back_to_its_last_digit(share):
    assert fraction(percent(share)) == pytest.approx(share, rel=4e-16)


@given(st.integers(0, 10**7))
def test_any_percent_with_five_decimals_comes_back(hundred_thousandths):
    shown = hundred_thousandths / 10**5
    assert percent(fraction(shown)) == shown
