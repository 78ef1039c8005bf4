"""The plan workbook holds what the plan says, in local time, with its proof."""

from datetime import datetime

import pytest
from export_samples import MILL, NEEDS, PLAN
from python_calamine import CalamineWorkbook

from tracker.domain.plan import Plan, PlanStatus
from tracker.errors import as_it_stands
from tracker.export.plan_workbook import BesideThePlan, write_plan


@pytest.fixture(scope="module")
def sheets(tmp_path_factory):
    path = tmp_path_factory.mktemp("plan") / "plan.xlsx"
    write_plan(path, PLAN, MILL, BesideThePlan(NEEDS))
    book = CalamineWorkbook.from_path(str(path))
    return {name: book.get_sheet_by_name(name).to_python() for name in book.sheet_names}


def table(rows):
    """Records of the first table of a sheet: the heading row is the first with more than one filled cell."""
    start = next(i for i, row in enumerate(rows) if sum(cell != "" for cell in row) > 1)
    return [dict(zip(rows[start], row, strict=True)) for row in rows[start + 1 :]]


def test_sheets_in_order(sheets):
    assert list(sheets) == [
        "Plan", "Bookings", "Kit needs", "Net needs", "Booked hours by type", "Costs", "Left over", "Other dates",
        "Prices of scarcity",
    ]  # fmt: skip


def test_the_proof(sheets):
    """Gap (6960 − 6956.52) / 6960 = 0.05 %."""
    figures = {row["What"]: (row["Value"], row["Unit"]) for row in table(sheets["Plan"])}
    assert figures["Status"][0] == "proven optimal within tolerance"
    assert figures["Cost of the plan (objective)"] == (6960, "EUR")
    assert figures["No plan can cost less than (bound)"] == (6956.52, "EUR")
    assert figures["Gap between the two"] == (pytest.approx(0.05), "%")
    assert figures["Looms booked"] == (2, "looms") and figures["Looms left over"] == (1, "looms")
    assert figures["Labour"] == (14, "person-hours") and figures["Parts"] == (1240, "EUR")
    sentences = [row[0] for row in sheets["Plan"]]
    assert "Hall renewal: plan as of Mon 4 Jan 2027 06:00" in sentences
    assert "Loom 007 was dropped: no warp is listed." in sentences


def test_bookings_by_start_in_local_time(sheets):
    """Vienna is one hour ahead of UTC in January: 05:00 UTC is 06:00. Each costs 100 + 10 + 200 + 620 + 50 = 980."""
    first, second, total = table(sheets["Bookings"])
    assert (first["Loom"], first["Hall"], first["Machine type"]) == ("A-2", "Hall 1", "AJ-190")
    assert first["Start"] == datetime(2027, 1, 5, 6) and first["End"] == datetime(2027, 1, 5, 14)
    assert first["Mark"] == "firm, pilot" and second["Mark"] == "" and first["Week"] == "2027-W01"
    assert first["Choices"] == "rail: new rail" and first["Working time (h)"] == 5
    assert first["Total cost (EUR)"] == 980 and second["Loom"] == "A-10"
    assert total["Loom"] == "Total" and total["Total cost (EUR)"] == 1960 and total["Labour (person-hours)"] == 14


def test_kit_needs_by_week(sheets):
    cable, rail = table(sheets["Kit needs"])
    assert (cable["Part"], cable["2027-W01"], cable["2027-W02"], cable["All weeks"]) == ("CABLE-5", 12.5, "", 12.5)
    assert (rail["Part"], rail["2027-W01"], rail["2027-W02"], rail["All weeks"]) == ("RAIL-190", 2, 2, 4)


def test_net_needs_say_late_in_words(sheets):
    """The fifth row of needs moves nothing and is left out."""
    rows = table(sheets["Net needs"])
    assert [(row["Part"], row["Week"]) for row in rows] == [
        ("CABLE-5", "2027-W01"), ("RAIL-190", "2027-W01"), ("RAIL-190", "2027-W02"), ("RAIL-190", "2027-W09"),
    ]  # fmt: skip
    assert rows[3]["Late"] == "late by 5 days" and rows[3]["Looms touched"] == "007 (Hall 2) by 3 days"
    assert rows[0]["Late"] == ""


def test_hours_by_machine_type(sheets):
    """AJ-190: 8 h for the first (5 January) and 6 h for the last; RP-340 has only a left-over loom."""
    aj, rp, total = table(sheets["Booked hours by type"])
    assert (aj["Looms booked"], aj["Labour (person-hours)"], aj["Labour per loom (person-hours)"]) == (2, 14, 7)
    assert aj["Labour of the first loom (person-hours)"] == 8 and aj["Labour of the last loom (person-hours)"] == 6
    assert (rp["Looms booked"], rp["Looms left over"], rp["Labour per loom (person-hours)"]) == (0, 1, "")
    assert total["Looms booked"] == 2 and total["Looms left over"] == 1


def test_left_over_with_reason_as_text(sheets):
    (row,) = table(sheets["Left over"])
    assert row["Loom"] == "007" and row["Why it is left over"] == "=no window: its warp runs past the horizon"
    assert row["Cost of leaving it over (EUR)"] == 5000


def test_costs_by_term(sheets):
    """In natural order of the looms: A-2 before A-10."""
    rows = table(sheets["Costs"])
    assert [row["Loom"] for row in rows] == ["A-2", "A-10", "Total"]
    assert [rows[0][f"{term} (EUR)"] for term in ("Lost production", "Late beam-outs", "Labour cost")] == [100, 10, 200]
    assert rows[2]["Parts (EUR)"] == 1240 and rows[2]["Saving foregone (EUR)"] == 100 and rows[2]["Moves (EUR)"] == 0


def test_other_dates_and_prices(sheets):
    (other,) = table(sheets["Other dates"])
    assert other["Other start"] == datetime(2027, 1, 8, 6) and other["Dearer than the booking by (EUR)"] == 75
    assert [row["What is scarce"] for row in table(sheets["Prices of scarcity"])] == ["fitter-hour", "RAIL-190"]


def test_an_infeasible_plan_is_written_with_its_reasons(tmp_path):
    plan = Plan(
        PlanStatus.INFEASIBLE,
        0,
        0,
        1,
        "EUR",
        PLAN.as_of,
        PLAN.horizon_end,
        reasons=(as_it_stands("No crew works in Hall 1."),),
    )
    write_plan(tmp_path / "p.xlsx", plan, MILL)
    book = CalamineWorkbook.from_path(str(tmp_path / "p.xlsx"))
    assert book.sheet_names == ["Plan", "Left over"]
    assert ["No crew works in Hall 1."] in [row[:1] for row in book.get_sheet_by_name("Plan").to_python()]
