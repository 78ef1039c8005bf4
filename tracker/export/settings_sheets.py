"""The settings of the looms as a workbook to hand on: what was found, set and read since, alarms, visits, bobbins, what the
looms taught."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from tracker.domain.tables import Kind
from tracker.office.writing.sheets import Col, TidySheet

Rows = Sequence[Sequence[Any]]
_PLACE = [Col("Loom", Kind.IDENTIFIER), Col("Hall", Kind.IDENTIFIER)]
_WHAT = [Col("Setting"), Col("Side"), Col("Unit")]


@dataclass(frozen=True, slots=True)
class SettingsRows:
    """Rows in the order of the columns below; moments local. `lines` stand above the settings, `rate` above the alarms."""

    lines: Sequence[str]
    rate: str
    settings: Rows
    alarms: Rows
    visits: Rows
    bobbins: Rows
    taught: Rows


def settings_sheets(rows: SettingsRows) -> list[TidySheet]:
    any_value = [Col(name, Kind.ANY) for name in ("Found", "Set", "Now", "Target")]
    return [
        TidySheet("Settings", [
            *_PLACE, *_WHAT, *any_value, Col("Low", Kind.NUMBER), Col("High", Kind.NUMBER),
            Col("Left less right", Kind.NUMBER, about="Angles the shorter way round."), Col("Last read", Kind.MOMENT),
            Col("Readings", Kind.INTEGER),
        ], rows.settings, rows.lines, frozen=2),
        TidySheet("Alarms", [*_PLACE, *_WHAT, Col("Kind"), Col("Value", Kind.ANY), Col("Read", Kind.MOMENT),
                             Col("In words", width=46), Col("Seen", Kind.MOMENT), Col("By"), Col("What was said", width=30)],
                  rows.alarms, [rows.rate], frozen=2),
        TidySheet("Follow-up visits", [*_PLACE, Col("Days after sign-off", Kind.INTEGER), Col("Due", Kind.DATE),
                                       Col("Done", Kind.DATE), Col("State")], rows.visits, frozen=2),
        TidySheet("Metres on bobbins", [*_PLACE, *(Col(f"{name} (m)", Kind.NUMBER, digits=0) for name in (
            "Left", "Right", "Left less right", "Cloth to the next change"))], rows.bobbins, frozen=2),
        TidySheet("What looms taught", [
            Col("Setting"), Col("Side"), Col("Unit"), Col("Machine type", Kind.IDENTIFIER), Col("Family"),
            Col("Looms", Kind.INTEGER), Col("Median", Kind.NUMBER, digits=2), Col("Spread", Kind.NUMBER, digits=2),
            Col("Method says", Kind.NUMBER), Col("Proposed", Kind.NUMBER),
        ], rows.taught),
    ]  # fmt: skip
