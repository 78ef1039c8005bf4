"""A watched folder: what is dropped is loaded once it is whole, and moved out of the way with what there is to say."""

import csv
from zipfile import ZipFile

import openpyxl
import pytest
from refusals import refused

from tracker.errors import TrackerError, UsageError
from tracker.services.context import Context
from tracker.services.loading.watching import Watch, load_dropped
from tracker.store import open_store

LOOMS = [["Loom", "Hall", "Machine type", "Speed (ppm)"], ["1", "Hall 1", "AJ-190", 600]]


class Seconds:
    now = 0.0

    def __call__(self):
        return self.now


@pytest.fixture
def mill(tmp_path):
    open_store(tmp_path / "mill.db", make=True).engine.dispose()
    return Context(str(tmp_path / "mill.db"))


@pytest.fixture
def watch(tmp_path):
    (tmp_path / "inbox").mkdir()
    return Watch(tmp_path / "inbox", Seconds())


def workbook(path, rows=LOOMS):
    book = openpyxl.Workbook()
    for row in rows:
        book.active.append(row)
    book.save(path)
    return path


def looks(mill, watch, after_s=5.0):
    """What one look brings, and another after so many seconds."""
    found = list(load_dropped(mill, watch))
    watch.clock.now += after_s
    return [*found, *load_dropped(mill, watch)]


def lying(watch, folder):
    return sorted(path.name.split(" ", 2)[2] for path in (watch.folder / folder).iterdir())


def looms(mill):
    with mill.reading() as uow:
        return sorted(key.loom for key in uow.mill().looms)


def test_what_is_whole_is_loaded_and_moves(mill, watch):
    workbook(watch.folder / "looms.xlsx")
    (done,) = looks(mill, watch)
    assert done.written and looms(mill) == ["1"]
    assert lying(watch, "loaded") == ["looms.xlsx"] and lying(watch, "refused") == []
    assert looks(mill, watch) == []
    workbook(watch.folder / "looms.xlsx", [*LOOMS, ["2", "Hall 1", "AJ-190", 620]])
    assert looks(mill, watch)[0].written and looms(mill) == ["1", "2"]
    assert len(lying(watch, "loaded")) == 2  # the first one is still there


def test_what_is_refused_lies_with_its_marked_copy_and_the_reason_and_nothing_is_written(mill, watch):
    workbook(watch.folder / "looms.xlsx", [*LOOMS, ["2", "Hall 1", "AJ-190", -5]])
    (done,) = looks(mill, watch)
    assert not done.written and looms(mill) == []
    assert lying(watch, "refused") == ["looms marked.xlsx", "looms.xlsx", "looms.xlsx why.txt"]
    (why,) = (watch.folder / "refused").glob("*why.txt")
    assert "D3" in why.read_text("utf-8")
    (marked,) = (watch.folder / "refused").glob("*marked.xlsx")
    assert "Findings" in openpyxl.load_workbook(marked).sheetnames


def test_a_file_that_still_comes_in_waits_until_it_is_whole(mill, watch, tmp_path):
    whole = workbook(tmp_path / "looms.xlsx").read_bytes()
    coming = watch.folder / "looms.xlsx"
    for end in (1_000, 2_000, 3_000):
        coming.write_bytes(whole[:end])
        assert looks(mill, watch, 4.9) == []
    assert looks(mill, watch, 50) == []  # it stands still, but is no workbook yet
    coming.write_bytes(whole)
    assert looks(mill, watch)[0].written and looms(mill) == ["1"]


def test_a_workbook_that_never_becomes_whole_is_refused_after_a_minute(mill, watch, tmp_path):
    (watch.folder / "looms.xlsx").write_bytes(workbook(tmp_path / "looms.xlsx").read_bytes()[:-200])
    assert looks(mill, watch, 59.9) == []
    watch.clock.now += 0.1
    (done,) = load_dropped(mill, watch)
    assert not done.written and lying(watch, "refused") == ["looms.xlsx", "looms.xlsx why.txt"]


def test_locks_folders_and_what_others_still_write_are_left_alone(mill, watch, tmp_path):
    for name in ("~$looms.xlsx", ".looms.xlsx", "looms.xlsx.part"):
        workbook(tmp_path / "x.xlsx").rename(watch.folder / name)
    (watch.folder / "old.xlsx").mkdir()
    (watch.folder / "link.xlsx").symlink_to(workbook(tmp_path / "x.xlsx"))
    assert looks(mill, watch) == [] and len(list(watch.folder.iterdir())) == 7


def test_several_files_each_for_itself_the_oldest_first(mill, watch):
    with (watch.folder / "b.csv").open("w", newline="") as file:
        csv.writer(file).writerows(LOOMS)
    (watch.folder / "a.pdf").write_bytes(b"%PDF-1.7")
    with ZipFile(watch.folder / "c.xlsx", "w") as archive:
        archive.writestr("x", "no workbook")
    done = looks(mill, watch)
    assert [(one.file, one.written) for one in done] == [("b.csv", True), ("a.pdf", False), ("c.xlsx", False)]


def test_a_database_that_is_none_of_ours_keeps_the_file_where_it_is(watch, tmp_path):
    workbook(watch.folder / "looms.xlsx")
    (tmp_path / "mill.db").write_text("no database, but long enough to be looked at as one " * 3)
    with refused(TrackerError, "mill.db"):
        looks(Context(str(tmp_path / "mill.db")), watch)
    assert (watch.folder / "looms.xlsx").exists()


def test_a_folder_that_is_none_is_one_line(tmp_path):
    with refused(UsageError, "there is no folder .*none; make it first"):
        Watch(tmp_path / "none")
    (tmp_path / "full").mkdir()
    (tmp_path / "full" / "loaded").write_text("a file")
    with refused(TrackerError, "nothing can be put into .*full"):
        Watch(tmp_path / "full")
