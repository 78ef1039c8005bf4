"""A PostgreSQL server of our own for a test run, from the binaries of the machine."""

import os
import pwd
import shutil
import socket
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from uuid import uuid4

import pytest
from sqlalchemy import create_engine, text
from sqlalchemy.engine import make_url


def _binaries() -> Path | None:
    """The folder that holds `initdb`: Debian keeps it out of PATH, by version."""
    on_path = shutil.which("initdb")
    found = sorted(Path("/usr/lib/postgresql").glob("*/bin/initdb"))
    return Path(on_path).parent if on_path else found[-1].parent if found else None


def _as_user() -> list[str]:
    """The server refuses to run as root: then it runs as `postgres`."""
    if os.geteuid():
        return []
    try:
        pwd.getpwnam("postgres")
    except KeyError:
        pytest.skip("the tests run as root and there is no user postgres to run the server as")
    return ["runuser", "-u", "postgres", "--"]


MEMORY, ROOM_BYTES = Path("/dev/shm"), 2 << 30
"""Where Linux keeps files in memory, and the room that must be there: the databases of a run were 611 MB."""


def _folder() -> Path:
    """In memory where there is room: a database is three hundred files, which a disk took 0.3 s to make and as long to remove."""
    roomy = MEMORY.is_dir() and os.access(MEMORY, os.W_OK) and shutil.disk_usage(MEMORY).free > ROOM_BYTES
    return Path(tempfile.mkdtemp(prefix="beamslot-pg-", dir=MEMORY if roomy else None))


def _free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


@contextmanager
def postgres_server() -> Iterator[str]:
    """URL of an empty database on a server that ends with the block; skips where no server is installed."""
    binaries = _binaries()
    if binaries is None:
        pytest.skip("initdb is missing: install postgresql")
    user = _as_user()
    folder = _folder()
    if user:
        shutil.chown(folder, "postgres")
    data, port = folder / "data", _free_port()
    run = {"check": True, "capture_output": True, "cwd": folder}
    subprocess.run([*user, binaries / "initdb", "-D", data, "-A", "trust", "-U", "tester", "-E", "UTF8", "-N"], **run)
    options = f"-p {port} -k {folder} -c listen_addresses=127.0.0.1 -c fsync=off"
    control = [*user, binaries / "pg_ctl", "-D", data, "-w"]
    try:
        subprocess.run([*control, "-l", folder / "log", "-o", options, "start"], **run)
        yield f"postgresql+psycopg://tester@127.0.0.1:{port}/postgres"
    finally:
        subprocess.run([*control, "-m", "immediate", "stop"], capture_output=True, cwd=folder)
        subprocess.Popen(["rm", "-rf", folder], start_new_session=True)  # nobody waits for it


def new_database(server: str) -> str:
    """URL of another, empty database on the server."""
    name = f"mill_{uuid4().hex[:12]}"
    engine = create_engine(server, isolation_level="AUTOCOMMIT")
    with engine.connect() as connection:
        connection.execute(text(f"CREATE DATABASE {name}"))
    engine.dispose()
    return make_url(server).set(database=name).render_as_string(hide_password=False)
