"""The survey list: framed cells to fill in, drop-downs, and nothing that a load would change by itself."""

import openpyxl
import pytest
from python_calamine import CalamineWorkbook

from tracker.domain.mill import LoomKey
from tracker.domain.survey import SurveyColumn, SurveyList, SurveyRow
from tracker.export.survey import write_survey

SURVEY = SurveyList(
    (
        SurveyColumn("Rail", ("drilled", "undrilled"), "the method asks: undrilled"),
        SurveyColumn("Extra ends", ()),
        SurveyColumn("Creel", ("none, removed", "vertical"), "kind of creel"),
    ),
    (
        SurveyRow(LoomKey("Hall 1", "007"), "AJ-190", "3", None, {"Rail": None, "Extra ends": 4.0, "Creel": "vertical"}, ("Rail",)),
        SurveyRow(LoomKey("Hall 2", "3/12"), "RP-340", None, "2", {"Rail": "drilled", "Extra ends": None}, ("Extra ends", "Creel")),
    ),
)  # fmt: skip


@pytest.fixture(scope="module")
def path(tmp_path_factory):
    target = tmp_path_factory.mktemp("survey") / "s.xlsx"
    write_survey(target, SURVEY, "Hall renewal")
    return target


def test_what_is_known_stands_there(path):
    rows = CalamineWorkbook.from_path(str(path)).get_sheet_by_name("Looms").to_python()
    assert rows[0][0] == "Hall renewal: looms to look at in the hall"
    assert rows[1][0].startswith("2 looms, 3 cells to fill in.")
    assert rows[4] == ["Loom", "Hall", "Row", "Place", "Machine type", "Rail", "Extra ends", "Creel"]
    assert rows[5] == ["007", "Hall 1", "3", "", "AJ-190", "", 4, "vertical"]
    assert rows[6] == ["3/12", "Hall 2", "", "2", "RP-340", "drilled", "", ""]


def test_asked_cells_and_only_they_are_framed(path):
    sheet = openpyxl.load_workbook(path)["Looms"]
    framed = {
        cell.coordinate
        for row in sheet.iter_rows(min_row=6)
        for cell in row
        if cell.border.left and cell.border.left.style == "medium"
    }
    assert framed == {"F6", "G7", "H7"}


def test_drop_downs(path):
    """Rail has one that warns; `none, removed` holds a comma, which a list in the rule cannot, so Creel has a note only."""
    sheet = openpyxl.load_workbook(path)["Looms"]
    (rule,) = sheet.data_validations.dataValidation
    assert rule.formula1 == '"drilled,undrilled"' and rule.errorStyle == "warning" and str(rule.sqref).startswith("F6:")
    assert "One of: none, removed, vertical" in sheet["H5"].comment.text
