"""How a whole file is refused: one line, and the same as a finding."""

from pathlib import Path
from typing import NoReturn

from tracker.domain.findings import Finding, Severity
from tracker.errors import InputRefused


def refuse(
    path: Path, code: str, what: str, to_do: str, *, sheet: str = "", cell: str = "", full_path: bool = False
) -> NoReturn:
    """Raise `InputRefused`: `looms.xlsx: <what>. <to do>`. `what` has no full stop, `to_do` is a sentence."""
    file = str(path) if full_path else path.name
    finding = Finding(code, Severity.REFUSED, f"{what}.", to_do, file, sheet, cell)
    where = " ".join(part for part in (file, sheet and f"sheet {sheet}", cell) if part)
    raise InputRefused(f"{where}: {what}. {to_do}", (finding,))
