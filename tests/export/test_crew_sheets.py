"""What a foreman, an electrician and the weaving department get from a plan."""

from dataclasses import replace
from datetime import date, time

from export_samples import A2, A10, MILL, PLAN, at

from tracker.domain.method import Operation
from tracker.domain.plan import CrewTurn, Need
from tracker.domain.windows import Window, WindowKind
from tracker.domain.work import StepLoad, WorkContent
from tracker.export.crew_sheets import crew_sheets
from tracker.office.writing.sheets import add_sheet, new_book

# Vienna is one hour ahead of UTC in January; loom A-2 from Tuesday 5 January 05:00 to 13:00 UTC, A-10 a week later
NAMES = {
    A2: {
        "crews": (CrewTurn("Fitters 1", at(5, 5), at(5, 9)), CrewTurn("Fitters/2", at(5, 9), at(5, 13))),
        "needs": (Need("electrician", "trade", 2, at(5, 8), at(5, 10)), Need("hoist", "tool", 1, at(5, 5), at(5, 6))),
    },
    A10: {"crews": (CrewTurn("Fitters 1", at(12, 5), at(12, 13)),)},
}
NAMED = replace(PLAN, crew_changes=0, bookings=tuple(replace(b, **NAMES[b.key]) for b in PLAN.bookings))


def sheets():
    return {sheet.title: sheet for sheet in crew_sheets(NAMED, MILL, {})}


def records(title):
    sheet = sheets()[title]
    return [dict(zip([column.heading for column in sheet.columns], row, strict=True)) for row in sheet.rows]


def test_a_sheet_a_crew_a_trade_and_the_stops_under_names_a_workbook_can_have():
    assert list(sheets()) == ["Crew Fitters 1", "Crew Fitters 2", "Days electrician", "Stops to come"]
    assert crew_sheets(PLAN, MILL, {}) == []


def test_the_week_of_a_crew_says_when_where_and_with_whom():
    first, second = records("Crew Fitters 1")
    assert [first[heading] for heading in ("Week", "Day", "Date", "From", "To")] == [
        "2027-W01", "Tue", date(2027, 1, 5), time(6), time(10),
    ]  # fmt: skip
    assert (first["Loom"], first["What"], first["Mark"]) == ("A-2", "begin; Fitters/2 goes on", "firm, pilot")
    assert first["Needs"] == "2 × electrician 09:00-10:00; hoist 06:00-07:00"
    assert (second["Loom"], second["What"]) == ("A-10", "begin, finish")
    (third,) = records("Crew Fitters 2")
    assert (third["What"], third["Needs"]) == ("take over from Fitters 1, finish", "2 × electrician 10:00-11:00")


def test_a_week_of_a_crew_begins_a_page():
    # one row in the first week of the year, one in the second; whose page it is stands at its head
    sheet = sheets()["Crew Fitters 1"]
    assert (list(sheet.breaks), sheet.lines[0]) == ([1], "Crew Fitters 1: conversions by week")
    page = add_sheet(new_book(), sheet)
    # two sentences, an empty line, the headings, then the rows: the break lies below row 5
    assert [page_break.id for page_break in page.row_breaks.brk] == [5]
    assert (page.oddHeader.left.text, page.sheet_properties.pageSetUpPr.fitToPage) == ("&A", False)


def test_spans_of_one_trade_stand_together():
    spans = (
        Need("electrician", "trade", 1, at(12, 6), at(12, 7)),
        Need("electrician", "trade", 1, at(12, 8), at(12, 9)),
    )
    bookings = tuple(replace(b, needs=spans) if b.key == A10 else b for b in NAMED.bookings)
    (sheet, *_) = crew_sheets(replace(NAMED, bookings=bookings), MILL, {})
    assert sheet.rows[1][-1] == "electrician 07:00-08:00 and 09:00-10:00"


def test_bench_work_and_what_a_trade_does_come_from_the_work_of_the_loom():
    rows = (
        Operation(5, "Drill the rail", 60, "assistant", 1, place="bench before"),
        Operation(10, "Lift the rail", 30, "fitter", 2),
        Operation(20, "Wire", 30, "Electrician", 2),
        Operation(30, "Test", 15, "electrician", 2),
    )
    work = WorkContent(WindowKind.STYLE, (("rail", "new rail"),), rows, (), (), (), (), 75, 60, 0, {}, {})
    made = {s.title: s for s in crew_sheets(NAMED, MILL, {}, {A2: {WindowKind.STYLE: (work,)}})}
    assert list(made) == ["Crew Fitters 1", "Crew Fitters 2", "Days electrician", "Bench work", "Stops to come"]
    assert made["Days electrician"].rows[0][-1] == "Wire; Test"
    (bench,) = made["Bench work"].rows
    assert bench == [
        "2027-W01", "Tue", date(2027, 1, 5), time(6), "A-2", "Hall 1", "AJ-190", "assistant", "Drill the rail", 1.0,
        "rail: new rail",
    ]  # fmt: skip


def test_what_comes_after_the_restart_and_on_the_bench_afterwards_is_handed_out_too():
    # loom A-2 runs again on Tuesday at 14:00 in Vienna: a quarter of an hour of the crew, then half an hour of quality and of the
    # electrician side by side, which touches the half hours from 14:00 to 15:00; 45 minutes on the bench once it is done
    rows = (
        Operation(10, "Lift the rail", 30, "fitter", 2),
        Operation(50, "Watch at full speed", 15, "fitter", 1, place="after restart"),
        Operation(60, "Judge the selvedge", 30, "quality", 1, place="after restart"),
        Operation(60, "Read the current", 30, "electrician", 1, place="after restart"),
        Operation(70, "Clean the old rail", 45, "assistant", 1, place="bench after"),
    )
    after = (StepLoad(50, 15, {"fitter": 1}, {}), StepLoad(60, 30, {"quality": 1, "electrician": 1}, {}))
    work = WorkContent(
        WindowKind.STYLE,
        (("rail", "new rail"),),
        rows,
        (),
        (),
        (),
        (),
        30,
        0,
        45,
        {},
        {},
        after_steps=after,
        bench_after_min=45,
    )
    made = {s.title: s for s in crew_sheets(NAMED, MILL, {}, {A2: {WindowKind.STYLE: (work,)}})}
    assert list(made)[2:] == ["Days electrician", "Days quality", "Bench work", "Stops to come"]
    assert [row[-1] for row in made["Crew Fitters 1"].rows] == ["", ""]  # Fitters/2 ends it
    assert [row[-1] for row in made["Crew Fitters 2"].rows] == ["Watch at full speed"]
    (judged,) = made["Days quality"].rows
    assert judged == [
        "2027-W01", "Tue", date(2027, 1, 5), time(14), time(15), 1, "A-2", "Hall 1", "AJ-190", "Fitters/2",
        "after the restart: Judge the selvedge",
    ]  # fmt: skip
    assert [(row[3], row[-1]) for row in made["Days electrician"].rows] == [
        (time(9), ""), (time(14), "after the restart: Read the current"),
    ]  # fmt: skip
    assert [column.heading for column in made["Bench work"].columns][3:5] == ["Ready by", "From then on"]
    (bench,) = made["Bench work"].rows
    assert bench[2:6] == [date(2027, 1, 5), None, time(14), "A-2"] and bench[8:11] == [
        "assistant",
        "Clean the old rail",
        0.75,
    ]


def test_the_days_of_a_trade_name_the_crew_at_the_loom():
    (only,) = records("Days electrician")
    assert (only["From"], only["To"], only["Heads"], only["Loom"]) == (time(9), time(11), 2, "A-2")
    assert only["Crew at the loom"] == "Fitters 1, Fitters/2"


def test_the_stops_begin_with_the_beam_out():
    stops = records("Stops to come")
    assert [row["Loom"] for row in stops] == ["A-2", "A-10"]
    assert stops[0]["Stops from"].hour == 6 and stops[0]["Stops to"].hour == 14


def test_a_stop_finds_its_window_though_new_warps_count_from_one_again():
    # booked in window 1 at a beam-out on 12 January 05:00 UTC; by the list of today that is window 3, and an hour later.
    # Windows 1 and 2 are other beam-outs, and a standing one of the same number lies at the very hour
    def window(number, kind, hour, day=12):
        moments = (at(day, hour - 1), at(day, hour), at(day, hour), at(day, hour + 1))
        p10, mean, p50, p90 = moments
        return Window(
            A10, number, kind, at(4, 5), 100.0, 1.0, mean, p10, p50, p90, mean, None, "A", "B", 10.0, 1.0, 5.0, 2.0
        )

    style, still = WindowKind.STYLE, WindowKind.STANDING
    chances = {A10: (window(1, style, 5, 8), window(2, style, 5, 20), window(3, style, 6), window(1, still, 5))}
    stop = next(row for row in crew_sheets(NAMED, MILL, chances)[-1].rows if row[0] == "A-10")
    assert [moment.hour for moment in stop[5:8]] == [6, 7, 8]
    assert (stop[8].hour, stop[-1]) == (6, "B")
