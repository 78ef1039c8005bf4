"""Figures say in words and shapes what they say in colour, on the axis asked for."""

from datetime import date
from typing import Any

import pandas as pd
import pytest
from opened import here
from screen_mill import AS_OF, put, small_mill, small_plan

from dashboards.charts import (
    board_chart,
    cash_chart,
    cost_chart,
    progress_chart,
    scenario_chart,
    stage_chart,
    stock_chart,
)
from dashboards.frames import (
    board_frame,
    cost_frame,
    day_ms,
    progress_frame,
    rest_frame,
    scenario_frame,
    stage_frame,
    wall_ms,
)
from dashboards.look import KIND_COLOURS, KIND_SHAPES, KIND_SIGNS, PAPER, WOAD
from tracker.domain.windows import WindowKind
from tracker.mill_state.progress import WeekCount
from tracker.services.screens.bookings import bookings
from tracker.services.screens.scenario_board import scenario_board
from tracker.services.screens.status import status


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
    bars, counts = layers(stage_chart(stage_frame(status(here(db), AS_OF))))
    assert bars["encoding"]["y"]["sort"][0] == "to survey"
    assert counts["mark"]["type"] == "text" and counts["encoding"]["text"]["field"] == "says"


def test_progress_tells_its_lines_apart_and_names_every_week_of_a_short_programme():
    frame = progress_frame([WeekCount("2027-W01", 2, 1, 2, 1), WeekCount("2027-W03", 1, 0, 3, 1)], date(2027, 1, 6))
    chart = progress_chart(frame, looms=10)
    lines = next(layer for layer in layers(chart) if layer["mark"]["type"] == "line")
    # three weeks end on the Mondays 11, 18 and 25 January
    assert lines["encoding"]["x"]["axis"]["values"] == [day_ms(date(2027, 1, day)) for day in (11, 18, 25)]
    assert lines["encoding"]["strokeDash"]["scale"]["range"] == [
        [6, 4],
        [1, 0],
        [2, 3],
    ]  # told apart without colour, too


def test_a_long_programme_labels_only_some_weeks():
    weeks = [WeekCount(f"2027-W{week:02d}", 1, 0, week, 0) for week in range(1, 27)]
    chart = progress_chart(progress_frame(weeks, date(2027, 1, 4)), looms=26)
    lines = next(layer for layer in layers(chart) if layer["mark"]["type"] == "line")
    assert len(lines["encoding"]["x"]["axis"]["values"]) == 7  # every fourth of 26


def test_cost_bars_say_planned_or_expected(db):
    bars, said = layers(cost_chart(cost_frame(status(here(db), AS_OF)), "EUR"))
    assert bars["encoding"]["color"]["scale"]["domain"] == ["planned", "expected"]
    assert said["encoding"]["text"]["field"] == "words"


def test_the_board_spans_the_days_asked_for_and_marks_firm_bookings(db):
    board = bookings(here(db), AS_OF)
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
        "bar",  # the ordinary change between two parts
        "point",
        "text",
        "text",
        "text",
    ]
    axis = layers(chart)[0]["encoding"]["x"]
    assert axis["scale"]["domain"] == [day_ms(date(2027, 1, 4)), day_ms(date(2027, 1, 11))]
    assert len(axis["axis"]["values"]) == 7
    outlined = layers(chart)[9]
    assert outlined["transform"] == [{"filter": "datum.firm"}] and outlined["mark"]["filled"] is False


def test_four_weeks_are_labelled_by_mondays(db):
    board = bookings(here(db), AS_OF)
    rest = pd.DataFrame({"start_ms": [], "end_ms": []})
    chart = board_chart(board_frame(board.rows, board.zone), rest, date(2027, 1, 4), 28, 0.0)
    values = layers(chart)[0]["encoding"]["x"]["axis"]["values"]
    assert values == [day_ms(date(2027, 1, day)) for day in (4, 11, 18, 25)]


def titles(chart: Any) -> set[str]:
    """What the axes of a figure say they measure."""
    found = [layer["encoding"].get(way, {}) for layer in layers(chart) for way in ("x", "y")]
    return {title for title in (f.get("title", (f.get("axis") or {}).get("title")) for f in found) if title}


def test_every_axis_says_what_it_measures_and_in_what_unit(db):
    report = status(here(db), AS_OF)
    assert titles(stage_chart(stage_frame(report))) == {"stage", "looms"}
    assert titles(cost_chart(cost_frame(report), "EUR")) == {"cost", "cost (EUR)"}
    assert titles(scenario_chart(scenario_frame(scenario_board(here(db))), "EUR")) == {"plan", "cost (EUR)"}
    assert titles(cash_chart(MONEY, "EUR")) == {"month", "money (EUR)"}
    assert titles(stock_chart(STOCK, "m")) == {"ISO week", "needed, in stock (m)"}


MONEY = pd.DataFrame(
    {"month": ["Jan 2027"] * 2, "what": ["on order", "still to order"], "part": [0, 1], "amount": [310.0, 90.0],
     "total": [400.0] * 2, "says": ["400 EUR"] * 2}
)  # fmt: skip
STOCK = pd.DataFrame({"week": ["2027-W01"], "need": [2.0], "left_over": [3.0], "stock": [40.0], "order": [""]})


def test_the_highest_point_of_a_part_stands_below_the_edge():
    # the stock of 40 is the highest value; 15 % of room above it
    assert layers(stock_chart(STOCK, "m"))[0]["encoding"]["y"]["scale"]["domain"] == [0, pytest.approx(46)]


def test_bars_of_two_kinds_are_filled_and_outlined():
    bars = layers(cash_chart(MONEY, "EUR"))[0]["encoding"]
    assert bars["fill"]["scale"]["range"] == [WOAD, PAPER] and bars["stroke"]["scale"]["range"] == [WOAD, WOAD]
    left_over, by_bookings = (layer["mark"] for layer in layers(stock_chart(STOCK, "m"))[:2])
    assert left_over["fill"] == PAPER and by_bookings["color"] == WOAD


def test_the_parts_of_a_scenario_bar_carry_the_numbers_of_the_legend(db):
    frame = scenario_frame(scenario_board(here(db)))
    assert list(frame["term"])[:2] == ["1 lost production", "2 late beam-outs"]
    numbers = layers(scenario_chart(frame, "EUR"))[1]
    assert numbers["mark"]["type"] == "text" and numbers["encoding"]["text"]["condition"]["field"] == "number"


def test_the_words_of_a_booking_stand_clear_of_its_forecast(db):
    frame = board_frame(bookings(here(db), AS_OF).rows, bookings(here(db), AS_OF).zone)
    row = frame.iloc[0]
    assert row["right_ms"] == max(row["end_ms"], row["p90_ms"]) and row["left_ms"] == min(
        row["start_ms"], row["p10_ms"]
    )
    chart = board_chart(frame, pd.DataFrame({"start_ms": [], "end_ms": []}), date(2027, 1, 4), 7, 0.0)
    after, before, else_after = layers(chart)[-3:]
    assert [layer["encoding"]["x"]["field"] for layer in (after, before, else_after)] == [
        "right_ms",
        "left_ms",
        "end_ms",
    ]
