"""A database that may only be read is looked at as ever, and what would write says why not."""

import pytest

from tracker.store import place


@pytest.fixture
def locked(planned, monkeypatch):
    """The command on a planned mill without write permission (root may write everywhere: the store is told)."""
    monkeypatch.setattr(place, "_may_write", lambda file: False)
    return planned


@pytest.mark.parametrize(
    ("command", "says"),
    [
        ("status", "96 looms"),
        ("plan --show", "Hall"),
        ("kits", "kits: "),
        ("stock moves", "parts list loaded"),
    ],
)
def test_looking_works(locked, tmp_path, command, says):
    ran = locked(*command.split())
    assert ran.code == 0 and says in ran.out, ran.err
    assert [file.name for file in tmp_path.iterdir()] == ["mill.db"]


@pytest.mark.parametrize("command", ["record 007 --stage scoped", "stock adjust DRIVE 1 --why found", "load mill.csv"])
def test_writing_is_refused_in_one_line(locked, tmp_path, command):
    (tmp_path / "mill.csv").write_text("Loom;Hall;Machine type\n1;Hall 1;AJ-1\n")
    before = (tmp_path / "mill.db").read_bytes()
    ran = locked(*command.split())
    says = f"the database {tmp_path / 'mill.db'} can only be read: its file or folder has no write permission"
    assert (ran.code, ran.line) == (1, f"{says}; nothing was written")
    assert (tmp_path / "mill.db").read_bytes() == before
