"""Refuses a workbook of which a sheet could not be held even with the gaps between its rows closed."""

from pathlib import Path

from tracker.domain.addresses import cell_name
from tracker.office.refusal import refuse
from tracker.office.walking.extent import MAX_CELLS, MAX_TEXT_CHARS, Extent


def check_extent(path: Path, sheet: str, extent: Extent) -> None:
    if extent.compact_cells > MAX_CELLS:
        corner = cell_name((extent.last_row, extent.last_column))
        refuse(path, "cells-far-apart", sheet=sheet, corner=corner, cells=extent.compact_cells, limit=MAX_CELLS)
    if extent.chars > MAX_TEXT_CHARS:
        refuse(path, "too-much-text", sheet=sheet, chars=extent.chars, limit=MAX_TEXT_CHARS)
