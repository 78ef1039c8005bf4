"""Figures say in words and shapes what they say in colour, on the axis asked for."""

from datetime import date
from typing import Any

import pandas as pd
import pytest
from screen_mill import AS_OF, put, small_mill, small_plan

from dashboards.charts import board_chart, cost_chart, progress_chart, stage_chart
from dashboards.frames import board_frame, cost_frame, day_ms, progress_frame, rest_frame, stage_frame, wall_ms
from dashboards.look import KIND_COLOURS, KIND_SHAPES, KIND_SIGNS
from tracker.domain.windows import WindowKind
from tracker.services.bookings import bookings
from tracker.services.status import WeekCount, status


@pytest.fixture
def db(tmp_path):
    return put(tmp_path / "mill.db", small_mill(), small_plan(small_mill()))


def layers(chart: Any) -> list[dict[str, Any]]:
    return chart.to_dict()["layer"]


def marks(chart: Any) -> list[str]:
    return [layer["mark"]["type"] for layer in layers(chart)]


def test_every_window_kind_has_its_own_colour_shape_and_sign():
    kinds = {kind.value for kind in WindowKind}
    for look in (KIND_COLOURS, KIND_SHAPES, KIND_SIGNS):
        assert look.keys() == kinds and len(set(look.values())) == len(kinds)


def test_stage_bars_keep_the_order_of_the_programme_and_are_counted_in_words(db):
    bars, counts = layers(stage_chart(stage_frame(status(db, AS_OF))))
    assert bars["encoding"]["y"]["sort"][0] == "to survey"
    assert counts["mark"]["type"] == "text" and counts["encoding"]["text"]["field"] == "says"


def test_progress_names_its_lines_and_every_week_of_a_short_programme():
    frame = progress_frame([WeekCount("2027-W01", 2, 1, 2, 1), WeekCount("2027-W03", 1, 0, 3, 1)], date(2027, 1, 6))
    chart = progress_chart(frame, looms=10)
    lines = next(layer for layer in layers(chart) if layer["mark"]["type"] == "line")
    # three weeks end on the Mondays 11, 18 and 25 January
    assert lines["encoding"]["x"]["axis"]["values"] == [day_ms(date(2027, 1, day)) for day in (11, 18, 25)]
    said = [
        row["says"] for data in chart.to_dict()["datasets"].values() for row in data if "what" in row and "says" in row
    ]
    assert sorted(said) == ["done 1", "planned 3"]


def test_a_long_programme_labels_only_some_weeks():
    weeks = [WeekCount(f"2027-W{week:02d}", 1, 0, week, 0) for week in range(1, 27)]
    chart = progress_chart(progress_frame(weeks, date(2027, 1, 4)), looms=26)
    lines = next(layer for layer in layers(chart) if layer["mark"]["type"] == "line")
    assert len(lines["encoding"]["x"]["axis"]["values"]) == 7  # every fourth of 26


def test_cost_bars_say_planned_or_so_far(db):
    bars, said = layers(cost_chart(cost_frame(status(db, AS_OF))))
    assert bars["encoding"]["color"]["scale"]["domain"] == ["planned", "so far"]
    assert said["encoding"]["text"]["field"] == "words"


def test_the_board_spans_the_days_asked_for_and_marks_firm_bookings(db):
    board = bookings(db, AS_OF)
    rest = rest_frame(board.working["Hall 1"], board.zone, date(2027, 1, 4), 7)
    chart = board_chart(board_frame(board.rows, board.zone), rest, date(2027, 1, 4), 7, wall_ms(AS_OF, board.zone))
    assert marks(chart) == [
        "rect",
        "rule",
        "rule",
        "rule",
        "tick",
        "tick",
        "tick",
        "bar",
        "bar",
        "point",
        "text",
        "text",
    ]
    axis = layers(chart)[0]["encoding"]["x"]
    assert axis["scale"]["domain"] == [day_ms(date(2027, 1, 4)), day_ms(date(2027, 1, 11))]
    assert len(axis["axis"]["values"]) == 7
    outlined = layers(chart)[8]
    assert outlined["transform"] == [{"filter": "datum.firm"}] and outlined["mark"]["filled"] is False


def test_four_weeks_are_labelled_by_mondays(db):
    board = bookings(db, AS_OF)
    rest = pd.DataFrame({"start_ms": [], "end_ms": []})
    chart = board_chart(board_frame(board.rows, board.zone), rest, date(2027, 1, 4), 28, 0.0)
    values = layers(chart)[0]["encoding"]["x"]["axis"]["values"]
    assert values == [day_ms(date(2027, 1, day)) for day in (4, 11, 18, 25)]
