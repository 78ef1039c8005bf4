"""What a command writes to: never the database, never a file that somebody worked in, and checked before it books."""

import openpyxl
import pytest

from tracker.store import open_store


def movements(tmp_path):
    with open_store(tmp_path / "mill.db").reading() as uow:
        return uow.movements()


@pytest.mark.parametrize("target", ["mill.db", "mill.db-shm", "mill.db-wal", "mill.db-journal"])
def test_json_does_not_overwrite_the_database(mill, tmp_path, target):
    for more in ((), ("--force",)):
        ran = mill("stock", "moves", "--json", target, *more)
        assert (ran.code, ran.line) == (1, f"cannot write {target}: it is the database; name another file")
    assert mill("stock", "moves").code == 0


@pytest.mark.parametrize("target", ["/", "no/such/folder/x.json", "mill.db", "mine.json", "x" * 300])
def test_an_entry_whose_result_cannot_be_written_is_not_booked(mill, tmp_path, target):
    (tmp_path / "mine.json").write_text("mine")
    before = movements(tmp_path)
    ran = mill("stock", "adjust", "RAIL-N", "1", "--why", "found", "--json", target)
    assert ran.code == 1
    assert target[:100] in ran.line
    assert movements(tmp_path) == before
    assert (tmp_path / "mine.json").read_text() == "mine"


def test_a_filled_workbook_is_kept_and_force_replaces_it(mill, tmp_path):
    assert mill("template", "mine.xlsx").code == 0
    assert mill("template", "mine.xlsx").code == 0  # untouched: it is ours
    book = openpyxl.load_workbook(tmp_path / "mine.xlsx")
    book["Looms"]["A2"] = "007"
    book.save(tmp_path / "mine.xlsx")
    for arguments in (("template", "mine.xlsx"), ("export", "mine.xlsx"), ("scope", "--survey", "mine.xlsx")):
        ran = mill(*arguments)
        assert (ran.code, "mine.xlsx is there already" in ran.line) == (1, True)
    assert openpyxl.load_workbook(tmp_path / "mine.xlsx")["Looms"]["A2"].value == "007"
    assert mill("export", "mine.xlsx", "--force").code == 0
    assert openpyxl.load_workbook(tmp_path / "mine.xlsx")["Looms"]["A2"].value != "007"


def test_force_counts_for_its_own_command_only(mill, tmp_path):
    (tmp_path / "s.json").write_text("mine")
    assert mill("stock", "moves", "--json", "s.json", "--force").code == 0
    assert mill("stock", "moves", "--json", "s.json").code == 1


def test_what_was_booked_and_could_not_be_told_ends_with_3(mill, tmp_path, monkeypatch):
    """The disk runs full between the entry and the writing of its result."""
    from tracker.office import files

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(files.os, "replace", full)
    ran = mill("stock", "adjust", "RAIL-N", "1", "--why", "found", "--json", "s.json")
    assert ran.code == 3
    assert ran.line == "cannot write s.json: no space left on device; all else was done"
    assert movements(tmp_path)[-1].why == "found"
    assert not (tmp_path / "s.json").exists()


def test_the_demo_leaves_a_mill_of_ours_alone(mill, tmp_path):
    """`beamslot demo` in the folder of a mill: what was loaded there is no demo's."""
    (tmp_path / "mill.db").rename(tmp_path / "beamslot.db")
    openpyxl.Workbook().save(tmp_path / "other.xlsx")
    with open_store(tmp_path / "beamslot.db").unit_of_work() as uow:
        uow.load_writer().begin(["our looms.xlsx"], [])
        uow.commit()
    ran = mill("demo")
    assert ran.code == 1
    assert ran.line == "beamslot.db holds more than the sample mill; name another folder with --dir"


def test_the_report_of_a_week_is_a_pdf_in_a_language(mill, tmp_path):
    assert mill("status", "--pdf", "week.pdf", "--week", "2027-W01", "--language", "de").out == "Wrote week.pdf.\n"
    assert (tmp_path / "week.pdf").read_bytes().startswith(b"%PDF")
    assert mill("status", "--week", "2027-W01").code == 2
    assert mill("status", "--pdf", "week.pdf", "--language", "fr").code == 2
