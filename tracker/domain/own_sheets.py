"""Sheets that we write beside the tables. Each is known by the text of its first cell, and a reader passes over it."""

FINDINGS_TITLE = "Findings of beamslot in this workbook"
"""List of findings in a marked copy."""
GUIDE_TITLE = "How to fill in this workbook of beamslot"
"""Guide in templates and exports. A workbook that has it was written by us: its headings are exactly ours."""
OWN_TITLES = (FINDINGS_TITLE, GUIDE_TITLE)
