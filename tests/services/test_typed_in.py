"""What a planner types in on a screen: rows refused one by one, beam-outs told, and the list of what runs out."""

from datetime import date, timedelta

import pytest
from opened import here
from refusals import refused
from three_looms import MONDAY, at, key, make

from tracker.domain.progress import Stage
from tracker.domain.windows import WindowKind
from tracker.errors import DataError, UsageError
from tracker.services.loading.by_hand import findings_by_row, take_out, type_in
from tracker.services.people.audit import Which, deeds
from tracker.services.screens.beam_outs import beam_outs
from tracker.services.work.record import StageTold, record_stage
from tracker.services.work.told_beam_out import tell_beam_out
from tracker.words import ENGLISH
from tracker.words.findings import in_words

SIX = at(0, 6)
"""Monday 06:00: looms 1 and 2 have 26 and 58 hours left."""


@pytest.fixture
def db(tmp_path):
    return make(str(tmp_path / "mill.db"))


def reading(loom, metres, read_at=SIX):
    return {"loom": loom, "hall": "H", "read_at": read_at, "warp_left_m": metres}


def said(report):
    return {row: [in_words(one).message for one in found] for row, found in findings_by_row(report).items()}


def p50(db, loom, as_of=SIX):
    return next(line.window.p50_at for line in beam_outs(here(db), as_of).lines if line.key == key(loom))


def test_each_wrong_row_is_named_and_none_is_written(db):
    report = type_in(here(db), "readings", [
        reading("1", 400.0), reading("9", 400.0), reading("2", "lots"), reading("3", None, None), reading("3", 90000.0),
    ])  # fmt: skip
    assert not report.written
    found = said(report)
    assert sorted(found) == [2, 3, 4, 5]
    assert found[2] == ["There is no loom 9 in the loom list."] or "9" in found[2][0]
    assert found[3] == ["Warp left (m) 'lots' is not possible"] and found[4] == ["Read at is empty"]
    assert "90000" in found[5][0].replace(",", "")
    assert p50(db, "1") == at(1, 8)  # as in the warp list


def test_readings_that_fit_move_the_forecast_and_stand_in_the_account_of_changes(db):
    # 162 m at 16.2 m/h from 06:00: ten hours
    report = type_in(here(db), "readings", [reading("1", "162"), reading("2", 1620.0)])
    assert report.written and not findings_by_row(report)
    assert p50(db, "1") == SIX + timedelta(hours=10)
    # 1620 m are 100 hours, more than the 58 of before by less than a fifth of the set: a fault of reading, as it is taken
    assert p50(db, "2") == SIX + timedelta(hours=100)
    assert ENGLISH.say(deeds(here(db), Which()).deeds[0].what)


def test_a_loom_is_protected_and_free_again_without_touching_its_other_values(db):
    kept = loom(db, "1")
    assert type_in(here(db), "looms", [{"loom": "1", "hall": "H", "protected_until": date(2027, 1, 10)}]).written
    assert beam_outs(here(db), SIX).protected == {key("1"): date(2027, 1, 10)}
    assert type_in(here(db), "looms", [{"loom": "1", "hall": "H", "protected_until": None}]).written
    assert loom(db, "1") == kept and beam_outs(here(db), SIX).protected == {}


def loom(db, number):
    with here(db).reading() as uow:
        return uow.mill().looms[key(number)]


def test_a_standing_span_is_entered_and_taken_out_again(db):
    span = {"loom": "3", "hall": "H", "from_at": at(2, 6), "to_at": at(3, 6), "reason": "no order"}
    assert said(type_in(here(db), "standing", [{**span, "to_at": at(1, 6)}]))[1][0].startswith("From")
    assert type_in(here(db), "standing", [span]).written
    board = beam_outs(here(db), SIX)
    assert [s.reason for s in board.standing] == ["no order"]
    assert [line.window.kind for line in board.lines if line.key == key("3")] == [WindowKind.STANDING]
    local = at(2, 6).replace(tzinfo=None)
    take_out(here(db), "standing", ("3", "H", local))
    assert beam_outs(here(db), SIX).standing == ()
    with refused(DataError, "Standing has no row 3, H, Wed 6 Jan 2027 06:00"):
        take_out(here(db), "standing", ("3", "H", local))
    with refused(UsageError, "rows of Looms are not taken out"):
        take_out(here(db), "looms", ("3", "H"))


@pytest.mark.parametrize("moment", [at(0, 20), at(2, 12), at(4, 0)])
def test_a_beam_out_told_early_or_late_is_forecast_then(db, moment):
    assert tell_beam_out(here(db), "1", "H", moment, SIX).written
    assert abs(p50(db, "1") - moment) < timedelta(minutes=5)


def test_a_warp_that_has_run_out_already_is_overdue_first_in_the_list(db):
    # told at noon that loom 2 ran out at ten, two days before it was expected
    assert tell_beam_out(here(db), "2", "H", at(0, 10), at(0, 12)).written
    board = beam_outs(here(db), at(0, 12))
    assert [(line.key, line.window.state) for line in board.lines][:2] == [(key("2"), "overdue"), (key("1"), "ok")]
    assert board.lines[0].left_m == 0 and board.untrusted("overdue") == [board.lines[0]]


def test_a_beam_out_that_cannot_be_is_refused_with_what_to_do(db):
    # 32 h at 16.2 m/h are 518 m; 200 days of one percent efficiency would need more
    with refused(DataError, r"the 518 m on loom 1 \(H\) do not last until"):
        tell_beam_out(here(db), "1", "H", at(200, 0), SIX)


def test_readings_grow_stale_after_three_days_and_what_is_left_is_told(db):
    # Friday 06:00: 102 h after the readings of Monday 00:00; loom 3 has 800 h, its P10 lies beyond a fortnight
    board = beam_outs(here(db), at(4, 6))
    assert {line.key: line.window.state for line in board.lines} == {key("1"): "overdue", key("2"): "overdue"}
    first = beam_outs(here(db), SIX).lines[0]
    assert first.key == key("1") and first.left_m == pytest.approx(26 * 16.2)


def test_looms_put_off_or_without_a_reading_are_listed_apart(db):
    record_stage(here(db, clock=lambda: SIX), "1", "put off", told=StageTold(why="no rail"))
    board = beam_outs(here(db), SIX)
    assert {key: change.stage for key, change in board.aside.items()} == {key("1"): Stage.PUT_OFF}
    assert [line.key for line in board.lines] == [key("2")]
    assert board.until == SIX + timedelta(days=14) and board.as_of >= MONDAY
