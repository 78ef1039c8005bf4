"""Naming crews beside planning them: 1,000 bookings in less than a second (DEVELOPERS.md)."""

from made_problems import problem_of

from tracker.planning.naming.named import with_names
from tracker.planning.planner import plan


def test_naming_a_thousand_bookings(benchmark):
    asked = problem_of(1000, 26, 10)
    made = plan(asked, gap=0.05)
    benchmark(with_names, made, asked)
