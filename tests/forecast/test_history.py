from datetime import UTC, datetime, timedelta

import pytest
from refusals import refused

from tracker.domain.mill import LoomKey, Mill, Reading, Warp
from tracker.errors import DataError, Message
from tracker.forecast.history import Present, jumps, present
from tracker.words import ENGLISH

KEY = LoomKey("Hall 1", "7")
LISTED_AT = datetime(2027, 1, 4, 6, tzinfo=UTC)


def day(n: float) -> datetime:
    return LISTED_AT + timedelta(days=n)


def warp(
    sequence: int = 0, article: str = "A", left_m: float | None = 2000, read_at: datetime | None = LISTED_AT
) -> Warp:
    return Warp("Hall 1", "7", sequence, article, 3000, left_m if sequence == 0 else None, read_at)


def reading(n: float, left_m: float | None, **known: float) -> Reading:
    return Reading("Hall 1", "7", day(n), left_m, **known)


def mill(warps: tuple[Warp, ...], *readings: Reading) -> Mill:
    return Mill(warps={KEY: warps}, readings={KEY: readings})


def found(m: Mill, as_of: datetime) -> Present:
    now = present(m, KEY, as_of)
    assert isinstance(now, Present)
    return now


def test_the_warp_list_stands_where_no_reading_is_newer() -> None:
    now = found(mill((warp(),), reading(-1, 2500)), day(1))
    assert (now.left_m, now.read_at) == (2000, LISTED_AT)


def test_a_newer_reading_replaces_the_list_with_its_speed() -> None:
    now = found(mill((warp(),), reading(1, 1600), reading(2, 1200, speed_ppm=500.0)), day(3))
    assert (now.left_m, now.read_at, now.speed_ppm, now.efficiency) == (1200, day(2), 500, None)


def test_a_reading_after_as_of_is_not_known_yet() -> None:
    assert found(mill((warp(),), reading(1, 1600), reading(2, 1200)), day(1.5)).left_m == 1600


def test_a_reading_without_metres_says_nothing_about_the_warp() -> None:
    assert found(mill((warp(),), reading(1, None, speed_ppm=500.0)), day(2)).left_m == 2000


def test_a_jump_up_puts_the_next_listed_warp_on_the_loom() -> None:
    # 2000 → 150 → 2900: the listed style B went in; C still follows
    now = found(mill((warp(), warp(1, "B"), warp(2, "C")), reading(4, 150), reading(5, 2900)), day(6))
    assert now.warp.article == "B"
    assert [w.article for w in now.following] == ["C"]
    assert now.left_m == 2900


def test_jumps_past_the_last_listed_warp_repeat_it() -> None:
    m = mill((warp(), warp(1, "B")), reading(4, 150), reading(5, 2900), reading(12, 90), reading(13, 2950))
    now = found(m, day(14))
    assert (now.warp.article, now.following) == ("B", ())


def test_a_small_rise_is_a_misreading_not_a_new_warp() -> None:
    # a fifth of 3000 m is 600 m
    readings = [reading(0, 400), reading(1, 1000), reading(2, 1601)]
    assert jumps(readings, 3000) == [2]
    assert jumps(readings, 6000) == []


def test_without_a_set_length_the_larger_reading_is_the_measure() -> None:
    assert jumps([reading(0, 900), reading(1, 1000)], None) == []
    assert jumps([reading(0, 700), reading(1, 1000)], None) == [1]


@pytest.mark.parametrize(
    ("warps", "why"),
    [
        ((), "no warp is listed as being on the loom (sequence 0)"),
        ((warp(1),), "no warp is listed as being on the loom (sequence 0)"),
        ((warp(read_at=None),), "the warp left has no date (read at)"),
        ((warp(left_m=None, read_at=None),), "the warp left was never read"),
    ],
)
def test_what_cannot_be_known_is_said(warps: tuple[Warp, ...], why: str) -> None:
    unknown = present(mill(warps), KEY, day(1))
    assert isinstance(unknown, Message) and ENGLISH.line(unknown) == why


def test_a_reading_dates_a_list_without_dates() -> None:
    assert found(mill((warp(read_at=None),), reading(1, 1500)), day(2)).left_m == 1500


def test_negative_metres_are_refused() -> None:
    with refused(DataError, r"loom 7 \(Hall 1\), warp 0, article A: warp left -5 m must be at least 0 m"):
        present(mill((warp(),), reading(1, -5)), KEY, day(2))
