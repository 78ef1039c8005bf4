"""Refuses a workbook of which a sheet could not be held even with the gaps between its rows closed."""

from pathlib import Path

from tracker.domain.addresses import cell_name
from tracker.office.refusal import refuse
from tracker.office.walking.extent import MAX_CELLS, MAX_TEXT_CHARS, Extent


def check_extent(path: Path, sheet: str, extent: Extent) -> None:
    if extent.compact_cells > MAX_CELLS:
        corner = cell_name((extent.last_row, extent.last_column))
        what = f"The filled cells reach to {corner}, {extent.compact_cells:,} cells; the limit is {MAX_CELLS:,}"
        to_do = "Delete what stands far from the lists and save it again."
        refuse(path, "cells-far-apart", what, to_do, sheet=sheet)
    if extent.chars > MAX_TEXT_CHARS:
        what = f"The texts of the cells add up to {extent.chars:,} characters; the limit is {MAX_TEXT_CHARS:,}"
        refuse(path, "too-much-text", what, "Shorten the texts that many cells repeat.", sheet=sheet)
