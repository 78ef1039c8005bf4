"""Worth: each figure's change with its interval, as compared and plainly before and after."""

from collections.abc import Iterator, Sequence

import altair as alt
import pandas as pd

from dashboards.charts import ROW_PX, SCALE_PX, Figure, styled
from dashboards.look import GREY, WALNUT, WOAD
from dashboards.speaking import SPEAKER, say
from tracker.services.work.worth import Measure
from tracker.services.work.worth_says import in_percent, what_of

COLUMNS = ["figure", "how", "middle", "low", "high"]


def change_frame(measures: Sequence[Measure]) -> pd.DataFrame:
    """figure, how (`stepped` or `plain`), middle, low, high: percent, below 0 = less than without the conversion."""
    return pd.DataFrame([row for one in measures for row in _rows(one)], columns=COLUMNS)


def _rows(measure: Measure) -> Iterator[tuple[str, str, float, float, float]]:
    for how, told in in_percent(measure):
        yield SPEAKER.say(what_of(measure)), how, told.estimate, told.low, told.high


def change_chart(frame: pd.DataFrame) -> Figure:
    """A line a figure: a dot within its interval, a triangle for the plain figure; a rule at no change."""
    order = list(dict.fromkeys(frame["figure"]))
    kinds = ["stepped", "plain"]
    color = alt.Color("how:N", scale=alt.Scale(domain=kinds, range=[WOAD, WALNUT]), legend=None)
    base = alt.Chart(frame).encode(
        y=alt.Y("figure:N", sort=order, axis=alt.Axis(title=None, labelLimit=0, labelFontSize=13)),
        yOffset=alt.YOffset("how:N", sort=kinds),
        tooltip=[alt.Tooltip("figure:N", title=say("head-figure")),
                 *(alt.Tooltip(f"{name}:Q", format="+.1f", title=f"{name} %") for name in ("low", "middle", "high"))],
    )  # fmt: skip
    shape = alt.Shape("how:N", scale=alt.Scale(domain=kinds, range=["circle", "triangle-up"]), legend=None)
    x = alt.X("low:Q", axis=alt.Axis(title=say("worth-change-axis"), grid=False))
    spans = base.mark_rule(strokeWidth=4, opacity=0.4).encode(x=x, x2="high:Q", color=color)
    dots = base.mark_point(filled=True, size=70, opacity=1).encode(x="middle:Q", color=color, shape=shape)
    nothing = alt.Chart(pd.DataFrame([{"x": 0}])).mark_rule(color=GREY).encode(x="x:Q")
    return styled(alt.layer(nothing, spans, dots), height=int(1.5 * ROW_PX) * len(order) + SCALE_PX)
