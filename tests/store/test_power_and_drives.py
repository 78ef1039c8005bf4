"""What is confirmed is on the disk, and a database on a drive of another computer is warned of."""

import logging
from collections import namedtuple

import pytest
from sqlalchemy import text

from tracker.cli import notes
from tracker.store import drives, open_store

Drive = namedtuple("Drive", "mountpoint fstype opts")


@pytest.fixture
def on(tmp_path, monkeypatch):
    """Let the computer say that the test's folder lies on such a drive."""

    def say(fstype, opts="rw", mountpoint=tmp_path):
        mounted = [Drive("/", "ext4", "rw"), Drive(str(mountpoint), fstype, opts)]
        monkeypatch.setattr("psutil.disk_partitions", lambda all: mounted)
        drives.network_drive.cache_clear()

    yield say
    drives.network_drive.cache_clear()


def test_a_commit_waits_for_the_disk(tmp_path):
    with open_store(tmp_path / "mill.db", make=True).unit_of_work() as uow:
        assert uow.session.scalar(text("PRAGMA synchronous")) == 2  # FULL; 1 (NORMAL) may lose the last commits


@pytest.mark.parametrize(
    ("fstype", "opts"), [("nfs4", "rw"), ("cifs", "rw"), ("fuse.sshfs", "rw"), ("NTFS", "rw,remote")]
)
def test_a_network_drive_is_warned_of(tmp_path, on, caplog, fstype, opts):
    on(fstype, opts)
    open_store(tmp_path / "mill.db", make=True)
    (said,) = caplog.messages
    assert f"{tmp_path / 'mill.db'} lies on a network drive ({fstype})" in said and "PostgreSQL" in said


@pytest.mark.parametrize("fstype", ["ext4", "btrfs", "apfs", "fuseblk"])
def test_a_drive_of_this_computer_is_not(tmp_path, on, caplog, fstype):
    on(fstype)
    open_store(tmp_path / "mill.db", make=True)
    assert caplog.messages == []


def test_a_network_drive_elsewhere_is_not(tmp_path, on, caplog):
    on("nfs4", mountpoint=tmp_path / "share")
    open_store(tmp_path / "mill.db", make=True)
    assert caplog.messages == []


def test_the_command_tells_it_once(capsys):
    notes.tell()
    for _ in range(2):
        logging.getLogger("tracker.store").warning("it lies on a network drive")
    assert capsys.readouterr().err == "Note: it lies on a network drive\n"
