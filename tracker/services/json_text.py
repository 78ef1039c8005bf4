"""What commands and the interface write for a program: one text for one record."""

import json
from typing import Any


def json_text(record: Any) -> str:
    """The record as JSON; moments, days and times as ISO 8601, sets in order."""
    return json.dumps(record, ensure_ascii=False, indent=1, default=_plain, allow_nan=False)


def _plain(value: Any) -> Any:
    if hasattr(value, "isoformat"):
        return value.isoformat()
    return sorted(value) if isinstance(value, frozenset | set) else str(value)
