"""Visits due, metres on bobbins, and what signed-off looms taught."""

from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from tracker.commissioning.settings.bobbins import Bobbins, metres_left
from tracker.commissioning.settings.series import Limits, Occasion, Series, Value
from tracker.commissioning.settings.taught import taught
from tracker.commissioning.settings.visits import visits
from tracker.domain.mill import LoomKey

SIGNED = datetime(2027, 1, 11, 15, tzinfo=UTC)
ONE, TWO = LoomKey("A", "1"), LoomKey("A", "2")


def test_visits_are_due_1_7_and_30_days_after_sign_off():
    found = visits({ONE: SIGNED}, {}, ZoneInfo("UTC"))
    assert [v.due_on for v in found] == [date(2027, 1, 12), date(2027, 1, 18), date(2027, 2, 10)]
    today = date(2027, 1, 18)
    assert [(v.is_due(today), v.is_overdue(today)) for v in found] == [(True, True), (True, False), (False, False)]


def test_a_visit_counts_for_the_nearest_due_day():
    # on the sixth day: nearest to 7 of 1, 7, 30; on the fourth both 1 and 7 lie 3 away: the earlier
    made = {ONE: [SIGNED + timedelta(days=6)], TWO: [SIGNED + timedelta(days=4)]}
    found = visits({ONE: SIGNED, TWO: SIGNED}, made, ZoneInfo("UTC"))
    done = {(v.key, v.after_days): v.done_on for v in found if v.done_on}
    assert done == {(ONE, 7): date(2027, 1, 17), (TWO, 1): date(2027, 1, 15)}


def test_a_visit_before_sign_off_counts_for_none():
    assert not any(v.done_on for v in visits({ONE: SIGNED}, {ONE: [SIGNED - timedelta(hours=1)]}, ZoneInfo("UTC")))


def test_the_day_of_a_visit_is_the_mills():
    # 23:30 UTC on the 11th is the 12th in Vienna (UTC+1)
    late = datetime(2027, 1, 11, 23, 30, tzinfo=UTC)
    assert visits({ONE: late}, {}, ZoneInfo("Europe/Vienna"))[0].due_on == date(2027, 1, 13)


def test_100_g_of_30_tex_are_3333_m():
    assert metres_left(100, 30) == pytest.approx(3333.3, abs=0.05)  # SOURCES.md Y3


@pytest.mark.parametrize(("grams", "tex"), [(-1, 30), (100, 0)])
def test_no_yarn_weighs_less_than_nothing(grams, tex):
    with pytest.raises(ValueError):
        metres_left(grams, tex)


def test_the_emptier_bobbin_says_when_it_must_be_changed():
    pair = Bobbins(2500, 2000)
    assert pair.left_more_m == 500
    assert pair.cloth_to_change_m() == 1600  # 2000 / 1.25
    assert pair.last_to_beam_out(1600) is True
    assert pair.last_to_beam_out(1601) is False
    assert Bobbins(None, None).last_to_beam_out(1) is None
    assert Bobbins(2500, None).left_more_m is None


def looms(values, target=310.0, unit="deg", repeatability: float | None = 1.0):
    return [
        Series(LoomKey("A", str(i)), "crossing angle", "left", (Value(v, SIGNED - timedelta(hours=1), Occasion.SET),), unit,
               Limits(target), repeatability, "T", "plain")
        for i, v in enumerate(values)
    ]  # fmt: skip


def test_five_looms_set_otherwise_than_the_method_says_propose_a_change():
    series = looms([313, 313, 314, 313, 312])
    found = taught(series, {one.key: SIGNED for one in series})
    assert [(t.looms, t.median, t.proposed) for t in found] == [(5, pytest.approx(313), 313)]


def test_within_the_repeatability_or_from_four_looms_nothing_is_proposed():
    for series in (looms([311, 311, 311, 310, 311]), looms([315] * 4), looms([315] * 5, repeatability=None)):
        assert [t.proposed for t in taught(series, {one.key: SIGNED for one in series})] == [None]


def test_the_median_of_angles_about_0():
    # 359 0 1 2 3 about their mean 1: median 1
    series = looms([359, 0, 1, 2, 3], target=1.0)
    assert taught(series, {one.key: SIGNED for one in series})[0].median == pytest.approx(1)


def test_only_what_was_set_up_to_sign_off_counts():
    series = looms([313] * 5)
    assert taught(series, {one.key: SIGNED - timedelta(days=1) for one in series}) == []
    assert taught(series, {}) == []
