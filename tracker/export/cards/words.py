"""The fixed words of a card in one language, and the mill's own values as that language writes them."""

from datetime import date, datetime
from zoneinfo import ZoneInfo

from tracker.domain.method import Check, Setpoint
from tracker.domain.windows import WindowKind
from tracker.domain.words import fold
from tracker.errors import Message
from tracker.words import Speaker
from tracker.words.values import clock, day, exact, moment, weekday

_KINDS = {
    WindowKind.REPEAT: "card-window-repeat", WindowKind.STYLE: "card-window-style",
    WindowKind.STANDING: "card-window-standing", WindowKind.MID_WARP: "card-window-mid-warp",
}  # fmt: skip
_SIDES = {"left": "card-left", "right": "card-right"}


class CardWords:
    """`words("card-loom")` gives the word for a loom. Moments are written in the mill's zone."""

    def __init__(self, language: str, zone: ZoneInfo):
        self.language, self.zone = language, zone
        self._speaker = Speaker(language, zone)

    def __call__(self, code: str, **params: object) -> str:
        return self._speaker.say(Message(code, params))

    def kind(self, kind: WindowKind) -> str:
        return self(_KINDS[kind])

    def side(self, side: str | None) -> str:
        """Left and right in the language; another word of the mill's as it is."""
        return self(_SIDES[fold(side)]) if fold(side or "") in _SIDES else side or ""

    def moment(self, at: datetime | None) -> str:
        """`Mon 4 Jan 2027 06:00`; says that it is not known where it is not."""
        return moment(at, self.zone, self.language) if at else self("card-unknown")

    def span(self, start: datetime, end: datetime) -> str:
        """`Mon 4 Jan 2027 06:00–14:30`, the second day where it is another."""
        first, last = start.astimezone(self.zone), end.astimezone(self.zone)
        same = first.date() == last.date()
        return f"{self.moment(start)}–{clock(last.time(), self.language) if same else ' ' + self.moment(end)}"

    def hours(self, start: datetime, end: datetime, begun: datetime) -> str:
        """`06:00–14:30`; `Tue 06:00–06:30` on another day than that on which all of it began; with the days where they differ."""
        first, last, day_one = (at.astimezone(self.zone).date() for at in (start, end, begun))
        if first != last:
            return self.span(start, end)
        return (
            self._hours(start, end)
            if first == day_one
            else f"{weekday(first, self.language)} {self._hours(start, end)}"
        )

    def _hours(self, start: datetime, end: datetime) -> str:
        first, last = (at.astimezone(self.zone) for at in (start, end))
        return f"{clock(first.time(), self.language)}–{clock(last.time(), self.language)}"

    def value(self, value: object) -> str:
        match value:
            case None:
                return ""
            case bool():
                return self("card-yes" if value else "card-no")
            case int() | float():
                return exact(float(value), self.language)
            case datetime():
                return moment(value, None, self.language)
            case date():
                return day(value, self.language)
        return str(value)

    def quantity(self, value: float, unit: str) -> str:
        return f"{self.value(value)} {unit}".rstrip()

    def limits(self, row: Setpoint | Check) -> str:
        """`305 – 315`, `≥ 8`, `≤ 0.1`; empty where there are none."""
        low, high = (self.value(limit) for limit in (row.low, row.high))
        if low and high:
            return f"{low}\u00a0–\u00a0{high}"
        return f"≥ {low}" if low else f"≤ {high}" if high else ""

    def target(self, row: Setpoint | None) -> str:
        """`310 (305 – 315)`."""
        if row is None:
            return ""
        limits = self.limits(row)
        return f"{self.value(row.target)} ({limits})" if limits else self.value(row.target)
