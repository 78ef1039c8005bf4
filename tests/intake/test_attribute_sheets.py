"""A second sheet that names each loom once adds its columns to the list; a report or a log beside it does not."""

from pathlib import Path

from mill_sheets import read, workbook

LIST = [["Loom", "Hall", "Machine type", "Reed width (cm)", "Speed (rpm)"]]
LIST += [[f"{n:03d}", f"Hall {h}", "AJ-190", 190, 600 + n] for h in (1, 2) for n in (1, 2, 3)]


def kept(got):
    return {(row.values["hall"], row.values["loom"]): dict(row.kept) for row in got.rows("looms")}


def two_sheets(tmp_path: Path, second):
    return read(workbook(tmp_path / "a.xlsx", {"List": LIST, "More": second}))


def test_each_loom_gets_its_own_in_whatever_order(tmp_path):
    one_hall = [row for row in LIST if row[1] != "Hall 2"]
    more = [["Loom", "Rail", "Year built"], [3, "drilled", 2001], ["001", "undrilled", 1999]]
    got = read(workbook(tmp_path / "a.xlsx", {"List": one_hall, "More": more}))
    assert [(row.values.get("year"), dict(row.kept)) for row in got.rows("looms")] == [
        (1999, {"Rail": "undrilled"}), (None, {}), (2001, {"Rail": "drilled"})]  # fmt: skip
    assert got.findings(code="joined-table") and not got.refused and not got.doubts


def test_a_number_of_two_halls_needs_its_hall(tmp_path):
    got = two_sheets(tmp_path, [["Loom", "Rail"], ["001", "drilled"], ["002", "undrilled"]])
    assert [f.code for f in got.refused] == ["ambiguous-hall"] * 2
    got = two_sheets(tmp_path, [["Loom", "Hall", "Rail"], ["001", "Hall 1", "drilled"], ["001", "Hall 2", "undrilled"]])
    assert kept(got)["Hall 1", "001"] == {"Rail": "drilled"} and kept(got)["Hall 2", "001"] == {"Rail": "undrilled"}
    assert not got.refused


def test_what_contradicts_the_list_or_fits_no_loom_is_refused(tmp_path):
    listed = [[*row, "Rail" if i == 0 else "drilled"] for i, row in enumerate(LIST[:4])]
    more = [["Loom", "Rail", "Creel"], ["001", "undrilled", "x"], ["002", "drilled", "y"], ["003", "drilled", "z"],
            *([f"00{n}", "drilled", "w"] for n in (1,)), ["009", "drilled", "v"]]  # fmt: skip
    got = read(workbook(tmp_path / "a.xlsx", {"List": listed, "More": more[:4]}))
    assert [(f.code, f.sheet, f.cell) for f in got.refused] == [("double-differs", "More", "A2:C2")]
    assert kept(got)["Hall 1", "002"] == {"Rail": "drilled", "Creel": "y"}
    six = [["Loom", "Hall", "Creel"], *([row[0], row[1], "x"] for row in LIST[1:]), ["009", "Hall 1", "y"]]
    got = two_sheets(tmp_path, six)
    assert [(f.code, f.cell) for f in got.refused] == [("unknown-loom", "A8:C8")]


def test_a_report_of_the_day_and_a_log_are_passed_over(tmp_path):
    one_hall = [row for row in LIST if row[1] != "Hall 2"]
    report = [["Loom", "Speed", "Efficiency %", "Stops"], *([row[0], 500, 80, 7] for row in one_hall[1:])]
    log = [["Loom", "Work", "Hours"], *([number, "oil", 2] for number in ("001", "002", "001", "003"))]
    got = read(workbook(tmp_path / "a.xlsx", {"List": one_hall, "Report": report, "Log": log}))
    assert {f.sheet: f.code for f in got.findings()} == {"Report": "no-table", "Log": "no-table"}
    assert [loom["speed_ppm"] for loom in got.looms] == [601.0, 602.0, 603.0] and set(map(str, kept(got).values())) == {
        "{}"
    }
