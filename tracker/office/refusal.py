"""How a whole file is refused: one line, and the same as a finding."""

from pathlib import Path
from typing import NoReturn

from tracker.domain.findings import Finding, Severity
from tracker.errors import InputRefused, Message


def refuse(
    path: Path, code: str, /, *, sheet: str = "", cell: str = "", full_path: bool = False, **params: object
) -> NoReturn:
    """Raise `InputRefused` with one finding; `params` are those of the code in the catalogue."""
    file = str(path) if full_path else path.name
    where = " ".join(part for part in (file, sheet and f"sheet {sheet}", cell) if part)
    finding = Finding(code, Severity.REFUSED, file=file, sheet=sheet, cell=cell, params=params)
    raise InputRefused("cannot-be-read", (finding,), file=path.name, where=where, why=Message(code, params))
