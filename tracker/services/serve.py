"""Start the dashboards on this machine."""

import os
import signal
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
import webbrowser
from collections.abc import Callable
from importlib.util import find_spec
from pathlib import Path
from types import FrameType
from typing import NoReturn

from tracker.errors import TrackerError, UsageError
from tracker.store import open_store

ADDRESS = "127.0.0.1"
START_TIMEOUT_S = 60


def serve(
    db: str, port: int = 8501, open_browser: bool = False, ready: Callable[[str], None] | None = None, new: bool = False
) -> None:
    """Show the dashboards of a database on http://127.0.0.1:`port` until interrupted; `new` makes an empty one if it is
    not there.

    `ready` is called with the address once the screens answer. TrackerError where the database cannot be opened, the
    port is taken, or the screens do not start.
    """
    _require_free(port)
    open_store(db, make=new)
    screens = subprocess.Popen(_command(port), env=_environment(db), stdout=subprocess.DEVNULL)
    before = signal.signal(signal.SIGTERM, _leave)
    try:
        _wait_until_up(screens, port)
        url = f"http://{ADDRESS}:{port}"
        if ready:
            ready(url)
        if open_browser:
            webbrowser.open(url)
        screens.wait()
    except KeyboardInterrupt:
        pass
    finally:
        signal.signal(signal.SIGTERM, before)
        _stop(screens)


def _leave(_signal: int, _frame: FrameType | None) -> NoReturn:
    raise KeyboardInterrupt


def _require_free(port: int) -> None:
    if not 0 < port < 65536:
        raise UsageError(f"port {port} is not between 1 and 65535")
    with socket.socket() as probe:
        if os.name == "posix":
            probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind((ADDRESS, port))
        except OSError:
            raise TrackerError(f"port {port} on {ADDRESS} is taken; choose another: --port {port + 1}") from None


def _dashboards() -> Path:
    spec = find_spec("dashboards")
    if spec is None or spec.origin is None:
        raise TrackerError("the dashboards are not installed; install the distribution again")
    return Path(spec.origin).parent


def _command(port: int) -> list[str]:
    options = {
        "server.address": ADDRESS, "server.port": port, "server.headless": "true", "server.fileWatcherType": "none",
        "browser.gatherUsageStats": "false", "logger.level": "warning",
    }  # fmt: skip
    given = [f"--{name}={value}" for name, value in options.items()]
    return [sys.executable, "-m", "streamlit", "run", str(_dashboards() / "app.py"), *given]


def _environment(db: str) -> dict[str, str]:
    """The child's environment: which database, and where the packages are found."""
    database = db if "://" in db else str(Path(db).resolve())
    packages = os.pathsep.join(filter(None, [str(_dashboards().parent), os.environ.get("PYTHONPATH")]))
    return os.environ | {"BEAMSLOT_DB": database, "PYTHONPATH": packages}


def _wait_until_up(screens: subprocess.Popen, port: int) -> None:
    until = time.monotonic() + START_TIMEOUT_S
    while time.monotonic() < until:
        if screens.poll() is not None:
            raise TrackerError(f"the screens ended at once with code {screens.returncode}")
        try:
            with urllib.request.urlopen(f"http://{ADDRESS}:{port}/_stcore/health", timeout=2):
                return
        except (urllib.error.URLError, OSError):
            time.sleep(0.2)
    raise TrackerError(f"the screens did not answer on port {port} within {START_TIMEOUT_S} s")


def _stop(screens: subprocess.Popen) -> None:
    if screens.poll() is None:
        screens.terminate()
        try:
            screens.wait(10)
        except subprocess.TimeoutExpired:
            screens.kill()
            screens.wait()
