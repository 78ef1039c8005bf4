"""What a foreman, an electrician and the weaving department get from a plan."""

from dataclasses import replace
from datetime import date, time

from export_samples import A2, A10, MILL, PLAN, at

from tracker.domain.plan import CrewTurn, Need
from tracker.export.crew_sheets import crew_sheets

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
    assert (first["Week"], first["Day"], first["From"], first["To"]) == (
        "2027-W01",
        date(2027, 1, 5),
        time(6),
        time(10),
    )
    assert (first["Loom"], first["What"]) == ("A-2", "begin")
    assert first["Needs"] == "2 × electrician 09:00-10:00, hoist 06:00-07:00"
    assert (second["Loom"], second["What"]) == ("A-10", "begin, finish")
    (third,) = records("Crew Fitters 2")
    assert (third["What"], third["Needs"]) == ("take over, finish", "2 × electrician 10:00-11:00")


def test_the_days_of_a_trade_name_the_crew_at_the_loom():
    (only,) = records("Days electrician")
    assert (only["From"], only["To"], only["Heads"], only["Loom"]) == (time(9), time(11), 2, "A-2")
    assert only["Crew at the loom"] == "Fitters 1, Fitters/2"


def test_the_stops_begin_with_the_beam_out():
    stops = records("Stops to come")
    assert [row["Loom"] for row in stops] == ["A-2", "A-10"]
    assert stops[0]["Stops from"].hour == 6 and stops[0]["Stops to"].hour == 14
