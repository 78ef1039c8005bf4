"""What a load read, found and changed."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass, field
from typing import Any

from tracker.domain.account import SheetAccount
from tracker.domain.findings import Finding, Severity
from tracker.domain.rows import Change, RowCounts, RowKey, SourceTable
from tracker.domain.tables import TABLES
from tracker.errors import Message, message
from tracker.intake.rows.new_looms import LOOKS_LIKE_KNOWN
from tracker.scope.difference import MethodDifference
from tracker.services.loading.accounting import account_message, mapping_messages
from tracker.services.loading.told_changes import row_named, told
from tracker.store.rows import plain
from tracker.words import ENGLISH, Speaker
from tracker.words.findings import in_words

MOST_CHANGES = 20
"""Changed values that are told one by one."""


@dataclass(frozen=True, slots=True)
class LoadedTable:
    source: SourceTable
    rows: RowCounts


@dataclass(frozen=True)
class LoadReport:
    """What a load read, found and changed, or would have."""

    tables: tuple[LoadedTable, ...] = ()
    findings: tuple[Finding, ...] = ()
    changes: tuple[Change, ...] = ()
    missing: Mapping[str, Sequence[RowKey]] = field(default_factory=dict)
    """Table → rows that the database has and the files have not; they stay."""
    method: MethodDifference | None = None
    """What a new method version changes; None where the load brings no new one."""
    method_version: int | None = None
    refusal: Message | None = None
    """Why nothing was written; None where the load went through. `tracker/words/findings` says it in one line."""
    written: bool = False
    dry_run: bool = False
    said: tuple[Message, ...] = ()
    """What else a person should know."""
    account: tuple[SheetAccount, ...] = ()
    """What became of every filled cell of each sheet."""
    retired: Mapping[str, Mapping[RowKey, Mapping[str, Any]]] = field(default_factory=dict)
    """Table → rows that have ended, as a sheet that is the whole truth has them no longer, with their values."""

    @property
    def listed(self) -> tuple[Finding, ...]:
        """The findings to be shown beside the refusal: what stands against the load first, less the one that the refusal
        quotes."""
        order = list(Severity)
        quoted = self.quoted
        shown = [finding for finding in self.findings if finding is not quoted]
        return tuple(sorted(shown, key=lambda finding: -order.index(finding.severity)))

    @property
    def quoted(self) -> Finding | None:
        """The one finding that stands against the load, which the refusal quotes."""
        standing = against(self.findings) if self.refusal else []
        return standing[0] if len(standing) == 1 else None

    @property
    def questions(self) -> tuple[Finding, ...]:
        return tuple(f for f in self.findings if f.severity is Severity.DOUBT)

    @property
    def alike(self) -> tuple[Finding, ...]:
        """New looms whose number looks like that of a loom in the database."""
        return tuple(f for f in self.findings if f.code == LOOKS_LIKE_KNOWN)

    @property
    def refused(self) -> tuple[Finding, ...]:
        return tuple(f for f in self.findings if f.severity is Severity.REFUSED)

    def record(self, speaker: Speaker = ENGLISH) -> dict[str, Any]:
        """As `--json` writes it."""
        return {
            "tables": [_table_record(table) for table in self.tables],
            "findings": [in_words(finding, speaker).record() for finding in self.findings],
            "changes": [
                {"table": c.table, "key": plain(c.key), "field": c.field, "old": plain(c.old), "new": plain(c.new)}
                for c in self.changes
            ],
            "account": [account.record() for account in self.account],
            "missing": {table: [plain(key) for key in keys] for table, keys in self.missing.items()},
            "retired": {table: [plain(values) for values in rows.values()] for table, rows in self.retired.items()},
            "written": self.written,
        }

    def mapping(self) -> list[Message]:
        """What each column was taken for, and how many cells of each sheet went where."""
        sources = [table.source for table in self.tables]
        return [*mapping_messages(sources, self.findings), *map(account_message, self.account)]

    def messages(self) -> list[Message]:
        """What changed; of a refused load only what was done beside it."""
        if self.refusal:
            return list(self.said)
        changed = [*self._values(), *self._retired(), *self._missing(), *self._method()]
        return [*changed, *self.said, self._sum()]

    def _values(self) -> Iterator[Message]:
        changes = [change for change in self.changes if change.field]
        yield from (told(change).says for change in changes[:MOST_CHANGES])
        if len(changes) > MOST_CHANGES:
            yield message("more-values-changed", many=len(changes) - MOST_CHANGES)

    def _retired(self) -> Iterator[Message]:
        done = "yes" if self.written else "no"
        for table, rows in self.retired.items():
            for key in rows:
                yield message("row-retired", sheet=TABLES[table].named, row=row_named(table, key), done=done)

    def _missing(self) -> Iterator[Message]:
        for table, keys in self.missing.items():
            yield message("rows-not-in-files", sheet=TABLES[table].named, many=len(keys))

    def _method(self) -> Iterator[Message]:
        if not self.method_version:
            return
        first = self.method_version == 1 or self.method is None
        changed = {key for change in self.method.looms for key in change.looms} if self.method else set()
        yield message(
            "method-version-first" if first else "method-version", version=self.method_version, looms=len(changed)
        )
        if self.method and not first:
            yield from (message("method-changes", what=what) for what in self.method.messages())

    def _sum(self) -> Message:
        added, changed = (sum(getattr(t.rows, kind) for t in self.tables) for kind in ("added", "changed"))
        code = "loaded" if self.written else "would-load"
        return message(code, added=added, changed=changed, retired=sum(map(len, self.retired.values())))


def against(findings: Sequence[Finding]) -> list[Finding]:
    """What stands against writing: the questions, which come first, or where there are none the refusals."""
    for severity in (Severity.DOUBT, Severity.REFUSED):
        if found := [finding for finding in findings if finding.severity is severity]:
            return found
    return []


def where(finding: Finding) -> str:
    place = " ".join(part for part in (finding.file, finding.sheet, finding.cell) if part)
    return place + (f" ({finding.heading})" if finding.heading else "")


def _table_record(table: LoadedTable) -> dict[str, Any]:
    source = table.source
    return {
        "file": source.file,
        "sheet": source.sheet,
        "table": source.table,
        "heading_row": source.heading_row,
        "columns": [
            {"heading": c.heading, "cell": c.cell, "field": c.field, "unit": c.unit, "certainty": c.certainty}
            for c in source.columns
        ],
        "rows": asdict(table.rows),
    }
