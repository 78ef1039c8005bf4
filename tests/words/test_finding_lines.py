"""A finding in one line: where it is told, and no gap where it is of no cell."""

from tracker.domain.findings import Severity
from tracker.words.findings import FindingInWords


def line(**where: str) -> str:
    said = {
        "file": "",
        "sheet": "",
        "cell": "",
        "heading": "",
        "raw": "",
        "understood": "",
        "hint": "Load them.",
    } | where
    return FindingInWords("no-crews", Severity.NOTE, message="No crews are loaded.", **said).line()


def test_where_it_is_stands_before_what_was_found():
    assert (
        line(file="mill.xlsx", sheet="Crews", cell="A2") == "note: mill.xlsx Crews A2: No crews are loaded. Load them."
    )


def test_what_is_of_no_file_names_none():
    assert line() == "note: No crews are loaded. Load them."
    assert line(hint="") == "note: No crews are loaded."
