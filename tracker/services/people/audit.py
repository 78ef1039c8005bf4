"""The account of who did what: its newest lines, all of it as a workbook, and whether it reads as it was written."""

from dataclasses import dataclass
from datetime import datetime
from itertools import islice
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.people import Deed, Role
from tracker.domain.words import fold
from tracker.errors import DataError, Message, message
from tracker.export.changes_sheet import changes_sheet
from tracker.export.wording import Wording
from tracker.office.writing.sheets import TidySheet, content, tables_book, write_tables
from tracker.services.context import Context
from tracker.services.looms import find_loom
from tracker.services.people.permissions import May
from tracker.services.plans.plan_record import in_json
from tracker.services.undoing.kinds import kept_kind
from tracker.store import UnitOfWork
from tracker.store.deeds import Acts, read_deeds, read_loads
from tracker.store.history import last_hash, sealed_at, touched
from tracker.store.undoing import undone_by
from tracker.words import ENGLISH, Speaker

NAME = "changes.xlsx"
NEWEST, MOST = 200, 100_000
"""Lines that are shown, and those that a workbook takes."""


@dataclass(frozen=True, slots=True)
class Which:
    """Whose deeds, and of what."""

    loom: str | None = None
    hall: str | None = None
    who: str | None = None
    """Who wrote it down, or is told to have done it; without case and accents."""
    since: datetime | None = None


EVERYTHING = Which()


@dataclass(frozen=True, slots=True)
class Deeds:
    deeds: tuple[Deed, ...]
    """The newest first."""
    more: bool
    """Whether older ones were left out."""
    zone: ZoneInfo
    undoable: frozenset[int] = frozenset()
    """Numbers of acts among them that can be undone, as far as nobody changed since what they did."""

    def record(self) -> list[dict[str, Any]]:
        """As `--json` writes it."""
        return [
            {"at": d.at.astimezone(self.zone).isoformat(timespec="seconds"), "who": d.who, "told": d.told or None,
             "roles": list(d.roles), "through": d.through or None, "what": in_json(d.what), "table": d.table, "number": d.number,
             "act": d.act}
            for d in self.deeds
        ]  # fmt: skip


def deeds(context: Context, which: Which = EVERYTHING, most: int = NEWEST) -> Deeds:
    """What was done, the newest first, at most so many lines. DataError for a loom that there is not."""
    with context.reading() as uow:
        loom = find_loom(uow.mill(), which.loom, which.hall) if which.loom else None
        who = fold(which.who) if which.who else None
        acts = Acts(uow.session)
        read = read_deeds(uow.session, acts, loom, which.since)
        found = list(islice((d for d in read if who is None or who in (fold(d.who), fold(d.told))), most + 1))
        return Deeds(tuple(found[:most]), len(found) > most, uow.zone, _undoable(uow, acts))


def loads(context: Context) -> Deeds:
    """The loads, and what was typed in like one, the newest first."""
    with context.reading() as uow:
        acts = Acts(uow.session)
        found = list(islice(read_loads(uow.session, acts), NEWEST + 1))
        return Deeds(tuple(found[:NEWEST]), len(found) > NEWEST, uow.zone, _undoable(uow, acts))


def _undoable(uow: UnitOfWork, acts: Acts) -> frozenset[int]:
    undone = undone_by(uow.session, May.UNDO)
    return frozenset(
        n for n, act in acts.acts.items() if n not in undone and not kept_kind(act, acts.tables.get(n, ()))
    )


def write_deeds(context: Context, target: Path, which: Which = EVERYTHING) -> Deeds:
    """Write them to a workbook (.xlsx)."""
    found = deeds(context, which, MOST)
    write_tables(target, [_sheet(found, context.language)])
    return found


def deeds_file(context: Context, which: Which = EVERYTHING) -> bytes:
    """The same, for a download."""
    return content(tables_book([_sheet(deeds(context, which, MOST), context.language)]), NAME)


def roles_said(deed: Deed, speaker: Speaker = ENGLISH) -> str:
    """The roles that somebody acted in, for a person."""
    every = len(deed.roles) == len(Role)
    return speaker.say(message("every-role")) if every else ", ".join(speaker.word(Role(role)) for role in deed.roles)


def _sheet(found: Deeds, language: str) -> TidySheet:
    write = Wording(language, found.zone)
    speaker = write.speaker
    rows = [
        [
            d.at.astimezone(found.zone).replace(tzinfo=None),
            d.who,
            d.told,
            roles_said(d, speaker),
            write.say("changes-through", by=d.through) if d.through else "",
            speaker.say(d.what),
        ]
        for d in found.deeds
    ]
    said = [write.say("deeds-cut", most=MOST)] if found.more else []
    return changes_sheet(rows, said, write)


@dataclass(frozen=True, slots=True)
class Checked:
    last_hash: str
    """Of the newest seal; empty where nothing was written yet."""
    seals: int
    known_at: datetime | None
    """When the seal was made whose hash was asked for."""
    zone: ZoneInfo

    @property
    def message(self) -> Message:
        at = self.known_at.astimezone(self.zone) if self.known_at else None
        return message("history-whole", seals=self.seals, hash=self.last_hash or None, known_at=at)

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        known = self.known_at.isoformat() if self.known_at else None
        return {"whole": True, "seals": self.seals, "last_hash": self.last_hash, "known_at": known}


def check_history(context: Context, known: str | None = None) -> Checked:
    """Whether history reads as it was written, and still begins with what stood when its last hash was `known`: a backup's
    manifest has it. DataError where something was touched, or where that hash is none of this history."""
    with context.reading() as uow:
        connection = uow.session.connection()
        if found := touched(connection):
            raise DataError("audit-touched", touched=found)
        seals = sealed_at(connection)
        at = seals.get((known or "").strip().lower())
        if known and at is None:
            raise DataError("hash-unknown", hash=known.strip())
        return Checked(last_hash(connection), len(seals), at, uow.zone)
