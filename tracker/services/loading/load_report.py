"""What a load read, found and changed, for a program and for a person."""

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, field
from typing import Any

from tracker.domain.account import SheetAccount
from tracker.domain.findings import Finding, Severity
from tracker.domain.formats import count
from tracker.domain.rows import Change, RowCounts, RowKey, SourceTable
from tracker.domain.tables import TABLES
from tracker.errors import Message, message
from tracker.intake.rows.new_looms import LOOKS_LIKE_KNOWN
from tracker.scope.difference import MethodDifference
from tracker.services.loading.accounting import account_line, mapping_lines
from tracker.services.loading.change_words import row_words, told
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
    """Why nothing was written; None where the load went through. `refusal_line` says it."""
    written: bool = False
    dry_run: bool = False
    said: tuple[str, ...] = ()
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
        quoted = self._quoted
        shown = [finding for finding in self.findings if finding is not quoted]
        return tuple(sorted(shown, key=lambda finding: -order.index(finding.severity)))

    @property
    def _quoted(self) -> Finding | None:
        """The one finding that stands against the load, which the refusal quotes."""
        standing = against(self.findings) if self.refusal else []
        return standing[0] if len(standing) == 1 else None

    def refusal_line(self, speaker: Speaker = ENGLISH) -> str:
        """Why nothing was written, in one line; empty where the load went through. A single reason stands in it whole; of
        several it says how many and where."""
        if self.refusal is None:
            return ""
        quoted = in_words(self._quoted, speaker) if self._quoted else None
        what = f": {quoted.message} {quoted.hint}".rstrip() if quoted else ""
        return speaker.line(message(self.refusal.code, **{**self.refusal.params, "what": what}))

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

    def mapping_lines(self, speaker: Speaker = ENGLISH) -> list[str]:
        """What each column was taken for, and how many cells of each sheet went where."""
        sources = [table.source for table in self.tables]
        return [*mapping_lines(sources, self.findings, speaker), *(account_line(one, speaker) for one in self.account)]

    def lines(self) -> list[str]:
        """What changed, in a few lines; of a refused load only what was done beside it."""
        if self.refusal:
            return list(self.said)
        changed = [*self._value_lines(), *self._retired_lines(), *self._missing_lines(), *self._method_lines()]
        return [*changed, *self.said, self._sum_line()]

    def _value_lines(self) -> list[str]:
        changes = [change for change in self.changes if change.field]
        more = len(changes) - MOST_CHANGES
        cut = [f"… and {more} more values changed; all of them with --json FILE"] if more > 0 else []
        return [told(change).line() for change in changes[:MOST_CHANGES]] + cut

    def _retired_lines(self) -> list[str]:
        done = "" if self.written else "would be "
        return [
            f"{TABLES[table].sheet} {row_words(table, key)}: {done}retired; the list has it no longer."
            for table, rows in self.retired.items()
            for key in rows
        ]

    def _missing_lines(self) -> list[str]:
        return [
            f"{TABLES[table].sheet}: {count(len(keys), 'row')} of the database not in these files; they stay."
            for table, keys in self.missing.items()
        ]

    def _method_lines(self) -> list[str]:
        if not self.method_version:
            return []
        if self.method_version == 1 or self.method is None:
            return [f"Method version {self.method_version} is the first." if self.method_version == 1 else
                    f"Method version {self.method_version}."]  # fmt: skip
        changed = len({key for change in self.method.looms for key in change.looms})
        says = f"changes the scope of {count(changed, 'loom')}" if changed else "changes the scope of no loom"
        return [
            f"Method version {self.method_version} {says}:",
            *(f"  {ENGLISH.line(each)}" for each in self.method.messages()),
        ]

    def _sum_line(self) -> str:
        added, changed = (sum(getattr(t.rows, kind) for t in self.tables) for kind in ("added", "changed"))
        ended = sum(map(len, self.retired.values()))
        retired = f", {ended} retired" if ended else ""
        if not self.written:
            return f"Would load: {count(added, 'row')} added, {changed} changed{retired}. Nothing was written."
        unchanged = " Nothing had changed." if not added and not changed and not ended else ""
        return f"Loaded: {count(added, 'row')} added, {changed} changed{retired}.{unchanged}"


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
