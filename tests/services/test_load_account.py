"""The account of a load: rows that are refused or found twice after the reading move, and the numbers still add up."""

from datetime import date

from opened import here
from said import texts

from tracker.services.loading.load import LoadRequest, load

HEAD = "Loom;Hall;Machine type;Speed (picks/min);Rail"


def loaded(tmp_path, *rows, before=None, **more):
    path = tmp_path / "a.csv"
    path.write_text("\n".join([HEAD, *rows]), encoding="utf-8")
    return load(here(str(tmp_path / "a.db")), [path], LoadRequest(today=date(2026, 11, 25), **more), before=before)


def test_a_row_twice_and_a_row_that_contradicts_another_leave_what_was_taken(tmp_path):
    """3 rows of 5 cells are taken in part: A-1 once (4 and 1 own), its copy set aside, A-2 with two speeds refused (10)."""
    report = loaded(tmp_path, "A-1;1;T;600;x", "A-1;1;T;600;x", "A-2;1;T;600;x", "A-2;1;T;610;x", dry_run=True)
    (account,) = report.account
    assert account.record() == {
        "file": "a.csv", "sheet": "a", "cells": 25, "heading": 5, "taken": 4, "own": 1, "refused": 10,
        "aside": [{"reason": "same again", "cells": 5, "where": "A3:E3"}],
    }  # fmt: skip
    assert report.record()["account"] == [account.record()]


def test_the_mapping_is_shown_before_anything_is_written(tmp_path):
    seen = []

    def look(report):
        seen.append(texts(report.mapping()))

    report = loaded(tmp_path, "A-1;1;T;600;x", before=look)
    assert report.written and seen[0] == (
        "a.csv a: Looms",
        "  A1 Loom: Loom",
        "  B1 Hall: Hall",
        "  C1 Machine type: Machine type",
        "  D1 Speed (picks/min): Speed, in picks/min",
        "  E1 Rail: kept under its own heading",
        "a.csv a: 10 cells: 5 in headings, 4 taken, 1 under own headings, 0 refused, 0 set aside.",
    )


def test_what_is_shown_before_goes_on_nothing_where_the_load_is_refused(tmp_path):
    seen = []
    assert loaded(tmp_path, ";1;T;600;x", before=seen.append).refusal and not seen
