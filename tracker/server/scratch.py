"""The folder for temporary files of one server, uploads above all, and what servers that were killed left of theirs."""

import os
import re
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from tracker.server.port import is_free

PREFIX = "beamslot-screens-"
NAMED = re.compile(rf"{PREFIX}(\d+)-")


@contextmanager
def scratch(port: int) -> Iterator[Path]:
    """A folder in which everything temporary of this process goes until the end; `port` is held by this process."""
    clean(port)
    before = tempfile.tempdir
    folder = Path(tempfile.mkdtemp(prefix=f"{PREFIX}{port}-"))
    tempfile.tempdir = str(folder)
    try:
        yield folder
    finally:
        tempfile.tempdir = before
        shutil.rmtree(folder, ignore_errors=True)


def clean(port: int) -> None:
    """Remove folders of servers that are no more: nobody but this process holds `port`, and of others nobody holds theirs."""
    for folder in Path(tempfile.gettempdir()).glob(f"{PREFIX}*"):
        named = NAMED.match(folder.name)
        if named and _is_ours(folder) and (int(named[1]) == port or is_free(int(named[1]))):
            shutil.rmtree(folder, ignore_errors=True)


def _is_ours(folder: Path) -> bool:
    """A real folder of this user: the temporary folder may be shared by all users of the machine."""
    return folder.is_dir() and not folder.is_symlink() and (os.name != "posix" or folder.stat().st_uid == os.getuid())
