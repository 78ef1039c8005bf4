"""What a reader or a review found in a file, cell by cell."""

from dataclasses import asdict, dataclass
from enum import StrEnum


class Severity(StrEnum):
    NOTE = "note"
    DOUBT = "doubt"
    REFUSED = "refused"


@dataclass(frozen=True, slots=True)
class Finding:
    code: str
    """Stable, kebab-case: `unit-doubt`, `impossible-value`."""
    severity: Severity
    message: str
    """One line: what was met, value and limit."""
    hint: str = ""
    """What to do."""
    file: str = ""
    sheet: str = ""
    cell: str = ""
    """As a spreadsheet names it: `C7`, `C7:C40`."""
    heading: str = ""
    raw: str = ""
    understood: str = ""

    def record(self) -> dict[str, str]:
        """The finding as the `--json` contract writes it."""
        return {name: str(value) for name, value in asdict(self).items()}

    def line(self) -> str:
        """One line for a person."""
        where = " ".join(part for part in (self.file, self.sheet, self.cell) if part)
        return f"{self.severity}: {where}: {self.message}" + (f" {self.hint}" if self.hint else "")
