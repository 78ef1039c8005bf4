"""Looms of one weaver's section: only so many of them are stopped at once. Beam-outs on Tuesday at 8, two crews."""

from dataclasses import replace
from typing import Any

from two_looms import ELECTRICIAN, FITTERS, LOOMS, ONE, TWO, at, problem, window
from worded import no_longer, verify

from tracker.domain.mill import LoomKey, Tool
from tracker.planning.baseline.walk import baseline
from tracker.planning.planner import plan
from tracker.planning.problem import InWork, PlanningProblem

BOTH = {ONE: (window(ONE, at(1, 8)),), TWO: (window(TWO, at(1, 8)),)}


def asked(sections: tuple[str | None, str | None], windows: Any = BOTH, **changes: Any) -> PlanningProblem:
    """Enough of everything for both looms at once."""
    looms = {key: replace(LOOMS[key], section=name) for key, name in zip((ONE, TWO), sections, strict=True)}
    enough: dict[str, Any] = {
        "crews": (FITTERS, replace(FITTERS, crew="Fitters 2"), replace(ELECTRICIAN, heads=2)),
        "tools": {"hoist": Tool("hoist", 2)},
        "soak_days": 0,
        "looms": looms,
        "stopped_per_section": 1,
    }
    parts = {"RAIL": replace(problem().mill.parts["RAIL"], on_hand=2.0)}
    return problem(windows, parts=parts, **(enough | changes))


def starts(sections: tuple[str | None, str | None], **changes: Any) -> list:
    given = asked(sections, **changes)
    found = plan(given, gap=0.0)
    assert verify(found, given) == ()
    assert verify(baseline(given, [8.0]), given) == ()
    return [booking.start for booking in found.bookings]


def test_one_of_a_section_waits_for_the_other() -> None:
    assert starts(("A", "A")) == [at(1, 8), at(1, 10)]  # a conversion takes two hours


def test_looms_of_other_sections_or_of_none_are_free() -> None:
    for sections in (("A", "B"), ("A", None), (None, None)):
        assert starts(sections) == [at(1, 8), at(1, 8)]
    assert starts(("A", "A"), stopped_per_section=2) == [at(1, 8), at(1, 8)]
    assert starts(("A", "A"), stopped_per_section=None) == [at(1, 8), at(1, 8)]


def test_a_loom_in_work_counts() -> None:
    """Three hours are left of loom 1's conversion on Tuesday at 8."""
    work = (InWork(ONE, 6),)
    assert starts(("A", "A"), in_work=work, as_of=at(1, 8)) == [at(1, 11)]
    assert starts(("A", "B"), in_work=work, as_of=at(1, 8)) == [at(1, 8)]


def test_the_check_names_the_section() -> None:
    free, limited = asked(("A", "B")), asked(("A", "A"))
    found = plan(free, gap=0.0)
    says = "section A of Hall 1: 2 looms stopped at Tue 5 Jan 2027 08:00, the limit is 1"
    assert says in verify(found, limited)
    assert no_longer(found, limited) == {None: (says,)}


def test_a_section_of_another_hall_is_another_section() -> None:
    other = LoomKey("Hall 2", "2")
    looms = {ONE: replace(LOOMS[ONE], section="A"), other: replace(LOOMS[TWO], hall="Hall 2", section="A")}
    windows = {ONE: BOTH[ONE], other: (replace(window(TWO, at(1, 8)), key=other),)}
    contents = dict.fromkeys(looms, problem().contents[ONE])
    given = asked(("A", "A"), windows, looms=looms, contents=contents)
    assert [booking.start for booking in plan(given, gap=0.0).bookings] == [at(1, 8), at(1, 8)]
