"""Put everything that the database holds into a file, and bring it back into a new database."""

from dataclasses import dataclass
from pathlib import Path
from typing import Any

from tracker.errors import Message, message
from tracker.office import files
from tracker.services.context import Context
from tracker.services.people.permissions import May
from tracker.store.backup import Manifest, make_backup
from tracker.store.history import last_hash
from tracker.store.migrate import versions
from tracker.store.restore import read_backup, restore_into


@dataclass(frozen=True, slots=True)
class BackupReport:
    path: Path
    manifest: Manifest

    @property
    def holds(self) -> Message:
        return message("backup-holds", rows=self.manifest.rows, tables=len(self.manifest.parts))

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        rows = {Path(name).stem: part.rows for name, part in self.manifest.parts.items()}
        return {"file": str(self.path), "made_at": self.manifest.made_at, "schema": self.manifest.schema,
                "last_hash": self.manifest.last_hash, "rows": rows}  # fmt: skip


def backup(context: Context, target: Path) -> BackupReport:
    """Back up a database into a file, in one consistent view and while others work."""
    context.require(May.BACK_UP)
    with context.reading() as uow:
        connection = uow.session.connection()
        content, manifest = make_backup(connection, versions()[-1], context.now(), last_hash(connection))
    files.write(target, content)
    return BackupReport(target, manifest)


def restore(context: Context, source: Path) -> BackupReport:
    """Restore a backup into a new database, once all of the file has been checked.

    Raises InputRefused for a file that is no whole backup and TrackerError where there is a database already.
    """
    context.require(May.BACK_UP)
    found = read_backup(source)
    restore_into(context.database, found)
    return BackupReport(source, found.manifest)
