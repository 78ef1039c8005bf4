"""What a tidy worksheet is made of: its columns, its rows, and what it says by itself."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from tracker.domain.tables import Kind
from tracker.office.writing.values import WEEKDAYS


@dataclass(frozen=True, slots=True)
class Col:
    """A column of a sheet that we write."""

    heading: str
    """With its unit: `Quantity (pc)`, `Efficiency (%)`."""
    kind: Kind = Kind.TEXT
    digits: int | None = None
    """Decimals shown, with a mark for thousands; None = as the number is."""
    words: tuple[str, ...] = ()
    """Drop-down of the allowed values."""
    closed: bool = True
    """False: a value outside the drop-down is warned of, not refused."""
    about: str = ""
    """Comment on the heading."""
    needed: bool = False
    low: float | None = None
    high: float | None = None
    """Usual limits as the sheet shows the value (percent for fractions); a value beyond is warned of, not refused."""
    total: bool = False
    """A sum stands below the column."""
    width: int | None = None
    """In characters; None = as wide as its content, within limits."""


@dataclass(frozen=True, slots=True)
class SheetWords:
    """What a sheet says by itself, in some language."""

    total: str = "Total"
    page: str = "Page &P of &N"
    """As spreadsheets have it: `&P` is the number, `&N` how many there are."""
    yes: str = "yes"
    no: str = "no"
    allowed: str = "Allowed"
    usual: str = "Usual"
    and_more: str = "or more"
    day: str = "yyyy-mm-dd"
    weekdays: tuple[str, ...] = WEEKDAYS
    """Monday first."""


@dataclass(frozen=True, slots=True)
class TidySheet:
    """A worksheet: sentences, then one table."""

    title: str
    columns: Sequence[Col]
    rows: Sequence[Sequence[Any]]
    """Domain values in the order of the columns."""
    lines: Sequence[str] = ()
    """Sentences above the table."""
    frozen: int = 1
    """Columns that stay in view."""
    marks: Mapping[int, str] | None = None
    """Index of a row → word that says why it is shaded, which also stands in the row."""
    framed: Mapping[int, Collection[int]] | None = None
    """Index of a row → indexes of its columns that are framed, to be filled in by hand; rows are higher then."""
    breaks: Sequence[int] = ()
    """Indexes of rows that begin a new page."""
    words: SheetWords = SheetWords()
