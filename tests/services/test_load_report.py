"""What a load tells: each reason once, what a new method changes, and the marked copies."""

from datetime import datetime
from pathlib import Path

import pytest
from opened import here
from openpyxl import Workbook, load_workbook
from refusals import refused
from said import lines, refusal_of, said, texts

from tracker.errors import TrackerError, UsageError
from tracker.services.loading.load import LoadRequest, load

SAMPLE = Path(__file__).parents[2] / "sample_data"
LOOMS = [["Loom", "Hall", "Machine type", "Speed (picks/min)", "Rail"]]


def book(path, **sheets):
    workbook = Workbook(write_only=True)
    for name, rows in sheets.items():
        page = workbook.create_sheet(name)
        for row in rows:
            page.append(row)
    workbook.save(path)
    return path


def looms(path, *speeds):
    """A loom list with these speeds; 6,000 picks/min are beyond every loom (the limit is 2,500)."""
    return book(
        path, Looms=LOOMS + [[f"{i:03}", "Hall 1", "AJ", speed, "drilled"] for i, speed in enumerate(speeds, 1)]
    )


@pytest.fixture
def db(tmp_path):
    return str(tmp_path / "mill.db")


def test_a_single_reason_stands_in_the_refusal_and_not_in_the_list(db, tmp_path):
    report = load(here(db), [looms(tmp_path / "looms.xlsx", 640, 6000)])
    assert refusal_of(report).startswith("1 refusal, nothing was written: looms.xlsx Looms D3 (Speed (picks/min)): ")
    assert "6,000 picks/min" in refusal_of(report) and refusal_of(report).endswith("Or load the rest with --partial.")
    assert report.listed == ()
    assert lines(report) == []


def test_of_several_reasons_the_refusal_says_where_and_the_list_says_what(db, tmp_path):
    articles = [["Article", "Pick density (picks/cm)", "Take-up (%)"], ["A-1", 0, 6], ["A-2", 24, 6]]
    files = [looms(tmp_path / "looms.xlsx", 640, 6000), book(tmp_path / "articles.xlsx", Articles=articles)]
    report = load(here(db), files)
    assert refusal_of(report) == (
        "2 refusals, nothing was written: looms.xlsx Looms D3 (Speed (picks/min)), articles.xlsx Articles B2 (Pick density "
        "(picks/cm)). Mend them, or load the rest with --partial."
    )
    assert [finding.cell for finding in report.listed] == ["D3", "B2"]


def test_questions_come_before_refusals(db, tmp_path):
    rows = [["Loom", "Hall", "Machine type", "Speed", "Reed width"],
            *([f"{i:03}", "H", "AJ", 6000 if i == 3 else 640, 75 + i] for i in range(1, 9))]  # fmt: skip
    report = load(here(db), [book(tmp_path / "looms.xlsx", Looms=rows)], LoadRequest(partial=True))
    assert refusal_of(report).startswith("1 question is open, nothing was written: looms.xlsx Looms E1 (Reed width): ")
    assert '"Reed width=inch"' in refusal_of(report)
    assert [finding.severity.value for finding in report.listed] == ["refused"]


def test_a_refused_load_does_not_tell_of_changes_that_it_did_not_make(db, tmp_path):
    load(here(db), [looms(tmp_path / "looms.xlsx", 640, 640)])
    report = load(here(db), [looms(tmp_path / "looms.xlsx", 700, 6000)])
    assert report.changes and lines(report) == []


@pytest.fixture(scope="module")
def sample(tmp_path_factory):
    db = tmp_path_factory.mktemp("sample") / "mill.db"
    first = load(here(db), sorted(SAMPLE.glob("*.xlsx")))
    assert first.written
    return db, first


@pytest.fixture
def mill(sample, tmp_path):
    (tmp_path / "mill.db").write_bytes(sample[0].read_bytes())
    return str(tmp_path / "mill.db")


def method(tmp_path, heading, value, row=1):
    """The sample's method with one cell of Operations changed; row 0 is the heading."""
    workbook = load_workbook(SAMPLE / "method.xlsx")
    sheet = workbook["Operations"]
    heads = next(row for row in sheet.iter_rows() if str(row[0].value).lower() == "step")
    column = next(n for n, cell in enumerate(heads, 1) if str(cell.value).lower().startswith(heading))
    sheet.cell((heads[0].row or 0) + row, column).value = value
    workbook.save(tmp_path / "method.xlsx")
    return tmp_path / "method.xlsx"


def test_the_first_method_is_not_told_row_by_row(sample):
    assert "Method version 1 is the first." in lines(sample[1])


def test_a_new_method_says_row_by_row_what_it_changes_for_how_many_looms(mill, tmp_path):
    report = load(here(mill), [method(tmp_path, "minutes", 67)])
    said = lines(report)
    at = said.index("Method version 2 changes the scope of 94 looms:")
    assert "minutes 7 → 67" in said[at + 1]
    # 60 min more for one head, and 15 % allowance: 60 × 1.15 / 60 = 1.15 h on each loom but the two to survey
    assert said[at + 2].startswith("  94 looms ") and said[at + 2].endswith(": +1.15 labour hours each")


def test_an_answer_about_the_method_is_remembered(mill, tmp_path):
    changed = method(tmp_path, "leno side", "leno sides", row=0)
    assert refusal_of(load(here(mill), [changed])).startswith(
        "1 question is open, nothing was written: method.xlsx Operations"
    )
    assert load(here(mill), [changed], LoadRequest(answers={"leno sides": "as written"})).written
    load(here(mill), [SAMPLE / "method.xlsx"])
    assert load(here(mill), [changed]).written


def test_one_file_is_marked_under_the_name_given(db, tmp_path):
    report = load(here(db), [looms(tmp_path / "looms.xlsx", 640, 6000)], LoadRequest(marked=tmp_path / "marked.xlsx"))
    assert texts(report.said) == (f"Wrote the marked copy {tmp_path / 'marked.xlsx'}.",)
    assert load_workbook(tmp_path / "marked.xlsx")["Looms"]["D3"].comment.text.startswith("REFUSED")


def test_of_several_files_those_with_findings_are_marked_each_under_its_own_name(db, tmp_path):
    (tmp_path / "b").mkdir()
    files = [looms(tmp_path / "sound.xlsx", 640), looms(tmp_path / "hall 2.xlsx", 640, 6000)]
    files.append(looms(tmp_path / "b" / "hall 3.xlsx", 6000))
    load(here(db), files, LoadRequest(marked=tmp_path / "marked.xlsx"))
    assert sorted(path.name for path in tmp_path.glob("marked*")) == ["marked hall 2.xlsx", "marked hall 3.xlsx"]


def test_a_text_file_is_marked_as_it_was_read(db, tmp_path):
    # Windows-1252: no UTF-8
    text = "Loom;Hall;Machine type;Speed\n001;Hälle;AJ;6000\n002;Hälle;AJ;640\n"
    (tmp_path / "looms.csv").write_bytes(text.encode("cp1252"))
    report = load(here(db), [tmp_path / "looms.csv"], LoadRequest(marked=tmp_path / "marked.xlsx"))
    sheet = load_workbook(tmp_path / "marked.xlsx")["looms"]
    assert [cell.value for cell in sheet[2]] == ["001", "Hälle", "AJ", "6000"]
    assert sheet["D2"].comment and "marked.xlsx holds a copy of the values of looms.csv" in said(report.said[1])


def test_a_text_file_is_marked_in_the_code_page_that_was_answered(db, tmp_path):
    """The byte 0x8D is ì in the code page of DOS, ı in the Turkish one, ç on a Mac; nothing else tells."""
    lines = ["Loom;Hall;Machine type;Speed (rpm);Notes", *(f"{n};Hall 1;AJ-190;{n}000;così" for n in (1, 7))]
    (tmp_path / "list.csv").write_bytes("\n".join(lines).encode("mac_roman"))
    for page, letters in (("mac_roman", "così"), ("cp850", "cosô")):
        copy = tmp_path / f"{page}.xlsx"
        load(here(db), [tmp_path / "list.csv"], LoadRequest(answers={"list.csv": page}, marked=copy))
        assert load_workbook(copy)["list"]["E2"].value == letters


def test_nothing_to_mark_is_said(db, tmp_path):
    report = load(
        here(db), [looms(tmp_path / "looms.xlsx", 640, 650, 660)], LoadRequest(marked=tmp_path / "marked.xlsx")
    )
    assert "No marked copy was written: there are no findings." in lines(report)
    assert not (tmp_path / "marked.xlsx").exists()


@pytest.mark.parametrize("name", ["marked.csv", "looms.xlsx"])
def test_a_name_that_cannot_be_a_copys_is_refused_before_anything_is_read(db, tmp_path, name):
    file = looms(tmp_path / "looms.xlsx", 640)
    before = file.read_bytes()
    with pytest.raises(UsageError):
        load(here(db), [file], LoadRequest(marked=tmp_path / name))
    assert file.read_bytes() == before and not Path(db).exists()


def test_where_the_copy_cannot_be_written_nothing_is_loaded(db, tmp_path):
    file = looms(tmp_path / "looms.xlsx", 640, 6000)
    with refused(TrackerError, r"cannot write"):
        load(here(db), [file], LoadRequest(partial=True, marked=tmp_path / "no such folder" / "marked.xlsx"))
    assert not Path(db).exists()


def test_changes_are_told_in_the_words_and_units_of_the_workbook(mill, tmp_path):
    terms = [["Term", "Value"], ["allowance (%)", 20], ["firm (hours)", 48], ["programme", "Another name"]]
    crews = [["Crew", "Trade", "Heads", "Weekdays"], ["Night", "fitter", 2, "Mon-Fri"]]
    load(here(mill), [book(tmp_path / "crews.xlsx", Crews=crews)])
    crews[1][2] = 3
    said = lines(
        load(
            here(mill),
            [book(tmp_path / "a.xlsx", Terms=terms), book(tmp_path / "b.xlsx", Crews=crews)],
            LoadRequest(dry_run=True),
        )
    )
    assert said[:4] == [
        "Terms allowance (%): Value 15 → 20",
        "Terms firm (hours): Value 72 → 48",
        "Terms programme: Value Leno conversion of halls 1 and 2 (invented) → Another name",
        "Crews Night, Mon-Fri: Heads 2 → 3",
    ]


def test_a_share_and_a_moment_are_told_as_the_sheet_writes_them(db, tmp_path):
    sheets = {
        "Looms": [["Loom", "Hall", "Machine type", "Efficiency (%)"], ["007", "H", "AJ", 84.5]],
        "Warps": [["Loom", "Hall", "Sequence", "Article", "Set length (m)", "Warp left (m)", "Read at"],
                  ["007", "H", 0, "A-1", 3000, 900, datetime(2027, 1, 2, 14, 5)]],
    }  # fmt: skip
    load(here(db), [book(tmp_path / "a.xlsx", **sheets)])
    sheets["Looms"][1][3], sheets["Warps"][1][6] = 85, datetime(2027, 1, 2, 14, 25)
    said = lines(load(here(db), [book(tmp_path / "b.xlsx", **sheets)], LoadRequest(dry_run=True)))
    assert said[:2] == [
        "Looms 007, H: Efficiency (%) 84.5 → 85",
        "Warps 007, H, 0: Read at Sat 2 Jan 2027 14:05 → Sat 2 Jan 2027 14:25",
    ]
