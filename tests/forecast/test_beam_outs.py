"""One loom, 10 m of warp an hour: 500 picks/min, 30 picks/cm, efficiency 1, no take-up. Zone UTC, always running."""

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from typing import Any

import pytest
from scipy.stats import invgauss

from tracker.domain.mill import (
    Article,
    Closure,
    Loom,
    LoomKey,
    Mill,
    OrdinaryChange,
    Reading,
    Running,
    Standing,
    Warp,
)
from tracker.domain.terms import Terms
from tracker.domain.windows import Window, WindowKind
from tracker.forecast.beam_outs import forecast
from tracker.forecast.beam_outs import unforecast as without_forecast
from tracker.words import ENGLISH

KEY = LoomKey("Hall 1", "7")
LOOM = Loom("Hall 1", "7", "AJ", speed_ppm=500, efficiency=1.0)
READ = datetime(2027, 1, 4, 0, tzinfo=UTC)
UNTIL = READ + timedelta(days=28)
A = Article("A", 30, 0.0, contribution_per_m=0.5, warp_value_per_m=2.0)
B = Article("B", 15, 0.0, contribution_per_m=0.4, warp_value_per_m=3.0)  # 20 m an hour
NOW = Warp("Hall 1", "7", 0, "A", 2400, 490, READ, tail_m=10)
REPEAT = Warp("Hall 1", "7", 1, "A", 1010, tail_m=10, change="repeat")
STYLE = Warp("Hall 1", "7", 1, "B", 1010, tail_m=10, change="style")
CHANGES = (OrdinaryChange("repeat", 2), OrdinaryChange("style", 5), OrdinaryChange("style", 8, "RP"))


def unforecast(mill, as_of):
    """Why looms have no forecast, in words."""
    return {key: ENGLISH.line(why) for key, why in without_forecast(mill, as_of).items()}


def at(hours: float) -> datetime:
    return READ + timedelta(hours=hours)


def mill(*warps: Warp, loom: Loom = LOOM, **more: Any) -> Mill:
    more.setdefault("changes", CHANGES)
    return Mill({KEY: loom}, {KEY: warps}, articles={"A": A, "B": B}, **more)


def windows(m: Mill, as_of: datetime = READ, until: datetime = UNTIL) -> tuple[Window, ...]:
    return forecast(m, as_of, until)[KEY]


def beam_outs(m: Mill, as_of: datetime = READ, until: datetime = UNTIL) -> list[Window]:
    return [w for w in windows(m, as_of, until) if w.kind in (WindowKind.REPEAT, WindowKind.STYLE)]


def test_first_beam_out_is_what_is_left_less_the_tail() -> None:
    first = beam_outs(mill(NOW))[0]  # (490 − 10) / 10 = 48 h
    assert (first.number, first.mean_running_h, first.mean_at) == (1, pytest.approx(48), at(48))
    assert first.warp_rate_m_per_h == pytest.approx(10)
    assert first.reading_at == READ


def test_later_windows_add_the_ordinary_change_and_the_next_warp() -> None:
    # 48 h; + 2 h repeat + 100 h = 150; + 2 h + 100 h (the last listed warp repeats) = 252
    found = beam_outs(mill(NOW, REPEAT))
    assert [w.mean_at for w in found[:3]] == [at(48), at(150), at(252)]
    assert [w.mean_running_h for w in found[:3]] == pytest.approx([48, 148, 248])
    assert [w.stops_h for w in found[:3]] == pytest.approx([0, 2, 4])


def test_a_style_change_takes_its_own_hours_and_rate() -> None:
    # 48 h; + 5 h style + (1010 − 10)/20 = 50 h → 103; then B repeats: + 2 + 50 → 155
    found = beam_outs(mill(NOW, STYLE))
    assert [w.mean_at for w in found[:3]] == [at(48), at(103), at(155)]
    assert [w.kind for w in found[:2]] == [WindowKind.STYLE, WindowKind.REPEAT]
    assert (found[0].article_out, found[0].article_in) == ("A", "B")
    assert found[0].ordinary_change_h == 5
    assert [w.warp_rate_m_per_h for w in found[:2]] == pytest.approx([10, 20])
    assert [w.warp_value_per_m for w in found[:2]] == [2.0, 3.0]


def test_a_machine_type_may_have_its_own_change_hours() -> None:
    found = beam_outs(mill(NOW, STYLE, loom=replace(LOOM, machine_type="RP")))
    assert found[1].mean_at == at(48 + 8 + 50)
    assert found[2].mean_at == at(48 + 8 + 50 + 2 + 50)


def test_the_part_of_a_change_that_others_do_meanwhile_is_told_with_its_window() -> None:
    hall = mill(NOW, STYLE)
    changes = tuple(replace(change, meanwhile_h=change.hours_h / 4) for change in hall.changes)
    found = beam_outs(replace(hall, changes=changes))
    # the style change of 5 h, then the repeats of 2 h; the mid-warp stop has no change
    assert [w.meanwhile_h for w in found[:2]] == [1.25, 0.5]
    assert {w.meanwhile_h for w in windows(replace(hall, changes=changes)) if w.kind is WindowKind.MID_WARP} == {0.0}


def test_what_the_incoming_warp_earns_is_what_a_stop_costs() -> None:
    # A in: 10 m/h · 0.5 = 5; B in: 20 m/h · 0.4 = 8; mid-warp: the one in work, A
    found = windows(mill(NOW, STYLE))
    assert found[0].kind is WindowKind.MID_WARP
    assert found[0].contribution_per_h == pytest.approx(5)
    assert found[1].contribution_per_h == pytest.approx(8)
    assert beam_outs(mill(NOW, REPEAT))[0].contribution_per_h == pytest.approx(5)


def test_a_later_mid_warp_stop_costs_what_the_warp_then_in_work_earns() -> None:
    # A until it is out at 48 h, then B, which repeats: one window each, the later one counted on from the beam-outs
    mid = [w for w in windows(mill(NOW, STYLE)) if w.kind is WindowKind.MID_WARP]
    assert [(w.starts_at, w.ends_at, w.article_in) for w in mid] == [(READ, at(48), "A"), (at(48), UNTIL, "B")]
    assert [w.contribution_per_h for w in mid] == pytest.approx([5, 8])
    last = max(w.number for w in beam_outs(mill(NOW, STYLE)))
    assert [w.number for w in mid] == [0, last + 1]
    # once A is out by the means, B is the warp in work
    (later,) = [w for w in windows(mill(NOW, STYLE), at(50)) if w.kind is WindowKind.MID_WARP]
    assert (later.number, later.starts_at, later.contribution_per_h) == (0, at(50), pytest.approx(8))


def test_unsold_capacity_costs_nothing() -> None:
    found = windows(mill(NOW, STYLE, loom=replace(LOOM, capacity_unsold=True)))
    assert {w.contribution_per_h for w in found} == {0.0}


def test_no_listed_warp_repeats_the_present_one_at_full_length() -> None:
    found = beam_outs(mill(NOW))  # 48; + 2 + (2400 − 10)/10 = 239 → 289
    assert found[1].mean_at == at(289)
    assert found[1].kind is WindowKind.REPEAT


def test_without_a_set_length_only_the_first_beam_out_is_known() -> None:
    assert len(beam_outs(mill(replace(NOW, set_length_m=None)))) == 1


def test_a_change_that_is_not_said_follows_from_the_articles() -> None:
    found = beam_outs(mill(NOW, replace(REPEAT, change=None), replace(STYLE, sequence=2, change=None)))
    assert [w.kind for w in found[:2]] == [WindowKind.REPEAT, WindowKind.STYLE]


def test_the_next_warp_waits_until_it_is_ready() -> None:
    # out at 48 h (6 January, 00:00), ready on 8 January = 96 h; + 2 + 100 = 198
    found = beam_outs(mill(NOW, replace(REPEAT, ready_on=date(2027, 1, 8))))
    assert found[1].mean_at == at(198)
    assert found[1].stops_h == pytest.approx(50)
    early = beam_outs(mill(NOW, replace(REPEAT, ready_on=date(2027, 1, 5))))
    assert early[1].mean_at == at(150)


def test_running_hours_are_laid_on_the_hall_calendar() -> None:
    # 06:00–22:00 Monday to Saturday: 48 h from Monday 00:00 = Mon 16, Tue 16, Wed 16 → Wednesday 22:00
    shifts = (Running("Hall 1", frozenset(range(6)), time(6), time(22)),)
    first, second = beam_outs(mill(NOW, REPEAT, running=shifts))[:2]
    assert first.mean_at == datetime(2027, 1, 6, 22, tzinfo=UTC)
    # the change too counts running hours: Thu 06:00 + 2 + 100 h = 96 (Thu–Sat 48, Mon–Wed 48) + 6 h → Thu 14th 12:00
    assert second.mean_at == datetime(2027, 1, 14, 12, tzinfo=UTC)


def test_a_closure_of_the_weaving_moves_the_beam_out_by_a_day() -> None:
    closed = (Closure(date(2027, 1, 5), "weaving"), Closure(date(2027, 1, 4), "work"))
    assert beam_outs(mill(NOW, closures=closed))[0].mean_at == at(72)


def test_over_the_change_of_clocks_48_running_hours_stay_48_hours() -> None:
    """Vienna, 28 March 2027, 23 hours long: from Saturday 00:00 local, 48 h end on Monday at 01:00 local."""
    saturday = datetime(2027, 3, 26, 23, tzinfo=UTC)
    m = mill(replace(NOW, read_at=saturday), terms=Terms(time_zone="Europe/Vienna"))
    first = beam_outs(m, saturday, saturday + timedelta(days=20))[0]
    assert first.mean_at.astimezone(m.terms.zone).replace(tzinfo=None) == datetime(2027, 3, 29, 1)


def test_p10_p50_p90_of_the_first_and_the_third_window() -> None:
    """Inverse Gaussian of 48 and 248 weaving hours, variance mean × 24·0.04², by scipy (computed); the 4 h of two
    changes come on top."""
    found = beam_outs(mill(NOW, REPEAT))
    for window, mean, stops in ((found[0], 48, 0), (found[2], 248, 4)):
        shape = mean**2 / (24 * 0.04**2)
        expected = invgauss(mu=mean / shape, scale=shape).ppf([0.1, 0.5, 0.9]) + stops
        hours = [(t - READ) / timedelta(hours=1) for t in (window.p10_at, window.p50_at, window.p90_at)]
        assert hours == pytest.approx(list(expected), abs=1e-5)


def test_the_variation_of_the_loom_itself_is_used_from_five_daily_readings_on() -> None:
    # 200, 280, 200, 280 m a day up to the list's own reading: cv = 46.188/240, s² = 24·cv²
    left = [1450.0, 1250.0, 970.0, 770.0, 490.0]
    readings = tuple(Reading("Hall 1", "7", READ - timedelta(days=4 - i), m) for i, m in enumerate(left))
    m = mill(NOW, readings={KEY: readings})
    assert beam_outs(m)[0].spread_h == pytest.approx(24 * (46.1880 / 240) ** 2, rel=1e-5)
    assert beam_outs(mill(NOW, readings={KEY: readings[1:]}))[0].spread_h == pytest.approx(24 * 0.0016)


def test_a_reading_three_days_old_is_sound_and_older_is_stale() -> None:
    assert beam_outs(mill(replace(NOW, warp_left_m=2000)), at(72))[0].state == "ok"
    assert beam_outs(mill(replace(NOW, warp_left_m=2000)), at(72.1))[0].state == "stale"


def test_a_warp_that_should_be_gone_is_overdue_and_keeps_its_window() -> None:
    found = beam_outs(mill(NOW, REPEAT), at(49))
    assert [(w.number, w.state) for w in found[:2]] == [(1, "overdue"), (2, "ok")]
    assert found[0].mean_at == at(48)


def test_passed_windows_after_the_first_are_left_out_once_their_p90_has_passed() -> None:
    # windows at 48, 150, 252 h; the P90 of the second is 150 + about 3 h
    assert [w.number for w in beam_outs(mill(NOW, REPEAT), at(151))[:3]] == [1, 2, 3]
    assert [w.number for w in beam_outs(mill(NOW, REPEAT), at(160))[:2]] == [1, 3]


def test_less_left_than_the_tail_is_out_at_the_reading() -> None:
    first = beam_outs(mill(replace(NOW, warp_left_m=6)))[0]
    assert first.mean_running_h == 0
    assert first.p10_at == first.mean_at == first.p90_at == READ


def test_windows_end_before_until() -> None:
    assert [w.mean_at for w in beam_outs(mill(NOW, REPEAT), until=at(252))] == [at(48), at(150)]


def test_one_mid_warp_window_over_the_whole_horizon_where_the_article_stays() -> None:
    mid = [w for w in windows(mill(NOW), at(5)) if w.kind is WindowKind.MID_WARP]
    assert [(w.number, w.starts_at, w.ends_at) for w in mid] == [(0, at(5), UNTIL)]


def test_a_standing_loom_does_not_weave_meanwhile() -> None:
    # standing 24–48 h: 24 h woven before, 24 h after: out at 72 h
    span = Standing("Hall 1", "7", at(24), at(48), "no order")
    found = windows(mill(NOW, standing={KEY: (span,)}))
    assert found[1].mean_at == at(72)
    standing = [w for w in found if w.kind is WindowKind.STANDING]
    numbers = [w.number for w in found if w.kind is WindowKind.REPEAT]
    assert [(w.number, w.starts_at, w.ends_at) for w in standing] == [(max(numbers) + 1, at(24), at(48))]
    assert standing[0].contribution_per_h == pytest.approx(5)


def test_a_standing_window_costs_what_the_warp_after_it_earns() -> None:
    # A is out at 48 h, B in work from 53 h; the loom stands from 60 to 80 h with B on it: 8 an hour
    span = Standing("Hall 1", "7", at(60), at(80))
    standing = next(w for w in windows(mill(NOW, STYLE, standing={KEY: (span,)})) if w.kind is WindowKind.STANDING)
    assert standing.contribution_per_h == pytest.approx(8)


def test_a_loom_that_stands_amid_a_change_has_no_warp_until_that_is_done() -> None:
    # A is out at 48 h, the style change takes 5: two of them are done when it stands from 50 to 80 h, the others by 83
    span = Standing("Hall 1", "7", at(50), at(80))
    standing = next(w for w in windows(mill(NOW, STYLE, standing={KEY: (span,)})) if w.kind is WindowKind.STANDING)
    assert (standing.warp_in_at, standing.ordinary_change_h) == (at(83), 5)
    assert standing.brings_warp
    # a warp that is ready on Friday only (96 h) goes in from then on, if it stands no longer
    later = replace(STYLE, ready_on=date(2027, 1, 8))
    standing = next(w for w in windows(mill(NOW, later, standing={KEY: (span,)})) if w.kind is WindowKind.STANDING)
    assert standing.warp_in_at == at(96 + 5)
    # with a warp on the loom, before and after, nothing comes in between
    for stands in (Standing("Hall 1", "7", at(30), at(40)), Standing("Hall 1", "7", at(60), at(80))):
        found = windows(mill(NOW, STYLE, standing={KEY: (stands,)}))
        standing = next(w for w in found if w.kind is WindowKind.STANDING)
        assert (standing.warp_in_at, standing.ordinary_change_h, standing.brings_warp) == (None, 0, False)


def test_a_loom_without_warps_has_its_standing_windows() -> None:
    span = Standing("Hall 1", "7", at(24), at(48))
    m = Mill({KEY: LOOM}, standing={KEY: (span,)})
    assert [w.kind for w in windows(m)] == [WindowKind.STANDING]
    assert unforecast(m, READ) == {}
    assert unforecast(m, at(48)) == {KEY: "no warp is listed as being on the loom (sequence 0)"}


def test_standing_spans_outside_the_horizon_are_no_windows() -> None:
    spans = (Standing("Hall 1", "7", at(-48), at(-24)), Standing("Hall 1", "7", UNTIL, UNTIL + timedelta(days=1)))
    assert windows(Mill({KEY: LOOM}, standing={KEY: spans})) == ()


def test_impossible_values_leave_out_their_looms_and_say_why() -> None:
    keys = [LoomKey("Hall 1", loom) for loom in "789"]
    looms = {key: replace(LOOM, loom=key.loom) for key in keys}
    warps = {
        keys[0]: (NOW, replace(REPEAT, set_length_m=10)),
        keys[1]: (replace(NOW, loom="8"), replace(REPEAT, loom="8", set_length_m=None)),
        keys[2]: (replace(NOW, loom="9"),),
    }
    m = Mill(looms, warps, articles={"A": A})
    assert unforecast(m, READ) == {
        keys[0]: "loom 7 (Hall 1), warp 1, article A: set length 10 m must be longer than the tail of 10 m",
        keys[1]: "loom 8 (Hall 1), warp 1, article A: a warp that follows needs a set length; give it in metres",
    }
    assert [bool(found) for found in forecast(m, READ, UNTIL).values()] == [False, False, True]


def test_pick_density_0_is_one_clear_line() -> None:
    m = replace(mill(NOW), articles={"A": replace(A, pick_density_per_cm=0)})
    assert unforecast(m, READ)[KEY].startswith("loom 7 (Hall 1), warp 0, article A: pick density 0 picks/cm must be")
    assert forecast(m, READ, UNTIL) == {KEY: ()}


def test_a_negative_reading_is_one_clear_line() -> None:
    m = mill(replace(NOW, warp_left_m=-3))
    assert unforecast(m, READ) == {KEY: "loom 7 (Hall 1), warp 0, article A: warp left -3 m must be at least 0 m"}
    assert forecast(m, READ, UNTIL) == {KEY: ()}
