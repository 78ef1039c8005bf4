"""Rates and run-out hours against textbook examples (SOURCES.md W1–W10, SOURCES.md)."""

from datetime import UTC, datetime, timedelta

import pytest

from tracker.domain.mill import Article, Loom, Mill, Warp
from tracker.domain.units import CM_PER_INCH, M_PER_YARD
from tracker.forecast.beam_outs import forecast
from tracker.forecast.rates import cloth_rate_m_per_h, warp_rate_m_per_h


def test_192_picks_a_minute_at_75_percent_make_3_yards_an_hour() -> None:
    """textilecalculation.blogspot.com, loom production, 2015/02, example 1 (seen)."""
    per_cm = 80 / CM_PER_INCH
    assert cloth_rate_m_per_h(192, 1.0, per_cm) / M_PER_YARD == pytest.approx(4, rel=1e-12)
    assert cloth_rate_m_per_h(192, 0.75, per_cm) / M_PER_YARD == pytest.approx(3, rel=1e-12)


def test_nine_hours_at_78_percent_make_29_25_yards() -> None:
    """textilecalculation.blogspot.com, loom production, 2015/03, example 2 (seen)."""
    assert 9 * cloth_rate_m_per_h(200, 0.78, 80 / CM_PER_INCH) / M_PER_YARD == pytest.approx(29.25, rel=1e-12)


def test_fifty_looms_make_55016_metres_in_five_days() -> None:
    """textiletutorials.com, loom production, example 1 (seen); the page rounds to 0.2 m."""
    assert 50 * 7200 / 60 * cloth_rate_m_per_h(380, 0.95, 60 / CM_PER_INCH) == pytest.approx(55_016.4, abs=0.2)


@pytest.mark.parametrize(("yarn_m", "percent"), [(1.05, 5), (1.08, 8)])
def test_crimp_is_measured_on_the_length_of_cloth(yarn_m: float, percent: float) -> None:
    """onlineclothingstudy.com 2014/06 (seen); basis as in ISO 7211-3 (from memory)."""
    assert warp_rate_m_per_h(1.0, percent / 100, "crimp") == pytest.approx(yarn_m, rel=1e-12)


@pytest.mark.parametrize(("percent", "basis"), [(5.56, "crimp"), (5.26, "contraction")])
def test_95_yards_of_warp_make_90_of_cloth_on_either_basis(percent: float, basis: str) -> None:
    """Taylor, Cotton Weaving and Designing, 6th edition: "a little over 5 per cent" (seen); both to 0.01 percent."""
    exact = {"crimp": 5 / 90, "contraction": 5 / 95}[basis]
    assert 100 * exact == pytest.approx(percent, abs=0.01)
    assert warp_rate_m_per_h(90, exact, basis) == pytest.approx(95, rel=1e-12)


@pytest.mark.parametrize(("basis", "hours"), [("crimp", 171.468), ("contraction", 170.370)])
def test_3000_metres_at_8_percent_on_either_basis(basis: str, hours: float) -> None:
    """600 picks/min, 20/cm, 90 %: the formulae of the examples above (computed)."""
    warp = warp_rate_m_per_h(cloth_rate_m_per_h(600, 0.90, 20), 0.08, basis)
    assert 3000 / warp == pytest.approx(hours, abs=0.001)


def test_sixty_picks_an_inch_are_23_622_a_centimetre() -> None:
    """textileschool.com; 1 inch = 2.54 cm exactly (seen)."""
    per_cm = 60 / CM_PER_INCH
    assert per_cm == pytest.approx(23.622, abs=0.001)


@pytest.mark.parametrize(
    ("speed", "picks", "efficiency", "take_up", "length_m", "days"),
    [
        (700, 24, 0.88, 0.06, 3000, 7.7),
        (450, 18, 0.85, 0.08, 2000, 6.1),
        (650, 40, 0.90, 0.08, 6000, 26.4),
        (900, 12, 0.90, 0.03, 1500, 1.5),
    ],
    ids=["air-jet", "rapier", "dense air-jet", "light air-jet"],
)
def test_worked_cases_of_the_trade(
    speed: float, picks: float, efficiency: float, take_up: float, length_m: float, days: float
) -> None:
    """SOURCES.md, warp run-out at 24 running hours a day, crimp basis (computed); the days are given to one decimal."""
    read_at = datetime(2027, 1, 4, 6, tzinfo=UTC)
    loom = Loom("Hall 1", "1", "AJ", speed_ppm=speed, efficiency=efficiency)
    warp = Warp("Hall 1", "1", 0, "A", length_m, length_m, read_at)
    mill = Mill({loom.key: loom}, {loom.key: (warp,)}, articles={"A": Article("A", picks, take_up)})
    first = next(w for w in forecast(mill, read_at, read_at + timedelta(days=60))[loom.key] if w.number == 1)
    assert first.mean_running_h / 24 == pytest.approx(days, abs=0.05)
    assert (first.mean_at - read_at).total_seconds() / 86400 == pytest.approx(days, abs=0.05)
