"""Files of the settings: the workbook to hand on, and a proposed change of the method that loads."""

from collections.abc import Mapping
from datetime import datetime
from pathlib import Path
from typing import Any

from tracker.commissioning.settings.angles import deviation
from tracker.commissioning.settings.series import Value
from tracker.commissioning.settings.taught import Taught
from tracker.domain.words import fold
from tracker.errors import DataError, Message, message
from tracker.export.settings_sheets import SettingsRows, settings_sheets
from tracker.export.wording import Wording
from tracker.export.workbook import write_export
from tracker.office.writing.sheets import write_tables
from tracker.services.context import Context
from tracker.services.work.settings import SettingsReport
from tracker.services.work.told_settings import alarm_message
from tracker.words import Speaker

SETPOINTS = "setpoints"


def write_settings(path: Path, report: SettingsReport, language: str = "en") -> None:
    """Write the workbook (.xlsx)."""
    write = Wording(language, report.zone)
    write_tables(path, settings_sheets(_rows(report, write.speaker), write))


def _rows(report: SettingsReport, speaker: Speaker) -> SettingsRows:
    apart = report.left_less_right()

    def local(at: datetime) -> datetime:
        return at.astimezone(report.zone).replace(tzinfo=None)

    settings = [
        [o.key.loom, o.key.hall, o.setting, o.side, o.unit, *map(_figure, (o.found, report.set_value(o), o.now)),
         o.limits.target, o.limits.low, o.limits.high, apart.get((o.key, fold(o.setting))), local(o.now.at), len(o.values)]
        for o in report.series
    ]  # fmt: skip
    alarms = [
        [a.series.key.loom, a.series.key.hall, a.series.setting, a.series.side, a.series.unit, speaker.word(a.kind), a.value.value,
         local(a.value.at), speaker.line(alarm_message(a)), *((local(s.at), s.who, s.why) if s else (None, None, None))]
        for a, s in (*((a, None) for a in report.review.alarms), *report.quiet)
    ]  # fmt: skip
    visits = [
        [v.key.loom, v.key.hall, v.after_days, v.due_on, v.done_on, speaker.say(message("visit-state", state=report.state_of(v)))]
        for v in report.visits
    ]  # fmt: skip
    bobbins = [
        [key.loom, key.hall, b.left_m, b.right_m, b.left_more_m, b.cloth_to_change_m()]
        for key, b in report.bobbins.items()
    ]
    taught = [
        [t.setting, t.side, t.unit, t.machine_type, t.family, t.looms, t.median, t.spread, t.target, t.proposed]
        for t in report.taught
    ]
    says = [speaker.line(one) for one in report.messages()[len(report.review.alarms) :]]
    return SettingsRows(says, speaker.say(message("settings-rate")), settings, alarms, visits, bobbins, taught)


def _figure(value: Value | None) -> Any:
    return value and value.value


def write_proposal(context: Context, path: Path, report: SettingsReport) -> list[Message]:
    """Write the sheet Setpoints as it would be with what the looms taught; loading it puts a new version of the method in force.
    Gives a message for each change, and for each that is left to a person because it is not clear which row it means.
    DataError where nothing is proposed that is clear."""
    wanted = [one for one in report.taught if one.proposed is not None]
    with context.reading() as uow:
        rows = [dict(row) for row in uow.rows(SETPOINTS).values()]
    meant = [[i for i, row in enumerate(rows) if _is_meant(row, one)] for one in wanted]
    asked = [{one.proposed for one, of in zip(wanted, meant, strict=True) if i in of} for i in range(len(rows))]
    clear = [len(of) == 1 and len(asked[of[0]]) == 1 for of in meant]
    if not any(clear):
        raise DataError("proposal-none")
    for one, (row, *_) in ((one, of) for one, of, is_clear in zip(wanted, meant, clear, strict=True) if is_clear):
        _shift(rows[row], one)
    write_export(path, {SETPOINTS: rows}, context.language)
    return [_said(one, is_clear) for one, is_clear in zip(wanted, clear, strict=True)]


def _is_meant(row: Mapping[str, Any], one: Taught) -> bool:
    """A row of that setting, side and target that holds for the machine type."""
    same = fold(row["setting"]) == fold(one.setting) and fold(row["side"] or "") in ("", fold(one.side or ""))
    types = next(
        (str(value) for name, value in row.items() if fold(name) == "machine type" and value is not None), None
    )
    holds = types is None or fold(one.machine_type) in [fold(name) for name in types.split(",")]
    return same and row["target"] == one.target and holds


def _shift(row: dict[str, Any], one: Taught) -> None:
    """The target and, as far as it moved, its limits."""
    if one.proposed is None or one.target is None or row["target"] == one.proposed:
        return
    angle = fold(one.unit or "") == "deg"
    by = float(deviation(one.proposed, one.target)) if angle else one.proposed - one.target
    row["target"] = one.proposed
    for name in ("low", "high"):
        if row.get(name) is not None:
            row[name] = round((row[name] + by) % 360 if angle else row[name] + by, 6)


def _said(one: Taught, clear: bool) -> Message:
    return message(
        "proposal-written" if clear else "proposal-unclear", setting=one.setting, side=one.side, unit=one.unit,
        machine_type=one.machine_type, target=one.target, proposed=one.proposed,
    )  # fmt: skip
