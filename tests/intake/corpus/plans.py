"""What a list may be made of: one value on each of the axes, and which values go together."""

from collections.abc import Callable
from dataclasses import dataclass, fields
from typing import NamedTuple

from . import layouts, layouts_several
from .conventions import WIDTHS
from .dirt_in_cells import IN_CELLS
from .dirt_in_rows import IN_ROWS
from .draft import Draft
from .mills import NUMBERINGS
from .more_columns import MORE_COLUMNS
from .words import LANGUAGES


class Layout(NamedTuple):
    lay: Callable[[Draft], None]
    straight: bool = True
    """One row for a loom, one heading: dirt may be put into cells and rows."""
    book: bool = False
    """Merged cells or several sheets: it needs a workbook."""


LAYOUTS = {
    "plain": Layout(layouts.plain),
    "titled": Layout(layouts.titled),
    "indented": Layout(layouts.indented),
    "headings in two lines": Layout(layouts.two_lines, book=True),
    "broken headings": Layout(layouts.broken_headings, book=True),
    "units below the headings": Layout(layouts.units_below),
    "headings again on each page": Layout(layouts.repeated_headings),
    "headings below": Layout(layouts.headings_below, straight=False),
    "sideways": Layout(layouts.sideways, straight=False),
    "lines for halls": Layout(layouts.hall_lines),
    "lines for types": Layout(layouts.type_lines, straight=False),
    "bare lines for types": Layout(layouts.bare_type_lines, straight=False),
    "lines for sides": Layout(layouts.side_lines, straight=False),
    "lines for sides, numbers going on": Layout(layouts.side_lines_counting_on, straight=False),
    "type once": Layout(layouts.type_once, straight=False),
    "hall once": Layout(layouts.hall_once, straight=False),
    "type merged": Layout(layouts.type_merged, straight=False, book=True),
    "two looms to a row": Layout(layouts_several.groups_after_hall, straight=False),
    "two looms to a row, hall and row shared": Layout(layouts_several.groups_after_row, straight=False),
    "three looms to a row, nothing shared": Layout(layouts_several.groups_without_a_shared_column, straight=False),
    "two looms to a row, a blank between": Layout(layouts_several.groups_with_blank_between, straight=False),
    "tables side by side": Layout(layouts_several.tables_with_a_gap, straight=False),
    "a legend beside": Layout(layouts_several.legend_beside, straight=False),
    "a sheet per hall": Layout(layouts_several.sheet_per_hall, straight=False, book=True),
    "a file per hall": Layout(layouts_several.sheet_per_hall, straight=False),
    "attributes on a second sheet": Layout(layouts_several.attributes_on_a_second_sheet, straight=False, book=True),
    "last year's list, too": Layout(layouts_several.last_years_list, straight=False, book=True),
    "last year's list on a hidden sheet": Layout(layouts_several.hidden_list, straight=False, book=True),
    "among other sheets": Layout(layouts_several.among_other_sheets, straight=False, book=True),
}

WORKBOOKS = ("xlsx", "ods")
_CODE_PAGES = {"tr": "cp1254", "zh": "gb18030"}
_OLD_PAGES = {"csv of DOS": ("cp850", "cp857"), "csv of a Mac": ("mac_roman", "mac_turkish")}
_ONE_WORD = {"one word in cp1252": "cp1252", "one word in cp850": "cp850", "one word in Mac Roman": "mac_roman"}
FILES = (*WORKBOOKS, "csv", "csv with a mark", "csv by tabs", "csv by commas", "csv in utf-16", "csv in a code page", *_OLD_PAGES,
         "odd byte", *_ONE_WORD)  # fmt: skip

AXES: dict[str, tuple[str, ...]] = {
    "layout": tuple(LAYOUTS),
    "file": FILES,
    "headings": (
        "in full",
        "shortened",
        "in capitals",
        "on two lines of a cell",
        "in two languages",
        "with a qualifier",
        "with a rare unit",
    ),
    "values": ("typed", "as text"),
    "numbering": ("letter", *(name for name in NUMBERINGS if name != "letter"), "noughts by format"),
    "width": tuple(WIDTHS),
    "efficiency": ("percent", "percent without a word", "fraction", "88 %", "%88", "shown as percent"),
    "speed": ("plain", "unit in the cell", "thousands grouped"),
    "dates": (
        "",
        "typed",
        "day.month.year",
        "day first",
        "month first",
        "order open",
        "month as a word",
        "week",
        "serial number",
    ),
    "year": ("plain", "month and year", "about"),
    "columns": ("", *MORE_COLUMNS),
    "cells": ("", *IN_CELLS),
    "rows": ("", *IN_ROWS),
}
"""Axis → values, the plainest first."""


@dataclass(frozen=True)
class Plan:
    language: str
    layout: str = "plain"
    file: str = "xlsx"
    headings: str = "in full"
    values: str = "typed"
    numbering: str = "letter"
    width: str = "cm in the heading"
    efficiency: str = "percent"
    speed: str = "plain"
    dates: str = ""
    year: str = "plain"
    columns: str = ""
    cells: str = ""
    rows: str = ""

    @property
    def typed(self) -> bool:
        """Are numbers and dates kept as such?"""
        return self.file in WORKBOOKS and self.values == "typed"

    @property
    def needed(self) -> str:
        """A column that the plan cannot do without."""
        if self.year != "plain" or "year" in self.cells or "last year" in self.layout:
            return "year"
        return (
            "notes"
            if self.file == "odd byte" or self.file in _ONE_WORD
            else "frames"
            if "frames" in self.cells
            else "row"
            if "row" in self.layout
            else ""
        )

    @property
    def encoding(self) -> str:
        if self.file in _ONE_WORD:
            return _ONE_WORD[self.file]
        if self.file in _OLD_PAGES:
            return _OLD_PAGES[self.file][self.language == "tr"]
        pages = {
            "csv with a mark": "utf-8-sig",
            "csv in utf-16": "utf-16",
            "csv in a code page": _CODE_PAGES.get(self.language, "cp1252"),
        }
        return pages.get(self.file, "utf-8")

    @property
    def traits(self) -> tuple[str, ...]:
        """`axis: value` wherever the plan is not plain, and the language."""
        said = [f"{f.name}: {value}" for f in fields(self) if (value := getattr(self, f.name)) != f.default]
        return tuple(said)


NUMBERED_ANEW = (
    "a letter for a figure",
    "a range of looms",
    "a number with two dashes",
    "a number with a blank",
    "a number in another case",
)
FOR_NUMBERS = ("tenth", "range of speeds", "inch among", "impossible", "year to come", "unlike", "two times")
TWO_FOR_ONE = ("nominal", "same heading", "shifts", "ninth", "words for")
FROM_CM = ("cm in the heading", "cm without a word")


def fits(plan: Plan) -> bool:
    """Do the values of the plan go together?"""
    layout, book = LAYOUTS[plan.layout], plan.file in WORKBOOKS
    rules = (
        book or not (layout.book or plan.rows == "hidden rows" or plan.values == "as text"),
        not (book and plan.layout == "a file per hall"),
        layout.straight or not (plan.cells or plan.rows),
        plan.file not in _OLD_PAGES or (plan.language not in ("en", "zh") and not plan.cells),
        plan.file not in _ONE_WORD or (plan.language == "en" and not plan.cells and plan.layout != "a file per hall"),
        plan.file != "csv in a code page" or plan.language != "en",
        plan.numbering != "noughts by format" or (plan.file == "xlsx" and plan.typed and not plan.cells),
        "hidden sheet" not in plan.layout or plan.file == "xlsx",
        plan.efficiency != "shown as percent" or (plan.file == "xlsx" and plan.typed),
        plan.typed or not any(word in plan.cells for word in FOR_NUMBERS),
        plan.typed
        or plan.rows not in ("a total", "a total above", "least, most and count", "averages after a blank line"),
        plan.cells not in NUMBERED_ANEW or plan.numbering == "letter",
        plan.headings == "in full" or not any(word in plan.columns for word in TWO_FOR_ONE),
        not any(word in plan.columns for word in TWO_FOR_ONE) or (plan.speed == "plain" and not plan.cells),
        "under one heading" not in plan.columns or (plan.layout == "plain" and book and plan.typed),
        "shifts" not in plan.columns or plan.efficiency == "percent",
        plan.width in FROM_CM or not ("width" in plan.cells or "surveyed" in plan.cells or "widths" in plan.columns),
        plan.dates != "serial number" or not book,
        plan.needed == "notes" or not (plan.file == "odd byte" or plan.file in _ONE_WORD),
        not ("losses of" in plan.columns and "efficiency" in plan.cells),
        plan.speed == "plain" or "speed" not in plan.cells,
        not (plan.columns == "cloth widths" and ("width" in plan.cells or "surveyed" in plan.cells)),
        plan.efficiency not in ("88 %", "%88") or not ("efficiency" in plan.cells or "shifts" in plan.columns),
    )
    return all(rules)


NEEDS = {"dates: serial number": {"file": "csv"}, "layout: a file per hall": {"file": "csv"}}
"""Trait → what must go with it."""

__all__ = ["AXES", "LANGUAGES", "LAYOUTS", "NEEDS", "Plan", "fits"]
