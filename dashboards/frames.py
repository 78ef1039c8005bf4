"""From reports to the frames that the charts draw. Moments become wall clock milliseconds, so that a chart shows the
mill's local time wherever the browser stands."""

from collections.abc import Iterable, Sequence
from datetime import UTC, date, datetime, timedelta
from textwrap import wrap
from zoneinfo import ZoneInfo

import pandas as pd

from dashboards.look import KIND_SIGNS
from dashboards.speaking import SPEAKER, moment, money, month, number, say, span
from dashboards.tables import stage_word
from tracker.domain.calendars import Span, iso_week
from tracker.domain.needs import PartWeek
from tracker.domain.plan import Booking, CostTerms
from tracker.mill_state.progress import WeekCount
from tracker.services.parts.needs import NeedsReport
from tracker.services.screens.bookings import BoardRow
from tracker.services.screens.scenario_board import PlanLine, ScenarioBoard
from tracker.services.screens.status import StatusReport

TERMS = {
    "lost_production": "term-lost-production",
    "late_beam_out": "term-late-beam-outs",
    "labour": "term-labour",
    "parts": "term-parts",
    "saving_foregone": "term-saving-foregone",
    "moves": "term-moved-bookings",
    "surviving": "term-surviving",
}
"""Field of the cost of a booking → its code."""


BESIDE = ("moves", "surviving")
"""Terms that plans are held against each other without."""


def term_word(field: str) -> str:
    return say(TERMS[field])


def wall_ms(at: datetime, zone: ZoneInfo) -> float:
    """The local wall clock reading as if it were UTC, in milliseconds since 1970."""
    return at.astimezone(zone).replace(tzinfo=UTC).timestamp() * 1000


def day_ms(on: date) -> float:
    return datetime(on.year, on.month, on.day, tzinfo=UTC).timestamp() * 1000


def stage_frame(report: StatusReport) -> pd.DataFrame:
    """stage (its word), looms, says; one row a stage in the order of the programme."""
    rows = [(stage_word(stage), looms, number(looms)) for stage, looms in report.stages.items()]
    return pd.DataFrame(rows, columns=["stage", "looms", "says"])


def progress_frame(weeks: Sequence[WeekCount], as_of: date) -> pd.DataFrame:
    """week, ends_ms, what (the words of planned, done, expected), total, in_week; a row for every week from the first to the
    last; what is done ends with the week of `as_of`, and what is expected begins with it."""
    columns = ["week", "ends_ms", "what", "total", "in_week"]
    if not weeks:
        return pd.DataFrame(columns=columns)
    known = {week.week: week for week in weeks}
    rows, planned, done, expected = [], 0, 0, 0
    as_planned, as_done, as_expected = say("chart-planned"), say("chart-done"), say("chart-expected")
    monday, last = monday_of(weeks[0].week), monday_of(weeks[-1].week)
    while monday <= last:
        week = known.get(iso_week(monday), WeekCount(iso_week(monday), 0, 0, planned, done, 0, expected))
        planned, done, expected = week.planned_total, week.done_total, week.expected_total
        ends = day_ms(monday + timedelta(days=7))
        rows.append((week.week, ends, as_planned, planned, week.planned))
        if monday <= as_of:
            rows.append((week.week, ends, as_done, done, week.done))
        if monday + timedelta(days=7) > as_of:
            rows.append((week.week, ends, as_expected, expected, week.expected))
        monday += timedelta(days=7)
    return pd.DataFrame(rows, columns=columns)


def monday_of(week: str) -> date:
    """`2027-W01` → Monday 4 January 2027."""
    return date.fromisocalendar(int(week[:4]), int(week[-2:]), 1)


def cost_frame(report: StatusReport) -> pd.DataFrame:
    """term, what (the words of planned and expected), amount, says; terms that are nothing are left out."""
    rows = []
    for field in CostTerms.__slots__:
        for code, cost in (("chart-planned", report.planned_cost), ("chart-expected", report.expected_cost)):
            amount = getattr(cost, field)
            if round(amount):
                rows.append((term_word(field), say(code), amount, money(amount, report.currency)))
    return pd.DataFrame(rows, columns=["term", "what", "amount", "says"])


def stock_frame(weeks: Sequence[PartWeek]) -> pd.DataFrame:
    """week, need, left_over, stock, order (words); quantities of one part, a row a week."""
    rows = [
        (w.week, w.gross, w.gross_left_over, w.on_hand_end, number(w.order_quantity, "", 3) if w.order_quantity else "")
        for w in weeks
    ]
    return pd.DataFrame(rows, columns=["week", "need", "left_over", "stock", "order"])


def cash_frame(report: NeedsReport) -> pd.DataFrame:
    """month, what (the words of on order and still to order), part (their order), amount, total of the month, says (the total in
    words)."""
    rows = []
    for month_cash in report.cash.months:
        says = money(month_cash.total, report.currency)
        sides = ("chart-on-order", month_cash.on_order), ("chart-still-to-order", month_cash.proposed)
        for part, (code, amount) in enumerate(sides):
            rows.append((month(month_cash.month), say(code), part, amount, month_cash.total, says))
    return pd.DataFrame(rows, columns=["month", "what", "part", "amount", "total", "says"])


def plan_name(line: PlanLine) -> str:
    """Of a plan on the screen Scenarios: that of the scenario, or that it is the one in force."""
    return say("scenarios-published") if line.made_at is None else line.name


WIDEST_NAME = 24
"""Characters of a plan's name in one line."""


def scenario_frame(board: ScenarioBoard) -> pd.DataFrame:
    """plan (its name in lines), part (order of the term), number (the term's, from 1), term (numbered, also the looms left
    over), amount, cost of the plan, says (that in words); all without the price of moves."""
    rows, terms = [], [field for field in CostTerms.__slots__ if field not in BESIDE]
    for line in board.lines:
        amounts = {term_word(field): getattr(line.cost, field) for field in terms}
        name, cost = "\n".join(wrap(plan_name(line), WIDEST_NAME)), line.comparable
        for part, (term, amount) in enumerate((amounts | {say("chart-left-over"): line.left_over_cost}).items(), 1):
            says = money(cost, board.currency)
            rows.append((name, part, str(part), f"{part} {term}", max(0.0, amount), cost, says))
    return pd.DataFrame(rows, columns=["plan", "part", "number", "term", "amount", "cost", "says"])


def board_frame(rows: Iterable[BoardRow], zone: ZoneInfo) -> pd.DataFrame:
    """One row a booking: row (the label), kind, sign, firm, start_ms, end_ms, pause_from_ms and pause_to_ms (NaN in one
    piece), p10_ms, p50_ms, p90_ms (NaN without a forecast), left_ms and right_ms (where bar and forecast begin and end),
    says (the words beside the bar), and texts for the tip."""
    return pd.DataFrame([_board_record(row, zone) for row in rows], columns=BOARD_COLUMNS)


BOARD_COLUMNS = [
    "row", "kind", "sign", "firm", "start_ms", "end_ms", "pause_from_ms", "pause_to_ms", "p10_ms",
    "p50_ms", "p90_ms", "left_ms", "right_ms", "says", "loom", "type", "when", "beam_out", "work", "cost",
]  # fmt: skip


def _board_record(row: BoardRow, zone: ZoneInfo) -> dict[str, object]:
    booking, out = row.booking, row.beam_out
    return {
        "row": booking.key.loom,
        "kind": booking.kind.value,
        "sign": KIND_SIGNS[booking.kind.value],
        "firm": booking.firm,
        "start_ms": wall_ms(booking.start, zone),
        "end_ms": wall_ms(booking.end, zone),
        "pause_from_ms": wall_ms(booking.pause[0], zone) if booking.pause else None,
        "pause_to_ms": wall_ms(booking.pause[1], zone) if booking.pause else None,
        "p10_ms": wall_ms(out.p10_at, zone) if out else None,
        "p50_ms": wall_ms(out.p50_at, zone) if out else None,
        "p90_ms": wall_ms(out.p90_at, zone) if out else None,
        "left_ms": wall_ms(min(booking.start, out.p10_at) if out else booking.start, zone),
        "right_ms": wall_ms(max(booking.end, out.p90_at) if out else booking.end, zone),
        "says": ", ".join([SPEAKER.word(booking.kind), *marks(row)]),
        "loom": str(booking.key),
        "type": row.machine_type,
        "when": when_says(booking, zone),
        "beam_out": beam_out_says(row, zone),
        "work": number(booking.labour_h, say("chart-person-hours"), 1),
        "cost": money(booking.cost.total),
    }


def marks(row: BoardRow) -> list[str]:
    """`firm`, `pilot`, `kept`: what sets a booking apart."""
    return [*booking_marks(row.booking), *([say("mark-kept")] if row.kept else [])]


def booking_marks(booking: Booking) -> list[str]:
    return [say(code) for code, holds in (("mark-firm", booking.firm), ("mark-pilot", booking.pilot)) if holds]


def when_says(booking: Booking, zone: ZoneInfo) -> str:
    """From when to when, and when in between the warp comes in."""
    whole = span(booking.start, booking.end, zone)
    return say("chart-new-warp", span=whole, pause=span(*booking.pause, zone)) if booking.pause else whole


def beam_out_says(row: BoardRow, zone: ZoneInfo) -> str:
    """`Mon 4 Jan 2027 06:00 to Tue 5 Jan 2027 09:10`, P10 to P90."""
    if row.beam_out is None:
        return ""
    code = {"stale": "beam-out-stale", "overdue": "beam-out-overdue"}.get(row.beam_out.state)
    stale = f" ({say(code)})" if code else ""
    first, last = moment(row.beam_out.p10_at, zone), moment(row.beam_out.p90_at, zone)
    return say("from-to", start=first, end=last) + stale


def rest_frame(working: Iterable[Span], zone: ZoneInfo, first: date, days: int) -> pd.DataFrame:
    """start_ms, end_ms of the time between working spans, cut to `days` days from `first`."""
    begins, ends = day_ms(first), day_ms(first + timedelta(days=days))
    rows, at = [], begins
    for start, end in working:
        start_ms, end_ms = wall_ms(start, zone), wall_ms(end, zone)
        if start_ms > at and start_ms > begins:
            rows.append((at, min(start_ms, ends)))
        at = max(at, end_ms)
        if at >= ends:
            break
    if at < ends:
        rows.append((at, ends))
    return pd.DataFrame([row for row in rows if row[0] < row[1]], columns=["start_ms", "end_ms"])
