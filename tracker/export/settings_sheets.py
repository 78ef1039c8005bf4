"""The settings of the looms as a workbook to hand on: what was found, set and read since, alarms, visits, bobbins, what the
looms taught."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from tracker.domain.tables import Kind
from tracker.export.wording import Wording
from tracker.office.writing.sheets import TidySheet

Rows = Sequence[Sequence[Any]]


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


def settings_sheets(rows: SettingsRows, write: Wording) -> list[TidySheet]:
    col = write.col
    place = [col("heading-loom", Kind.IDENTIFIER), col("heading-hall", Kind.IDENTIFIER)]
    what = [col("heading-setting"), col("heading-side"), col("heading-unit")]
    return [
        write.sheet("book-settings", [
            *place, *what, *(col(code, Kind.ANY) for code in ("col-found", "col-set", "col-now", "heading-target")),
            col("heading-low", Kind.NUMBER), col("heading-high", Kind.NUMBER),
            col("col-left-less-right", Kind.NUMBER, about="hint-left-less-right"), col("col-last-read", Kind.MOMENT),
            col("own-sheet-readings", Kind.INTEGER),
        ], rows.settings, rows.lines, frozen=2),
        write.sheet("book-alarms", [
            *place, *what, col("heading-kind"), col("heading-value", Kind.ANY), col("col-read", Kind.MOMENT),
            col("col-in-words", width=46), col("col-seen", Kind.MOMENT), col("col-by"), col("col-what-was-said", width=30),
        ], rows.alarms, [rows.rate], frozen=2),
        write.sheet("book-visits", [
            *place, col("col-days-after", Kind.INTEGER), col("heading-due", Kind.DATE), col("col-done", Kind.DATE),
            col("col-state"),
        ], rows.visits, frozen=2),
        write.sheet("book-bobbins", [
            *place,
            *(col(code, Kind.NUMBER, unit="m", digits=0)
              for code in ("col-left", "col-right", "col-left-less-right", "col-cloth-to-change")),
        ], rows.bobbins, frozen=2),
        write.sheet("book-taught", [
            *what, col("heading-machine-type", Kind.IDENTIFIER), col("heading-family"),
            col("own-sheet-looms", Kind.INTEGER), *(col(code, Kind.NUMBER, digits=2) for code in ("col-median", "col-spread")),
            *(col(code, Kind.NUMBER) for code in ("col-method-says", "col-proposed")),
        ], rows.taught),
    ]  # fmt: skip
