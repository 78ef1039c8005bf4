"""An untouched export loads as nothing new: what is written is what a reader understands, value by value."""

from datetime import date, datetime, time, timedelta
from pathlib import Path
from typing import Any

import openpyxl
import pytest
from export_samples import ORDERS
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from tracker.domain.findings import Severity
from tracker.domain.mill import LoomKey
from tracker.domain.survey import SurveyColumn, SurveyList, SurveyRow
from tracker.domain.tables import TABLES, Column, Kind, Table
from tracker.export.orders import OrdersOf, write_supplier_orders
from tracker.export.survey import write_survey
from tracker.export.workbook import write_export, write_template
from tracker.intake.reader import read_files
from tracker.words.choosing import SPOKEN
from tracker.words.findings import in_words

TODAY = date(2027, 1, 4)
WORDS = ["007", "3/12", "H2R4-15", "=1+1", "-cmd", "+4 x", "@x", "\tx", "1e5", "TRUE", "12.3.24", "织机 7", "şerit", "a_x000D_b",
         "no. 5; left", 'say "so"']  # fmt: skip


def read(path: Path) -> list[tuple[str, dict[str, Any], dict[str, Any]]]:
    """What rightly looks odd (a loom called `3/12`, one value far from all others) is asked, and stays as it is written."""
    odd = [f for f in read_files([path], {}, {}, TODAY).findings if f.code in ("number-of-several", "odd-value")]
    result = read_files([path], {f"{f.sheet}!{f.cell}": "as written" for f in odd}, {}, TODAY)
    worse = [in_words(f).line() for f in result.findings if f.severity is not Severity.NOTE]
    assert worse == []
    return [(row.table, dict(row.values), dict(row.kept)) for row in result.rows]


def decimals(low: float, high: float, places: int) -> st.SearchStrategy[float]:
    scale = 10**places
    return st.integers(round(low * scale), round(high * scale)).map(lambda n: n / scale)


USUAL = {"reed_width_cm": (120, 400, 1), "speed_ppm": (200, 1200, 1), "efficiency": (0.5, 1, 4), "frames": (4, 24, 0),
         "year": (1985, 2026, 0), "pick_density_per_cm": (8, 60, 2), "take_up": (0.001, 0.3, 5)}  # fmt: skip
"""Values beyond these may rightly be asked about."""


def values_of(column: Column) -> st.SearchStrategy[Any]:
    if column.field in USUAL:
        numbers = decimals(*USUAL[column.field])
        return numbers.map(int) if column.kind is Kind.INTEGER else numbers
    if column.field == "result":
        return st.booleans() | decimals(0, 90, 2)
    if column.field == "value":
        return st.sampled_from(["clockwise", "left over right"]) | decimals(0, 360, 1)
    match column.kind:
        case Kind.WORD:
            return st.sampled_from(column.words)
        case Kind.NUMBER:
            return decimals(column.low if column.low is not None else -50, min(column.high or 900, 900), 4)
        case Kind.FRACTION:
            return decimals(column.low or 0.0, column.high or 1.0, 5)
        case Kind.INTEGER:
            return st.integers(int(column.low or 0), min(int(column.high or 2026), 2026))
        case Kind.YES_NO:
            return st.booleans()
        case Kind.DATE:
            return st.dates(date(2026, 1, 1), date(2029, 12, 31))
        case Kind.MOMENT:
            return st.integers(0, 86400 * 900).map(lambda s: datetime(2026, 1, 1) + timedelta(seconds=s))
        case Kind.TIME:
            return st.builds(time, st.integers(0, 23), st.integers(0, 59))
        case Kind.WEEKDAYS:
            return st.frozensets(st.integers(0, 6), min_size=1)
    return st.sampled_from(WORDS).map(str.strip)


def records(table: Table) -> st.SearchStrategy[list[dict[str, Any]]]:
    """Rows with every needed field, told apart by their first key; the other fields may be empty."""
    always = {"kind"}  # a line of Checks with one filled cell could be a remark below the table
    fields = {
        c.field: values_of(c) if c.needed or c.field in always else st.none() | values_of(c) for c in table.columns
    }
    own = {}
    if table.open_columns == "attributes":
        own = {
            "Rail": st.none() | st.sampled_from(["drilled", "=undrilled"]),
            "Creel places": st.none() | decimals(0, 20, 1),
        }
    if table.open_columns == "conditions":
        own = {
            "rail": st.sampled_from([None, "drilled", "not(drilled)", "left, both"]),
            "frames": st.sampled_from([None, "<= 12"]),
        }
    rows = st.lists(st.fixed_dictionaries(fields | own), min_size=1, max_size=6)
    return rows.map(lambda found: [_told_apart(table, row, i) for i, row in enumerate(found)])


def _told_apart(table: Table, row: dict[str, Any], i: int) -> dict[str, Any]:
    first = next((c for c in table.columns if c.key), None)
    changed = dict(row)
    if first is not None and first.kind is Kind.IDENTIFIER:
        changed[first.field] = f"{row[first.field]}-{i}"
    if first is not None and first.kind is Kind.DATE:
        changed[first.field] = date(2027, 1, 1) + timedelta(days=i)
    if isinstance(row.get("end"), time) and row["end"] == row.get("start"):  # a span of no length is rightly refused
        changed["end"] = row["end"].replace(minute=(row["end"].minute + 1) % 60)
    return changed


TESTED = [
    name
    for name in TABLES
    if name
    not in ("changes", "setpoints", "terms", "warps", "standing", "crews", "absences", "work_done", "stops", "waste")
]


@pytest.mark.parametrize("name", TESTED)
@settings(max_examples=5, deadline=None, phases=(Phase.explicit, Phase.reuse, Phase.generate))
@given(data=st.data())
def test_any_rows_of_a_table_come_back(name, data, tmp_path_factory):
    rows = data.draw(records(TABLES[name]))
    path = tmp_path_factory.mktemp("trip") / "export.xlsx"
    write_export(path, {name: rows}, data.draw(st.sampled_from(SPOKEN)))
    found = [values | kept for _, values, kept in read(path)]
    assert [_filled(row) for row in found] == [_filled(row) for row in rows]


def _filled(row: dict[str, Any]) -> dict[str, Any]:
    return {field: value for field, value in row.items() if value is not None}


MILL: dict[str, list[dict[str, Any]]] = {
    "looms": [
        {"loom": "007", "hall": "Hall 1", "row": "3", "place": "12", "machine_type": "AJ-190", "insertion": "air-jet",
         "year": 2012, "reed_width_cm": 190.0, "frames": 8, "speed_ppm": 640.0, "efficiency": 0.287, "saving_per_day": 11.5,
         "capacity_unsold": False, "protected_until": date(2027, 2, 14), "notes": "=1+1", "Rail": "undrilled", "Creel": 2.5},
        {"loom": "3/12", "hall": "Hall 1", "machine_type": "AJ-190", "efficiency": 0.575, "capacity_unsold": True,
         "notes": "'=x"},
    ],
    "warps": [
        {"loom": "007", "hall": "Hall 1", "sequence": 0, "article": "A-1", "set_length_m": 3000.0, "warp_left_m": 1240.5,
         "read_at": datetime(2027, 1, 4, 6, 10), "tail_m": 8.0, "change": "repeat", "efficiency": 0.9},
        {"loom": "007", "hall": "Hall 1", "sequence": 1, "article": "A-1", "change": "style", "ready_on": date(2027, 1, 18)},
    ],
    "changes": [
        {"kind": "repeat", "hours_h": 2.0}, {"kind": "style", "hours_h": 4.5}, {"kind": "style", "hours_h": 6.0,
                                                                              "machine_type": "RP-340"},
    ],
    "standing": [
        {"loom": "007", "hall": "Hall 1", "from_at": datetime(2027, 2, 1, 6), "to_at": datetime(2027, 2, 5, 22)},
    ],
    "crews": [
        {"crew": "Fitters 1", "trade": "fitter", "heads": 2, "weekdays": frozenset(range(5)), "shift_start": time(5, 40),
         "shift_end": time(14), "breaks": "10:00-10:15, 12:00-12:30", "rate_per_head_h": 34.0, "to_on": date(2027, 2, 1)},
        {"crew": "Fitters 1", "trade": "fitter", "heads": 2, "weekdays": frozenset({5}), "shift_start": time(22),
         "shift_end": time(0), "rate_per_head_h": 40.25, "from_on": date(2027, 2, 8)},
    ],
    "absences": [
        {"crew": "Fitters 1", "from_on": date(2027, 2, 1), "to_on": date(2027, 2, 5), "heads": 1, "reason": "training"},
        {"crew": "Fitters 1", "from_on": date(2027, 3, 1), "to_on": date(2027, 3, 1)},
    ],
    "overtime": [{"crew": "Fitters 1", "on": date(2027, 2, 6), "start": time(22), "end": time(0)}],
    "closures": [
        {"on": date(2027, 4, 5), "start": time(11), "end": time(13), "stops": "weaving", "reason": "climate"},
        {"on": date(2027, 4, 6), "stops": "work"},
    ],
    "setpoints": [
        {"setting": "crossing angle", "side": "left", "unit": "deg", "target": 310, "low": 305.0, "high": 315.0},
        {"setting": "turning direction", "side": "left", "target": "Z"},
    ],
    "terms": [
        {"term": "programme", "value": "Hall renewal"}, {"term": "horizon (days)", "value": 84},
        {"term": "allowance (%)", "value": 0.15}, {"term": "learning rate (%)", "value": 0.925},
        {"term": "day-to-day variation (%)", "value": 0.008}, {"term": "pilot of AJ-190", "value": "007"},
        {"term": "open over closed days", "value": True}, {"term": "plan with orders not yet placed", "value": False},
        {"term": "watch (h)", "value": 2}, {"term": "days to order", "value": 3},
        {"term": "start", "value": date(2027, 1, 4)}, {"term": "learning floor (%)", "value": 1.0},
    ],
}  # fmt: skip


@pytest.mark.parametrize("language", SPOKEN)
def test_a_whole_workbook_comes_back(tmp_path, language):
    write_export(tmp_path / "export.xlsx", MILL, language)
    assert _by_table(tmp_path / "export.xlsx") == {name: [_filled(row) for row in rows] for name, rows in MILL.items()}


@pytest.mark.parametrize("name", [name for name in MILL if name != "setpoints"])
def test_a_table_comes_back_from_csv(name, tmp_path):
    """The notes `=1+1` and `'=x` go out with an apostrophe more, and come back without it."""
    write_export(tmp_path / "export.csv", {name: MILL[name]})
    assert _by_table(tmp_path / "export.csv") == {name: [_filled(row) for row in MILL[name]]}


def test_a_day_that_the_store_keeps_as_text_is_written_as_a_day(tmp_path):
    write_export(tmp_path / "export.xlsx", {"terms": [{"term": "start", "value": "2027-01-04"}]})
    assert _by_table(tmp_path / "export.xlsx") == {"terms": [{"term": "start", "value": date(2027, 1, 4)}]}


@pytest.mark.parametrize("language", SPOKEN)
def test_an_empty_template_loads_as_nothing(tmp_path, language):
    write_template(tmp_path / "template.xlsx", language)
    assert read(tmp_path / "template.xlsx") == []


def test_a_value_written_beside_a_term_of_the_template_is_all_that_is_loaded(tmp_path):
    write_template(tmp_path / "t.xlsx")
    book = openpyxl.load_workbook(tmp_path / "t.xlsx")
    rows = {row[0].value: row[1] for row in book["Terms"].iter_rows(min_row=2)}
    rows["horizon (days)"].value, rows["allowance (%)"].value, rows["start"].value = 98, 10, date(2027, 2, 1)
    book.save(tmp_path / "t.xlsx")
    result = read_files([tmp_path / "t.xlsx"], {}, {}, TODAY)
    assert {row.values["term"]: row.values["value"] for row in result.rows} == {
        "horizon (days)": 98, "allowance (%)": 0.1, "start": date(2027, 2, 1)}  # fmt: skip
    assert [in_words(f).line() for f in result.findings if f.sheet == "Terms"] == []


def test_a_loom_whose_place_is_called_like_a_machine_type_comes_back(tmp_path):
    """Few cells, and a word of another row's type elsewhere: in a mill's list that could be a count by type."""
    full = {"hall": "Hall 1", "row": "3", "place": "1", "insertion": "air-jet", "year": 2012, "reed_width_cm": 190.0,
            "frames": 8, "speed_ppm": 640.0, "efficiency": 0.88}  # fmt: skip
    rows = [{"loom": "1", "machine_type": "AJ", **full}, {"loom": "2", "machine_type": "RP", **full},
            {"loom": "3", "hall": "Hall 1", "machine_type": "SP", "place": "AJ"}]  # fmt: skip
    write_export(tmp_path / "export.xlsx", {"looms": rows})
    assert [row["loom"] for row in _by_table(tmp_path / "export.xlsx")["looms"]] == ["1", "2", "3"]


def test_the_last_columns_of_our_own_are_no_legend(tmp_path):
    """The suppliers of the first two lines are called as orders and parts are; the third has neither supplier nor unit."""
    rows = [{"order": "A-1", "part": "RAIL", "quantity": 4.0, "due": date(2027, 1, 29), "supplier": "RAIL", "unit": "pc"},
            {"order": "A-2", "part": "NUT", "quantity": 8.0, "due": date(2027, 1, 29), "supplier": "A-1", "unit": "m"},
            *({"order": f"A-{i}", "part": "NUT", "quantity": 8.0, "due": date(2027, 1, 29)} for i in range(3, 9))]  # fmt: skip
    write_export(tmp_path / "export.xlsx", {"receipts": rows})
    assert _by_table(tmp_path / "export.xlsx")["receipts"] == rows


def _by_table(path: Path) -> dict[str, list[dict[str, Any]]]:
    found: dict[str, list[dict[str, Any]]] = {}
    for table, values, kept in read(path):
        found.setdefault(table, []).append(_filled(values | kept))
    return found


@pytest.mark.parametrize(("language", "quantity", "due"), [("en", "Quantity", "Due"), ("de", "Menge", "Fällig")])
def test_a_suppliers_answer_loads_as_a_receipt(tmp_path, language, quantity, due):
    """Asked for 4, confirmed 3 for another day: what was confirmed counts, and no other column is taken for it."""
    _, _, path, _ = write_supplier_orders(tmp_path, ORDERS, OrdersOf("EUR", "Hall renewal"), language)
    book = openpyxl.load_workbook(path)
    sheet = book.worksheets[0]
    headings = {cell.value: cell.column for cell in sheet[5]}
    sheet.cell(6, headings[quantity], 3)
    sheet.cell(6, headings[due], date(2027, 3, 5))
    book.save(path)
    assert [in_words(f).line() for f in read_files([path], {}, {}, TODAY).findings] == []
    ((table, values, _),) = read(path)
    assert table == "receipts" and values["order"] == "2027W09-RAIL-190" and values["part"] == "RAIL-190"
    assert (values["quantity"], values["due"], values["supplier"]) == (3, date(2027, 3, 5), "Rail works")


@pytest.mark.parametrize("language", SPOKEN)
def test_a_filled_in_survey_list_adds_only_what_was_filled_in(tmp_path, language):
    columns = (SurveyColumn("Rail", ("drilled", "undrilled")), SurveyColumn("Extra ends"))
    looms = (
        SurveyRow(LoomKey("Hall 1", "007"), "AJ-190", "3", "12", {"Rail": None, "Extra ends": 4}, ("Rail",)),
        SurveyRow(LoomKey("Hall 1", "3/12"), "AJ-190", "3", "13", {"Rail": "undrilled", "Extra ends": 2}, ()),
    )
    path = tmp_path / "survey.xlsx"
    write_survey(path, SurveyList(columns, looms), "Hall renewal", language)
    book = openpyxl.load_workbook(path)
    assert book.worksheets[0]["F6"].value is None
    book.worksheets[0]["F6"] = "drilled"
    book.save(path)
    found = [(values["loom"], values["row"], kept) for _, values, kept in read(path)]
    assert found == [
        ("007", "3", {"Rail": "drilled", "Extra ends": 4}), ("3/12", "3", {"Rail": "undrilled", "Extra ends": 2}),
    ]  # fmt: skip
