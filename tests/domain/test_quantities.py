"""A part is counted in steps of its unit and up to a bound; sums of such quantities are exact."""

import pytest

from tracker.domain.quantities import fault, tidy
from tracker.words import ENGLISH


@pytest.mark.parametrize(
    ("quantity", "unit", "says"),
    [
        (4, "pc", ""),
        (4.0, "Stück", ""),
        (4, "件", ""),
        (0.5, "pc", "is no whole number of pc"),
        (0.5, "Stk.", "is no whole number of Stk."),
        (-1.5, "set", "is no whole number of set"),
        (12.5, "m", ""),
        (0.001, "kg", ""),
        (12.3 - 4.1, "m", ""),  # 8.200000000000001
        (0.0005, "kg", "is finer than 0.001 kg"),
        (1e-7, None, "is finer than 0.001"),
        (10_000_000, "ml", ""),
        (-10_000_000, "ml", ""),
        (10_000_001, "ml", "is more than 10,000,000 ml"),
        (1e20, "pc", "is more than 10,000,000 pc"),
        (-1e308, "pc", "is more than 10,000,000 pc"),
        (float("nan"), "pc", "is no number"),
        (float("inf"), "m", "is no number"),
    ],
)
def test_what_is_wrong_with_a_quantity(quantity, unit, says):
    wrong = fault(quantity, unit)
    assert (ENGLISH.say(wrong) if wrong else "") == says


def test_ten_tenths_are_one():
    """0.1 added ten times is 0.9999999999999999 in binary fractions."""
    total = 0.0
    for _ in range(10):
        total += 0.1
    assert total != 1 and tidy(total) == 1
