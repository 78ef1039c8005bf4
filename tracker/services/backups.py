"""Backups that a server keeps: one a night, or when somebody asks, the newest few in one folder.

That one was made is an act (`acts`), with the file, the moment by the computer's clock and the last hash of history: whoever holds
the file can tell later whether what was then is still so.
"""

import logging
import os
import re
from dataclasses import dataclass
from datetime import datetime, time, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

from tracker.errors import Message, TrackerError, message
from tracker.services.backup import backup
from tracker.services.context import Context
from tracker.services.people.permissions import May
from tracker.store.people import last_act
from tracker.words import ENGLISH

FOLDER, KEEP = "BEAMSLOT_BACKUP_TO", "BEAMSLOT_BACKUP_KEEP"
"""By which the screens of a server know where it keeps backups, and how many."""
USUAL = 14
NIGHT = time(2)
"""In the mill's zone; from then on the backup of a day is due."""
OLD = timedelta(days=2)
STAMP = "%Y-%m-%d-%H%M%S"
log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True)
class KeptBackup:
    file: str
    """Its name."""
    at: datetime
    """By the computer's clock, in the mill's zone."""
    last_hash: str
    """Of history, up to the act that names the backup."""
    who: str
    rows: int

    @property
    def message(self) -> Message:
        return message("backup-kept", file=self.file, rows=self.rows, hash=self.last_hash)


@dataclass(frozen=True, slots=True)
class BackupFolder:
    path: Path
    keep: int = USUAL
    """So many of the newest; older ones that were made here are removed."""

    def __post_init__(self) -> None:
        """TrackerError where it is no folder that can be written to."""
        if not (self.path.is_dir() and os.access(self.path, os.W_OK)):
            raise TrackerError("backup-folder", folder=str(self.path))

    def files(self, mill: str) -> list[Path]:
        """Backups of a mill that were made here, the newest first."""
        named = re.compile(rf"{re.escape(mill)}-\d{{4}}-\d\d-\d\d-\d{{6}}\.zip")
        return sorted((file for file in self.path.iterdir() if named.fullmatch(file.name)), reverse=True)


def backup_folder() -> BackupFolder | None:
    """Where the server of this process keeps backups; None where it keeps none. TrackerError where the folder has gone."""
    told = os.environ.get(FOLDER)
    return BackupFolder(Path(told), int(os.environ.get(KEEP, USUAL))) if told else None


def keep_backup(context: Context, folder: BackupFolder) -> KeptBackup:
    """Back up into the folder under a name of this moment, say so in the account of who did what, and remove the oldest beyond
    what is kept. TrackerError where it cannot be written: then nothing is removed."""
    context.require(May.BACK_UP)
    at, mill = _now(context), context.store.place.title
    made = backup(context, folder.path / f"{mill}-{at:{STAMP}}.zip").manifest
    said = {"backup": f"{mill}-{at:{STAMP}}.zip", "at": at.isoformat(), "last_hash": made.last_hash, "rows": made.rows}
    with context.unit_of_work(May.BACK_UP, said) as uow:
        uow.commit()
    for old in folder.files(mill)[folder.keep :]:
        try:
            old.unlink()
        except OSError as error:
            log.warning(ENGLISH.line(message("backup-stays", file=str(old), why=error.strerror)))
    return KeptBackup(said["backup"], at, made.last_hash, context.actor.name, made.rows)


def last_backup(context: Context) -> KeptBackup | None:
    """The newest that a server kept, wherever; None where it never did."""
    with context.reading() as uow:
        act, zone = last_act(uow.session, May.BACK_UP.value), uow.zone
    if act is None:
        return None
    of = act.details
    return KeptBackup(
        of["backup"], datetime.fromisoformat(of["at"]).astimezone(zone), of["last_hash"], act.who, of["rows"]
    )


def old_backup(context: Context) -> Message | None:
    """What is to be said where a mill that keeps backups has none of the last two days; else None."""
    last = last_backup(context)
    if last and context.computers_now() - last.at > OLD:
        return message("backup-old", at=last.at)
    if last is None and os.environ.get(FOLDER):
        return message("backup-none")
    return None


def is_due(context: Context, folder: BackupFolder) -> bool:
    """Whether none was made in the folder since the last night began: so one is made at once where the server was off at night."""
    at = _now(context)
    night = datetime.combine(at.date(), NIGHT, at.tzinfo)
    night -= timedelta(days=at < night)
    newest = next(iter(folder.files(context.store.place.title)), None)
    return newest is None or datetime.strptime(newest.stem[-17:], STAMP).replace(tzinfo=at.tzinfo) < night


def _now(context: Context) -> datetime:
    with context.reading() as uow:
        zone: ZoneInfo = uow.zone
    return context.computers_now().astimezone(zone)
