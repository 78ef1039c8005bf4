"""Tables that are no loom lists must not cost more than they say. What is counted are headings tried, not seconds."""

from datetime import date
from pathlib import Path

import pytest
from mill_sheets import delimited, read

from tracker.errors import InputRefused
from tracker.intake.layout import blocks
from tracker.intake.reader import read_files
from tracker.intake.vocabulary import headings


def _refused(path: Path) -> None:
    with pytest.raises(InputRefused, match="no-table-known"):
        read_files([path], {}, {}, date(2026, 11, 25))


def test_a_long_table_is_not_read_on_its_side(tmp_path: Path):
    rows = [["Customer", "Cause", "Lost"], *([f"Firm A{i}", "Reed", i] for i in range(600))]
    headings.match_heading.cache_clear()
    _refused(delimited(tmp_path / "causes.csv", rows))
    # "Reed" and the heading line are looked up; turned, each of the 600 customers would be a heading
    assert headings.match_heading.cache_info().misses < 600


def test_heading_words_in_every_row_are_given_up_soon(tmp_path: Path, monkeypatch):
    tried = []
    before = blocks._blocks_at
    monkeypatch.setattr(blocks, "_blocks_at", lambda *given: tried.append(given[1]) or before(*given))
    _refused(delimited(tmp_path / "log.csv", [["Speed", "Reed", f"remark {i}"] for i in range(600)]))
    assert len(tried) == blocks.MAX_MISSES + 1


def test_cells_that_are_headings_do_not_stop_the_list_above(tmp_path: Path):
    """A list whose remarks are words of headings: every row below is tried in vain, and the list is read."""
    head = ["Loom", "Hall", "Machine type", "Speed (picks/min)", "Part", "State"]
    rows = [[f"A-{i:03d}", "1", "AJ-190", 640, "Reed", "Warp"] for i in range(150)]
    got = read(delimited(tmp_path / "looms.csv", [head, *rows]))
    assert len(got.looms) == 150 and not got.doubts and not got.refused
