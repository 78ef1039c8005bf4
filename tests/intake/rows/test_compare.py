"""What a load would change, worked out by hand: rows added, changed and equal, doubles, references, missing rows."""

from datetime import date, datetime

from tracker.domain.findings import Severity
from tracker.domain.rows import Change, ReadResult, RowCounts, SourceColumn, SourceTable, TypedRow
from tracker.intake.rows.compare import compare, same
from tracker.words.findings import in_words

LOOM = {"loom": "007", "hall": "Hall 1", "machine_type": "AJ-190", "frames": 8}


def source(table, *fields, sheet="S"):
    columns = tuple(SourceColumn(field.title(), f"{'ABCDEFGH'[i]}1", field) for i, field in enumerate(fields))
    return SourceTable("f.xlsx", sheet, table, 1, columns)


def result(table, rows, fields=("loom", "hall", "machine_type", "frames"), kept=None, more=(), more_rows=()):
    typed = [TypedRow(table, row, (kept or {}).get(i, {}), 0, i + 2) for i, row in enumerate(rows)]
    return ReadResult((source(table, *fields), *more), (*typed, *more_rows), ())


def test_added_changed_unchanged_and_missing():
    current = {"looms": {
        ("008", "Hall 1"): {**LOOM, "loom": "008", "Rail": "drilled"}, ("009", "Hall 1"): {**LOOM, "loom": "009", "Rail": "no"},
        ("010", "Hall 1"): {**LOOM, "loom": "010"}}}  # fmt: skip
    rows = [LOOM, {**LOOM, "loom": "008", "frames": 10}, {**LOOM, "loom": "009"}]
    kept = {0: {"Rail": "new", "Cards": None}, 1: {"Rail": "drilled"}, 2: {"Rail": "no"}}
    found = compare(result("looms", rows, kept=kept), current)
    assert found.counts == [RowCounts(added=1, changed=1, unchanged=1)]
    assert found.changes == [
        Change("looms", ("007", "Hall 1"), "", None, {**LOOM, "Rail": "new"}),
        Change("looms", ("008", "Hall 1"), "frames", 8, 10),
    ]
    assert found.places == {("looms", ("007", "Hall 1")): (0, 2), ("looms", ("008", "Hall 1")): (0, 3)}
    assert found.missing == {"looms": [("010", "Hall 1")]}


def test_a_column_that_the_file_lacks_changes_nothing():
    current = {"looms": {("007", "Hall 1"): {**LOOM, "speed_ppm": 600.0, "Rail": "x"}}}
    assert compare(result("looms", [LOOM]), current).changes == []


def test_equal_values():
    assert same(0.1 + 0.2, 0.3) and same(None, "") and same(date(2027, 1, 4), "2027-01-04")
    assert same(frozenset({0, 1}), [1, 0]) and same(8, 8.0)
    assert not same(1, True) and not same("8", 8) and not same(None, 0) and not same("a", "A")


def test_the_same_loom_twice_with_the_same_values_loads_once():
    found = compare(result("looms", [LOOM, dict(LOOM)]), {})
    assert found.counts == [RowCounts(added=1, ignored=1)] and len(found.rows) == 1
    (note,) = found.findings
    assert (note.code, note.severity, note.cell) == ("double-same", Severity.NOTE, "A3:D3")


def test_the_same_loom_twice_with_other_values_loads_neither():
    found = compare(result("looms", [LOOM, {**LOOM, "frames": 12}, {**LOOM, "loom": "008"}]), {})
    assert found.counts == [RowCounts(added=1, refused=2)] and [r.values["loom"] for r in found.rows] == ["008"]
    assert [(f.code, f.cell) for f in found.findings] == [("double-differs", "A2:D2"), ("double-differs", "A3:D3")]
    assert (
        "007 Hall 1 stands again in A3:D3 with other values: Frames 8 here, 12 there"
        in in_words(found.findings[0]).message
    )


def test_a_loom_number_may_start_again_in_each_hall():
    assert compare(result("looms", [LOOM, {**LOOM, "hall": "Hall 2"}]), {}).counts == [RowCounts(added=2)]


def test_a_list_without_halls_meets_the_hall_that_is_stored():
    stored = {"looms": {("007", "Hall 1"): dict(LOOM), ("009", "H 1"): {}, ("009", "H 2"): {}}}
    found = compare(
        result("looms", [{**LOOM, "hall": ""}, {**LOOM, "hall": "HALL 1 "}, {**LOOM, "loom": "009", "hall": ""}]),
        stored,
    )
    assert [row.values["hall"] for row in found.rows] == ["Hall 1", ""]
    assert [f.code for f in found.findings] == ["double-same"]


def warp(loom, hall, **more):
    return {"loom": loom, "hall": hall, "sequence": 0, "article": "A1", **more}


def warps(*rows, looms=()):
    more = (source("looms", "loom", "hall", sheet="L"),)
    loom_rows = [TypedRow("looms", {**LOOM, "loom": n, "hall": h}, {}, 1, i) for i, (n, h) in enumerate(looms, 2)]
    return result("warps", rows, ("loom", "hall", "sequence", "article"), more=more, more_rows=loom_rows)


def test_references_find_their_hall_in_the_load_or_the_database():
    read = warps(warp("007", None), warp("008", None), warp("008", "hall 2"), looms=[("007", "Hall 1")])
    found = compare(read, {"looms": {("008", "Hall 2"): {}}})
    assert [row.values["hall"] for row in found.rows if row.table == "warps"] == ["Hall 1", "Hall 2"]
    assert found.counts[0] == RowCounts(added=2, ignored=1)


def test_references_that_lead_nowhere_are_refused():
    read = warps(
        warp("07", None), warp("007", None), warp("007", "Hall 3"), looms=[("007", "Hall 1"), ("007", "Hall 2")]
    )
    found = compare(read, {})
    assert found.counts[0] == RowCounts(refused=3)
    assert [(f.code, f.cell, f.message) for f in map(in_words, found.findings)] == [
        ("unknown-loom", "A2", "Loom 07 is not in the loom list; the nearest is 007."),
        ("ambiguous-hall", "A3", "Loom 007 stands in Hall 1, Hall 2; which hall is not said."),
        ("unknown-loom", "A4", "Loom 007 stands in Hall 1, Hall 2, not in Hall 3."),
    ]
    assert [in_words(f).hint for f in found.findings] == [
        "Correct the number, or load the loom list with it.",
        "Write the hall beside it.",
        "Write the hall as the loom list does; a number of one hall only needs none.",
    ]


def test_method_rows_compare_in_order():
    """A step is put in between: one row added, none changed; conditions count, empty ones do not."""
    step = {"step": 10, "operation": "lift", "minutes": 5.0, "trade": "fitter", "heads": 1}
    stored = {"operations": {(1,): {**step, "tool": None, "Rail": "drilled"}, (2,): {**step, "step": 30}}}
    rows = [step, {**step, "step": 20}, {**step, "step": 30}]
    fields = ("step", "operation", "minutes", "trade", "heads")
    found = compare(result("operations", rows, fields, {0: {"Rail": "drilled"}, 2: {"Rail": None}}), stored)
    assert found.method_changed and found.counts == [RowCounts(added=1, unchanged=2)]
    same_rows = [rows[0], rows[2]]
    found = compare(result("operations", same_rows, fields, {0: {"Rail": "drilled"}}), stored)
    assert not found.method_changed and found.counts == [RowCounts(unchanged=2)] and found.changes == []


def test_moments_and_days_compare_with_what_the_database_gives():
    values = warp("007", "Hall 1", read_at=datetime(2027, 1, 4, 6), ready_on=date(2027, 1, 18))
    read = warps(values, looms=[("007", "Hall 1")])
    stored = {"warps": {("007", "Hall 1", 0): {**values, "ready_on": "2027-01-18"}}}
    assert compare(read, stored).counts[0] == RowCounts(unchanged=1)


def test_a_method_sheet_with_headings_only_takes_nothing_away():
    stored = {"operations": {(1,): {"step": 10, "operation": "lift"}}}
    found = compare(result("operations", [], ("step", "operation")), stored)
    assert found.method == {} and not found.method_changed and [f.code for f in found.findings] == ["empty-table"]


def test_a_new_loom_that_looks_like_a_stored_one_of_its_hall_is_noted():
    current = {"looms": {("003", "Hall 1"): {**LOOM, "loom": "003"}, ("A-1", "Hall 1"): {**LOOM, "loom": "A-1"}}}
    # O for 0 and l for 1; 0O3 of another hall and 004 look like no loom of theirs
    numbers = [("O03", "Hall 1"), ("A-l", "Hall 1"), ("O03", "Hall 2"), ("004", "Hall 1"), ("003", "Hall 1")]
    rows = [{**LOOM, "loom": loom, "hall": hall} for loom, hall in numbers]
    found = compare(result("looms", rows), current)
    assert [(f.code, f.severity, f.cell) for f in found.findings] == [
        ("looks-like-known-loom", Severity.NOTE, "A2"),
        ("looks-like-known-loom", Severity.NOTE, "A3"),
    ]
    assert "'O03' is new, and differs from 003 (Hall 1) of the database" in in_words(found.findings[0]).message


def test_figures_that_look_like_a_stored_letter_are_noted_too():
    found = compare(result("looms", [{**LOOM, "loom": "003"}]), {"looms": {("O03", "Hall 1"): {**LOOM, "loom": "O03"}}})
    assert "'003' is new, and differs from O03 (Hall 1)" in in_words(found.findings[0]).message
