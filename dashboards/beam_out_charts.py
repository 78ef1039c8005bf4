"""What runs out in the next days as a figure: a bar from P10 to P90 for each beam-out, with the booking on it."""

from collections.abc import Iterable
from datetime import date, timedelta
from zoneinfo import ZoneInfo

import altair as alt
import pandas as pd

from dashboards.charts import AXIS_PX, ROW_PX, Figure, kind_colour, kind_shape, styled, time_axis
from dashboards.frames import day_ms, wall_ms
from dashboards.look import GREY, INK, LINE, MADDER
from dashboards.speaking import SPEAKER, say, span
from tracker.domain.windows import WindowKind
from tracker.services.screens.beam_outs import BeamOutLine

COLUMNS = ["row", "kind", "from_ms", "p50_ms", "to_ms", "start_ms", "end_ms", "right_ms", "says", "when", "booked"]


def beam_out_frame(lines: Iterable[BeamOutLine], zone: ZoneInfo) -> pd.DataFrame:
    """row (the loom), kind, from_ms and to_ms (P10 and P90, of a standing span its ends), p50_ms (NaN for a standing one), start_ms
    and end_ms of the booking (NaN without one), right_ms (the later of both ends), says (the words beside it), when and booked (for
    the tip)."""
    return pd.DataFrame([_record(line, zone) for line in lines], columns=COLUMNS)


def reading_says(state: str) -> str:
    """How far a reading can be trusted, in a word."""
    return say({"overdue": "reading-overdue", "stale": "reading-stale", "ok": "reading-ok"}[state])


def _record(line: BeamOutLine, zone: ZoneInfo) -> dict[str, object]:
    window, booking = line.window, line.booking
    first, last = (window.starts_at, window.ends_at) if window.ends_at else (window.p10_at, window.p90_at)
    stands = window.kind is WindowKind.STANDING
    return {
        "row": line.key.loom,
        "kind": window.kind.value,
        "from_ms": wall_ms(first, zone),
        "p50_ms": None if stands else wall_ms(window.p50_at, zone),
        "to_ms": wall_ms(last, zone),
        "start_ms": wall_ms(booking.start, zone) if booking else None,
        "end_ms": wall_ms(booking.end, zone) if booking else None,
        "right_ms": max(wall_ms(last, zone), wall_ms(booking.end, zone) if booking else 0.0),
        "says": SPEAKER.word(window.kind) + ("" if line.trusted else f", {reading_says(window.state)}"),
        "when": span(first, last, zone),
        "booked": span(booking.start, booking.end, zone) if booking else say("beam-outs-not-booked"),
    }


def beam_out_chart(frame: pd.DataFrame, first: date, days: int, as_of_ms: float) -> Figure:
    """A row a loom, `days` days from `first`: a bar from P10 to P90 with a stroke at P50, the booking as a frame around its
    time."""
    x, order = time_axis(first, days), list(dict.fromkeys(frame["row"]))
    axis = alt.Axis(labelLimit=0, labelFontSize=12.5, labelPadding=8, minExtent=52, domain=False, ticks=False)
    rows = alt.Chart(frame).encode(y=alt.Y("row:N", sort=order, title=None, axis=axis), tooltip=_tips())
    midnights = pd.DataFrame({"at_ms": [day_ms(first + timedelta(days=i)) for i in range(days + 1)]})
    now = pd.DataFrame({"at_ms": [as_of_ms]})
    booked = rows.transform_filter("isValid(datum.start_ms)")
    layers = [
        alt.Chart(midnights).mark_rule(color=LINE).encode(x=x("at_ms")),
        alt.Chart(now).mark_rule(color=MADDER, strokeDash=[4, 3], clip=True).encode(x=x("at_ms")),
        rows.mark_bar(height=9, cornerRadius=1, clip=True, opacity=0.85).encode(
            x=x("from_ms"), x2="to_ms:Q", color=kind_colour()
        ),
        rows.transform_filter("isValid(datum.p50_ms)")
        .mark_tick(color=INK, thickness=2, size=17, clip=True)
        .encode(x=x("p50_ms")),
        rows.mark_point(filled=True, size=70, opacity=1, stroke="white", strokeWidth=0.8, clip=True).encode(
            x=x("from_ms"), color=kind_colour(), shape=kind_shape()
        ),
        booked.mark_bar(height=19, filled=False, strokeWidth=2, stroke=INK, clip=True).encode(
            x=x("start_ms"), x2="end_ms:Q"
        ),
        rows.mark_text(align="left", dx=9, fontSize=12, color=GREY, clip=True).encode(x=x("right_ms"), text="says:N"),
    ]
    return styled(alt.layer(*layers), height=AXIS_PX + ROW_PX * max(1, len(order)))


def _tips() -> list[alt.Tooltip]:
    titles = {
        "row": "beam-outs-loom",
        "says": "beam-outs-window",
        "when": "beam-outs-runs-out",
        "booked": "beam-outs-booked",
    }
    return [alt.Tooltip(f"{field}:N", title=say(code)) for field, code in titles.items()]
