"""Files go out whole or not at all, never over the database, and never over what somebody has worked in."""

import os
import resource
import subprocess
import sys
from pathlib import Path
from tempfile import gettempdir

import openpyxl
import pytest
from export_samples import MILL, PICKS
from machine import needs
from python_calamine import CalamineWorkbook
from refusals import refused

from tracker.errors import TrackerError, UsageError
from tracker.export.picks import write_picks
from tracker.export.workbook import write_template
from tracker.office import files
from tracker.office.writing.sheets import Col, write_tables


def limit():
    """A limit on the size of files stands for the full disk: the same failing write."""
    resource.setrlimit(resource.RLIMIT_FSIZE, (4096, 4096))


def names(folder):
    return sorted(path.name for path in folder.iterdir())


@pytest.mark.parametrize("name", ["p.pdf", "p.xlsx"])
def test_what_we_wrote_ourselves_is_replaced(tmp_path, name):
    write_picks(tmp_path / name, PICKS, MILL)
    before = (tmp_path / name).read_bytes()
    write_picks(tmp_path / name, [], MILL)
    assert (tmp_path / name).read_bytes() != before
    assert names(tmp_path) == [name]


@pytest.mark.parametrize("name", ["p.pdf", "p.xlsx"])
def test_one_byte_changed_and_it_is_no_longer_ours(tmp_path, name):
    write_picks(tmp_path / name, PICKS, MILL)
    changed = bytearray((tmp_path / name).read_bytes())
    changed[200] ^= 1
    (tmp_path / name).write_bytes(changed)
    with refused(TrackerError, r"is there already.*--force"):
        write_picks(tmp_path / name, [], MILL)
    assert (tmp_path / name).read_bytes() == changed


def test_a_workbook_that_was_filled_in_is_refused_and_force_replaces_it(tmp_path):
    path = tmp_path / "mine.xlsx"
    write_template(path)
    book = openpyxl.load_workbook(path)
    book["Looms"]["A2"] = "007"
    book.save(path)
    with refused(TrackerError, r"mine\.xlsx is there already"):
        write_template(path)
    assert openpyxl.load_workbook(path)["Looms"]["A2"].value == "007"
    with files.permitting(force=True):
        write_template(path)
    assert openpyxl.load_workbook(path)["Looms"]["A2"].value is None


@pytest.mark.parametrize("name", ["k.db", "k.db-wal", "k.db-shm", "k.db-journal", "link.json", "sub/../k.db"])
def test_the_database_and_its_side_files_are_refused_even_with_force(tmp_path, name):
    (tmp_path / "sub").mkdir()
    (tmp_path / "k.db").write_bytes(b"the mill")
    (tmp_path / "link.json").symlink_to(tmp_path / "k.db")
    with (
        files.permitting(force=True, kept=files.with_side_files(tmp_path / "k.db")),
        refused(TrackerError, "is the database"),
    ):
        files.write(tmp_path / name, b"{}")
    assert (tmp_path / "k.db").read_bytes() == b"the mill"


def test_text_that_cannot_carry_our_mark_needs_force(tmp_path):
    files.write(tmp_path / "s.json", b"{}")
    with refused(TrackerError, r"s\.json is there already.*--force"):
        files.write(tmp_path / "s.json", b"[]")
    with files.permitting(force=True):
        files.write(tmp_path / "s.json", b"[]")
    assert (tmp_path / "s.json").read_bytes() == b"[]"


def test_of_several_files_all_are_written_or_none(tmp_path):
    (tmp_path / "b.csv").write_text("mine")
    with refused(TrackerError, r"b\.csv is there already"):
        files.write_all({tmp_path / "a.csv": b"1", tmp_path / "b.csv": b"2"})
    assert names(tmp_path) == ["b.csv"]


def test_what_is_no_ordinary_file_is_refused(tmp_path):
    os.mkfifo(tmp_path / "pipe")
    with files.permitting(force=True):
        for target, says in ((tmp_path, "is a folder"), (tmp_path / "pipe", "no ordinary file"),
                             (tmp_path / "none" / "x", "there is no folder"), (tmp_path / ("x" * 300), "too long")):  # fmt: skip
            with refused(TrackerError, says):
                files.write(target, b"")


def test_a_file_behind_a_link_is_replaced_there_and_keeps_its_mode(tmp_path):
    write_template(tmp_path / "real.xlsx")
    (tmp_path / "real.xlsx").chmod(0o600)
    (tmp_path / "link.xlsx").symlink_to("real.xlsx")
    write_template(tmp_path / "link.xlsx")
    assert (tmp_path / "link.xlsx").is_symlink()
    assert (tmp_path / "real.xlsx").stat().st_mode & 0o777 == 0o600


def test_other_endings_are_wrong_use(tmp_path):
    with refused(UsageError, r"must end in \.xlsx"):
        write_template(tmp_path / "t.txt")


def test_a_full_disk_leaves_what_was_there_and_says_one_line(tmp_path):
    write_template(tmp_path / "t.xlsx")
    before = (tmp_path / "t.xlsx").read_bytes()
    assert len(before) > 4096
    call = "from tracker.cli import main; main()"
    ran = subprocess.run([sys.executable, "-c", call, "template", str(tmp_path / "t.xlsx")],
                         capture_output=True, text=True, preexec_fn=limit, check=False)  # fmt: skip
    said = f"beamslot: cannot write {tmp_path / 't.xlsx'}: file too large in {gettempdir()}, where it is made first\n"
    assert (ran.returncode, ran.stdout, ran.stderr) == (1, "", said)
    assert (tmp_path / "t.xlsx").read_bytes() == before
    assert names(tmp_path) == ["t.xlsx"]


def test_a_disk_that_is_full_for_the_file_itself(tmp_path):
    call = (
        "from tracker.errors import TrackerError; from tracker.office import files; from tracker.words import ENGLISH\n"
        f"try: files.write({str(tmp_path / 'a.json')!r}, b'x' * 5000)\nexcept TrackerError as e: print(ENGLISH.line(e))"
    )
    ran = subprocess.run([sys.executable, "-c", call], capture_output=True, text=True, preexec_fn=limit, check=True)
    assert ran.stdout == f"cannot write {tmp_path / 'a.json'}: file too large\n"
    assert names(tmp_path) == []


@needs("soffice", "libreoffice-calc")
def test_an_office_programme_opens_a_workbook_with_our_mark(tmp_path):
    path = tmp_path / "t.xlsx"
    write_tables(path, [("A", [Col("Loom")], [["007"]])])
    assert files.is_ours(path)
    profile = f"-env:UserInstallation={(tmp_path / 'profile').as_uri()}"
    to_csv = ["soffice", "--headless", profile, "--convert-to", "csv", "--outdir", str(tmp_path), str(path)]
    subprocess.run(to_csv, check=True, capture_output=True, timeout=120)
    assert (tmp_path / "t.csv").read_text().split() == ["Loom", "007"]
    assert CalamineWorkbook.from_path(str(path)).get_sheet_by_index(0).to_python()[1] == ["007"]


@needs("pdftotext", "poppler-utils")
def test_a_reader_opens_a_pdf_with_our_mark(tmp_path):
    write_picks(tmp_path / "p.pdf", PICKS, MILL)
    assert files.is_ours(tmp_path / "p.pdf")
    ran = subprocess.run(["pdftotext", str(tmp_path / "p.pdf"), "-"], capture_output=True, text=True, check=True)
    assert ran.stderr == "" and "Pick list" in ran.stdout


def test_nothing_else_writes_files():
    """One way out: no other module of ours opens a file for writing."""
    root = Path(files.__file__).parents[2]
    sources = [p for folder in ("tracker", "dashboards") for p in (root / folder).rglob("*.py")]
    writers = {
        str(p.relative_to(root)) for p in sources if any(w in p.read_text() for w in (".write_text(", ".write_bytes("))
    }
    assert writers == {"dashboards/take_pictures.py", "dashboards/uploads.py"}
