"""Frames → figures. Nothing here asks the database or the clock; the frames are those of `dashboards.frames`."""

from collections.abc import Callable, Sequence
from datetime import date, timedelta
from json import dumps
from typing import Any

import altair as alt
import pandas as pd

from dashboards.chart_locale import locale_here
from dashboards.frames import day_ms
from dashboards.look import GREY, INK, KIND_COLOURS, KIND_SHAPES, LINE, MADDER, PAPER, REST, WALNUT, WELD, WOAD
from dashboards.speaking import say

TERM_COLOURS = [WOAD, WELD, WALNUT, MADDER, "#5f8f73", "#8a7ba8", GREY]
ROW_PX, AXIS_PX = 26, 50
SCALE_PX = 44
"""What the numbers below an axis and its title take."""
NARROWEST = 0.02
"""Part of a bar, as a share of the axis, that has room for its number."""
AS_NAMES: Any = {"labelLimit": 0, "labelFontSize": 13}
FONT = "Source Sans, Source Sans Pro, sans-serif"
KINDS = list(KIND_COLOURS)
AS_SVG: Any = {"embedOptions": {"renderer": "svg"}}
"""Drawn as text and shapes: sharp at any size and on paper, and read by screen readers."""
Figure = alt.LayerChart | alt.FacetChart
DAY_LABEL = "[utcFormat(datum.value, '%a %-d %b'), utcFormat(datum.value, '%Y')]"


def stage_chart(frame: pd.DataFrame) -> Figure:
    """Looms by stage: a bar, the stage's word and the count."""
    order = list(frame["stage"])
    base = alt.Chart(frame).encode(
        y=alt.Y("stage:N", sort=order, axis=_names(say("chart-stage"))),
        x=alt.X("looms:Q", axis=_amounts(say("chart-looms")), scale=alt.Scale(domain=[0, _room(list(frame["looms"]))])),
        tooltip=[alt.Tooltip("stage:N", title=say("chart-stage")), alt.Tooltip("looms:Q", title=say("chart-looms"))],
    )
    bars = base.mark_bar(color=WOAD, height=15)
    counts = base.mark_text(align="left", dx=6, fontSize=13, color=INK).encode(text="says:N")
    return styled(alt.layer(bars, counts), height=ROW_PX * len(order) + SCALE_PX)


def progress_chart(frame: pd.DataFrame, looms: int) -> Figure:
    """Conversions planned, done and expected, added up by ISO week, below a line at the number of all looms. What the lines
    are stands in a legend: beside them the words would cross the lines."""
    ticks = sorted(frame["ends_ms"].unique())
    step = -(-len(ticks) // 7)
    words = dict(zip(frame["ends_ms"], frame["week"], strict=True))
    kinds = [say("chart-planned"), say("chart-done"), say("chart-expected")]
    scale = alt.Scale(domain=kinds, range=[GREY, WOAD, WALNUT])
    base = alt.Chart(frame).encode(
        x=alt.X("ends_ms:Q", title=say("chart-iso-week"), scale=alt.Scale(zero=False, nice=False, padding=32),
                axis=alt.Axis(values=ticks[::step], grid=False, labelExpr=_labels(words))),
        y=alt.Y("total:Q", title=say("chart-looms-converted"), scale=alt.Scale(domain=[0, looms * 1.06]),
                axis=alt.Axis(tickMinStep=1, tickCount=5, grid=False)),
        color=alt.Color("what:N", scale=scale, legend=None),
        tooltip=[alt.Tooltip("week:N", title=say("chart-iso-week")), alt.Tooltip("what:N", title=say("chart-looms")),
                 alt.Tooltip("in_week:Q", title=say("chart-in-week")), alt.Tooltip("total:Q", title=say("chart-up-to-end"))],
    )  # fmt: skip
    dash = alt.StrokeDash("what:N", scale=alt.Scale(domain=kinds, range=[[6, 4], [1, 0], [2, 3]]), legend=None)
    signs = alt.Scale(domain=kinds, range=["circle", "square", "triangle-up"])
    shape = alt.Shape("what:N", scale=signs, legend=None)
    lines = base.mark_line(strokeWidth=2.5).encode(strokeDash=dash)
    points = base.mark_point(filled=True, size=46, opacity=1).encode(shape=shape)
    rule = alt.Chart(pd.DataFrame({"looms": [looms]})).mark_rule(color=GREY, strokeDash=[2, 3]).encode(y="looms:Q")
    return styled(alt.layer(rule, lines, points), height=270)


def cost_chart(frame: pd.DataFrame, currency: str) -> Figure:
    """Cost by term, planned and expected, each bar with its amount."""
    order = list(dict.fromkeys(frame["term"]))
    sides = [say("chart-planned"), say("chart-expected")]
    kinds = alt.Scale(domain=sides, range=[WALNUT, WOAD])
    base = alt.Chart(frame).encode(
        y=alt.Y("term:N", sort=order, axis=_names(say("chart-cost"))),
        yOffset=alt.YOffset("what:N", sort=sides),
        x=alt.X(
            "amount:Q",
            axis=_amounts(say("chart-cost-in", currency=currency)),
            scale=alt.Scale(domain=[0, _room(list(frame["amount"]), 1.6)]),
        ),
        tooltip=[
            alt.Tooltip("term:N", title=say("chart-cost")),
            alt.Tooltip("what:N", title=" "),
            alt.Tooltip("says:N", title=say("chart-amount")),
        ],
    )
    bars = base.mark_bar().encode(color=alt.Color("what:N", scale=kinds, legend=None))
    said = base.transform_calculate(words="datum.what + ' ' + datum.says").mark_text(
        align="left", dx=6, fontSize=12.5, color=INK
    )
    return styled(alt.layer(bars, said.encode(text="words:N")), height=22 * len(frame) + 12 * len(order) + SCALE_PX)


def cash_chart(frame: pd.DataFrame, currency: str) -> Figure:
    """Money by month: what is on order (filled) and what is still to order (outlined), and the total in words."""
    months = list(dict.fromkeys(frame["month"]))
    scale = alt.Scale(domain=[0, _room(list(frame["total"]), 1.5)])
    base = alt.Chart(frame).encode(y=alt.Y("month:N", sort=months, axis=_names(say("chart-month"))))
    kinds = [say("chart-on-order"), say("chart-still-to-order")]
    bars = base.mark_bar(height=18, strokeWidth=1.5).encode(
        x=alt.X("amount:Q", axis=_amounts(say("chart-money-in", currency=currency)), scale=scale, stack="zero"),
        order=alt.Order("part:Q"),
        fill=alt.Fill("what:N", scale=alt.Scale(domain=kinds, range=[WOAD, PAPER]), legend=None),
        stroke=alt.Stroke("what:N", scale=alt.Scale(domain=kinds, range=[WOAD, WOAD]), legend=None),
        tooltip=[alt.Tooltip("month:N", title=say("chart-month")), alt.Tooltip("what:N", title=say("chart-money")),
                 alt.Tooltip("amount:Q", title=say("chart-amount-in", currency=currency), format=",.0f")],
    )  # fmt: skip
    sums = base.transform_filter(f"datum.what == {dumps(kinds[0])}").mark_text(
        align="left", dx=6, fontSize=13, color=INK
    )
    says = sums.encode(x=alt.X("total:Q", scale=scale), text="says:N")
    return styled(alt.layer(bars, says), height=30 * len(months) + SCALE_PX)


def stock_chart(frame: pd.DataFrame, unit: str) -> Figure:
    """One part by ISO week: bars of what is needed (filled by bookings, outlined by looms left over), a line of the stock
    at the week's end."""
    weeks = list(frame["week"])
    axis = alt.Axis(values=weeks[:: -(-len(weeks) // 6)], labelAngle=0, labelLimit=0, title=say("chart-iso-week"))
    x = alt.X("week:O", sort=weeks, axis=axis)
    tips = [alt.Tooltip("week:N", title=say("chart-iso-week")), alt.Tooltip("need:Q", title=say("chart-needed")),
            alt.Tooltip("left_over:Q", title=say("chart-needed-left-over")),
            alt.Tooltip("stock:Q", title=say("chart-stock-at-end")),
            alt.Tooltip("order:N", title=say("chart-to-order"))]  # fmt: skip
    both, stock = frame["need"] + frame["left_over"], list(frame["stock"])
    scale = alt.Scale(domain=[min([0, *stock]) * 1.1, _room([*both, *stock])])
    y_axis = alt.Axis(title=say("chart-needed-in-stock", unit=unit or None), tickCount=5, grid=False)

    def y(field: str) -> alt.Y:
        return alt.Y(f"{field}:Q", axis=y_axis, scale=scale)

    needed = alt.Chart(frame.assign(both=both))
    layers = [
        needed.mark_bar(fill=PAPER, stroke=WALNUT, strokeWidth=1.5, width=12).encode(x=x, y=y("both"), tooltip=tips),
        needed.mark_bar(color=WOAD, width=12).encode(x=x, y=y("need"), tooltip=tips),
        needed.mark_line(color=WELD, strokeWidth=2).encode(x=x, y=y("stock")),
        needed.mark_point(color=WELD, filled=True, size=50, opacity=1).encode(x=x, y=y("stock"), tooltip=tips),
    ]
    return styled(alt.layer(*layers), height=220)


def scenario_chart(frame: pd.DataFrame, currency: str) -> Figure:
    """Cost of each plan: a bar parted by term, its parts numbered as in the legend, with the whole in words."""
    plans, terms = list(dict.fromkeys(frame["plan"])), list(dict.fromkeys(frame["term"]))
    longest = _room(list(frame["cost"]), 1.3)
    scale = alt.Scale(domain=[0, longest])
    names = alt.Axis(**AS_NAMES, title=say("chart-plan"), labelExpr="split(datum.label, '\\n')")
    base = alt.Chart(frame).encode(y=alt.Y("plan:N", sort=plans, axis=names))
    colours = alt.Scale(domain=terms, range=TERM_COLOURS)
    x = alt.X("amount:Q", axis=_amounts(say("chart-cost-in", currency=currency)), scale=scale, stack="zero")
    bars = base.mark_bar(height=22, stroke="white", strokeWidth=0.6).encode(
        x=x,
        order=alt.Order("part:Q"),
        color=alt.Color("term:N", scale=colours, sort=terms,
                        legend=alt.Legend(title=None, orient="top", labelFontSize=13, labelLimit=0, symbolType="square",
                                          columns=4)),
        tooltip=[alt.Tooltip("plan:N", title=say("chart-plan")), alt.Tooltip("term:N", title=say("chart-cost")),
                 alt.Tooltip("amount:Q", title=say("chart-amount-in", currency=currency), format=",.0f")],
    )  # fmt: skip
    numbers = base.mark_text(fontSize=12, fontWeight="bold").encode(
        x=x.copy().stack("zero").bandPosition(0.5), order=alt.Order("part:Q"),
        text=alt.condition(f"datum.amount >= {longest * NARROWEST}", alt.Text("number:N"), alt.value("")),
        color=alt.condition(alt.FieldOneOfPredicate("term", terms[1::3]), alt.value(INK), alt.value("white")),
    )  # fmt: skip
    whole = base.transform_filter(f"datum.term == {dumps(terms[0])}").mark_text(
        align="left", dx=6, fontSize=13, color=INK
    )
    cost = whole.encode(x=alt.X("cost:Q", scale=scale), text="says:N")
    lines = max(plan.count("\n") + 1 for plan in plans)
    return styled(alt.layer(bars, numbers, cost), height=max(34, 17 * lines + 8) * len(plans) + 56 + SCALE_PX)


def spread_chart(frame: pd.DataFrame, plan_says: float, currency: str) -> Figure:
    """Cost of each way of running the hall from P10 to P90 with its P50, beside a broken line at what the plan says."""
    order = list(frame["policy"])
    low, high = min([plan_says, *frame["p10"]]), max([plan_says, *frame["p90"]])
    scale = alt.Scale(domain=[low - 0.04 * (high - low), high + 0.3 * (high - low) + 1], zero=False, nice=False)
    base = alt.Chart(frame).encode(
        y=alt.Y("policy:N", sort=order, axis=_names(say("chart-played"))),
        tooltip=[alt.Tooltip("policy:N", title=say("chart-played")),
                 *(alt.Tooltip(f"{share}:Q", title=share.upper(), format=",.0f") for share in ("p10", "p50", "p90"))],
    )  # fmt: skip
    x = alt.X("p10:Q", axis=_amounts(say("chart-cost-in", currency=currency)), scale=scale)
    lines = base.mark_rule(strokeWidth=7, color=WOAD, opacity=0.45).encode(x=x, x2="p90:Q")
    middle = base.mark_point(filled=True, size=110, opacity=1, color=WOAD).encode(x=alt.X("p50:Q", scale=scale))
    words = base.mark_text(align="left", dx=8, fontSize=13, color=INK).encode(
        x=alt.X("p90:Q", scale=scale), text="says:N"
    )
    says = pd.DataFrame({"plan": [plan_says]})
    plan = alt.Chart(says).mark_rule(color=MADDER, strokeDash=[5, 4]).encode(x=alt.X("plan:Q", scale=scale))
    return styled(alt.layer(plan, lines, middle, words), height=34 * len(order) + SCALE_PX)


def board_chart(frame: pd.DataFrame, rest: pd.DataFrame, first: date, days: int, as_of_ms: float) -> Figure:
    """Bookings on a time axis, `days` days from `first`: a row a loom, a bar from start to end with its words (hollow
    while the new warp comes in between), and the beam-out from P10 over P50 to P90."""
    x = time_axis(first, days)
    order = list(frame["row"])
    axis = alt.Axis(labelLimit=0, labelFontSize=12.5, labelPadding=8, minExtent=52, domain=False, ticks=False)
    rows = alt.Chart(frame).encode(y=alt.Y("row:N", sort=order, title=None, axis=axis), tooltip=_board_tips())
    bars = rows.encode(x=x("start_ms"), x2="end_ms:Q")
    midnights = pd.DataFrame({"at_ms": [day_ms(first + timedelta(days=i)) for i in range(days + 1)]})
    now = pd.DataFrame({"at_ms": [as_of_ms]})
    layers = [
        alt.Chart(rest).mark_rect(color=REST).encode(x=x("start_ms"), x2="end_ms:Q"),
        alt.Chart(midnights).mark_rule(color=LINE).encode(x=x("at_ms")),
        alt.Chart(now).mark_rule(color=MADDER, strokeDash=[4, 3], clip=True).encode(x=x("at_ms")),
        *_beam_out_layers(rows.transform_filter("isValid(datum.p50_ms)"), x),
        bars.mark_bar(height=13, cornerRadius=1, clip=True).encode(color=kind_colour()),
        rows.transform_filter("isValid(datum.pause_from_ms)")
        .mark_bar(height=7, color="white", clip=True)
        .encode(x=x("pause_from_ms"), x2="pause_to_ms:Q"),
        bars.transform_filter("datum.firm").mark_bar(height=17, filled=False, strokeWidth=2, stroke=INK, clip=True),
        rows.mark_point(filled=True, size=90, opacity=1, stroke="white", strokeWidth=0.8, clip=True).encode(
            x=x("start_ms"), color=kind_colour(), shape=kind_shape()
        ),
        *_words(rows, x, day_ms(first), day_ms(first + timedelta(days=days))),
    ]
    return styled(alt.layer(*layers), height=AXIS_PX + ROW_PX * max(1, len(order)))


def time_axis(first: date, days: int) -> Callable[[str], alt.X]:
    """Gives each layer the same axis of wall clock milliseconds, labelled by days (beyond a week by Mondays)."""
    every = 1 if days <= 7 else 7
    axis = alt.Axis(
        orient="top", values=[day_ms(first + timedelta(days=i)) for i in range(0, days, every)], labelExpr=DAY_LABEL,
        labelAlign="left", labelFlush=False, labelOverlap=False, labelPadding=2, labelOffset=4, title=None, grid=False,
        tickSize=18, tickColor=LINE,
    )  # fmt: skip
    domain = [day_ms(first), day_ms(first + timedelta(days=days))]
    scale = alt.Scale(domain=domain, nice=False, zero=False)
    return lambda field: alt.X(f"{field}:Q", scale=scale, axis=axis)


def _beam_out_layers(rows: alt.Chart, x: Callable[[str], alt.X]) -> list[alt.Chart]:
    line = rows.mark_rule(strokeWidth=1.5, color=GREY, clip=True).encode(x=x("p10_ms"), x2="p90_ms:Q")
    caps = [
        rows.mark_tick(color=GREY, thickness=1.5, size=size, clip=True).encode(x=x(field))
        for field, size in (("p10_ms", 9), ("p50_ms", 20), ("p90_ms", 9))
    ]
    return [line, *caps]


def _words(rows: alt.Chart, x: Callable[[str], alt.X], begins: float, ends: float) -> list[alt.Chart]:
    """The words beside each bar: after bar and forecast, where there is room, else before both; where both reach to the
    edges of what is shown, after the bar."""
    edge = 0.14 * (ends - begins)
    after, before = f"datum.right_ms <= {ends - edge}", f"datum.left_ms >= {begins + edge}"
    spoken: dict[str, Any] = {"fontSize": 12, "color": INK, "clip": True}

    def words(rule: str, field: str, align: Any, dx: int) -> alt.Chart:
        return rows.transform_filter(rule).mark_text(align=align, dx=dx, **spoken).encode(x=x(field), text="says:N")

    return [
        words(after, "right_ms", "left", 9),
        words(f"!({after}) && {before}", "left_ms", "right", -9),
        words(f"!({after}) && !({before})", "end_ms", "left", 9),
    ]


def _board_tips() -> list[alt.Tooltip]:
    titles = {"loom": "chart-loom", "type": "chart-machine-type", "says": "chart-window", "when": "chart-conversion",
              "beam_out": "chart-beam-out", "work": "chart-work", "cost": "chart-cost"}  # fmt: skip
    return [alt.Tooltip(f"{field}:N", title=say(code)) for field, code in titles.items()]


def kind_colour() -> alt.Color:
    return alt.Color("kind:N", scale=alt.Scale(domain=KINDS, range=[KIND_COLOURS[kind] for kind in KINDS]), legend=None)


def kind_shape() -> alt.Shape:
    return alt.Shape("kind:N", scale=alt.Scale(domain=KINDS, range=[KIND_SHAPES[kind] for kind in KINDS]), legend=None)


def _names(title: str) -> alt.Axis:
    """An axis of words."""
    return alt.Axis(**AS_NAMES, title=title)


def _amounts(title: str) -> alt.Axis:
    """An axis of numbers, titled by their unit."""
    return alt.Axis(title=title, grid=False, tickCount=5, tickMinStep=1, format=",d")


def _labels(words: dict[float, str]) -> str:
    """A label expression that writes the word of each tick."""
    cases = "".join(f"datum.value == {value:.0f} ? '{word}' : " for value, word in words.items())
    return f"{cases}''"


def _room(values: list[float], share: float = 1.15) -> float:
    """Upper end of an axis that leaves room for the words after the longest bar."""
    return (max(values, default=0) or 1) * share


def styled(chart: Figure, height: int) -> Figure:
    styled = chart.properties(width="container", height=height, usermeta=AS_SVG)
    styled.config = alt.Config(  # at once: each `configure_…` would copy the whole chart
        font=FONT, background="transparent", **locale_here(),
        mark=alt.MarkConfig(aria=False),  # to a reader of screens the chart's own words and its table speak
        view=alt.ViewConfig(stroke=None),
        axis=alt.AxisConfig(labelColor=INK, titleColor=GREY, titleFontWeight="normal", labelFontSize=12, titleFontSize=12,
                            gridColor=LINE, domainColor=LINE, tickColor=LINE),
    )  # fmt: skip
    return styled


def series_chart(frame: pd.DataFrame, limits: Sequence[float], unit: str) -> Figure:
    """at_ms, value: a point a reading, joined by a line, between the limits of the setpoint."""
    x = alt.X("at_ms:T", title=None, scale=alt.Scale(type="utc"))
    y = alt.Y("value:Q", title=unit or None, scale=alt.Scale(zero=False))
    line = alt.Chart(frame).mark_line(color=WOAD, point=alt.OverlayMarkDef(size=60, color=WOAD)).encode(x=x, y=y)
    rules = alt.Chart(pd.DataFrame({"value": list(limits)})).mark_rule(color=MADDER, strokeDash=[4, 3]).encode(y=y)
    return styled(alt.layer(line, rules), height=220)
