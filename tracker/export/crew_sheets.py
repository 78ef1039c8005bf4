"""The week of each crew, the day list of each other trade, bench work, and the stops that the weaving department is to expect."""

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import date, datetime, time, timedelta
from itertools import groupby
from math import ceil, floor
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.calendars import iso_week
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Booking, Plan
from tracker.domain.tables import Kind
from tracker.domain.windows import Window, WindowKind
from tracker.domain.words import fold, natural_key
from tracker.domain.work import WorkContent
from tracker.export.wording import Wording
from tracker.office.writing.sheets import Col, TidySheet

Windows = Mapping[LoomKey, Iterable[Window]]
Contents = Mapping[LoomKey, Mapping[WindowKind, Sequence[WorkContent]]]
_NO_TITLE = re.compile(r"[\[\]:*?/\\']")
"""Signs that a sheet's name cannot have."""
LONGEST_TITLE = 31
SLOT_MIN = 30
"""The grid of plans."""
_DATE = 2
"""Column of the day in `_Sheets.when`."""


def crew_sheets(
    plan: Plan, mill: Mill, windows: Windows, contents: Contents | None = None, write: Wording | None = None
) -> list[TidySheet]:
    """One sheet a crew, one a trade, one of bench work, one of stops; none for plans made before crews were named. A week of a
    crew, a trade or the bench begins a page. `contents`: the work of each loom, without which nobody knows what is bench
    work."""
    if plan.crew_changes is None:
        return []
    sheets = _Sheets(plan, mill, (windows, contents or {}), write or Wording(zone=mill.terms.zone))
    return _told_apart([*sheets.crews(), *sheets.trades(), *sheets.bench(), sheets.stops()])


class _Sheets:
    def __init__(self, plan: Plan, mill: Mill, beside: tuple[Windows, Contents], write: Wording):
        self.mill, self.zone, (self.windows, self.contents), self.write = mill, mill.terms.zone, beside, write
        self.bookings = sorted(plan.bookings, key=lambda booking: (booking.start, booking.key.sort_key))
        self.says = write.say("book-crews-as-of", at=plan.as_of, zone=mill.terms.time_zone)

    # ---- who does it

    def crews(self) -> Iterator[TidySheet]:
        col = self.write.col
        rows: dict[str, list[list[Any]]] = defaultdict(list)
        later = {
            booking.key: self._work_of(booking, self.mill.terms.lead_trade, "after restart")
            for booking in self.bookings
        }
        watched = any(later.values())
        for booking in self.bookings:
            for i, turn in enumerate(booking.crews):
                rows[turn.crew].append([
                    *self._when(turn.start, turn.end), *self._where(booking.key), self._does(booking, i),
                    marks_of(booking, self.write), self.write.speaker.word(booking.kind),
                    _local(self._beam_out(booking), self.zone), _choices(booking),
                    self._needed(booking, turn.start, turn.end),
                    *([later[booking.key] if turn.end == booking.end else ""] if watched else []),
                ])  # fmt: skip
        columns = [
            *self.when, *self.write.where(), col("col-what", width=19), col("col-mark", width=9, about="hint-mark"),
            col("col-window"), col("col-warp-runs-out", Kind.MOMENT, about="hint-p50"), col("own-sheet-choices", width=26),
            col("col-needs", width=34, about="hint-needs"),
            *([col("col-then-after-restart", width=34, about="hint-then-after-restart")] if watched else []),
        ]  # fmt: skip
        for crew in sorted(rows, key=natural_key):
            title, heading = (self.write.say(code, crew=crew) for code in ("book-crew", "book-crew-about"))
            yield self._by_week(title, heading, columns, rows[crew])

    def trades(self) -> Iterator[TidySheet]:
        col = self.write.col
        rows: dict[str, list[list[Any]]] = defaultdict(list)
        for booking in self.bookings:
            told: set[str] = set()
            for need in booking.needs:
                if need.kind == "trade":
                    crews = (turn.crew for turn in booking.crews if turn.start < need.end and need.start < turn.end)
                    rows[need.what].append([
                        *self._when(need.start, need.end), need.amount, *self._where(booking.key),
                        ", ".join(dict.fromkeys(crews)), "" if need.what in told else self._work_of(booking, need.what),
                    ])  # fmt: skip
                    told.add(need.what)
            for trade, row in self._after_restart(booking):
                rows[trade].append(row)
        columns = [
            *self.when, col("heading-heads", Kind.INTEGER, width=8), *self.write.where(), col("col-crew-at-loom", width=20),
            col("col-all-its-work", width=60, about="hint-all-its-work"),
        ]  # fmt: skip
        for trade in sorted(rows, key=natural_key):
            title, heading = (self.write.say(code, trade=trade) for code in ("book-days", "book-days-about"))
            yield self._by_week(title, heading, columns, rows[trade])

    def _after_restart(self, booking: Booking) -> Iterator[tuple[str, list[Any]]]:
        """Trade → a row for each step after the restart that asks for it, one after the other from the end of the booking on: the
        half hours that it touches, as plans count them."""
        content, gone_min = self._content(booking), 0.0
        crews = [turn.crew for turn in booking.crews if turn.end == booking.end]
        for step in content.after_steps if content else ():
            first, gone_min = floor(gone_min / SLOT_MIN), gone_min + step.minutes
            begin, end = (booking.end + n * SLOT_MIN * timedelta(minutes=1) for n in (first, ceil(gone_min / SLOT_MIN)))
            for trade, heads in step.heads.items():
                if fold(trade) != fold(self.mill.terms.lead_trade):
                    work = self._work_of(booking, trade, "after restart", step.step)
                    yield trade, [
                        *self._when(begin, end), heads, *self._where(booking.key), ", ".join(crews),
                        self.write.say("book-after-restart", work=work),
                    ]  # fmt: skip

    def bench(self) -> Iterator[TidySheet]:
        """What must be done on the bench before the start of each conversion, and what is left to do there when it is over."""
        col = self.write.col
        rows, after = [], any(content.bench_after_min for content in map(self._content, self.bookings) if content)
        for booking in self.bookings:
            content = self._content(booking)
            if content is None:
                continue
            for place in ("bench before", "bench after"):
                work = [row for row in content.operations if row.place == place]
                if work:
                    before = place == "bench before"
                    at = (booking.start if before else booking.end).astimezone(self.zone)
                    by, since = (at.time(), None) if before else (None, at.time())
                    rows.append([
                        *self._day(at), by, *([since] if after else []), *self._where(booking.key),
                        ", ".join(dict.fromkeys(row.trade for row in work)), "; ".join(row.operation for row in work),
                        (content.bench_min if before else content.bench_after_min) / 60, _choices(booking),
                    ])  # fmt: skip
        columns = [
            *self.when[: _DATE + 1], col("col-ready-by", Kind.TIME, width=10),
            *([col("col-from-then", Kind.TIME, width=10, about="hint-from-then")] if after else []),
            *self.write.where(), col("col-trades", width=14),
            col("col-what", width=70), col("col-bench-time", Kind.NUMBER, unit="h", digits=1), col("own-sheet-choices"),
        ]  # fmt: skip
        if rows:
            title, heading = map(self.write.say, ("book-bench", "book-bench-about"))
            yield self._by_week(title, heading, columns, rows)

    def _by_week(self, title: str, heading: str, columns: Sequence[Col], rows: list[list[Any]]) -> TidySheet:
        rows.sort(
            key=lambda row: (
                row[_DATE],
                next((at for at in row[_DATE + 1 : _DATE + 3] if isinstance(at, time)), time()),
            )
        )
        firsts = [next(numbers) for _, numbers in groupby(range(len(rows)), key=lambda i: rows[i][0])]
        return self.write.named(title, columns, rows, (heading, self.says), breaks=firsts[1:])

    # ---- which looms stop

    def stops(self) -> TidySheet:
        """A stop lasts from the beam-out, or the start where that comes first, to the end of the conversion."""
        col = self.write.col
        columns = [
            *self.write.where(), col("heading-section", Kind.IDENTIFIER), col("col-window"),
            col("col-beam-out-p10", Kind.MOMENT, about="hint-p10"), col("col-beam-out-p50", Kind.MOMENT),
            col("col-beam-out-p90", Kind.MOMENT, about="hint-p90"), col("col-stops-from", Kind.MOMENT),
            col("col-stops-to", Kind.MOMENT), col("col-article-next", Kind.IDENTIFIER),
        ]  # fmt: skip
        if self.parted:
            columns += [
                col("col-new-warp-from", Kind.MOMENT, about="hint-new-warp-from"),
                col("col-new-warp-by", Kind.MOMENT, about="hint-new-warp-by"),
            ]
        lines = (self.write.say("book-stops-about"), self.says)
        return self.write.sheet("book-stops", columns, [self._stop(booking) for booking in self.bookings], lines)

    def _stop(self, booking: Booking) -> list[Any]:
        window, out, loom = self._window(booking), self._beam_out(booking), self.mill.looms.get(booking.key)
        spread = [window.p10_at, out, window.p90_at] if window and out else [None, out, None]
        comes = window.article_in if window and booking.kind is not WindowKind.MID_WARP else None
        return [
            *self._where(booking.key), loom.section if loom else None, self.write.speaker.word(booking.kind),
            *(_local(at, self.zone) for at in spread), _local(min(booking.start, out or booking.start), self.zone),
            _local(booking.end, self.zone), comes,
            *([_local(at, self.zone) for at in booking.pause or (None, None)] if self.parted else []),
        ]  # fmt: skip

    @property
    def parted(self) -> bool:
        """Whether any booking has two parts, with the new warp between them."""
        return any(booking.pause for booking in self.bookings)

    def _window(self, booking: Booking) -> Window | None:
        return booking.nearest(self.windows.get(booking.key, ()))

    def _beam_out(self, booking: Booking) -> datetime | None:
        """When its warp runs out by the forecast of today, where there is one."""
        window = self._window(booking)
        return window.p50_at if window and booking.beam_out_p50 else booking.beam_out_p50

    # ---- columns

    @property
    def when(self) -> list[Col]:
        """Week, day of the week, day, from and to."""
        col = self.write.col
        return [
            col("col-week", width=10), col("col-day", width=6), col("heading-date", Kind.DATE, width=12),
            col("heading-from", Kind.TIME, width=8), col("heading-to", Kind.TIME, width=8),
        ]  # fmt: skip

    def _content(self, booking: Booking) -> WorkContent | None:
        of_kind = self.contents.get(booking.key, {}).get(booking.kind, ())
        return next((content for content in of_kind if content.choices == booking.choices), None)

    def _work_of(self, booking: Booking, trade: str, place: str = "on loom", step: int | None = None) -> str:
        content = self._content(booking)
        mine = (row for row in content.operations if fold(row.trade) == fold(trade)) if content else ()
        return "; ".join(row.operation for row in mine if row.place == place and step in (None, row.step))

    def _needed(self, booking: Booking, start: datetime, end: datetime) -> str:
        """`electrician 10:00-11:00 and 12:00-13:00; drilling jig 06:30-08:30` within a turn."""
        spans: dict[str, list[str]] = defaultdict(list)
        for need in booking.needs:
            begin, finish = max(need.start, start), min(need.end, end)
            if begin < finish:
                hours = f"{begin.astimezone(self.zone):%H:%M}-{finish.astimezone(self.zone):%H:%M}"
                spans[f"{f'{need.amount} × ' if need.amount > 1 else ''}{need.what}"].append(hours)
        return "; ".join(f"{what} {self.write.say('book-and').join(hours)}" for what, hours in spans.items())

    def _when(self, start: datetime, end: datetime) -> list[Any]:
        begin = start.astimezone(self.zone)
        return [*self._day(begin), begin.time(), end.astimezone(self.zone).time()]

    def _where(self, key: LoomKey) -> list[Any]:
        loom = self.mill.looms.get(key)
        return [key.loom, key.hall, loom.machine_type if loom else ""]

    def _day(self, at: datetime) -> list[Any]:
        on: date = at.date()
        return [iso_week(on), self.write.of_a_sheet.weekdays[on.weekday()], on]

    def _does(self, booking: Booking, i: int) -> str:
        """What a turn is: `begin; Fitters 2 goes on`, `take over from Fitters 1, finish`."""
        turns, turn = booking.crews, booking.crews[i]
        before, after = (turns[n].crew if 0 <= n < len(turns) else "" for n in (i - 1, i + 1))
        begins = "begin" if not before else "go-on" if before == turn.crew else "take-over"
        warp = booking.pause is not None and turn.end == booking.pause[0]
        ends = "finish" if turn.end == booking.end else "warp" if warp else "open"
        follows = after if ends != "finish" and after not in ("", turn.crew) else None
        return self.write.say("book-turn", begins=begins, before=before, ends=ends, follows=follows)


def marks_of(booking: Booking, write: Wording) -> str:
    """`firm, pilot`"""
    return ", ".join(
        write.say(code) for code, is_set in (("book-firm", booking.firm), ("book-pilot", booking.pilot)) if is_set
    )


def _choices(booking: Booking) -> str:
    return "; ".join(f"{choice}: {alternative}" for choice, alternative in booking.choices)


def _local(at: datetime | None, zone: ZoneInfo) -> datetime | None:
    return at.astimezone(zone).replace(tzinfo=None) if at else None


def _told_apart(sheets: list[TidySheet]) -> list[TidySheet]:
    """The sheets under names that a workbook can have, each once."""
    named: list[TidySheet] = []
    taken: set[str] = set()
    for sheet in sheets:
        title = plain = _NO_TITLE.sub(" ", sheet.title)[:LONGEST_TITLE].strip()
        n = 1
        while title.casefold() in taken:
            n += 1
            title = f"{plain[: LONGEST_TITLE - len(str(n)) - 1]} {n}"
        taken.add(title.casefold())
        named.append(replace(sheet, title=title))
    return named
