"""The reference plan that a load names must have been published."""

from collections.abc import Collection, Iterator, Sequence

from tracker.domain.findings import Finding, Severity
from tracker.domain.rows import SourceTable, TypedRow


def reference_findings(
    rows: Sequence[TypedRow], tables: Sequence[SourceTable], published: Collection[int]
) -> Iterator[Finding]:
    """A finding for each row of the term that names another number than those of the published plans."""
    for row in rows:
        source, asked = tables[row.source], row.values["value"]
        if asked not in published:
            yield Finding(
                "reference-not-there", Severity.REFUSED, file=source.file, sheet=source.sheet,
                cell=source.cell_of("value", row.number), heading="Value", raw=str(asked), understood=str(asked),
                rows=((row.source, row.number),),
                params={"asked": asked, "numbers": sorted(published) or None},
            )  # fmt: skip
