"""Decide whether the method sheets of a load become the method in force."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from tracker.domain.findings import Finding
from tracker.domain.method import Alternative, Check, KitLine, Method, Operation, Row, Setpoint
from tracker.domain.mill import Mill
from tracker.domain.rows import SourceTable, TypedRow
from tracker.domain.tables import METHOD_TABLES
from tracker.scope.difference import MethodDifference, method_difference, same_rows
from tracker.scope.review import answered, refuses, review, settle
from tracker.scope.rules import as_cell

PARTS: dict[str, tuple[str, Any]] = {
    "operations": ("operations", Operation), "kit_lines": ("kit_lines", KitLine), "choices": ("alternatives", Alternative),
    "setpoints": ("setpoints", Setpoint), "checks": ("checks", Check),
}  # fmt: skip
"""Table → field of `Method` and what its rows are."""


@dataclass(frozen=True)
class MethodDecision:
    method: Method
    """As the load would have it; the one in force where the load changes nothing."""
    changed: bool
    """Whether its rows say something else than the method in force: only then is there a new version."""
    findings: tuple[Finding, ...] = ()
    difference: MethodDifference | None = None
    """What changes for which looms; None where nothing changes or the method is refused."""
    answers_used: Mapping[str, str] = field(default_factory=dict)
    """Heading → answer that settled a doubt, to be remembered."""

    @property
    def accepted(self) -> bool:
        return not refuses(self.findings)


def load_method(
    mill: Mill,
    rows: Mapping[str, Sequence[TypedRow]],
    sources: Sequence[SourceTable],
    answers: Mapping[str, str] | None = None,
) -> MethodDecision:
    """Review the method that a load brings.

    `mill` is the mill as the load leaves it (its looms, parts, tools, crews), with the method still in force; `rows` are
    the method's tables among the load; a table that it does not bring keeps its rows. `answers`: heading → answer, given
    now or remembered.
    """
    method = method_of_rows(rows, sources, mill.method)
    if mill.method.version and same_rows(mill.method, method):
        return MethodDecision(mill.method, changed=False)
    found = review(method, mill.looms, mill.parts, mill.tools, mill.crews, mill.terms)
    files = {source.sheet: source.file for source in sources if source.table in METHOD_TABLES}
    findings = settle((replace(one, file=files.get(one.sheet, "")) for one in found), answers or {})
    difference = None if refuses(findings) else method_difference(mill.method, method, mill)
    return MethodDecision(method, True, findings, difference, answered(findings))


def method_of_rows(rows: Mapping[str, Sequence[TypedRow]], sources: Sequence[SourceTable], current: Method) -> Method:
    """The method that rows of its tables make, one version on; tables that are not there are taken from `current`."""
    given = {
        field: tuple(_method_row(row, sources, make) for row in rows[table])
        for table, (field, make) in PARTS.items()
        if table in rows
    }
    return replace(current, version=current.version + 1, **given)


def _method_row(row: TypedRow, sources: Sequence[SourceTable], make: Any) -> Any:
    source = sources[row.source]
    columns = {
        column.field or column.heading: "".join(sign for sign in column.cell if sign.isalpha())
        for column in source.columns
        if column.kept
    }
    given = {field: value for field, value in row.values.items() if value is not None}
    conditions = {heading: as_cell(value) for heading, value in row.kept.items() if as_cell(value).strip()}
    return make(**given, conditions=conditions, row=Row(source.sheet, row.number, columns))
