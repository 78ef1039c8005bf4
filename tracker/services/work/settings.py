"""The settings of the looms over time: what stands where, what is odd, which visits are due, what the bobbins hold."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.commissioning.settings.alarms import Alarm, Review, review
from tracker.commissioning.settings.angles import deviation
from tracker.commissioning.settings.bobbins import Bobbins, metres_left
from tracker.commissioning.settings.quiet import QuietAlarm, apart
from tracker.commissioning.settings.series import Occasion, Series, Value
from tracker.commissioning.settings.taught import Taught, taught
from tracker.commissioning.settings.visits import Visit, visits
from tracker.domain.mill import LoomKey
from tracker.domain.progress import Stage
from tracker.domain.terms import Terms
from tracker.domain.words import fold
from tracker.errors import DataError, Message, message
from tracker.services.context import Context
from tracker.services.looms import find_loom
from tracker.services.work.set_series import read_series
from tracker.services.work.told_settings import alarm_message, quiet_message
from tracker.store import UnitOfWork
from tracker.words import Speaker


@dataclass(frozen=True, slots=True)
class SettingsReport:
    """As of a moment; of one loom where one was asked for. Alarms are those of a review of all looms."""

    as_of: datetime
    zone: ZoneInfo
    method_version: int
    series: tuple[Series, ...]
    review: Review
    """Its alarms are those that nobody has seen as they stand now."""
    quiet: tuple[QuietAlarm, ...]
    signed_off: Mapping[LoomKey, datetime]
    visits: tuple[Visit, ...]
    bobbins: Mapping[LoomKey, Bobbins]
    """By the last weighing of each side."""
    taught: tuple[Taught, ...]

    @property
    def today(self) -> date:
        return self.as_of.astimezone(self.zone).date()

    @property
    def overdue(self) -> tuple[Visit, ...]:
        return tuple(visit for visit in self.visits if visit.is_overdue(self.today))

    def state_of(self, visit: Visit) -> str:
        """`done`, `overdue`, `due` or `to come`."""
        if visit.done_on:
            return "done"
        return "overdue" if visit.is_overdue(self.today) else "due" if visit.is_due(self.today) else "to come"

    def set_value(self, one: Series) -> Value | None:
        """The last value set up to sign-off; of a loom not signed off the last one set."""
        return one.set_at(self.signed_off.get(one.key))

    def left_less_right(self) -> dict[tuple[LoomKey, str], float]:
        """Loom and folded setting → last value on the left less that on the right, angles the shorter way round."""
        sides: dict[tuple[LoomKey, str], dict[str, Series]] = defaultdict(dict)
        for one in self.series:
            if not isinstance(one.now.value, str):
                sides[one.key, fold(one.setting)][fold(one.side or "")] = one
        return {
            place: _apart(found["left"], found["right"])
            for place, found in sides.items()
            if {"left", "right"} <= set(found)
        }

    def messages(self) -> list[Message]:
        """What a person should know beside the tables."""
        if not self.series:
            return [message("settings-none")]
        found = [alarm_message(alarm) for alarm in self.review.alarms]
        looms = len({one.key for one in self.series})
        summary = message("settings-read", series=len(self.series), looms=looms, alarms=len(found), at=self.as_of)
        proposed = [proposal_message(one) for one in self.taught if one.proposed is not None]
        blunt = {fold(one.setting): one.setting for one in self.series if _is_read_blindly(one)}
        without = [message("settings-without-repeatability", settings=sorted(blunt.values()))] if blunt else []
        quiet = [message("alarms-quiet", alarms=len(self.quiet))] if self.quiet else []
        return [*found, *proposed, summary, *quiet, message("settings-rate"), *without]

    def quiet_messages(self) -> list[Message]:
        """The alarms that were seen, with what was said to them."""
        return [quiet_message(one) for one in self.quiet]

    def visit_messages(self) -> list[Message]:
        """Where no visit can be due, why."""
        return [] if self.visits else [message("visits-none")]

    def record(self) -> dict[str, Any]:
        """As `--json` writes it; moments in the mill's zone with their offset."""
        speaker, apart = Speaker(zone=self.zone), self.left_less_right()
        return {
            "as_of": self._local(self.as_of),
            "method_version": self.method_version,
            "series": [self._series_record(one, apart) for one in self.series],
            "alarms": [
                self._alarm_record(a, speaker) | {"seen": None} for a in self.review.alarms
            ] + [
                self._alarm_record(a, speaker) | {"seen": {"at": self._local(s.at), "who": s.who, "why": s.why}}
                for a, s in self.quiet
            ],
            "rate": self.review.rate,
            "reviewed": self.review.series,
            "visits": [
                {"hall": v.key.hall, "loom": v.key.loom, "after_days": v.after_days, "due_on": v.due_on.isoformat(),
                 "done_on": v.done_on.isoformat() if v.done_on else None, "overdue": v.is_overdue(self.today)}
                for v in self.visits
            ],
            "bobbins": [
                {"hall": key.hall, "loom": key.loom, "left_m": one.left_m, "right_m": one.right_m,
                 "left_more_m": one.left_more_m, "cloth_to_change_m": one.cloth_to_change_m()}
                for key, one in self.bobbins.items()
            ],
            "taught": [{field: getattr(one, field) for field in Taught.__slots__} for one in self.taught],
        }  # fmt: skip

    def _alarm_record(self, alarm: Alarm, speaker: Speaker) -> dict[str, Any]:
        return {
            "kind": alarm.kind.value, **_place(alarm.series), "value": alarm.value.value, "at": self._local(alarm.value.at),
            "chance": alarm.chance, "figures": alarm.figures, "says": speaker.line(alarm_message(alarm)),
        }  # fmt: skip

    def _series_record(self, one: Series, apart: Mapping[tuple[LoomKey, str], float]) -> dict[str, Any]:
        return {
            **_place(one), "unit": one.unit, "found": self._value(one.found), "set": self._value(self.set_value(one)),
            "now": self._value(one.now), "target": one.limits.target, "low": one.limits.low, "high": one.limits.high,
            "left_less_right": apart.get((one.key, fold(one.setting))), "readings": len(one.values),
        }  # fmt: skip

    def _value(self, value: Value | None) -> dict[str, Any] | None:
        return value and {"value": value.value, "at": self._local(value.at), "why": value.why.value}

    def _local(self, at: datetime) -> str:
        return at.astimezone(self.zone).isoformat(timespec="minutes")


def _place(one: Series) -> dict[str, Any]:
    return {"hall": one.key.hall, "loom": one.key.loom, "setting": one.setting, "side": one.side}


def _is_read_blindly(one: Series) -> bool:
    """A number of which nobody has said how finely it can be read."""
    return one.repeatability is None and not isinstance(one.now.value, str)


def _apart(left: Series, right: Series) -> float:
    a, b = float(left.now.value), float(right.now.value)
    return float(deviation(a, b)) if left.is_angle else a - b


def proposal_message(one: Taught) -> Message:
    """What looms were set to beside the setpoint."""
    return message(
        "setting-taught", setting=one.setting, side=one.side, machine_type=one.machine_type, family=one.family,
        looms=one.looms, proposed=one.proposed, target=one.target, unit=one.unit,
    )  # fmt: skip


def settings(
    context: Context, loom: str | None = None, hall: str | None = None, as_of: datetime | None = None
) -> SettingsReport:
    """The settings up to `as_of` (default now). DataError where there is no such loom or the term `visits` cannot be read."""
    at = as_of or context.now()
    with context.reading() as uow:
        mill = uow.mill()
        series = read_series(uow, mill, at)
        signed_off = {key: c.at for key, c in uow.stages().items() if c.stage is Stage.SIGNED_OFF and c.at <= at}
        bobbins = _bobbins(uow, mill.terms, at)
        seen = [one for one in uow.seen_alarms() if one.at <= at]
    wanted = set(mill.looms) if loom is None else {find_loom(mill, loom, hall)}
    whole = review(series)
    mine = replace(whole, alarms=tuple(a for a in whole.alarms if a.series.key in wanted))
    loud, quiet = apart(mine, seen)
    due = visits(signed_off, _visited(series), mill.terms.zone, visit_days(mill.terms))
    return SettingsReport(
        at, mill.terms.zone, mill.method.version, tuple(one for one in series if one.key in wanted), loud, quiet, signed_off,
        tuple(visit for visit in due if visit.key in wanted),
        {key: one for key, one in bobbins.items() if key in wanted},
        tuple(taught(series, signed_off)),
    )  # fmt: skip


def visit_days(terms: Terms) -> tuple[int, ...]:
    """The days after sign-off of the term `visits`; DataError where it is no list of whole days above 0."""
    days = [text.strip() for text in terms.visits_days.split(",")]
    if not all(text.isdecimal() and int(text) > 0 for text in days):
        raise DataError("visits-unreadable", text=terms.visits_days)
    return tuple(sorted({int(text) for text in days}))


def _visited(series: Sequence[Series]) -> dict[LoomKey, set[datetime]]:
    found: dict[LoomKey, set[datetime]] = defaultdict(set)
    for one in series:
        found[one.key] |= {value.at for value in one.values if value.why is Occasion.VISIT}
    return found


def _bobbins(uow: UnitOfWork, terms: Terms, until: datetime) -> dict[LoomKey, Bobbins]:
    """By loom in natural order; a bobbin whose tex nobody has said is left out."""
    rows = [row for row in uow.rows("bobbins").values() if row["at"].replace(tzinfo=terms.zone) <= until]
    metres: dict[LoomKey, dict[str, float]] = defaultdict(dict)
    for row in sorted(rows, key=lambda row: row["at"]):
        if tex := row["tex"] or terms.leno_yarn_tex:
            metres[LoomKey(row["hall"], row["loom"])][row["side"]] = metres_left(row["grams_left"], tex)
    ordered = sorted(metres.items(), key=lambda entry: entry[0].sort_key)
    return {key: Bobbins(of.get("left"), of.get("right")) for key, of in ordered}
