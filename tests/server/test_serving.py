"""`serve` tells its address once the screens answer, ends cleanly, and leaves nothing behind."""

import signal
import socket
import tempfile
from pathlib import Path

import pytest
from served import ask, served, shake

from tracker.server.scratch import scratch


def test_a_new_mill_starts_in_the_browser_and_the_address_is_told_once_it_answers(tmp_path):
    """Its health says whether the database can be read, and no more."""
    db = tmp_path / "new.db"
    with served(str(db), "--new") as screens:
        host = f"Host: {screens.host}"
        assert ask(screens.port, "/_stcore/health", host).status == 200
        whole = ask(screens.port, "/health", host)
        db.rename(tmp_path / "gone.db")
        gone = ask(screens.port, "/health", host)
    assert (whole.status, whole.body) == (200, b"ok")
    assert (gone.status, gone.body) == (503, b"not ok")
    assert screens.process.returncode == 0


@pytest.mark.parametrize("sign", [pytest.param(signal.SIGINT, marks=pytest.mark.long), signal.SIGTERM])
def test_a_signal_ends_it_although_a_page_is_open(tmp_path, sign):
    with served(str(tmp_path / "new.db"), "--new") as screens, socket.create_connection(("127.0.0.1", screens.port)):
        assert shake(screens.port, f"Host: {screens.host}", f"Origin: {screens.url}").status == 101
        screens.process.send_signal(sign)
        assert screens.process.wait(30) == 0


def test_what_a_killed_server_left_in_the_temporary_folder_is_gone_after_the_next_start(tmp_path):
    temporary = tmp_path / "temporary"
    temporary.mkdir()
    (temporary / "of another program").mkdir()
    with served(str(tmp_path / "new.db"), "--new", TMPDIR=str(temporary)) as screens:
        (mine,) = temporary.glob("beamslot-*")
        (mine / "loom list.xlsx").write_text("sent by a browser")
        screens.process.kill()
        screens.process.wait()
    assert mine.exists()
    with served(str(tmp_path / "new.db"), TMPDIR=str(temporary)):
        assert not mine.exists()
    assert [left.name for left in temporary.iterdir()] == ["of another program"]


def test_the_temporary_files_of_a_server_that_runs_stay(tmp_path, monkeypatch):
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        port = other.getsockname()[1]
        theirs = tmp_path / f"beamslot-screens-{port}-abc"
        theirs.mkdir()
        with scratch(port - 1) as ours:
            assert theirs.exists() and Path(tempfile.mkdtemp()).parent == ours
    with scratch(port - 1):
        assert not theirs.exists()
    assert list(tmp_path.iterdir()) == []
