"""A file that is being written is held against others, whatever else this process asks of it meanwhile."""

import subprocess
import sys

import pytest

from tracker.store import open_store
from tracker.store.opening import is_new
from tracker.store.place import find

ANOTHER = """
import sqlite3, sys
reader = sqlite3.connect(sys.argv[1])
reader.execute("SELECT count(*) FROM looms").fetchone()
reader.close()  # takes itself for the last one here? then it puts the write-ahead log away
writer = sqlite3.connect(sys.argv[1], timeout=0.2, isolation_level=None)
try:
    writer.execute("BEGIN IMMEDIATE")
except sqlite3.OperationalError as error:
    print(error)
else:
    print("writes beside the other")
"""


@pytest.mark.parametrize("ask", [find, is_new, lambda db: open_store(db).reading().__enter__().session.close()])
def test_nobody_else_writes_although_the_file_is_looked_at_meanwhile(tmp_path, ask):
    db = tmp_path / "mill.db"
    open_store(db, make=True)
    with open_store(db).unit_of_work("planner"):
        ask(db)
        other = subprocess.run([sys.executable, "-c", ANOTHER, str(db)], capture_output=True, text=True, timeout=60)
    assert other.stdout.strip() == "database is locked", other.stderr
