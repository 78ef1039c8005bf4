"""Bookings by crew on a time axis, and the hours of each trade by week beside what there is."""

from collections.abc import Iterable, Sequence
from datetime import date, timedelta
from zoneinfo import ZoneInfo

import altair as alt
import pandas as pd

from dashboards.charts import AXIS_PX, Figure, kind_colour, styled, time_axis
from dashboards.frames import day_ms, wall_ms
from dashboards.look import INK, LINE, MADDER, PAPER, WALNUT, WOAD
from dashboards.speaking import SPEAKER, number, say, span
from tracker.services.screens.bookings import BoardRow
from tracker.services.screens.week_hours import TradeWeek

CREW_PX = 44
CREW_COLUMNS = ["crew", "kind", "start_ms", "end_ms", "loom", "when", "says"]
HOURS_COLUMNS = ["week", "booked", "there", "says"]


def crew_frame(rows: Iterable[BoardRow], zone: ZoneInfo) -> pd.DataFrame:
    """A row for each turn of a crew at a loom: crew, kind, start_ms, end_ms, loom (its number), when and says (for the tip)."""
    records = [
        (turn.crew, row.booking.kind.value, wall_ms(turn.start, zone), wall_ms(turn.end, zone), row.booking.key.loom,
         span(turn.start, turn.end, zone), f"{row.booking.key}, {SPEAKER.word(row.booking.kind)}")
        for row in rows
        for turn in row.booking.crews
    ]  # fmt: skip
    return pd.DataFrame(records, columns=CREW_COLUMNS)


def crew_chart(frame: pd.DataFrame, crews: Sequence[str], first: date, days: int, as_of_ms: float) -> Figure:
    """A row a crew, `days` days from `first`: a bar for each loom that it is at, with the loom's number on it."""
    x = time_axis(first, days)
    axis = alt.Axis(labelLimit=0, labelFontSize=12.5, labelPadding=8, domain=False, ticks=False)
    tips = {"loom": "bookings-loom", "when": "bookings-conversion", "says": "bookings-window"}
    rows = alt.Chart(frame).encode(
        y=alt.Y("crew:N", sort=list(crews), title=None, axis=axis, scale=alt.Scale(domain=list(crews))),
        tooltip=[alt.Tooltip(f"{field}:N", title=say(code)) for field, code in tips.items()],
    )
    midnights = pd.DataFrame({"at_ms": [day_ms(first + timedelta(days=i)) for i in range(days + 1)]})
    now = pd.DataFrame({"at_ms": [as_of_ms]})
    names = rows.mark_text(align="left", dx=3, dy=-15, fontSize=11.5, color=INK, clip=True)
    layers = [
        alt.Chart(midnights).mark_rule(color=LINE).encode(x=x("at_ms")),
        alt.Chart(now).mark_rule(color=MADDER, strokeDash=[4, 3], clip=True).encode(x=x("at_ms")),
        rows.mark_bar(height=15, cornerRadius=1, clip=True, stroke="white", strokeWidth=1).encode(
            x=x("start_ms"), x2="end_ms:Q", color=kind_colour()
        ),
        names.encode(x=x("start_ms"), text="loom:N"),
    ]
    return styled(alt.layer(*layers), height=AXIS_PX + CREW_PX * max(1, len(crews)))


def hours_frame(weeks: Iterable[TradeWeek]) -> pd.DataFrame:
    """week, booked and there (head-hours) of one trade, says (the share in words)."""
    records = [(w.week, w.booked_h, w.there_h, hours_says(w)) for w in weeks]
    return pd.DataFrame(records, columns=HOURS_COLUMNS)


def hours_says(week: TradeWeek) -> str:
    """`38 of 120 h`."""
    return say("hours-of", booked=number(week.booked_h), there=number(week.there_h))


def hours_chart(frame: pd.DataFrame) -> Figure:
    """By ISO week: a frame as high as the hours that there are, filled as far as they are booked."""
    weeks = list(frame["week"])
    axis = alt.Axis(values=weeks[:: -(-len(weeks) // 8)], labelAngle=0, labelLimit=0, title=say("hours-week"))
    base = alt.Chart(frame).encode(
        x=alt.X("week:O", sort=weeks, axis=axis),
        tooltip=[alt.Tooltip("week:N", title=say("hours-week")), alt.Tooltip("says:N", title=say("hours-title"))],
    )
    y = alt.Axis(title=say("hours-title"), tickCount=4, grid=False)
    top = max([1.0, *frame["booked"], *frame["there"]]) * 1.08
    scale = alt.Scale(domain=[0, top])
    layers = [
        base.mark_bar(fill=PAPER, stroke=WALNUT, strokeWidth=1.5, width=16).encode(
            y=alt.Y("there:Q", axis=y, scale=scale)
        ),
        base.mark_bar(color=WOAD, width=16).encode(y=alt.Y("booked:Q", axis=y, scale=scale)),
    ]
    return styled(alt.layer(*layers), height=150)
