"""Sheets and columns that we write beside the tables; a reader passes over them. A sheet is known by its first cell."""

from collections.abc import Mapping

FINDINGS_TITLE = "Findings of beamslot in this workbook"
"""List of findings in a marked copy."""
GUIDE_TITLE = "How to fill in this workbook of beamslot"
"""Guide in templates and exports. A workbook that has it was written by us: its headings are exactly ours."""
CARDS_TITLE = "Cards of beamslot in this workbook"
"""List of the cards in a workbook to fill in."""
OWN_TITLES = (FINDINGS_TITLE, GUIDE_TITLE, CARDS_TITLE)

REMARKS: dict[str, tuple[str, ...]] = {
    "terms": ("Default", "Unit", "Meaning", "Where it acts"),
    "receipts": ("Description", "Asked for", "Asked for by", "Price", "Total price"),
}
"""Table → headings, without what stands in brackets, of columns that we write beside its own for a person to read."""


def remarks_among(table: str, headings: Mapping[int, str]) -> set[int]:
    """The columns of remarks; none unless all of them stand there, since only then the sheet was written by us."""
    ours = REMARKS.get(table, ())
    found = {column: text.partition(" (")[0].strip() for column, text in headings.items()}
    return {column for column, text in found.items() if text in ours} if set(ours) <= set(found.values()) else set()
