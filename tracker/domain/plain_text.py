"""Text that a spreadsheet would run as a formula, and how a delimited file keeps it text."""

RUN_AS_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n")
"""Beginnings that a spreadsheet may run as a formula (OWASP, CSV Injection, seen; the line feed included there)."""


def is_risky(value: object) -> bool:
    """True for text that a spreadsheet might run as a formula."""
    return isinstance(value, str) and value.startswith(RUN_AS_FORMULA)


def guarded(text: str) -> str:
    """The text as a field of a delimited file: with an apostrophe before it where it might run.

    Text that itself begins with an apostrophe and such a character gets one more, so that `unguarded` gives any text back.
    """
    return "'" + text if text.lstrip("'").startswith(RUN_AS_FORMULA) else text


def unguarded(field: str) -> str:
    """The text that `guarded` made the field of; other fields as they are (`'tis`, `'90`)."""
    return field[1:] if field.startswith("'") and field.lstrip("'").startswith(RUN_AS_FORMULA) else field
