"""`serve` tells its address once the screens answer, and starts a new mill where it is told to."""

import signal
import socket
import subprocess
import sys
import urllib.request
from pathlib import Path

import pytest

MAIN = "from tracker.cli import main; main()"
SAYS = "The dashboards: http://127.0.0.1:{} (Ctrl-C ends them)\n"


@pytest.fixture
def port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


def test_a_new_mill_starts_in_the_browser_and_the_address_is_told_once_it_answers(tmp_path: Path, port: int) -> None:
    command = ["-c", MAIN, "--db", str(tmp_path / "new.db"), "serve", "--new", "--port", str(port)]
    with subprocess.Popen([sys.executable, *command], stdout=subprocess.PIPE, text=True) as serving:
        try:
            assert serving.stdout and serving.stdout.readline() == SAYS.format(port)
            with urllib.request.urlopen(f"http://127.0.0.1:{port}/_stcore/health", timeout=2) as answer:
                assert answer.status == 200
            assert (tmp_path / "new.db").exists()
        finally:
            serving.send_signal(signal.SIGTERM)
    assert serving.returncode == 0


def test_without_new_nothing_is_made(beamslot, tmp_path):
    assert beamslot("--db", "new.db", "serve").code == 1
    assert list(tmp_path.iterdir()) == []


def test_a_taken_port_makes_no_database(beamslot, tmp_path):
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        taken = other.getsockname()[1]
        ran = beamslot("--db", "new.db", "serve", "--new", "--port", taken)
    assert (ran.code, ran.line) == (1, f"port {taken} on 127.0.0.1 is taken; choose another: --port {taken + 1}")
    assert list(tmp_path.iterdir()) == []
