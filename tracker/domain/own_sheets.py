"""Sheets and columns that we write beside the tables; a reader passes over them. A sheet is known by its first cell."""

from collections.abc import Mapping

FINDINGS_TITLE = "Findings in this workbook by beamslot"
"""List of findings in a marked copy, in English."""
OWN_TITLES = (
    FINDINGS_TITLE, "Befunde in dieser Arbeitsmappe von beamslot",
    "How to fill in this workbook of beamslot", "Anleitung zu dieser Arbeitsmappe von beamslot",
    "Cards in this workbook of beamslot", "Karten in dieser Arbeitsmappe von beamslot", "Cards of beamslot in this workbook",
    "Findings of beamslot in this workbook",
)  # fmt: skip
"""The findings, the guide of templates and exports, the list of cards to fill in, in each language in which we
write them; the last two are how cards and findings were headed before."""

REMARKS: dict[str, tuple[tuple[str, ...], ...]] = {
    "terms": (("Default", "Unit", "Meaning", "Where it acts"), ("Von Anfang an", "Einheit", "Bedeutung", "Wirkt auf")),
    "receipts": (
        ("Description", "Asked for", "Asked for by", "Price", "Total price"),
        ("Beschreibung", "Erbeten", "Erbeten bis", "Preis", "Gesamtpreis"),
    ),
}
"""Table → headings, without what stands in brackets, of columns that we write beside its own for a person to read; in each
language."""


def remarks_among(table: str, headings: Mapping[int, str]) -> set[int]:
    """The columns of remarks; none unless all of them stand there, since only then the sheet was written by us."""
    found = {column: text.partition(" (")[0].strip() for column, text in headings.items()}
    there = set(found.values())
    ours = next((each for each in REMARKS.get(table, ()) if there.issuperset(each)), ())
    return {column for column, text in found.items() if text in ours}
