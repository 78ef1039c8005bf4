"""Backups by night while a server runs."""

import logging
import os
from collections.abc import Iterator
from contextlib import contextmanager
from threading import Event, Thread

from tracker.errors import TrackerError
from tracker.services.backups import FOLDER, KEEP, BackupFolder, is_due, keep_backup
from tracker.services.context import Context
from tracker.words import ENGLISH

LOOKED_S, AGAIN_S = 60, 600
"""How often it is looked whether one is due, and after how long it is tried again."""
log = logging.getLogger(__name__)


@contextmanager
def nightly(context: Context, folder: BackupFolder) -> Iterator[None]:
    """Within the block a backup is kept every night, and the screens know where."""
    os.environ |= {FOLDER: str(folder.path.absolute()), KEEP: str(folder.keep)}
    over = Event()
    thread = Thread(target=_watch, args=(context, folder, over), name="backups", daemon=True)
    thread.start()
    try:
        yield
    finally:
        over.set()
        thread.join(AGAIN_S)
        del os.environ[FOLDER], os.environ[KEEP]


def _watch(context: Context, folder: BackupFolder, over: Event) -> None:
    wait_s = 1.0  # the server may have to make the database first
    while not over.wait(wait_s):
        wait_s = LOOKED_S if look(context, folder) else AGAIN_S


def look(context: Context, folder: BackupFolder) -> bool:
    """Make one where it is due; False where that failed, which the log says."""
    try:
        if not context.is_missing and is_due(context, folder):
            keep_backup(context, folder)
    except (TrackerError, OSError) as error:
        log.error("no backup: %s", ENGLISH.line(error) if isinstance(error, TrackerError) else error)
        return False
    return True
